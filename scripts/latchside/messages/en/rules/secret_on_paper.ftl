rule = No text asks for a password or a code to be written down.
