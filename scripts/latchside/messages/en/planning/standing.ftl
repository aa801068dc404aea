# What rules a transmitter out where no contact is in place for its loop.
bare-fire-rated = A fire-rated opening without a contact in place.
bare-escape = An opening on an escape way without a contact in place.
bare-drill = A place that may not be drilled, without a contact in place.
bare-reason = Every wired contact for its loop that is made for such an opening needs a hole or screws.
trips-late =
    .text = No contact for its loop.
    .reason = What reaches over this gap lets the edge open past its limit before it trips.
