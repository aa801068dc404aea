begin = Try other answers
trial = Trial: nothing here is stored
how = Change answers below and see what they lead to. Keep them, or drop them and all stands as before. A reload drops them.
keep = Keep
drop = Drop
open = You are trying other answers at { $opening }.
untried = No answer is changed yet.
same = These answers change nothing: device, figures, problems, positions, hours and parts are the same.
lacking = With these answers the opening lacks what is needed to be planned.
failed = These answers could not be planned: { $told }
what = What differs
now = Now
tried = Trial
rest = Other openings, and parts
differences =
    { $count ->
        [one] 1 difference
       *[other] { $count } differences
    }
at = { $opening }: { $what }
device = Device
problem = Problem
positions = Position
hours = Time on site
days = Days
time = { $hours } h
none = none
