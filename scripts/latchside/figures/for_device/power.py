"""The cell of a device: its average current, its life as a ceiling, and the years to the change."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor

from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked
from latchside.figures.rounding import say
from latchside.figures.words import in_words
from latchside.messages import messages

message = messages(__name__)

USES_A_DAY = (5, 20, 100, 400)
"""Openings a day: a window, a door of a home, a busy door, the door of a shop."""
SHOWN = 20
"""The use that the link to the figure carries."""


def cell(ratings: Ratings, figures: Figures) -> Iterator[Worked]:
    """Average current and life by use."""
    if not {"cell-current", "cell-life"} <= figures.keys():
        raise Missing("cell-life")
    capacity = ratings.least("cell-capacity", "mAh")
    rows, link = [], {}
    for uses in USES_A_DAY:
        current = figures["cell-current"].answer({**_currents(ratings), "events_per_day": uses}).outputs["average_ua"]
        inputs: dict[str, object] = {"capacity_mah": capacity, "average_ua": current}
        years = float(figures["cell-life"].answer(inputs).outputs["years"])
        shown = say(floor(10 * years) / 10, "year")  # a ceiling is never rounded up
        rows.append((message("uses", uses=uses), say(current, "uA"), shown, change(years, ratings, figures)))
        if uses == SHOWN:
            link = inputs
    if "cell-life" in ratings:
        meaning = message("ceiling-here", interval=in_words(ratings.stated("cell-life")))
    else:
        meaning = message("ceiling")
    loss = next(one.default for one in figures["cell-life"].inputs if one.name == "loss_percent_per_year")
    notes = (
        Note(message("two-reports"), "typical"),
        Note(message("by-itself", loss=say(loss, "%/year")), "typical"),
        Note(message("rounded-down"), "common practice"),
    )
    columns = (message("use"), message("current"), message("life"), message("change"))
    yield Worked("cell", message("title"), "cell-life", link, columns, tuple(rows), meaning, notes, ("cell-current",))


def _currents(ratings: Ratings) -> dict[str, object]:
    report = ratings.most("report-time", "ms")
    return {
        "standby_ua": ratings.most("standby-current", "uA"),
        "report_ma": ratings.most("report-current", "mA"),
        "report_ms": report,
        "check_in_ms": report,
        "check_in_min": ratings.least("check-in", "min"),
    }


def change(years: float, ratings: Ratings, figures: Figures) -> str:
    """When to change the cell: whole years rounded down, never beyond the label or what is planned with."""
    most = floor(figures["cell-life"].data["values"]["longest-planned"]["value"])
    label = floor(ratings.most("cell-life", "year")) if "cell-life" in ratings else most
    whole = min(floor(years), label, most)
    if whole < 1:
        return message("first-year")
    limited = "cell-life" in ratings and whole == label < floor(years)
    return message("after-label", years=whole) if limited else message("after", years=whole)
