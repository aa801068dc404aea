title = Rules of the check
description = Every rule that records are checked against, with the code its findings carry.
maintain = Maintain
summary = A record first has to fit its schema. Then these rules look at the library as a whole.
