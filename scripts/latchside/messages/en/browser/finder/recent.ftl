checklist = Checklist
last-used = Last used
