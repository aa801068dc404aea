# $every is a length of time with its unit.
visit = Service, every { $every }: both proof distances of each opening, batteries, radio and standby battery.
cell = Change the battery of { $opening }, at the service before this day or at its low report.
standby-battery =
    Change the standby battery of the panel: { $life } after a new one. The date on the battery decides.
