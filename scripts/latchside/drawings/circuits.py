"""Drawings of loop circuits: the panel's input, the cable pair, the contact and its resistors.

Under each circuit a small ladder gives the reading of a meter on the disconnected pair, highest first,
and on each rung the states that give it. Two states on one rung cannot be told apart.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from latchside.drawings.canvas import INK, PAPER, PLASTIC_FILL, SMALL, Drawing, Sheet
from latchside.drawings.symbols import contact, dot, heading, resistor, terminal, words
from latchside.messages import messages

message = messages(__name__)

TOP, BOTTOM = 112, 172
UNIT_EDGE, FAR_EDGE = 128, 236
RISE = 82
LADDER_TOP = 232
RUNG_STEP = 36
SHUT, OPEN, SHORT, CUT = "shut", "open", "short", "cut"
OPEN_CIRCUIT, NEAR_ZERO, RESISTOR = "open-circuit", "near-zero", "resistor"
BOX_WIDTHS = {SHUT: 88, OPEN: 78, SHORT: 48, CUT: 36}

Rung = tuple[str, Sequence[str]]
"""A reading, and the states that give it."""


def _control_unit(sheet: Sheet) -> None:
    """The input with its pull-up resistor, at the left of the sheet."""
    sheet.text(68, 26, message("control-unit"), anchor="middle", bold=True)
    sheet.rect(8, 34, UNIT_EDGE - 8, 166, round_=6)
    sheet.text(14, 55, message("supply"), size=SMALL)
    sheet.line(RISE - 7, 50, RISE + 7, 50)
    sheet.line(RISE, 50, RISE, TOP)
    resistor(sheet, RISE, 80, upright=True, long=34)
    sheet.text(14, 85, message("pull-up"), size=SMALL)
    dot(sheet, RISE, TOP)
    sheet.line(30, TOP, UNIT_EDGE, TOP)
    sheet.path(f"M22 {TOP} l10 -5 l0 10 z", fill=INK, line=0)
    sheet.text(14, TOP + 20, message("input"), size=SMALL)
    sheet.line(RISE, BOTTOM, UNIT_EDGE, BOTTOM)
    sheet.line(RISE, BOTTOM, RISE, BOTTOM + 8)
    for half, drop in ((11, 8), (7, 13), (3, 18)):
        sheet.line(RISE - half, BOTTOM + drop, RISE + half, BOTTOM + drop)
    sheet.text(66, BOTTOM - 8, message("common"), size=SMALL, anchor="middle")


def _pair(sheet: Sheet) -> None:
    """The cable pair between the input's terminals and the contact."""
    for y in (TOP, BOTTOM):
        sheet.line(UNIT_EDGE, y, FAR_EDGE, y)
        terminal(sheet, UNIT_EDGE, y)
    sheet.text((UNIT_EDGE + FAR_EDGE) / 2 + 2, TOP + 35, message("cable-pair"), size=SMALL, anchor="middle")
    sheet.rect(FAR_EDGE, 34, 118, 166, round_=6, dash="6 4", fill="none")
    sheet.text(FAR_EDGE + 59, 26, message("at-contact"), anchor="middle", bold=True)
    sheet.text(FAR_EDGE + 59, 52, message("drawn-shut"), size=SMALL, anchor="middle")


def _ladder(sheet: Sheet, y: float, rungs: Sequence[Rung]) -> float:
    """The readings from high to low with the states on each rung, the one at rest tinted.

    Returns where the next words may stand.
    """
    bottom = y + RUNG_STEP * len(rungs) - 6
    for rail in (122, 138):
        sheet.line(rail, y - 6, rail, bottom)
    for index, (reading, states) in enumerate(rungs):
        middle = y + 12 + index * RUNG_STEP
        sheet.text(114, middle + 5, message(f"reading-{reading}"), anchor="end", bold=True)
        sheet.line(122, middle, 152, middle)
        x = 152.0
        for state in states:
            wide = BOX_WIDTHS[state]
            sheet.rect(x, middle - 13, wide, 26, round_=13, fill=PLASTIC_FILL if state == SHUT else PAPER)
            sheet.text(x + wide / 2, middle + 5, message(f"state-{state}"), size=SMALL, anchor="middle")
            x += wide + 8
    return bottom + 22


def _sheet(id_: str, height: int) -> Sheet:
    sheet = Sheet(id_, message(f"title-{id_}"), message(f"title-{id_}.about"), height)
    _control_unit(sheet)
    _pair(sheet)
    heading(sheet, LADDER_TOP - 6, message("meter"))
    return sheet


def loop_none() -> Drawing:
    """A loop with no end-of-line resistor."""
    sheet = _sheet("loop-none", 366)
    sheet.line(FAR_EDGE, TOP, 322, TOP)
    sheet.line(FAR_EDGE, BOTTOM, 322, BOTTOM)
    contact(sheet, 322, TOP, BOTTOM)
    sheet.text(312, 147, message("contact"), size=SMALL, anchor="end")
    y = _ladder(sheet, LADDER_TOP + 14, ((OPEN_CIRCUIT, (OPEN, CUT)), (NEAR_ZERO, (SHUT, SHORT))))
    words(sheet, 8, y, (message("shut-short-alike"), message("open-cut-alike")), bold=True)
    return sheet.finish()


