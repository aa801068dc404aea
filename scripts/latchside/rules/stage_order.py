"""The stages of the job and the sections of a procedure stand in their fixed order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.compiled import SECTIONS
from latchside.library.uses import procedures_at
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "stage-order"


def check(library: Library) -> Iterator[Finding]:
    """Sections and stages in order; each procedure listed under its own stage."""
    stages = list(library.schemas.words("stage"))
    for record in library.of("procedure"):
        yield from _ordered(record, (), [key for key in record.data if key in SECTIONS], SECTIONS)
    for device in library.of("device"):
        yield from _ordered(device, ("procedures",), list(device["procedures"]), stages)
        for path, id_ in procedures_at(device):
            procedure, stage = library.find("procedure", id_), path[1]
            if procedure and stage not in (procedure["stage"], *procedure.get("also_at", ())):
                problem = message.finding("other-stage", procedure=id_, stage=stage, own=procedure["stage"])
                yield device.finding(CODE, path, *problem)


def _ordered(record: Record, path: tuple[str, ...], keys: Sequence[str], order: Sequence[str]) -> Iterator[Finding]:
    right = sorted(keys, key=list(order).index)
    for key, expected in zip(keys, right, strict=True):
        if key != expected:
            problem = message.finding("out-of-order", key=key, expected=expected, order=", ".join(right))
            yield record.finding(CODE, (*path, key), *problem)
            return


RULE = Rule(CODE, check)
