house = House rules of your firm
own =
    { $figures ->
        [0] those of the library
        [one] 1 of your own
       *[other] { $figures } of your own
    }
help = What every plan is worked out with unless its survey says otherwise. An empty box means the figure of the library. Yours are kept on this device.
library = Library: { $value } { $unit }
save = Save as a file
clear = Back to those of the library
clearing = All figures of your own go from this device. Save them as a file first: nothing else brings them back.
clear-all = Take all of mine out
cleared = All figures are those of the library.
bring = Bring your figures in from a file
bring-help = A file of house rules that was saved here. On a computer, latchside plan --house FILE plans with it.
