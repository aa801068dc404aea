# The battery, by the practice of region and grade.
battery =
    { $practice ->
        [lower-grades] Standby battery, grades 1 and 2
        [higher-grades] Standby battery, grades 3 and 4
       *[other] Standby battery
    }
size = { $size }, for at least { $least }
no-size = no single battery: { $least }
hours = { $standby } in standby and { $alarm } of alarm, with a quarter for age.
source =
    { $practice ->
        [united-states]
            Several municipal codes of the United States ask for at least this. Local code decides.
        [canada]
            CAN/ULC-S304, for business premises, from memory: check your edition. In a home the listing of the panel
            may ask for less.
        [lower-grades] EN 50131-6, supply of type A, from memory: check your edition.
        [higher-grades]
            EN 50131-6, supply of type A, from memory: check your edition. Half may do where a mains fault is reported.
       *[common] Common practice. Local code and the panel's instructions decide.
    }
second-supply = Add a supply with a battery of its own, or take load off this one.
alarm-lasts = The alarm lasts { $alarm }.
region-not-known = The practice of the region is not known.

# False troubles of all radio devices.
check-ins = False trouble by check-ins
yearly = { $times } a year
rarer = rarer than once in { $years } years
once = once in { $years } years
lost =
    { $devices ->
        [one] { $devices } radio device: trouble shows when { check-ins-lost } lost.
       *[other] { $devices } radio devices: trouble shows when { check-ins-lost } lost.
    } Real losses come together, behind a metal door that stands closed.
check-ins-lost =
    { $tries ->
        [1] the only check-in within { $window } is
       *[other] all { $tries } check-ins within { $window } are
    }
order = Order devices that check in more often, so that at least { $tries } fall within.
share-lost = { $share } of check-ins are lost, each by itself.
grade-not-known = The grade is not known: the time is that of a common one.
