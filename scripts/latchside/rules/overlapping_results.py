"""Where several results of a check leave the same cause, it is known how likely each is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.rules.rule import Rule

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
                yield fault.finding(
                    CODE, ("checks", index, "results", j, "likelihood", cause),
                    f"a likelihood for {cause}, which this result does not leave", "causes listed under its leaves",
                    "Add the cause to leaves, or drop its likelihood.",
                )  # fmt: skip


def _sums(fault: Record, index: int, results: tuple[Mapping[str, Any], ...]) -> Iterator[Finding]:
    for cause in sorted({cause for result in results for cause in result.get("leaves", ())}):
        leaving = [j for j, result in enumerate(results) if cause in result.get("leaves", ())]
        said = [(j, results[j]["likelihood"][cause]) for j in leaving if cause in results[j].get("likelihood", ())]
        total = sum(chance for _, chance in said)
        silent = len(leaving) - len(said)
        if not said or (abs(total - 1) <= _WITHIN if not silent else total < 1 - _WITHIN):
            continue
        yield fault.finding(
            CODE, ("checks", index, "results", said[0][0], "likelihood", cause),
            f"likelihoods of {cause} that add up to {total:.6g}",
            f"less than 1, since {silent} more results leave it" if silent else "1 over the results that leave it",
            "Correct them, or correct which results leave the cause.",
        )  # fmt: skip


def _same(fault: Record, index: int, results: tuple[Mapping[str, Any], ...]) -> Iterator[Finding]:
    groups = [frozenset(result.get("leaves", ())) for result in results]
    if len(set(groups)) == 1:
        return  # a check that tells nothing is a finding of its own
    first: dict[frozenset[str], int] = {}
    for j, (result, group) in enumerate(zip(results, groups, strict=True)):
        if len(group) < 2 or "go" in result or "escalate" in result or "likelihood" in result:
            continue
        if first.setdefault(group, j) != j:
            yield fault.finding(
                CODE, ("checks", index, "results", j),
                f"a result that leaves the same causes as {results[first[group]]['id']}",
                "results that tell causes apart, or a likelihood that does",
                "Join the two, correct what they leave, or say how likely each is.",
            )  # fmt: skip


RULE = Rule(CODE, check)
