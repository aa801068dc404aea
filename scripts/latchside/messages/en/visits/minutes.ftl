left-out-no-start = no tick before it on that day
left-out-work-elsewhere = work elsewhere in between
left-out-break = a break in between
