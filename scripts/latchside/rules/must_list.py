"""A device lists what its traits ask for, and nothing that does not fit them."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.model import FOR_DEVICES, Path
from latchside.library.uses import procedures_at, procedures_of
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "must-list"
_UNDER = {"procedure": "procedures", "checklist": "checklists", "fault": "faults", "caution": "cautions"}


def check(library: Library) -> Iterator[Finding]:
    """What says `needed` is listed by each device it is needed by, and what says `only` by no other."""
    for kind in FOR_DEVICES:
        for record in library.of(kind):
            listing = {one.id: one for one in library.of("device") if record.id in _listed(one, kind)}
            for device in library.devices(record["needed"]) if "needed" in record.data else ():
                if device.id not in listing:
                    problem = message.finding("not-listed", record=record.id, field=_UNDER[kind], file=record.raw.file)
                    yield device.finding(CODE, (_UNDER[kind],), *problem)
            for device in listing.values():
                if device.id not in record.get("only", (device.id,)):
                    problem = message.finding("not-for-it", record=record.id, file=record.raw.file)
                    yield device.finding(CODE, _path(device, kind, record.id), *problem)


def _listed(device: Record, kind: str) -> tuple[str, ...]:
    return procedures_of(device) if kind == "procedure" else device.listed(_UNDER[kind])


def _path(device: Record, kind: str, id_: str) -> Path:
    if kind != "procedure":
        return (_UNDER[kind], device.listed(_UNDER[kind]).index(id_))
    return next(path for path, listed in procedures_at(device) if listed == id_)


RULE = Rule(CODE, check)
