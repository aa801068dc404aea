"""The traits of a profile agree with each other, with its first input and with what it says of its radio."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.traits import LOOP, traits
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
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
            problem = message.finding("first-input", input=own.inputs[0], reports=own.reports, kind=kind)
            yield device.finding(CODE, ("inputs", 0, "kind"), *problem)


def _senses(device: Record) -> Iterator[Finding]:
    own = traits(device)
    if (own.senses == LOOP) != own.takes_loop:
        problem = message.finding("senses", senses=own.senses, reports=own.reports)
        yield device.finding(CODE, ("traits", "senses"), *problem)


def _radio(device: Record) -> Iterator[Finding]:
    own = traits(device)
    if own.wired != (device["radio"] == "none"):
        problem = message.finding("radio-of-a-wired" if own.wired else "no-radio", reports=own.reports)
        yield device.finding(CODE, ("radio",), *problem)


RULE = Rule(CODE, check)
