this-survey = This survey
questions = Questions
more = More to tell
