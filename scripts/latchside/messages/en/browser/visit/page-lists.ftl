title = Lists
title-loose = Ticked without a visit
answers =
    { $entries ->
        [one] 1 answer: open the list, and take it into this visit
       *[other] { $entries } answers: open the list, and take them into this visit
    }
title-site = Lists for the site
title-opening = Lists for { $opening }
started = { $started } of { $lists ->
        [one] 1 list
       *[other] { $lists } lists
    } started
complete-lists = { $lists } complete
problems = { $problems ->
        [one] 1 problem
       *[other] { $problems } problems
    }
not-started = Not started
complete = Complete
closed = { $closed } of { $items }, { $open } open
