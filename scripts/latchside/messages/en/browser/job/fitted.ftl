title = { $site }: as fitted
opening = Opening
zone = Zone
fitted = Fitted
readings = Readings
deviations = Otherwise than planned
no-deviation = Nothing was recorded that differs from the plan.
no-plan = No plan came with this visit, so nothing can be compared with one.
not-complete =
    { $openings ->
        [one] Not complete: nothing is recorded at { $openings } opening.
       *[other] Not complete: nothing is recorded at { $openings } openings.
    }
planned-only = planned: { $device }; nothing recorded
signature = Name, date, signature:
library = Library { $library }. Printed { $when }.

# The certificate: a form of empty lines.
certificate = Test certificate
claim = This form claims no compliance with any standard, grade or rule for anybody.
rules = What is written on it, the person who signs it says. Local rules and the insurer decide whether a certificate is needed, what it has to say and who may sign it.
site = Site: { $site }
system = System
grade = Grade as specified
standard = Standard worked to
results = Test results
deviations-here = Deviations
name = Name
signed = Signature
date = Date
