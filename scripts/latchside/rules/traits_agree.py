"""The traits of a profile agree with each other, with its first input and with what it says of its radio."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.traits import LOOP, traits
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

CODE = "traits-agree"


def check(library: Library) -> Iterator[Finding]:
    """Sensing by a loop goes with reporting one, radio with words on it, and the first input with the reports."""
    first = library.schemas.documents[VOCABULARY]["$defs"]["input-kind"]["x-first"]
    kinds = {reports: kind for kind, reports in first.items()}
    for device in library.of("device"):
        yield from _senses(device)
        yield from _radio(device)
        own = traits(device)
        kind = kinds[own.reports]
        if own.inputs[0] != kind:
            yield device.finding(
                CODE, ("inputs", 0, "kind"), f"{own.inputs[0]} as the first input, with reports: {own.reports}",
                f"the common case first: an input with kind: {kind}", "Put that input first, or correct the traits.",
            )  # fmt: skip


def _senses(device: Record) -> Iterator[Finding]:
    own = traits(device)
    if (own.senses == LOOP) != own.takes_loop:
        yield device.finding(
            CODE, ("traits", "senses"), f"senses: {own.senses} with reports: {own.reports}",
            "senses: loop and reports: loop-by-radio together, or neither",
            "Say what the device itself senses, or that it reports the loop of a contact.",
        )  # fmt: skip


def _radio(device: Record) -> Iterator[Finding]:
    own = traits(device)
    if own.wired != (device["radio"] == "none"):
        found = "words on radio" if own.wired else "radio: none"
        yield device.finding(
            CODE, ("radio",), f"{found} in a device that reports {own.reports}",
            "radio: none where it reports by cable, and words on radio and check-in where it reports by radio",
            "Correct radio, or the traits.",
        )  # fmt: skip


RULE = Rule(CODE, check)
