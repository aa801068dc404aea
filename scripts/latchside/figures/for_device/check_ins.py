"""What a grade asks of check-ins: a message within a time, and a fresh one when the system is set.

A device that only sends keeps both by its own check-ins alone; one that is polled when the system is set keeps the
second by answering.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from latchside.figures.rounding import say
from latchside.messages import messages

message = messages(__name__)

FIGURE = "missed-check-in"
"""The figure whose record states the times of the grades."""
GRADES = ("grade-1", "grade-2", "grade-3", "grade-4")
TRIES = 3
"""Check-ins within a window from which one that is lost shows no trouble."""
_MINUTES = {"s": 1 / 60, "min": 1.0}
IN_SECONDS = 2.0
"""Minutes below which a time is said in seconds; parts that live on a cell hardly keep one so short."""


@dataclass(frozen=True)
class Asked:
    """What a grade asks, in minutes: the longest time between messages, and the age of the last one when setting."""

    grade: str
    between_min: float
    setting_min: float

    @property
    def words(self) -> str:
        """The grade as a reader sees it."""
        return message("grade", number=self.grade.removeprefix("grade-"))

    def longest(self, *, polled: bool) -> float:
        """The longest time between check-ins, in minutes, that keeps the grade."""
        within = self.between_min / TRIES
        return within if polled else min(within, self.setting_min)


def asked_by(values: Mapping[str, Mapping[str, Any]], grade: str) -> Asked:
    """What a grade asks, from the values of the figure's record."""
    stated = (values[f"{grade}-{which}"] for which in ("between", "setting"))
    between, setting = (float(one["value"]) * _MINUTES[one["unit"]] for one in stated)
    return Asked(grade, between, setting)


def time(minutes: float) -> str:
    """Minutes in the unit that people say."""
    if minutes < IN_SECONDS:
        return say(60 * minutes, "s")
    return say(minutes / 60, "h") if minutes >= 120 else say(minutes, "min")
