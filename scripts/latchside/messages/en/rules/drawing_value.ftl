rule = Every value that a drawing shows is stated by each device that names the drawing.

no-such-value =
    .found = { "{{" }{ $value }{ "}}" }
    .expected = the name of a value of devices.{ $hint }
    .action = Correct the name, or write the words.

value-not-stated =
    .found = { $drawing }, which shows { $value }
    .expected = { $value } under values
    .action = State the value, or take it out of the drawing.
