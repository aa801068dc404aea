# The end of a description in the schema that is for those who write a file, and not asked on a form.
