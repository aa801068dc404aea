work-out = Work it out
one-of-two = (one of the two)
may-be-empty = (may be empty)
link = Link with these inputs
no-script = Scripts are off, so this page cannot work it out for your inputs. The worked examples below stand.
examples = { $count ->
    [one] Worked example
   *[other] Worked examples
}
formula = Formula
inputs = What goes in, and its range
default = Without it: { $value }
optional = May be left out
valid = Where it holds
command = On the command line
