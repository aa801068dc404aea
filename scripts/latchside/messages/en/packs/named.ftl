about-site = The site
    .inside = the site
about-control-unit = The panel
    .inside = the panel
every-opening = Every opening
no-device = not chosen
