site = Site
typed = { $name }: “{ $text }”

# Bringing a survey in.
no-json = The file is damaged, or no survey saved here: it cannot be read as JSON.
no-survey = The file is no survey: it has no list of openings.
second-id = a second id { $id }
misfit = The survey does not fit this form: { $fault }.
