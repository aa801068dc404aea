rule = No text of a job holds a code, or looks as if it did.
