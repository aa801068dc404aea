rule = Every row of a table has a cell for every column, and numbers stand under a unit.

no-such-column =
    .found = a cell { $cell }
    .expected = a column id.{ $hint }
    .action = Correct the id, or add the column.

no-unit =
    .found = the number { $cell } under a column without unit
    .expected = a unit for the column
    .action = Add unit to the column (count for a number without one).

no-cell =
    .found = no cell for { $column }
    .expected = a cell for each column (not stated, if it is not)
    .action = Add { $column }.
