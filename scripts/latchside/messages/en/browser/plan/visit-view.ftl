start = Start the visit
starting = Starting the visit …
hindered = A visit can be started once what is listed under “Take it with you” is put right.
stopped = No visit was started, and your survey is untouched: { $told }
