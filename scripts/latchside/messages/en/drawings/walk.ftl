opening = { $number } { $name }
about = In the order of the walk: { $openings }. Not to scale.
