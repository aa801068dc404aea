title = Job packs
description = What a job pack is, and two made-up sites that show one.
summary =
    A job pack is made from a survey: which device goes on which opening and why, where and how it is fixed, what it
    should read, the zones, what goes on the van, the order of work, the sheets to fill and the sheet to leave behind.
invented = The sites on this page are invented.
invented-why =
    Nobody lives or works there. They show what a pack holds, with answers missing on purpose, so that open questions
    show.
invented-site = Invented. { $summary }
own = A pack for your own job
stays = Packs of real sites are made on your own computer and stay there. No page of this library holds one.
checklist = checklist
survey-openings =
    Survey the openings with the { $checklist }, and leave out what you did not see. What is left out becomes a
    question, never a guess.
survey = Survey
fill-in =
    On a phone, fill in the { $survey } as you walk: it needs no signal, and leaves as a file. At a table, make a file
    to fill in: { $command }, or one that ends in { $csv } or { $xlsx }.
make = Make the pack: { $command }.
visits = Visits
print = Print the document, and bring the visit file in on the phone under { $visits }.
no-codes = A survey never holds a code. Codes are told to the customer by word of mouth, and to nobody else.
