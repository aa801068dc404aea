full =
    Not stored: the storage of this browser is full. Save visits as files, wipe old ones on the page Visits, then try
    again.
refused = Not stored: the browser refused to store it ({ $why }). Write it on paper, or try again.