def loop_series() -> Drawing:
    """A loop with one resistor in series with the contact."""
    sheet = _sheet("loop-series", 386)
    sheet.line(FAR_EDGE, TOP, 322, TOP)
    sheet.line(FAR_EDGE, BOTTOM, 322, BOTTOM)
    resistor(sheet, 278, TOP)
    sheet.text(278, TOP - 14, message("resistor"), size=SMALL, anchor="middle")
    contact(sheet, 322, TOP, BOTTOM)
    sheet.text(312, 149, message("contact"), size=SMALL, anchor="end")
    rungs = ((OPEN_CIRCUIT, (OPEN, CUT)), (RESISTOR, (SHUT,)), (NEAR_ZERO, (SHORT,)))
    y = _ladder(sheet, LADDER_TOP + 14, rungs)
    words(sheet, 8, y, (message("open-cut-alike"),), bold=True)
    return sheet.finish()


def loop_parallel() -> Drawing:
    """A loop with one resistor across the contact."""
    sheet = _sheet("loop-parallel", 576)
    for wire in (TOP, BOTTOM):
        sheet.line(FAR_EDGE, wire, 328, wire)
    sheet.line(272, TOP, 272, BOTTOM)
    resistor(sheet, 272, 142, upright=True)
    dot(sheet, 272, TOP)
    dot(sheet, 272, BOTTOM)
    contact(sheet, 328, TOP, BOTTOM)
    sheet.text(272, TOP - 14, message("resistor"), size=SMALL, anchor="middle")
    sheet.text(322, BOTTOM + 20, message("contact"), size=SMALL, anchor="middle")
    words(sheet, 8, LADDER_TOP + 14, (message("closed-while-shut"),))
    rungs = ((OPEN_CIRCUIT, (CUT,)), (RESISTOR, (OPEN,)), (NEAR_ZERO, (SHUT, SHORT)))
    y = _ladder(sheet, LADDER_TOP + 34, rungs)
    words(sheet, 8, y, (message("shut-short-alike"),), bold=True)
    words(sheet, 8, y + 30, (message("open-while-shut"),))
    rungs = ((OPEN_CIRCUIT, (CUT,)), (RESISTOR, (SHUT,)), (NEAR_ZERO, (OPEN, SHORT)))
    y = _ladder(sheet, y + 50, rungs)
    words(sheet, 8, y, (message("open-short-alike"),), bold=True)
    return sheet.finish()


def loop_double() -> Drawing:
    """A loop with one resistor in series and one across the contact."""
    sheet = _sheet("loop-double", 422)
    for wire in (TOP, BOTTOM):
        sheet.line(FAR_EDGE, wire, 334, wire)
    resistor(sheet, 264, TOP)
    sheet.text(264, TOP - 14, "A", anchor="middle", bold=True)
    _across(sheet, 300, 284)
    contact(sheet, 334, TOP, BOTTOM)
    sheet.text(322, BOTTOM + 20, message("contact"), size=SMALL, anchor="middle")
    return _two(sheet, "sum", "a")


def loop_double_across() -> Drawing:
    """A loop with one resistor in series with the contact and one across both."""
    sheet = _sheet("loop-double-across", 422)
    for wire in (TOP, BOTTOM):
        sheet.line(FAR_EDGE, wire, 334, wire)
    _across(sheet, 262, 246)
    resistor(sheet, 300, TOP)
    sheet.text(300, TOP - 14, "A", anchor="middle", bold=True)
    contact(sheet, 334, TOP, BOTTOM)
    sheet.text(322, BOTTOM + 20, message("contact"), size=SMALL, anchor="middle")
    return _two(sheet, "b", "parallel")


def _across(sheet: Sheet, x: float, name_x: float) -> None:
    """Resistor B from wire to wire at `x`, its name to the left."""
    sheet.line(x, TOP, x, BOTTOM)
    resistor(sheet, x, 142, upright=True)
    for wire in (TOP, BOTTOM):
        dot(sheet, x, wire)
    sheet.text(name_x, 147, "B", anchor="middle", bold=True)


def _two(sheet: Sheet, opened: str, shut: str) -> Drawing:
    """The readings of two resistors, from high to low."""
    sheet.text(295, 72, message("resistors"), size=SMALL, anchor="middle")
    rungs = ((OPEN_CIRCUIT, (CUT,)), (opened, (OPEN,)), (shut, (SHUT,)), (NEAR_ZERO, (SHORT,)))
    y = _ladder(sheet, LADDER_TOP + 14, rungs)
    words(sheet, 8, y, (message("all-differ"),), bold=True)
    return sheet.finish()


DRAWINGS: dict[str, Callable[[], Drawing]] = {
    "loop-none": loop_none,
    "loop-series": loop_series,
    "loop-parallel": loop_parallel,
    "loop-double": loop_double,
    "loop-double-across": loop_double_across,
}
