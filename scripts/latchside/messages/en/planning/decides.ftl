# How each sentence starts: what an answer decides by itself, or only together with others.
decides =
    { $alone ->
        [yes] Decides
       *[no] With other answers, decides
    }

device-between = { decides } between { $devices }.
device-can = { decides } whether { $device } can go there.
device-any = { decides } which class goes there.
the-device = the { $name }
contact =
    { $count ->
        [one] { decides } whether a { $contacts } can go on the loop.
       *[other] { decides } which wired contact goes on the loop: { $contacts }.
    }
problem = { decides } whether this stands against it: { $problem }
verdict = { decides } how { $figure } comes out: { $verdicts }.
verdict-worked =
    { $alone ->
        [yes] Needed to work out { $figure }.
       *[no] Needed, with other answers, to work out { $figure }.
    }
parts = { decides } what is packed: { $part }.
caution = { decides } whether a caution stands: { $caution }.

# What a figure may come to.
comes-to-good = good
comes-to-test-on-site = to be tried on site
comes-to-poor = a problem
comes-to-none = for information only

# A part of the fixing.
fixing-sensor = { decides } where the sensor goes.
fixing-magnet = { decides } where the magnet goes.
fixing-spacer = { decides } what goes under the halves.
fixing-height = { decides } how the place is reached.
fixing-hold = { decides } how it is fixed, and where no hole goes.

# Something of the zone.
zone-link = { decides } how its zone reports, by cable or by radio.
zone-response = { decides } whether its zone waits or answers at once.
zone-reports = { decides } whether its zone goes to the receiving centre.
zone-chime = { decides } whether its zone has a chime.
zone-supervision = { decides } how its zone tells of faults.
zone-count = { decides } how many zones it takes.
zone-names = { decides } how zones are named.
