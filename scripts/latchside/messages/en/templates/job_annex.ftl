annex = For the lead: hours for the quote, why each device was chosen, what was passed over, every figure, and what each answer decides.
decides = What each answer decides
site-figures = Figures of the site
zones = Why each zone answers so
zone = { $position } { $name }
opening = { $number } · { $opening }, why
device = Device
lead-chose = Chosen by the lead
why = Why
speaks-against = What speaks against it
others = Why not the others
never = never here
figures = Figures
figures-of = Figures of { $opening }
quote = For the quote
# $problems and $questions are how many stand open.
quote-rests =
    Hours of one technician each, added up. They rest on { $table }, on what the survey says, and on { $problems ->
        [0] no problem
        [one] 1 problem
       *[other] { $problems } problems
    } and { $questions ->
        [0] no question
        [one] 1 question
       *[other] { $questions } questions
    } that are still open: each may move them.
quote-parts = The parts with their quantities are the file parts.csv, for your own prices.
work = Work
low = At best
usual = Usually
high = At worst
before = Before the first arrival
together = On site together, or waiting for each other
all = All of it
