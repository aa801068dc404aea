rule = A condition names words that a survey can hold for its field.
