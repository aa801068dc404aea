all-surveys = All surveys
walk = Openings, in the order of the walk
no-name = A site without a name
count =
    { $openings ->
        [one] 1 opening
       *[other] { $openings } openings
    }, { $questions ->
        [0] all answered
        [one] 1 not answered
       *[other] { $questions } not answered
    }.
none = None yet. Begin at the entry door and walk in one direction.
taken-away = { $opening } was removed.
put-back = Put it back
numbered = { $number }. { $opening }
more = More
more-for = More for { $opening }
copy = Copy
up = Move up
down = Move down
take-away = Remove
delete = Delete this survey
delete-sure = Delete it
leave = Leave it
delete-asked-saved =
    { $openings ->
        [one] 1 opening will be gone from this device for good. All of it is in a file that you saved.
       *[other] { $openings } openings will be gone from this device for good. All of it is in a file that you saved.
    }
delete-asked =
    { $openings ->
        [one] 1 opening will be gone from this device for good. What was changed last is in no file yet.
       *[other] { $openings } openings will be gone from this device for good. What was changed last is in no file yet.
    }
