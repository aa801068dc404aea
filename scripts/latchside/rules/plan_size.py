"""A fault is small enough for its plan to be worked out exactly, on a phone too."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "plan-size"
MOST = 5_000
"""What a phone works out while a technician waits: 9 causes and 9 checks, none of which misleads, are 4,608."""


def size(fault: Mapping[str, Any]) -> float:
    """The sets of causes times the checks, and more where checks mislead: the measure of the planner."""
    causes = len(fault["causes"])
    measure = float(2**causes * len(fault["checks"]))
    for one in fault["checks"]:
        leaving = [cause for result in one["results"] for cause in result.get("leaves", ())]
        measure *= 1 + len(one["results"]) * sum(leaving.count(cause) > 1 for cause in set(leaving)) / causes
    return measure


def check(library: Library) -> Iterator[Finding]:
    """The size of every fault."""
    for fault in library.of("fault"):
        measure = size(fault.data)
        if measure > MOST:
            problem = message.finding(
                "too-large", causes=len(fault["causes"]), checks=len(fault["checks"]), size=f"{measure:,.0f}", most=MOST
            )
            yield fault.finding(CODE, ("causes",), *problem)


RULE = Rule(CODE, check)
