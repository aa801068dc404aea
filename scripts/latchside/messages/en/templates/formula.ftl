work-out = Work it out
no-script = Scripts are off, so this page cannot work it out for your inputs. The worked examples below stand.
meaning = What it tells, and what it leaves out
examples = { $count ->
    [one] Worked example
   *[other] Worked examples
}
formula = Formula
inputs = What goes in, and its range
input-count = { $count ->
    [one] One input
   *[other] { $count } inputs
}
default = Without it: { $value }
optional = May be left out
valid = Where it holds
command = On the command line
