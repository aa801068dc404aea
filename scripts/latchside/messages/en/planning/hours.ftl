# $when is a word of the survey.
free =
    { $when ->
        [morning] Work on it in the morning only.
        [afternoon] Work on it in the afternoon only.
       *[closed] Work on it after closing only.
    }
decides = Decides when in the day it is worked on.
