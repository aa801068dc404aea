rule = Every row of a table has a cell for every column, and numbers stand under a unit.
