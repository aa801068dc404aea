progress = planning the demo jobs, writing pages
install = Install, from the yard to the people on site
goal = { $device }: { $stage }
