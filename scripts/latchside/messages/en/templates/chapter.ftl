before = Before you start
needs =
    { $conditions ->
        [0] { needed-tools }
        [one] One condition, { needed-tools }
       *[other] { $conditions } conditions, { needed-tools }
    }
needed-tools =
    { $tools ->
        [0] no tools
        [one] one tool
       *[other] { $tools } tools
    }
if-it-fails = If it fails
ways =
    { $ways ->
        [0] Nothing of its own
        [one] One way
       *[other] { $ways } ways
    }
same = The same for every device
prove = Prove
close-up = Close up
nothing-before = Nothing needs to be true before.
minutes = About { $minutes } minutes (common practice).
no-hazard = No hazard of its own.
tools = Tools
parts = Parts
none = None.
from = from { $procedure }
nothing-fails = Nothing of its own can fail here.
