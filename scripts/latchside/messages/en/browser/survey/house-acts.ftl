unchanged = Nothing was changed by { $file }: { $fault }
brought =
    { $figures ->
        [one] 1 figure of your own from { $file }.
       *[other] { $figures } figures of your own from { $file }.
    }
