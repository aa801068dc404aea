noted = Noted: the survey is saved.
all-answered = Nothing is open in this survey.
