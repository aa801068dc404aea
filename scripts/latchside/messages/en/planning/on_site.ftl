on-day = Day { $day }: { $work }

# What begins the job; $procedure is the name of what is done.
take-over = { $procedure }. Nothing is opened, programmed or changed before it is through.
walk-test =
    { $places ->
        [one] Radio walk test before any pad or screw: one device held where it will stay, every door closed, and
            its margin written down. Too weak: stop. Agree a repeater or a cable first.
       *[other] Radio walk test before any pad or screw: one device at each of the { $places } radio places, every
            door closed, and each margin written down. Too weak: stop there. Agree a repeater or a cable first.
    }
# $names are the openings that are not heard by the figures.
walk-test-unheard =
    { $places ->
        [one] Radio walk test before any pad or screw: one device held where it will stay, every door closed, and
            its margin written down. By the figures { $names } is not heard: stop there, and agree a repeater or a
            cable first.
       *[other] Radio walk test before any pad or screw: one device at each of the { $places } radio places, every
            door closed, and each margin written down. First where the figures say not heard: { $names }. Too weak:
            stop there. Agree a repeater or a cable first.
    }

# A day: it begins with arriving and ends with leaving. $names are zones that were in use before the job, $notes what
# the survey says of the site.
arrive = { $procedure }.
arrive-unmonitored = Arrive; nobody monitors the site, so tell the people there when the alarm may sound
arrive-zones = { $procedure }. On test with the centre by name: { $names }.
arrive-zones-notes = { $procedure }. On test with the centre by name: { $names }. Note of the survey: { $notes }
arrive-notes = { $procedure }. Note of the survey: { $notes }
land =
    { $loops ->
        [one] { $procedure }: { $loops } loop. { powered-down }
       *[other] { $procedure }: { $loops } loops. { powered-down }
    }
powered-down =
    Installer mode and every sounder held off first, then mains and battery off, once for all; battery and mains on
    again with the covers shut.
prove-in-use = Prove the zones that were there before: { $names }. See each open and restore in the event log.
prove-in-use-at-centre =
    Prove the zones that were there before: { $names }. The centre confirms each by name before off test; a hold-up
    button only with the centre on the line.
hand-over-waits = { $procedure }. Waiting for check-ins is in this time.

# Leaving: the zones of the job that are live that night.
leave = { $procedure }.
leave-unmonitored = Last look at the panel, and leave
leave-live = { $procedure }. Live tonight: { $live }. Tell the customer what is not watched yet.
leave-omitted =
    { $procedure }. Live tonight: { $live }. Omitted until every entry door is proved: { $omitted }. Tell the customer
    what is not watched yet.
leave-all = { $procedure }. Every zone of this job is live.
none = no zone of this job
