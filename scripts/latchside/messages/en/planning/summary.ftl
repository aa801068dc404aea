# Columns.
opening = Opening
device = Device
verdicts = Verdicts
open = Open

heading = { $name } ({ $id }), planned for { $day }: { $counts }
openings =
    { $count ->
        [one] { $count } opening
       *[other] { $count } openings
    }
with-device = { $count } with a device
problems =
    { $count ->
        [one] { $count } problem
       *[other] { $count } problems
    }
questions =
    { $count ->
        [one] { $count } question
       *[other] { $count } questions
    }

no-device = none yet
chosen-by-lead = { $device } (chosen by the lead)
count-good = { $count } good
count-test-on-site = { $count } test on site
count-poor = { $count } poor

# What stands open: $about is what a problem or question concerns.
problem = problem
problem-line = { $about }: { $found } – { $action }
question = question
question-line = { $about }: { $question } { $why }
question-lines = { $question } { $decides }
decides = { $about }: { $why }
site = site
control-unit = panel
