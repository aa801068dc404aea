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

second-needs-hole =
    .found =
        The contact in place stays. The second leaf or sash takes a new one of this class, which needs a hole or screws,
        and none may be made here.
    .action = Choose another class, or get the written consent of whoever answers for the fire or escape door.
# $device is the class that stands in sight, $reason what stands against the concealed ones.
wish-cannot-be-met =
    .found = The customer wants it hidden. That cannot be had here: the { $device } stays in sight. { $reason }
    .action =
        Agree it with the customer in writing before the day: a contact in sight, or the door or window is changed for
        a hidden one.
any-contact = wired contact on its loop
none-made = No hidden contact is made for this kind of opening.
against-concealed = What stands against a hidden one: { $reasons }
more-speaks = More speaks for it than for a hidden one.
