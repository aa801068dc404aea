# What is saved at the first visit, in a list.
frame = the frame of every page
own-pages = home, on site, visits, surveys
checklists = checklists
faults = faults
cautions = cautions
figures = figures
terms = terms
installing = installing
procedures = procedures
stages = stages of installing
as-far-as-fit = { $group } as far as they fit
