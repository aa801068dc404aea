before = Before the visit: { $time }
of-day = Day { $day }, { $place }: { $time }
of-place = { $place }: { $time }
