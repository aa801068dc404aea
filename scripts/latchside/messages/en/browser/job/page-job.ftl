print = Print as fitted
certificate = With a test certificate to fill in by hand
calendar = Service dates for a calendar
saved = The dates are saved as a file, which a calendar opens.
