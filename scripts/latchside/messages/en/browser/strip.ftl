safety-correction = Safety correction:
correction = { $page }. { $text }
read = I have read it
