# $every is a length of time with its unit.
visit = Service, every { $every }: both proof distances of each opening, cells, radio and standby battery.
cell = Change the cell of { $opening }, at the service before this day or at its low report.
standby-battery =
    Change the standby battery of the control unit: { $life } after a new one. The date on the battery decides.
