taken =
    { $changes ->
        [one] 1 change taken into the survey. Its plan is worked out again when the survey is opened.
       *[other] { $changes } changes taken into the survey. Its plan is worked out again when the survey is opened.
    }
