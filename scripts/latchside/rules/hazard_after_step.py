"""A hazard stands before its step."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.compiled import own_steps
from latchside.library.text import plain
from latchside.rules.rule import Rule

CODE = "hazard-after-step"


def check(library: Library) -> Iterator[Finding]:
    """Where a command has a hazard of its own, a caution for it is shown at that step or earlier."""
    hazards = library.schemas.documents["vocabulary.schema.json"]["$defs"]["hazard-verb"]["x-cautions"]
    for procedure in library.of("procedure"):
        shown = set(procedure.listed("safety"))
        for path, step in own_steps(procedure):
            shown |= set(step.get("cautions", ()))
            verb = _verb(plain(step["do"]))
            if verb in hazards and not shown & set(hazards[verb]):
                yield _finding(procedure, path, verb, hazards[verb])
    for fault in library.of("fault"):
        listed = set(fault.listed("cautions"))
        for i, cause in enumerate(fault["causes"]):
            shown = listed | set(cause["remedy"].get("cautions", ()))
            for j, text in enumerate(cause["remedy"]["do"]):
                verb = _verb(plain(text))
                if verb in hazards and not shown & set(hazards[verb]):
                    yield _finding(fault, ("causes", i, "remedy", "do", j), verb, hazards[verb])


def _verb(command: str) -> str:
    words = command.rpartition(", ")[2].split() if command.startswith("If ") else command.split()
    return words[0].lower() if words else ""


def _finding(record: Record, path: tuple[str | int, ...], verb: str, cautions: list[str]) -> Finding:
    return record.finding(
        CODE, path, f"a step that begins with {verb}, with no caution before it",
        "one of the cautions " + ", ".join(cautions) + " here, on an earlier step or for the whole",
        "Add the caution's id under cautions of this step or under safety.",
    )  # fmt: skip


RULE = Rule(CODE, "A command with a hazard of its own has its caution at that step or earlier.", check)
