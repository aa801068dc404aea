"""The cell at one opening: average current from its use, and the day of the change, never beyond the label.

Where a grade asks for more check-ins than the label has, those are counted: that is the device that will be ordered.

The change is counted in whole years, rounded down, or in whole months where it comes within the first year.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import floor

from latchside.messages import messages
from latchside.planning.figures_for.check_ins import needed_min
from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import down, in_words, say, up_to
from latchside.planning.plan import Expected, Line, Verdict
from latchside.planning.service import later

message = messages(__name__)
DAY_MIN = 1440.0
USES_A_DAY = 20.0
"""Openings a day where nobody counted them: the score that the label's life is stated for."""
_PLANNED = 10.0
_ENOUGH = 2
"""Years from which a cell is a good one: it is not changed at every yearly service."""


def cell(context: Context) -> Iterator[Line]:
    """Life of the cell and the day to change it."""
    ratings, uses = context.device.ratings, context.opening.openings_a_day
    if not context.device.traits.has("cell"):
        return
    report, needed = ratings.most("report-time", "ms"), needed_min(context)
    current = {
        "standby_ua": ratings.most("standby-current", "uA"),
        "report_ma": ratings.most("report-current", "mA"),
        "report_ms": report,
        "check_in_ms": report,
        "check_in_min": min(ratings.floor("check-in", "min"), needed or DAY_MIN),
        "events_per_day": USES_A_DAY if uses is None else uses,
    }
    average = context.answer("cell-current", current)
    if average is None:
        return
    inputs = {"capacity_mah": ratings.least("cell-capacity", "mAh"), "average_ua": average["average_ua"]}
    life = context.answer("cell-life", inputs)
    if life is not None:
        yield _line(context, {**current, **inputs}, float(life["years"]))


def _line(context: Context, inputs: dict[str, float], worked: float) -> Line:
    ratings, uses = context.device.ratings, context.opening.openings_a_day
    label = ratings.most("cell-life", "year") if "cell-life" in ratings else _PLANNED
    years = min(worked, label, _PLANNED)
    whole = floor(years)
    months = 12 * whole if whole else floor(12 * years)
    due = later(context.on, months).isoformat()
    change = {"change_months": months} | ({"change_years": whole} if whole else {})
    shown = message("change", day=due, after=say(whole, "year") if whole else say(months, "month"))
    meaning = [message("average", current=say(inputs["average_ua"], "uA"), years=say(down(worked, 0.1), "year"))]
    if "cell-life" in ratings and label <= worked:
        meaning.append(message("label", life=in_words(ratings.stated("cell-life"))))
    verdict: Verdict = "none" if uses is None or whole < _ENOUGH else "good"
    if not whole:
        verdict = "poor"
        meaning.append(message("too-short"))
    if context.opening.outdoors:
        verdict = "none" if verdict == "good" else verdict
        meaning.append(message("frost"))
    meaning.append(message("ceiling"))
    assumed = (message("uses", times=f"{USES_A_DAY:g}"),) if uses is None else ()
    worked_from = {**inputs, "years": worked, **change}
    return Line(message("name"), shown, verdict, " ".join(meaning), "cell-life", worked_from, assumed)


def expected(context: Context) -> Iterator[Expected]:
    """The voltage of the cell while it reports."""
    ratings = context.device.ratings
    if context.device.traits.has("cell"):
        low = max(ratings.floor("cell-voltage", "V"), ratings.most("cell-low", "V"))
        high = ratings.limit("cell-voltage", "V")
        nominal = ratings.stated("cell-voltage").value
        label = message("voltage") if nominal is None else message("voltage-of-type", nominal=say(nominal, "V"))
        yield Expected("cell-voltage", label, "V", low, high, up_to(low, high, "V"))
