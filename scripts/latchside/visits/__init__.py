"""Visits: the record a technician brings back, read, checked and understood as the page on the phone understands it."""
