only-here =
    { $photographs ->
        [one] 1 photograph only on this device
       *[other] { $photographs } photographs only on this device
    }
