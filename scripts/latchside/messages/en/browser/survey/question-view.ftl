no-code = It is no code: keep it
open = open
none = None
add = Add one
numbered = { $field }, { $number }
take-out = Take out number { $number }
