"""Every figure against things from outside the project; each check names its source."""
