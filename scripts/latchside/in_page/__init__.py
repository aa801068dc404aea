"""The planner in the page that surveys are filled in on: what runs there, and what the site has to hold for it."""
