"""From a survey of openings to the plan of the job: pure, the same survey and date always give the same plan."""
