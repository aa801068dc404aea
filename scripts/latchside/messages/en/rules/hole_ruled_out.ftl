rule = A device that sits in a hole is ruled out where no hole may be made.
