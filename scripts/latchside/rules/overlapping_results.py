"""Where several results of a check leave the same cause, it is known how likely each is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "overlapping-results"
_WITHIN = 1e-6


def check(library: Library) -> Iterator[Finding]:
    """Likelihoods are for causes the result leaves and add up to one; no two results say the same."""
    for fault in library.of("fault"):
        for index, one in enumerate(fault["checks"]):
            yield from _foreign(fault, index, one["results"])
            yield from _sums(fault, index, one["results"])
            yield from _same(fault, index, one["results"])


def _foreign(fault: Record, index: int, results: tuple[Mapping[str, Any], ...]) -> Iterator[Finding]:
    for j, result in enumerate(results):
        for cause in result.get("likelihood", ()):
            if cause not in result.get("leaves", ()):
                problem = message.finding("likelihood-not-left", cause=cause)
                yield fault.finding(CODE, ("checks", index, "results", j, "likelihood", cause), *problem)


def _sums(fault: Record, index: int, results: tuple[Mapping[str, Any], ...]) -> Iterator[Finding]:
    for cause in sorted({cause for result in results for cause in result.get("leaves", ())}):
        leaving = [j for j, result in enumerate(results) if cause in result.get("leaves", ())]
        stated = [(j, results[j]["likelihood"][cause]) for j in leaving if cause in results[j].get("likelihood", ())]
        total = sum(chance for _, chance in stated)
        silent = len(leaving) - len(stated)
        if not stated or (abs(total - 1) <= _WITHIN if not silent else total < 1 - _WITHIN):
            continue
        problem = message.finding(
            "sum-with-silent" if silent else "sum", cause=cause, total=f"{total:.6g}", count=silent
        )
        yield fault.finding(CODE, ("checks", index, "results", stated[0][0], "likelihood", cause), *problem)


def _same(fault: Record, index: int, results: tuple[Mapping[str, Any], ...]) -> Iterator[Finding]:
    groups = [frozenset(result.get("leaves", ())) for result in results]
    if len(set(groups)) == 1:
        return  # a check that tells nothing is a finding of its own
    first: dict[frozenset[str], int] = {}
    for j, (result, group) in enumerate(zip(results, groups, strict=True)):
        if len(group) < 2 or "go" in result or "escalate" in result or "likelihood" in result:
            continue
        if first.setdefault(group, j) != j:
            problem = message.finding("same-causes", result=results[first[group]]["id"])
            yield fault.finding(CODE, ("checks", index, "results", j), *problem)


RULE = Rule(CODE, check)
