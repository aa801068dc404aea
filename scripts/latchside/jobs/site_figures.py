"""The figures of the whole site: standby battery by the practice of its region, and check-ins of all devices."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from latchside.figures.catalogue import Figure
from latchside.figures.rounding import rounded, say
from latchside.figures.units import figure as shown_figure
from latchside.jobs.at_opening import TERMINALS
from latchside.jobs.figures_for.context import EUROPE, NORTH_AMERICA, worked
from latchside.jobs.figures_for.shown import up
from latchside.jobs.house import House
from latchside.jobs.plan import Line, OpeningPlan, Verdict
from latchside.jobs.survey import Survey

ALARM_MIN = 15.0
"""Minutes of alarm at the end of the standby time, common practice: as long as an outside sounder may run."""
RARE = 0.1
"""False troubles a year up to which the check-ins of a site are good: one in ten years."""


@dataclass(frozen=True)
class Practice:
    """Hours in standby, whom they are for, and where they come from."""

    hours: float
    whom: str
    source: str


_AMERICAN = (
    Practice(4.0, "", "Several municipal codes of the United States ask for at least this. Local code decides."),
)
_EUROPEAN = (
    Practice(12.0, "grades 1 and 2", "EN 50131-6, supply of type A, from memory: check your edition."),
    Practice(
        60.0, "grades 3 and 4",
        "EN 50131-6, supply of type A, from memory: check your edition. Half may do where a mains fault is reported.",
    ),
)  # fmt: skip
_ELSEWHERE = (Practice(12.0, "", "Common practice. Local code and the document of the control unit decide."),)


def site_figures(
    survey: Survey, plans: Sequence[OpeningPlan], figures: Mapping[str, Figure], house: House | None = None
) -> tuple[Line, ...]:
    """The lines of the site. Nothing is worked from a current that is not known."""
    return (*_battery(survey, figures), *_check_ins(plans, figures))


def practices(region: str | None) -> tuple[Practice, ...]:
    """The hours that are asked for in a region."""
    return _AMERICAN if region in NORTH_AMERICA else _EUROPEAN if region in EUROPE else _ELSEWHERE


def _battery(survey: Survey, figures: Mapping[str, Figure]) -> Iterator[Line]:
    unit, region = survey.control_unit, survey.site.region
    if unit.standby_ma is None or unit.alarm_ma is None:
        return
    for practice in practices(region):
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
        shown = f"{say(size, 'Ah')}, for at least {least}" if size is not None else f"no single battery: {least}"
        name = f"Standby battery, {practice.whom}" if practice.whom else "Standby battery"
        meaning = (
            f"{say(practice.hours, 'h')} in standby and {say(ALARM_MIN, 'min')} of alarm, with a quarter for age. "
            f"{practice.source}"
        )
        yield Line(name, shown, verdict, meaning, "standby-battery", inputs, tuple(_assumed(region)))


def _assumed(region: str | None) -> Iterator[str]:
    yield f"The alarm lasts {say(ALARM_MIN, 'min')}."
    if region == "canada":
        yield "The practice of the United States is taken for Canada."
    elif region not in (*NORTH_AMERICA, *EUROPE):
        yield "The practice of the region is not known."


def _check_ins(plans: Iterable[OpeningPlan], figures: Mapping[str, Figure]) -> Iterator[Line]:
    """False troubles a year of all radio devices whose check-ins are alike, and then of the next sort."""
    counts: dict[tuple[float, float, float], int] = {}
    for plan in plans:
        for line in plan.figures:
            if line.figure == "missed-check-in":
                key = (line.inputs["check_in_min"], line.inputs["window_h"], line.inputs["loss_probability"])
                counts[key] = counts.get(key, 0) + (1 if plan.input == TERMINALS else plan.contacts)
    for (check_in, window, loss), devices in sorted(counts.items()):
        inputs = {"check_in_min": check_in, "window_h": window, "loss_probability": loss, "devices": max(1, devices)}
        answer = worked(figures, "missed-check-in", inputs)
        if answer is None:
            continue
        yearly, tries = float(answer["false_troubles_per_year"]), int(answer["tries_per_window"])
        meaning = (
            f"{devices} radio {'device' if devices == 1 else 'devices'}: trouble shows when all {tries} check-ins "
            f"within {say(window, 'h')} are lost. Real losses come together, behind a metal door that stands closed."
        )
        assumed = (f"{say(100 * loss, '%')} of check-ins are lost, each by itself.",)
        verdict: Verdict = "good" if yearly <= RARE else "test on site"
        yield Line("False trouble by check-ins", _yearly(yearly), verdict, meaning, "missed-check-in", inputs, assumed)


def _yearly(times: float) -> str:
    if times >= 1:
        return f"{shown_figure(rounded(times, 2))} a year"
    if times * 1000 <= 1:
        return f"rarer than once in {shown_figure(1000)} years"
    return f"once in {shown_figure(rounded(1 / times, 2))} years"
