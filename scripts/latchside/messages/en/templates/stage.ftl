description = { $title }, for the { $device }, with its own figures.
devices = Devices
place = Stage { $number } of { $of }
work =
    About { $minutes } min, { $steps ->
        [one] one step
       *[other] { $steps } steps
    }
turn = Previous and next stage
before = Previous, { $number } of { $of }
after = Next, { $number } of { $of }
label-wins = Figures are typical for this class of part. The label on your part wins.
origin = Where this comes from
versions = Version { $version }
record = Device record { $file }, version { $version }.
edit = Edit this record
procedure = { $procedure }: { $file }, version { $version }, reviewed by: { $by }
