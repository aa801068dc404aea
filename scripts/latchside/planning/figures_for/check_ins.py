"""Check-ins of one radio device: judged by the grade of the site, and where it has none by the window of the label."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.for_device.check_ins import FIGURE, GRADES, IN_SECONDS, Asked, asked_by, time
from latchside.figures.for_device.worked import Missing
from latchside.messages import messages
from latchside.planning.figures_for.context import NORTH_AMERICA, Context
from latchside.planning.figures_for.shown import say, up_to
from latchside.planning.plan import Expected, Line, Verdict

message = messages(__name__)
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
    shown = message("within", tries=tries, window=say(inputs["window_h"], "h"))
    assumed = (message("window-of-label", share=say(100 * LOSS, "%")),)
    return Line(message("name"), shown, "none", message("in-a-row", tries=tries), FIGURE, inputs, assumed)


def _graded(context: Context, needed: Asked, inputs: dict[str, Any], tries: int) -> Line:
    slow, two_way = float(inputs["check_in_min"]), context.two_way
    sure, best = needed.longest(polled=two_way is True), needed.longest(polled=two_way is not False)
    shown = message("slowest", slowest=time(slow), asked=time(sure))
    between, setting = time(needed.between_min), time(needed.setting_min)
    rule = message("rule", grade=needed.grade, between=between, setting=setting)
    verdict: Verdict = "good" if slow <= sure else "test on site" if slow <= best else "poor"
    then = _then(needed, verdict, tries, two_way)
    meaning, action = f"{rule} {then}", ""
    assumed = [message("from-memory")]
    if context.grade is None:
        action = then if verdict == "poor" else ""
        verdict = "test on site"
        assumed.append(message("grade-not-known", grade=needed.grade))
    if two_way is None and needed.longest(polled=True) != needed.longest(polled=False):
        assumed.append(message("polling-not-known"))
    return Line(message("name"), shown, verdict, meaning, FIGURE, inputs, tuple(assumed), action)


def _then(needed: Asked, verdict: Verdict, tries: int, two_way: bool | None) -> str:
    """What follows: what proves it, or what is ordered instead."""
    if verdict == "good":
        return message("good", tries=tries)
    if verdict == "test on site":
        return message("only-two-way")
    if needed.between_min < IN_SECONDS:
        return message("in-seconds", grade=needed.grade)
    one_way, polled = needed.longest(polled=False), needed.longest(polled=True)
    order = message("too-seldom", needed=time(polled if two_way else one_way))
    return order if two_way is not None else f"{order} {message('polled-may-take', polled=time(polled))}"


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
        high = ratings.limit("check-in", "min")
        yield Expected("check-in", message("between"), "min", None, high, up_to(None, high, "min"))
        return
    for measure, label, limit in (
        ("check-in", message("between"), needed.longest(polled=context.two_way is True)),
        ("window-at-grade", message("unheard"), needed.between_min),
        ("age-at-setting", message("age"), needed.setting_min),
    ):
        known = "no" if context.grade is None else "yes"
        of = {"limit": time(limit), "grade": needed.grade, "known": known}
        yield Expected(measure, label, "min", None, limit, message("often" if measure == "check-in" else "limit", **of))
