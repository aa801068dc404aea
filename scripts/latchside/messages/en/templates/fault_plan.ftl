plan = The whole plan
tree = The plan as a picture
least-time =
    The order that takes the least time: about { $minutes } min expected, checks and remedy together. One cause at a
    time is assumed. Minutes, and how often, are common-practice estimates.
near-least-time =
    The order that takes the least time: about { $minutes } min expected, checks and remedy together. Too large to be
    worked out exactly: it may be up to { $gap } min above the best. One cause at a time is assumed. Minutes, and how
    often, are common-practice estimates.
differs = On { $devices } the plan differs: about { $minutes } min expected. It begins: { $first }
left-out = Left out: { $causes }.
put-back = Put back first:
this-check = This check
this-remedy = This remedy
minutes = { $minutes } min
minutes-and-set-up = { $minutes } min + { $more } min for { $needs }
fix = Fix: { $cause }.
gone-when = Gone when: { $proof }
pass-on = Pass it on
pass-on-to = { $pass_on } to: { $who }.
what-to-say = What to say, how to leave it
