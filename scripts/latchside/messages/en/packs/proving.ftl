wired = Contacts on cable
radio = Contacts on radio

as-named = as on the left
