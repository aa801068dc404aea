full = Not stored: the storage of this browser is full. Save surveys as files, delete old ones, then try again.
gone = Not stored: this survey or opening was removed in another tab.
refused = Not stored: the browser refused to store it ({ $why }). Write it on paper, or try again.
