# Above a survey to fill in.
how = A survey. Write what was seen; leave the rest blank, and it becomes a question of the pack.
blank = A blank field counts as not said. Lengths: 4 mm, 3/16 in, 12 ft 6 in, 2.5 m. Never write a code anywhere.
plan = Then run: latchside plan { $name }
columns = The columns of an opening. The line after their names is an invented example.
fields = What the fields of an opening are for:
example = Below is an invented example: take the # away, and write your own in its place.
invented = Invented, to show the form.

# A name that does not do.
no-form = "{ $name }" does not say its form: end the name in { $endings }
no-id = "{ $name }" is not an id: use lower-case words joined by hyphens, such as corner-shop

# What a field may hold, in a sheet and in YAML.
needed = Needed.
one-of = One of: { $words }.
yes-in-sheet = Yes, or blank.
yes-in-yaml = true, or blank.
words-in-sheet = Separated by semicolons, or none. Words: { $words }.
words-in-yaml = A list, or [] for none. Words: { $words }.
texts-in-sheet = Separated by semicolons.
texts-in-yaml = A list: [Safe, Hall].
walls-in-sheet = Such as brick 115 mm; plasterboard – or none. Materials: { $words }.
walls-in-yaml = As in the example, or [] for none. Materials: { $words }.
