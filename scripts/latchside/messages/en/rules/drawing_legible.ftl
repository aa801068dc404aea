rule = A drawing can be read on a phone: large text in ink, and colours of the one set.
