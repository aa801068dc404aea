site = The site
openings = Openings
