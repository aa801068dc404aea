"""What the readers of each device are given: the texts of its procedures, checklists and faults, entry by entry."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from latchside.library.compiled import own_steps
from latchside.library.model import Library, Path, Record


@dataclass(frozen=True, eq=False)
class Use:
    """An entry of a record, such as a step, an item, a check or a line, and the devices whose readers are given it."""

    record: Record
    path: Path
    data: Any
    devices: tuple[Record, ...]


@lru_cache(maxsize=4)
def uses(library: Library) -> tuple[Use, ...]:
    """Every step, item, check and cause of a library, and every line around them, with its devices."""
    return (*_of_procedures(library), *_items(library), *_of_faults(library))


def procedures_at(device: Record) -> Iterator[tuple[tuple[str, str, int], str]]:
    """The procedures that a device lists, in the order of the job: where each stands, and its id."""
    for stage, listed in device["procedures"].items():
        for index, id_ in enumerate(listed if isinstance(listed, tuple) else ()):
            yield ("procedures", stage, index), id_


def procedures_of(device: Record) -> tuple[str, ...]:
    """The ids of the procedures that a device lists, in the order of the job."""
    return tuple(id_ for _, id_ in procedures_at(device))


_LINES = ("people", "before", "parts", "if_it_fails")
"""What a procedure says to whoever follows it, beside its steps."""


def _of_procedures(library: Library) -> Iterator[Use]:
    users = _users(library)
    for procedure in library.of("procedure"):
        devices = tuple(users.get(procedure.id, {}).values())
        yield from _lines(procedure, _LINES, devices)
        for path, step in own_steps(procedure):
            group = procedure["steps"][path[1]] if path[0] == "steps" else {}
            yield Use(procedure, path, step, _for(_for(devices, group), step))


def _lines(record: Record, names: tuple[str, ...], devices: tuple[Record, ...]) -> Iterator[Use]:
    """The texts under these keys, each entry of a list by itself."""
    for name in names:
        value = record.get(name)
        if isinstance(value, tuple):
            yield from (Use(record, (name, index), entry, devices) for index, entry in enumerate(value))
        else:
            yield Use(record, (name,), value, devices)


def _users(library: Library) -> dict[str, dict[str, Record]]:
    """The devices that follow each procedure, listed by themselves or drawn in by another."""
    found: dict[str, dict[str, Record]] = {}
    for device in library.of("device"):
        waiting = list(procedures_of(device))
        while waiting:
            id_ = waiting.pop()
            procedure = library.find("procedure", id_)
            if procedure is not None and device.id not in found.setdefault(id_, {}):
                found[id_][device.id] = device
                waiting += [entry["draw"] for entry in procedure["steps"] if "draw" in entry]
    return found


def _items(library: Library) -> Iterator[Use]:
    for checklist in library.of("checklist"):
        devices = library.referring("checklist", checklist.id, "device")
        for number, point in enumerate(checklist["points"]):
            for index, item in enumerate(point["items"]):
                yield Use(checklist, ("points", number, "items", index), item, _for(devices, item))


def _of_faults(library: Library) -> Iterator[Use]:
    for fault in library.of("fault"):
        devices = tuple(one for one in library.of("device") if fault.id in one.listed("faults"))
        yield from _lines(fault, ("first", "escalate"), devices)
        for index, check in enumerate(fault["checks"]):
            yield Use(fault, ("checks", index), check, _for(devices, check))
        for index, cause in enumerate(fault["causes"]):
            yield Use(fault, ("causes", index), cause, _for(devices, cause))


def _for(devices: tuple[Record, ...], entry: Mapping[str, Any]) -> tuple[Record, ...]:
    only = entry.get("only")
    return devices if only is None else tuple(one for one in devices if one.id in only)
