part-openings = Opening sheets
    .holds = Where and how each is fixed, what it should read, and room to write
part-zones = Zone schedule
    .holds = Position, name, text for the keypad, response and reports of each zone
part-van = What goes on the van
    .holds = Parts, consumables and tools, with spares and where each goes
part-work = Order of work
    .holds = One opening after the other, with minutes
part-service = Service plan
    .holds = What falls due, and when
part-test-sheet = Test sheet
    .holds = What each reading should be, and room for what it is
part-handover = Handover sheet
    .holds = In plain words, for the customer
part-annex = Annex for the lead
    .holds = Hours for the quote, why each device, what was passed over, every figure, what each answer decides

openings = Openings

verdict-no-device-yet = no device yet
verdict-problem = problem
verdict-poor = poor
verdict-test-on-site = test on site
verdict-good = good
verdict-no-verdict = no verdict
verdict-told-only = for information

problems = { $problems ->
    [one] { $problems } problem
   *[other] { $problems } problems
}
questions = { $questions ->
    [one] { $questions } question
   *[other] { $questions } questions
}
problems-and-questions = { $problems ->
    [one] { $problems } problem
   *[other] { $problems } problems
}, { $questions ->
    [one] { $questions } question
   *[other] { $questions } questions
}
nothing-open = nothing

sort-part = Parts
sort-consumable = Consumables
sort-tool = Tools

batteries = New batteries: { $openings }.
change-batteries = Change the battery, at the service before this day or at its low report.

# As the region of the job says it.
entry-time = Entry time
exit-time = Exit time
