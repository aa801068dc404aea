filter = Narrow the list
found =
    { $shown ->
        [one] One of { $all }
       *[other] { $shown } of { $all }
    }
none = Nothing here is called “{ $typed }”.
finder = Look for it in the whole library
