warnings =
    { $count ->
        [one] 1 warning, shown above; fix it.
       *[other] { $count } warnings, shown above; fix them.
    }
pocket =
    { $files ->
        [one] { $file }: { $size } MB, 1 file. Unpack it and open index.html.
       *[other] { $file }: { $size } MB, { $files } files. Unpack it and open index.html.
    }
labels =
    { $count ->
        [one] { $file }: 1 label. Print it at full size.
       *[other] { $file }: { $count } labels. Print it at full size.
    }
