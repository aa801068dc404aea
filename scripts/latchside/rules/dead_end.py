"""A fault has no dead end."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "dead-end"


def check(library: Library) -> Iterator[Finding]:
    """Every cause can be reached by the checks, every check splits, and no result leaves nothing."""
    for fault in library.of("fault"):
        causes = {cause["id"] for cause in fault["causes"]}
        reached: set[str] = set()
        for i, one in enumerate(fault["checks"]):
            left = [set(result.get("leaves", ())) for result in one["results"]]
            reached |= set().union(*left)
            yield from _unknown(fault, i, causes)
            if len(left) > 1 and all(group == left[0] for group in left) and not _goes(one):
                yield fault.finding(CODE, ("checks", i), *message.finding("tells-nothing"))
        for index, cause in enumerate(fault["causes"]):
            if cause["id"] not in reached:
                yield fault.finding(CODE, ("causes", index), *message.finding("cause-not-reached", cause=cause["id"]))


def _goes(one: dict[str, object]) -> bool:
    return any("go" in result or "escalate" in result for result in one["results"])  # type: ignore[attr-defined]


def _unknown(fault: Record, index: int, causes: set[str]) -> Iterator[Finding]:
    for j, result in enumerate(fault["checks"][index]["results"]):
        for k, id_ in enumerate(result.get("leaves", ())):
            if id_ not in causes:
                problem = message.finding("no-such-cause", cause=id_, causes=", ".join(sorted(causes)))
                yield fault.finding(CODE, ("checks", index, "results", j, "leaves", k), *problem)


RULE = Rule(CODE, check)
