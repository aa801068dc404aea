from = Where it comes from
