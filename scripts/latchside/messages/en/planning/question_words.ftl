# Of the site.
ask-region = Which country or region is the site in?
ask-year-built = In which year was the building built?
ask-building = What is the building: a home, flats, offices, a shop, a workshop?
ask-listed = Is the building listed or protected?
ask-consent = Does whoever owns the building agree to holes and screws?
ask-occupied = Do people live or work there during the job?
ask-monitored = Does an alarm receiving centre listen to the site?
ask-keyholder-arranged = Has somebody with a key been arranged for the day?
ask-grade = Which grade does the system have to meet?
ask-insurer = What does the insurer ask for?

# Of the panel.
ask-owner = Who owns the panel?
ask-installer-access = Is the installer code known, and may it be used?
ask-two-way = Does the receiver also send, and ask each device whether it is there?
ask-name-length = How many letters of a zone name does the keypad show?
ask-radio-positions = How many zone positions that take a radio device are free?
ask-frequency = On which radio frequency does the receiver listen?
ask-sensitivity = What is the weakest signal that the receiver reads, by its instructions?
ask-wired-positions = How many zone positions for wired contacts are free?
ask-layout = Which layout of resistors do the wired inputs need?
ask-end-of-line = Which end-of-line resistor do the wired inputs need?
ask-second-resistor = Which value has the second resistor, the one across?
ask-pull-up = Which pull-up resistor stands behind a wired input?
ask-supply = Which voltage stands behind the pull-up of a wired input?
ask-standby-current = What do the panel and all it feeds draw in standby?
ask-alarm-current = What do they draw in alarm, with the sounders?
ask-chime = Does the customer want a chime at the entry doors?

# Of an opening.
ask-fire-rated = Is the door or window or its frame fire-rated?
ask-escape = Is it an escape way?
ask-powered = Does a motor move the door or window?
ask-hardware = Which hardware is on it: panic bar, magnetic lock, electric strike, closer?
ask-width = How wide is the door or window, from the hinge to the edge that opens first?
ask-glazed = Does the moving part hold glass?
ask-rail-depth = How much solid material lies between the edge of the moving part and its glass?
ask-leaf-material = What is the door or window made of?
ask-frame-material = What is the frame made of?
ask-steel = Does a test magnet find steel in the door or window, or in its frame, where the contact would go?
ask-gap = How wide is the gap to the frame there, closed and latched?
ask-play = How far does the door or window move when it is pushed and pulled, closed and latched?
ask-step = How far does the surface of the frame stand proud of the door or window?
ask-use = Do people come in here, or pass here on their way to the keypad?
ask-height = How high above the floor is the place of work?
ask-distance = How far is it to the panel, in a straight line?
ask-walls = Which walls stand on that line, and of what?
ask-floors = How many floors lie on that line?
ask-outer-wall = Does that line cross the outer wall, and is the building thermally efficient?
ask-cable = Does a cable from the panel end at the opening?
ask-cable-length = How long is the cable, or the run that a new one would take?
ask-cable-area = What gauge, or area of one conductor, does the cable have?
ask-old-contact = Is a sound wired contact in place?
ask-outdoors = Does rain, frost, or shower or wash-down water reach the place?
ask-drill = May the door or window and its frame be drilled, and is it known what lies behind?
ask-wish = Does the customer want nothing in sight, or is a body on the surface fine?
ask-passive-leaf = Can the second leaf be opened too?
ask-upper-sash = Does the upper sash open too?
ask-loose-lid = Is the lid loose, without hinges?
ask-openings-a-day = How often is it opened on a busy day?
ask-free = At which hours can people do without it, so that it can be worked on?

# A field without a question of its own.
ask-any = What is known of { $field }?
