how = How
critical = critical
only = { $devices } only
reading = Reading
more = More
