give-name = Give the site a name first.
unreadable = The file is too large, or cannot be read.
not-shared = Not shared.
share-refused = Sharing was refused. Save it as a file instead.
