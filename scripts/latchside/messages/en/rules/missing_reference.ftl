rule = Every reference names a record, step, value, drawing or card that exists.
