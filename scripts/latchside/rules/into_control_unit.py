"""Nobody goes into a control unit without the caution for mains."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.commands import verb_of
from latchside.library.compiled import own_steps
from latchside.library.text import plain
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "into-control-unit"
CAUTION = "mains-wiring"
_PLACE = "control-unit"
_INSIDE = re.compile(r"\bterminals?\b|\bcabinet\b|\bopen\b.*\bcover of the control unit\b", re.IGNORECASE)
_AT_UNIT = re.compile(r"at the control unit")
_OFF_TERMINALS = re.compile(r"off the terminals")
_METERS = ("meter", "measure")


def check(library: Library) -> Iterator[Finding]:
    """A step or a check inside a control unit has the caution for mains before it."""
    for procedure in library.of("procedure"):
        yield from _procedure(procedure)
    for fault in library.of("fault"):
        yield from _fault(fault)


def _procedure(procedure: Record) -> Iterator[Finding]:
    shown = set(procedure.listed("safety"))
    for path, step in own_steps(procedure):
        shown |= set(step.get("cautions", ()))
        there = path[0] == "steps" and procedure["steps"][path[1]].get("at") == _PLACE
        if there and _INSIDE.search(plain(step["do"])) and CAUTION not in shown:
            yield _finding(procedure, (*path, "do"))


def _fault(fault: Record) -> Iterator[Finding]:
    for number, one in enumerate(fault["checks"]):
        if _meters_inside(plain(one["do"]), one["needs"]) and CAUTION not in {
            *fault.listed("cautions"),
            *one.get("cautions", ()),
        }:
            yield _finding(fault, ("checks", number, "do"))


def _meters_inside(text: str, needs: Sequence[str]) -> bool:
    """The meter goes to the terminals of the control unit, or of whatever the loop ends at, which may be one."""
    there = _AT_UNIT.search(text) or (_OFF_TERMINALS.search(text) and "transmitter" not in text)
    return bool(there) and "meter" in needs and verb_of(text) in _METERS


def _finding(record: Record, path: tuple[str | int, ...]) -> Finding:
    return record.finding(CODE, path, *message.finding("no-caution", caution=CAUTION))


RULE = Rule(CODE, check)
