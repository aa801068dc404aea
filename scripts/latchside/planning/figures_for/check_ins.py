"""Check-ins of one radio device: judged by the grade of the site, and where it has none by the window of the label."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.for_device.check_ins import FIGURE, GRADES, IN_SECONDS, Asked, asked_by, time
from latchside.figures.for_device.worked import Missing
from latchside.planning.figures_for.context import NORTH_AMERICA, Context
from latchside.planning.figures_for.shown import say, up_to
from latchside.planning.plan import Expected, Line, Verdict

LOSS = 0.1
"""Share of check-ins that are taken to be lost."""
COMMON = "grade-2"
"""The grade that a site is judged by where none is known and the region has grades."""


def asked(values: Mapping[str, Mapping[str, Any]], region: str | None, grade: str | None) -> Asked | None:
    """What is asked at a site, from the values of the figure; None where no grade asks anything."""
    judged = grade if grade is not None else None if region in NORTH_AMERICA else COMMON
    return asked_by(values, judged) if judged in GRADES else None


def asked_here(context: Context) -> Asked | None:
    """What is asked of the opening's device. Raises Missing where the figure is missing."""
    if FIGURE not in context.figures:
        raise Missing(FIGURE)
    return asked(context.figures[FIGURE].data["values"], context.region, context.grade)


def check_ins(context: Context) -> Iterator[Line]:
    """The line of the check-ins."""
    ratings = context.device.ratings
    if context.device.wired:
        return
    needed = asked_here(context)
    window = ratings.least("missed-window", "h") if needed is None else needed.between_min / 60
    inputs = {
        "check_in_min": ratings.limit("check-in", "min"), "window_h": window, "loss_probability": LOSS, "devices": 1,
    }  # fmt: skip
    answer = context.answer(FIGURE, inputs)
    tries = 0 if answer is None else int(answer["tries_per_window"])
    if needed is not None:
        yield _graded(context, needed, inputs, tries)
    elif answer is not None:
        yield _ungraded(inputs, tries)


def _ungraded(inputs: dict[str, Any], tries: int) -> Line:
    shown = f"{tries} within {say(inputs['window_h'], 'h')}"
    meaning = f"Trouble shows when all {tries} in a row are lost. A dead device goes unnoticed until then."
    assumed = (f"The window is the label's, and {say(100 * LOSS, '%')} of check-ins are lost, each by itself.",)
    return Line("Check-ins", shown, "none", meaning, FIGURE, inputs, assumed)


def _graded(context: Context, needed: Asked, inputs: dict[str, Any], tries: int) -> Line:
    slow, two_way = float(inputs["check_in_min"]), context.two_way
    sure, best = needed.longest(polled=two_way is True), needed.longest(polled=two_way is not False)
    shown = f"every {time(slow)} at the slowest, {time(sure)} or less is asked"
    rule = (
        f"{needed.words.capitalize()} asks for a message every {time(needed.between_min)}, and for none older than "
        f"{time(needed.setting_min)} when the system is set."
    )
    verdict: Verdict = "good" if slow <= sure else "test on site" if slow <= best else "poor"
    meaning = f"{rule} {_then(needed, verdict, tries, two_way)}"
    assumed = ["The times of the grade are those of EN 50131-1, from memory: check your edition."]
    if context.grade is None:
        verdict = "test on site"
        assumed.append(f"The grade is not known. It is judged as {needed.words}, a common one.")
    if two_way is None and needed.longest(polled=True) != needed.longest(polled=False):
        assumed.append("Whether the control unit polls its devices when it is set is not known.")
    return Line("Check-ins", shown, verdict, meaning, FIGURE, inputs, tuple(assumed))


def _then(needed: Asked, verdict: Verdict, tries: int, two_way: bool | None) -> str:
    """What follows: what proves it, or what is ordered instead."""
    if verdict == "good":
        return f"The device checks in {tries} times in that time. Prove it with nobody touching the opening."
    if verdict == "test on site":
        return "It keeps that only where it is two-way and is polled when the system is set. See that happen."
    if needed.between_min < IN_SECONDS:
        return f"Wire the opening, or order control unit and device that both state {needed.words}."
    one_way, polled = needed.longest(polled=False), needed.longest(polled=True)
    needs = time(polled if two_way else one_way)
    order = f"It checks in too seldom. Order a device whose label says {needs} or less, or wire the opening."
    return f"{order} One that is polled when the system is set may take {time(polled)}." if two_way is None else order


def needed_min(context: Context) -> float | None:
    """The time between check-ins, in minutes, that the site asks of a device; None where no grade asks."""
    needed = asked_here(context)
    return None if needed is None else needed.longest(polled=context.two_way is True)


def expected(context: Context) -> Iterator[Expected]:
    """The time between check-ins, and where a grade asks the times that the control unit allows."""
    ratings = context.device.ratings
    if "check-in" not in ratings:
        return
    needed = asked_here(context)
    if needed is None:
        low, high = ratings.floor("check-in", "min"), ratings.limit("check-in", "min")
        yield Expected("check-in", "Time between check-ins", "min", low, high, up_to(low, high, "min"))
        return
    most, unsure = needed.longest(polled=context.two_way is True), " (grade not known)" if context.grade is None else ""
    for measure, label, limit in (
        ("check-in", "Time between check-ins", most),
        ("window-at-grade", "Unheard time that shows trouble", needed.between_min),
        ("age-at-setting", "Age of the last message when setting", needed.setting_min),
    ):
        words = f"at most {time(limit)}, as {needed.words} asks{unsure}"
        yield Expected(measure, label, "min", None, limit, words)
