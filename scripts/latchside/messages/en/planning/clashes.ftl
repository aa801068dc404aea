# $part is what is made of steel.
steel-not-found =
    .found =
        { $part ->
            [leaf] The door or window is said to be of steel, and a test magnet to have found none in it.
            [frame] The frame is said to be of steel, and a test magnet to have found none in it.
           *[both] Both sides are said to be of steel, and a test magnet to have found none in them.
        } It is planned as steel.
    .action =
        Hold a magnet to the bare spot where the contact goes. Where it does not hold, name another material:
        aluminium, also for a stainless steel that holds no magnet.
second-contact =
    .found =
        One contact is in place and stays. For the second leaf or sash no wired contact can be named.
    .action =
        Meter whether the second one has a contact too. Else ask for leave to fix one, or choose a radio contact
        for it by hand.

# $device is the class that stands in sight, $reason what stands against the concealed ones.
wish-cannot-be-met =
    .found = Nothing in sight is wished for, and the { $device } stands in sight. { $reason }
    .action =
        Put it to the customer before the day, and write the answer down: a body in sight, or what stands against a
        concealed contact is changed.
any-contact = wired contact on its loop
none-made = No concealed contact is made for this kind of opening.
against-concealed = Against a concealed one: { $reasons }
more-speaks = More speaks for it than for a concealed one.
