unread = “{ $typed }” (does not read)
open = OPEN
answer = { $field }: { $answer }
survey = Survey
numbered = { $number }. { $opening }
signature = Name, date, signature:
library = Library { $library }. Printed { $when }.
