two-ways = “{ $typed }” could be { $plain } or { $decimal }. Write it without the thousands mark.
thousands = “{ $typed }” could be { $plain }. Write it without the thousands mark.
no-number = “{ $typed }” is not a number. Give { $accepts }.
out-of-range = { $value } is out of range. Give { $accepts }.
not-whole = { $value } is not whole. Give { $accepts }.
