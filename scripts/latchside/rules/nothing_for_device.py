"""What a device lists holds something for it: a step, an item, a cause."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.uses import procedures_at, uses
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "nothing-for-device"
_WORK = ("steps", "points", "causes")
"""Where steps, items and causes stand: a proof or a close-up alone is no work."""


def check(library: Library) -> Iterator[Finding]:
    """No procedure, checklist or fault comes out empty for a device that lists it."""
    given = {(use.record.key, one.id) for use in uses(library) if use.path[0] in _WORK for one in use.devices}
    for device in library.of("device"):
        for path, id_ in procedures_at(device):
            procedure = library.find("procedure", id_)
            if procedure and not _done(library, procedure, device.id, given):
                yield _finding(device, path, procedure, "step")
        for field, kind, what in (("checklists", "checklist", "item"), ("faults", "fault", "cause")):
            for index, id_ in enumerate(device.listed(field)):
                record = library.find(kind, id_)
                if record and (record.key, device.id) not in given:
                    yield _finding(device, (field, index), record, what)


def _done(library: Library, procedure: Record, device: str, given: set[tuple[tuple[str, str], str]]) -> bool:
    """It has a step of its own for the device, or draws in a procedure that has."""
    drawn = (library.find("procedure", entry["draw"]) for entry in procedure["steps"] if "draw" in entry)
    return (procedure.key, device) in given or any(one and (one.key, device) in given for one in drawn)


def _finding(device: Record, path: tuple[str | int, ...], record: Record, what: str) -> Finding:
    return device.finding(CODE, path, *message.finding(f"no-{what}", record=record.id, file=record.raw.file))


RULE = Rule(CODE, check)
