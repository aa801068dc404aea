part-openings = Opening sheets
    .holds = Which device, why, where and how it is fixed, and what it should read
part-zones = Zone schedule
    .holds = Position, spoken name, response and reports of each zone
part-van = What goes on the van
    .holds = Parts, consumables and tools, with spares
part-work = Order of work
    .holds = One opening after the other, with minutes
part-service = Service plan
    .holds = What falls due, and when
part-test-sheet = Test sheet
    .holds = What each reading should be, and room for what it is
part-handover = Handover sheet
    .holds = In plain words, for the customer

about-site = The site
    .inside = the site
about-control-unit = The panel
    .inside = the panel
every-opening = Every opening
openings = Openings
no-device = not chosen

verdict-no-device-yet = no device yet
verdict-problem = problem
verdict-poor = poor
verdict-test-on-site = test on site
verdict-good = good
verdict-no-verdict = no verdict
verdict-told-only = told only

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
