unknown-device =
    .found = The device { $device }, which the library does not have.
    .action = Name a device class of the library, or leave the choice to it.

# $questions says whether questions are open.
no-device =
    .found =
        { $questions ->
            [yes] No device class for { $opening } until its questions are answered.
           *[no] No device class for { $opening }.
        }
    .action = Answer what is asked of it, or choose a device by hand with the reason, or have the opening changed.
