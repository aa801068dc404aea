"""The figures: numbers worked out and said in words. Pure functions; templates do no arithmetic."""
