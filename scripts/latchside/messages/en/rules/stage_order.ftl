rule = Stages and sections stand in the order of the job; a procedure is listed under its own stage.

other-stage =
    .found = { $procedure } under { $stage }
    .expected = { $procedure } under { $own }, its own stage
    .action = Move it, or correct its stage.

out-of-order =
    .found = { $key } where { $expected } belongs
    .expected = the order { $order }
    .action = Put them in order.
