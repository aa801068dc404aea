save =
    { $photographs ->
        [one] Save with its photograph (ZIP)
       *[other] Save with its { $photographs } photographs (ZIP)
    }
again = The ZIP holds the record as its file has it, and the photographs beside it. To bring the visit in again, unpack it
    and bring in the record. Photographs are not brought in again.
look =
    { $lost ->
        [0] Look for { $file } among the downloads. Is it there?
        [one] 1 photograph can no longer be read, and is left out. Look for { $file } among the downloads. Is it there?
       *[other] { $lost } photographs can no longer be read, and are left out. Look for { $file } among the downloads.
            Is it there?
    }
not-all =
    { $photographs ->
        [one] The record, { $entries ->
            [one] 1 entry
           *[other] { $entries } entries
        }, is in a file that you saved. 1 photograph is only on this device. Take it with you.
       *[other] The record, { $entries ->
            [one] 1 entry
           *[other] { $entries } entries
        }, is in a file that you saved. { $photographs } photographs are only on this device. Take them with you.
    }
only-here =
    { $photographs ->
        [one] { $site }: 1 photograph only on this device
       *[other] { $site }: { $photographs } photographs only on this device
    }
wipe-asked =
    { $entries ->
        [one] 1 entry
       *[other] { $entries } entries
    } and { $photographs ->
        [one] 1 photograph
       *[other] { $photographs } photographs
    } go from this device for good. The files you saved are all that stays.
