rule = No term links by a word that is a verb of steps.
