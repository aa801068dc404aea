different-visits = These are records of different visits. Print each by itself.
altered = Entry { $entry } reads otherwise in two of these files: one of them was altered.
found = found     { $found }
next = next      { $action }
codes =
    { $count ->
        [one] 1 note looks as if it held a code: { $entries }. Take the code out of use.
       *[other] { $count } notes look as if they held a code: { $entries }. Take the code out of use.
    }

# How long openings took: the columns, and the rows without figures.
openings = openings
low = low
usual = usual
high = high
planned = planned
device = device
too-few = too few to tell: { $needed } are needed
left-out = left out: { $why }
values = Under values of { $file }, with what stands there already:
