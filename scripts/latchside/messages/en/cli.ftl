pages =
    { $count ->
        [one] 1 page in { $folder }
       *[other] { $count } pages in { $folder }
    }
building = building the site
warnings =
    { $count ->
        [one] 1 warning, shown above; fix it.
       *[other] { $count } warnings, shown above; fix them.
    }
built = The site is in { $folder }; show it with: { $command }
not-fluent = messages that do not read as Fluent:
