name = Contact in place
name-magnetic = Gap and make distance, contact in place
by-label = by its own label
gap = { $gap } measured; its own label says how much it bears
meaning =
    The contact in place stays, and its label is not known here. Read it, or try it: open and close ten times, and the
    meter shows each. What it does decides, and no figure of another class.
meaning-loose =
    The contact in place stays, and its label is not known here. Read it, or try it: open and close ten times, and the
    meter shows each. Try it pushed and pulled through its play, { $play }. What it does decides, and no figure of
    another class.
