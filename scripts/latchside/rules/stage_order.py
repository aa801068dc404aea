"""The stages of the job and the sections of a procedure stand in their fixed order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.compiled import SECTIONS
from latchside.library.uses import procedures_at
from latchside.rules.rule import Rule

CODE = "stage-order"


def check(library: Library) -> Iterator[Finding]:
    """Sections and stages in order; each procedure listed under its own stage."""
    stages = list(library.schemas.words("stage"))
    for procedure in library.of("procedure"):
        yield from _ordered(procedure, (), [key for key in procedure.data if key in SECTIONS], SECTIONS)
    for device in library.of("device"):
        yield from _ordered(device, ("procedures",), list(device["procedures"]), stages)
        for path, id_ in procedures_at(device):
            listed, stage = library.find("procedure", id_), path[1]
            if listed and stage not in (listed["stage"], *listed.get("also_at", ())):
                yield device.finding(
                    CODE, path, f"{id_} under {stage}", f"{id_} under {listed['stage']}, its own stage",
                    "Move it, or correct its stage.",
                )  # fmt: skip


def _ordered(record: Record, path: tuple[str, ...], keys: Sequence[str], order: Sequence[str]) -> Iterator[Finding]:
    right = sorted(keys, key=list(order).index)
    for key, expected in zip(keys, right, strict=True):
        if key != expected:
            yield record.finding(
                CODE, (*path, key), f"{key} where {expected} belongs", "the order " + ", ".join(right),
                "Put them in order.",
            )  # fmt: skip
            return


RULE = Rule(CODE, check)
