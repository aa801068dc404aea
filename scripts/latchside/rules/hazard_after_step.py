"""A hazard stands before its step."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.commands import forbids, verb_of
from latchside.library.compiled import own_steps
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "hazard-after-step"


def check(library: Library) -> Iterator[Finding]:
    """Where a command has a hazard of its own, a caution for it is shown at that step or earlier."""
    hazards = library.schemas.documents[VOCABULARY]["$defs"]["hazard-verb"]["x-cautions"]
    for record, path, text, shown in (*_steps(library), *_of_faults(library)):
        verb = verb_of(text)
        if verb in hazards and not forbids(text) and not shown & set(hazards[verb]):
            yield _finding(record, path, verb, hazards[verb])


_Command = tuple[Record, tuple[str | int, ...], str, set[str]]
"""A command: its record, path and text, and the cautions shown before it."""


def _steps(library: Library) -> Iterator[_Command]:
    for procedure in library.of("procedure"):
        shown = set(procedure.listed("safety"))
        for path, step in own_steps(procedure):
            shown |= set(step.get("cautions", ()))
            yield procedure, path, step["do"], set(shown)


def _of_faults(library: Library) -> Iterator[_Command]:
    for fault in library.of("fault"):
        shown = set(fault.listed("cautions"))
        for i, one in enumerate(fault["checks"]):
            yield fault, ("checks", i), one["do"], shown | set(one.get("cautions", ()))
        for i, cause in enumerate(fault["causes"]):
            for j, text in enumerate(cause["remedy"]["do"]):
                before = shown | set(cause["remedy"].get("cautions", ()))
                yield fault, ("causes", i, "remedy", "do", j), text, before


def _finding(record: Record, path: tuple[str | int, ...], verb: str, cautions: list[str]) -> Finding:
    return record.finding(CODE, path, *message.finding("no-caution", verb=verb, cautions=", ".join(cautions)))


RULE = Rule(CODE, check)
