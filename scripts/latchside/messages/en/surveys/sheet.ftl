stray-cell =
    .found = { $text } in cell { $cell }, far to the right of the table
    .expected = nothing beyond column { $last }
    .action = Clear that cell and all others beyond column { $last }; they are not read.
no-header =
    .found = no row of column names
    .expected = a row of column names, with place and kind among them, and below it a row for each opening
    .action = Name the columns so, place first: place,kind,gap – and write below: Hall,hinged-door,4 mm
without-columns = column names without { $columns }
unknown-column =
    .found = { $text } as the name of column { $column }
    .expected = the name of a field.{ $hint }
    .action = Correct the name, or empty the column.
repeated-column =
    .found = { $name } a second time, above column { $column }
    .expected = each column once
    .action = Keep one of the two.
unknown-field =
    .found = { $text }
    .expected = the name of a field, such as site.region.{ $hint }
    .action = Correct it, or begin it with #.
repeated-field =
    .found = { $name } a second time
    .expected = each field once
    .action = Keep one of the two.
unnamed-column =
    .found = { $text } in column { $column }, which has no name
    .expected = a name above every column that holds something
    .action = Name the column, or empty it.

# Where something stands, and what was found there.
row = row { $row }
cell = { $field }, column { $column }
found-for = { $found } for { $where }

# What becomes of what does not read.
left-out = Until then this opening is left out of the plan.
not-said = Until then it counts as not said.
no-day = Until then it is planned only with --date YYYY-MM-DD.
