did-you-mean = Did you mean "{ $word }"?

# A value of a record, as it stands in a sentence.
quoted = "{ $text }"
nothing = nothing

one-of = one of: { $words }
one-of-many = one of: { $words }, … ({ $count } in all)
