rule = Words of one way of sensing are told only of devices that sense so.

word =
    .found =
        { $count ->
            [one] “{ $word }”, told to whoever fits { $devices }, which has none
           *[other] “{ $word }”, told to whoever fits { $devices }, which have none
        }
    .expected = only: { "{" }senses: [{ $senses }]{ "}" }, or words that hold for each device
    .action = Say with only whom it is for, or change the words.
