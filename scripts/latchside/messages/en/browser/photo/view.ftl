# Taking one.
keep-out = Keep out of the picture: codes, keypads, keys, people, the list of zones.
what = What it shows
choose = Choose
shows =
    { $what ->
        [place] The place
        [loop] The loop
       *[label] The label
    }
take = Take a photograph
file = Or choose one that is on this device
working = Working…
kept =
    { $what ->
        [place] Kept: the place. It is only on this device until you save it.
        [loop] Kept: the loop. It is only on this device until you save it.
       *[label] Kept: the label. It is only on this device until you save it.
    }

# What is there.
photograph-of =
    { $what ->
        [place] Photograph of the place
        [loop] Photograph of the loop
       *[label] Photograph of the label
    }
caption =
    { $what ->
        [place] The place, { $at }
        [loop] The loop, { $at }
       *[label] The label, { $at }
    }
caption-by =
    { $what ->
        [place] The place, { $at } { $by }
        [loop] The loop, { $at } { $by }
       *[label] The label, { $at } { $by }
    }
photographs-at = Photographs: { $opening }
an-opening = an opening that is no longer listed

# Taking one off.
take-off = Take the photograph off
take-off-asked =
    { $saved ->
        [0] It is in no file yet, and goes from this device for good.
       *[other] It goes from this device. It stays in the file that you saved.
    }
take-off-sure = Take it off
taken-off = Photograph taken off.

# What cannot be kept.
few-left =
    { $left ->
        [0] There is no room for another photograph in this browser. Save the record with its photographs, then wipe old
            visits.
        [one] There is room for about 1 more photograph in this browser. Save the record with its photographs, then wipe
            old visits.
       *[other] There is room for about { $left } more photographs in this browser. Save the record with its photographs,
            then wipe old visits.
    }
no-picture = { $file } is no picture that this browser can read. Nothing was kept: take the photograph as a JPEG.
full =
    Not kept: this browser has no room for it. The visit and its other photographs are unharmed. Save this one as a
    file, or make room and try again.
gone = Not kept: this visit was put away in another tab. Save this one as a file.
refused = Not done: the browser refused it ({ $why }). The visit and its other photographs are unharmed.
lost = The large picture can no longer be read. The small one is all that is left of it.
again = Try again
save-one = Save this one as a file
leave = Leave it out
