extrapolated =
    The table of the standard does not reach down to this frequency for this material. The loss is extrapolated and only
    illustrates.
plywood = The table entry for plywood is out of line with that for chipboard. Do not plan with it.
metal = Any whole sheet of metal stops radio. What gets through goes round it or by its gaps.
