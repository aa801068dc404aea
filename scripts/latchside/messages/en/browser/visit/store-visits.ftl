altered = no longer reads as it was written
