"""A measuring step says what a good reading is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.commands import verb_of
from latchside.library.compiled import own_steps
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "measuring-step"
_VERBS = ("measure", "meter", "gauge")
_Path = tuple[str | int, ...]


def check(library: Library) -> Iterator[Finding]:
    """A step that measures has `measure`; a single expected value has a tolerance."""
    for record, path, step in _steps(library):
        if verb_of(step.get("do", "")) in _VERBS and "measure" not in step:
            yield record.finding(CODE, path, *message.finding("no-measure"))
        if step.get("measure") == "step":
            yield from _borrowed(library, record, path, step["step"])
            continue
        expect = step.get("measure", {}).get("expect", {})
        if "value" in expect and "tolerance" not in expect:
            yield record.finding(CODE, (*path, "measure", "expect"), *message.finding("no-tolerance"))


def _borrowed(library: Library, record: Record, path: _Path, reference: str) -> Iterator[Finding]:
    """An item that reads what its step reads needs a step that measures."""
    procedure_id, _, step_id = reference.partition("/")
    procedure = library.find("procedure", procedure_id)
    if procedure and not any(s["id"] == step_id and "measure" in s for _, s in own_steps(procedure)):
        yield record.finding(CODE, (*path, "measure"), *message.finding("step-measures-nothing", step=reference))


def _steps(library: Library) -> Iterator[tuple[Record, _Path, Mapping[str, Any]]]:
    for procedure in library.of("procedure"):
        for path, step in own_steps(procedure):
            yield procedure, path, step
    for fault in library.of("fault"):
        for i, one in enumerate(fault["checks"]):
            yield fault, ("checks", i), one
    for checklist in library.of("checklist"):
        for i, point in enumerate(checklist["points"]):
            for j, item in enumerate(point["items"]):
                yield checklist, ("points", i, "items", j), item


RULE = Rule(CODE, check)
