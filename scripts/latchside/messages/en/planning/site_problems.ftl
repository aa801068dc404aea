no-keyholder =
    .found = Nobody with a key is arranged for the day.
    .action =
        Agree with the customer who opens every room and panel cupboard, and from when. Set no day before that.
no-consent =
    .found = The owner of the building has not agreed to the work.
    .action = Get the owner's yes in writing, with what is drilled and what is stuck, before parts are ordered.
listed-building =
    .found = The building is listed: holes, screws and even pads may need consent.
    .action =
        Ask the authority that lists it, through the owner, what may be fixed to doors, windows and frames. The
        owner's own yes is not its consent. Order nothing and drill nothing before the written answer.

# $owner is a word of the survey for whose panel it is.
panel-of-another =
    .found =
        { $owner ->
            [leased] The panel belongs to whoever leases it out.
           *[other-firm] The panel belongs to another firm.
        }
    .action =
        Get written leave to open and program it, and ask who runs account, communicator and contract. Else plan
        a panel of the customer's own.
no-installer-access =
    .found = We do not have the installer code of the panel, or may not use it.
    .action =
        Ask the firm that fitted it to hand the panel over, or to reset it to its default. Without that no zone
        is set up. Write no code down.
installer-access-unknown =
    .found = Nobody said whether we have and may use its installer code.
    .action = Ask the customer and the firm that fitted it, and try it at the survey. Write no code down.

# What is agreed with the owner first. $year is the year of building.
asbestos-register =
    .found =
        { $known ->
            [yes] Built { $year }, and holes are planned: asbestos may be in board, coating and lagging.
           *[no] The year of building is not known, and holes are planned: asbestos may be in board, coating and lagging.
        }
    .action =
        Ask the owner for the asbestos register or a survey of these places, and write the answer down. Without one
        every board and coating counts as asbestos.
visits-a-year =
    .found =
        { $grade ->
            [unknown] Visits a year are not agreed, and the grade is not known.
           *[known] Visits a year are not agreed.
        }
    .action =
        Ask contract and insurer. Two visits a year are usual for a monitored site from grade 2 (from memory: check
        your edition). The plan counts with the firm's own figure until then.

# At grade 3 and above.
foreign-magnet =
    .found =
        From grade 3 a contact has to show a magnet that is held against it (EN 50131-2-6, from memory: check your
        edition). A single reed does not: { $contacts ->
            [one] { $contacts } opening.
           *[other] { $contacts } openings.
        }
    .action =
        Order balanced or coded contacts whose label states the grade, also in the place of one that stays, and ask the
        insurer whether the loop has to tell tamper from opening. Both before anything is ordered.
