progress = planning the demo jobs, writing pages
goal = { $device }: { $stage }
