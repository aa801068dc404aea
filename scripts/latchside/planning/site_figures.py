"""The figures of the whole site: standby battery by the practice of its region, and check-ins of all devices."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from latchside.figures.catalogue import Figure
from latchside.figures.for_device.check_ins import FIGURE, TRIES
from latchside.figures.rounding import rounded, say
from latchside.figures.units import figure as shown_figure
from latchside.planning.figures_for.context import EUROPE, NORTH_AMERICA, worked
from latchside.planning.figures_for.shown import up
from latchside.planning.house import House
from latchside.planning.plan import Line, OpeningPlan, Verdict
from latchside.surveys.survey import Survey

ALARM_MIN = 15.0
"""Minutes of alarm at the end of the standby time, common practice: as long as an outside sounder may run."""
OFTEN = 1.0
"""False troubles a year of all devices beyond which a site is called out for nothing."""
RARE = 0.1
"""False troubles a year up to which the check-ins of a site are good: one in ten years."""


@dataclass(frozen=True)
class Practice:
    """Hours in standby, whom they are for, and where they come from."""

    hours: float
    whom: str
    source: str


_UNITED_STATES = (
    Practice(4.0, "", "Several municipal codes of the United States ask for at least this. Local code decides."),
)
_CANADA = (
    Practice(
        24.0, "",
        "CAN/ULC-S304, for business premises, from memory: check your edition. In a home the listing of the control "
        "unit may ask for less.",
    ),
)  # fmt: skip
_LOWER = Practice(12.0, "grades 1 and 2", "EN 50131-6, supply of type A, from memory: check your edition.")
_HIGHER = Practice(
    60.0, "grades 3 and 4",
    "EN 50131-6, supply of type A, from memory: check your edition. Half may do where a mains fault is reported.",
)  # fmt: skip
_BY_GRADE = {"grade-1": (_LOWER,), "grade-2": (_LOWER,), "grade-3": (_HIGHER,), "grade-4": (_HIGHER,)}
_ELSEWHERE = (Practice(12.0, "", "Common practice. Local code and the document of the control unit decide."),)


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
        instead = "" if size is not None else " Add a supply with a battery of its own, or take load off this one."
        shown = f"{say(size, 'Ah')}, for at least {least}" if size is not None else f"no single battery: {least}"
        name = f"Standby battery, {practice.whom}" if practice.whom else "Standby battery"
        meaning = (
            f"{say(practice.hours, 'h')} in standby and {say(ALARM_MIN, 'min')} of alarm, with a quarter for age. "
            f"{practice.source}{instead}"
        )
        yield Line(name, shown, verdict, meaning, "standby-battery", inputs, tuple(_assumed(region)))


def _assumed(region: str | None) -> Iterator[str]:
    yield f"The alarm lasts {say(ALARM_MIN, 'min')}."
    if region not in (*NORTH_AMERICA, *EUROPE):
        yield "The practice of the region is not known."


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
    yearly, tries, devices = (
        float(answer["false_troubles_per_year"]),
        int(answer["tries_per_window"]),
        inputs["devices"],
    )
    window = say(inputs["window_h"], "h")
    lost = f"all {tries} check-ins within {window} are" if tries > 1 else f"the only check-in within {window} is"
    meaning = (
        f"{devices} radio {'device' if devices == 1 else 'devices'}: trouble shows when {lost} lost. Real losses come "
        "together, behind a metal door that stands closed."
    )
    assumed = [f"{say(100 * inputs['loss_probability'], '%')} of check-ins are lost, each by itself."]
    verdict: Verdict = "good" if yearly <= RARE else "test on site"
    if yearly > OFTEN:
        meaning = f"{meaning} Order devices that check in more often, so that at least {TRIES} fall within."
        known = survey.site.grade is not None or survey.site.region in NORTH_AMERICA
        verdict = "poor" if known else "test on site"
        assumed += [] if known else ["The grade is not known: the time is that of a common one."]
    name = "False trouble by check-ins"
    return Line(name, _yearly(yearly), verdict, meaning, FIGURE, inputs, tuple(assumed))


def _yearly(times: float) -> str:
    if times >= 1:
        return f"{shown_figure(rounded(times, 2))} a year"
    if times * 1000 <= 1:
        return f"rarer than once in {shown_figure(1000)} years"
    return f"once in {shown_figure(rounded(1 / times, 2))} years"
