"""How each fact of a survey is asked for: one question for each field of the job schema that a plan can hang on."""

from __future__ import annotations

SITE = {
    "region": "Which country or region is the site in?",
    "year_built": "In which year was the building built?",
    "building": "What is the building: a home, flats, offices, a shop, a workshop?",
    "listed": "Is the building listed or protected?",
    "consent": "Does whoever owns the building agree to holes and screws?",
    "occupied": "Do people live or work there during the job?",
    "monitored": "Does an alarm receiving centre listen to the site?",
    "keyholder_arranged": "Has somebody with a key been arranged for the day?",
    "grade": "Which grade does the system have to meet?",
    "insurer": "What does the insurer ask for?",
}
UNIT = {
    "owner": "Who owns the control unit?",
    "installer_access": "Is the installer code known, and may it be used?",
    "two_way": "Does the receiver also send, and ask each device whether it is there?",
    "name_length": "How many letters of a zone name does the keypad show?",
    "radio_positions": "How many zone positions that take a radio device are free?",
    "frequency": "On which radio frequency does the receiver listen?",
    "sensitivity": "What is the weakest signal that the receiver reads, by its document?",
    "wired_positions": "How many zone positions for wired contacts are free?",
    "layout": "Which layout of resistors do the wired inputs want?",
    "end_of_line": "Which end-of-line resistor do the wired inputs want?",
    "second_resistor": "Which value has the second resistor, the one across?",
    "pull_up": "Which pull-up resistor stands behind a wired input?",
    "supply": "Which voltage stands behind the pull-up of a wired input?",
    "standby_current": "What do the control unit and all it feeds draw in standby?",
    "alarm_current": "What do they draw in alarm, with the sounders?",
    "chime": "Do the people on site want a chime at the entry doors?",
}
OPENING = {
    "fire_rated": "Is leaf or frame fire-rated?",
    "escape": "Is it an escape way?",
    "powered": "Does a motor move the leaf?",
    "hardware": "Which hardware is on it: panic bar, magnetic lock, electric strike, closer?",
    "width": "How wide is the leaf, from the hinge to the edge that opens first?",
    "glazed": "Does the moving part hold glass?",
    "rail_depth": "How much solid material lies between the edge of the moving part and its glass?",
    "leaf_material": "What is the leaf made of?",
    "frame_material": "What is the frame made of?",
    "steel": "Does a test magnet find steel in leaf or frame where the contact would go?",
    "gap": "How wide is the gap between leaf and frame there, shut and latched?",
    "play": "How far does the leaf move when it is pushed and pulled, shut and latched?",
    "step": "How far does the surface of the frame stand proud of that of the leaf?",
    "use": "Do people come in here and unset, or pass here on their way to it?",
    "height": "How high above the floor is the place of work?",
    "distance": "How far is it to the control unit, in a straight line?",
    "walls": "Which walls stand on that line, and of what?",
    "floors": "How many floors lie on that line?",
    "outer_wall": "Does that line cross the outer wall, and is the building thermally efficient?",
    "cable": "Does a cable from the control unit end at the opening?",
    "cable_length": "How long is the cable, or the run that a new one would take?",
    "cable_area": "What gauge, or area of one conductor, does the cable have?",
    "old_contact": "Is a sound wired contact in place?",
    "outdoors": "Does rain, frost or wash-down water reach the place?",
    "drill": "May leaf and frame be drilled, and is it known what lies behind?",
    "wish": "Do the people on site want nothing in sight, or is a body on the surface fine?",
    "passive_leaf": "Can the passive leaf be opened too?",
    "upper_sash": "Does the upper sash open too?",
    "openings_a_day": "How often is it opened on a busy day?",
}
ASKED_BY = {"cable_awg": "cable_area"}
"""Fields that the question for another one answers too."""


_TEXTS = {**SITE, **UNIT, **OPENING}


def text(field: str) -> str:
    """The question for a field."""
    return _TEXTS.get(field) or f"What is known of {field.replace('_', ' ')}?"
