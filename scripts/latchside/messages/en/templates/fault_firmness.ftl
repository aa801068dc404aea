title = What the fault plans suggest
description =
    Which procedure steps prevent the most fault minutes, and how far each plan moves when a guessed frequency halves or
    doubles.
maintain = Maintain
suggestion =
    A suggestion, worked out from the plans of the { $faults } faults. Frequencies and minutes are common-practice
    guesses until a firm's own records replace them.
replace =
    Replace the guesses: { $command } with the saved records of visits counts the causes that they found, without any
    site in it.
prevented = Steps that prevent the most
prevented-how =
    Minutes that a step saves over one visit for each fault: for every cause it prevents, how probable the cause is,
    times the minutes of finding and fixing it.
step = Step
minutes = Minutes
causes-prevented = Causes it prevents
fault = Fault
otherwise = Begins otherwise
pairs-most = Pairs that change places, at most
lost-most = Minutes lost, at most
causes = Causes
pairs = Pairs
lost = Minutes lost
firm = How firm the orders are
firm-how =
    Each guessed frequency is halved and doubled, one at a time, and the plan is made anew. { $moving } of { $plans }
    plans begin otherwise after at least one such change. Minutes lost say what keeping to the printed plan costs at
    worst; where that is little, the guess matters little.
part-of = { $part } of { $whole }
