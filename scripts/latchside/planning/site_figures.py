"""The figures of the whole site: standby battery by the practice of its region, and check-ins of all devices."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from latchside.figures.catalogue import Figure
from latchside.figures.for_device.check_ins import FIGURE, TRIES
from latchside.figures.rounding import rounded, say
from latchside.figures.units import figure as shown_figure
from latchside.messages import messages
from latchside.planning.figures_for.context import EUROPE, NORTH_AMERICA, worked
from latchside.planning.figures_for.shown import up
from latchside.planning.house import House
from latchside.planning.plan import Line, OpeningPlan, Verdict
from latchside.surveys.survey import Survey

message = messages(__name__)
ALARM_MIN = 15.0
"""Minutes of alarm at the end of the standby time, common practice: as long as an outside sounder may run."""
OFTEN = 1.0
"""False troubles a year of all devices beyond which a site is called out for nothing."""
RARE = 0.1
"""False troubles a year up to which the check-ins of a site are good: one in ten years."""


@dataclass(frozen=True)
class Practice:
    """Hours in standby, and the id by which the messages say whom they are for and where they come from."""

    hours: float
    id: str


_UNITED_STATES = (Practice(4.0, "united-states"),)
_CANADA = (Practice(24.0, "canada"),)
_LOWER, _HIGHER = Practice(12.0, "lower-grades"), Practice(60.0, "higher-grades")
_BY_GRADE = {"grade-1": (_LOWER,), "grade-2": (_LOWER,), "grade-3": (_HIGHER,), "grade-4": (_HIGHER,)}
_ELSEWHERE = (Practice(12.0, "common"),)


def site_figures(
    survey: Survey, plans: Sequence[OpeningPlan], figures: Mapping[str, Figure], house: House | None = None
) -> tuple[Line, ...]:
    """The lines of the site. Nothing is worked from a current that is not known."""
    return (*_battery(survey, figures), *_check_ins(survey, plans, figures))


def practices(region: str | None, grade: str | None = None) -> tuple[Practice, ...]:
    """The hours that are asked for in a region, and by a grade; each of the two where a European grade is not known."""
    american = {"united-states": _UNITED_STATES, "canada": _CANADA}.get(region or "", ())
    if grade in _BY_GRADE:
        return (*american, *_BY_GRADE[grade])
    if region in EUROPE and grade is None:
        return (_LOWER, _HIGHER)
    return american or _ELSEWHERE


def _battery(survey: Survey, figures: Mapping[str, Figure]) -> Iterator[Line]:
    unit, region = survey.control_unit, survey.site.region
    if unit.standby_ma is None or unit.alarm_ma is None:
        return
    for practice in practices(region, survey.site.grade):
        inputs = {
            "standby_a": unit.standby_ma / 1000, "alarm_a": unit.alarm_ma / 1000, "standby_h": practice.hours,
            "alarm_min": ALARM_MIN, "margin": 1.25,
        }  # fmt: skip
        answer = worked(figures, "standby-battery", inputs)
        if answer is None:
            continue
        size = answer["next_size_ah"]
        least = say(up(answer["with_margin_ah"], 0.01), "Ah", 4)
        verdict: Verdict = "none" if size is not None else "poor"
        hours = message("hours", standby=say(practice.hours, "h"), alarm=say(ALARM_MIN, "min"))
        meaning = [hours, message("source", practice=practice.id)]
        if size is None:
            shown = message("no-size", least=least)
            meaning.append(message("second-supply"))
        else:
            shown = message("size", size=say(size, "Ah"), least=least)
        name, assumed = message("battery", practice=practice.id), tuple(_assumed(region))
        yield Line(name, shown, verdict, " ".join(meaning), "standby-battery", inputs, assumed)


def _assumed(region: str | None) -> Iterator[str]:
    yield message("alarm-lasts", alarm=say(ALARM_MIN, "min"))
    if region not in (*NORTH_AMERICA, *EUROPE):
        yield message("region-not-known")


def _check_ins(survey: Survey, plans: Iterable[OpeningPlan], figures: Mapping[str, Figure]) -> Iterator[Line]:
    """False troubles a year of all radio devices whose check-ins are alike, and then of the next sort."""
    counts: dict[tuple[float, float, float], int] = {}
    for plan in plans:
        for line in plan.figures:
            if line.figure == FIGURE:
                key = (line.inputs["check_in_min"], line.inputs["window_h"], line.inputs["loss_probability"])
                counts[key] = counts.get(key, 0) + plan.zones
    for (check_in, window, loss), devices in sorted(counts.items()):
        inputs = {"check_in_min": check_in, "window_h": window, "loss_probability": loss, "devices": max(1, devices)}
        answer = worked(figures, FIGURE, inputs)
        if answer is not None:
            yield _troubles(survey, inputs, answer)


def _troubles(survey: Survey, inputs: Mapping[str, float], answer: Mapping[str, Any]) -> Line:
    yearly, tries = float(answer["false_troubles_per_year"]), int(answer["tries_per_window"])
    meaning: str = message("lost", devices=int(inputs["devices"]), tries=tries, window=say(inputs["window_h"], "h"))
    assumed = [message("share-lost", share=say(100 * inputs["loss_probability"], "%"))]
    verdict: Verdict = "good" if yearly <= RARE else "test on site"
    if yearly > OFTEN:
        meaning = f"{meaning} {message('order', tries=TRIES)}"
        known = survey.site.grade is not None or survey.site.region in NORTH_AMERICA
        verdict = "poor" if known else "test on site"
        assumed += [] if known else [message("grade-not-known")]
    return Line(message("check-ins"), _yearly(yearly), verdict, meaning, FIGURE, inputs, tuple(assumed))


def _yearly(times: float) -> str:
    if times >= 1:
        return message("yearly", times=shown_figure(rounded(times, 2)))
    if times * 1000 <= 1:
        return message("rarer", years=shown_figure(1000))
    return message("once", years=shown_figure(rounded(1 / times, 2)))
