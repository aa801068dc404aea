"""Procedures as they are followed: shared groups drawn in, steps kept that are for the device at hand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from latchside.library.model import Library, Record

SECTIONS = ("before", "safety", "tools", "parts", "steps", "prove", "close_up", "if_it_fails")


@dataclass(frozen=True)
class Group:
    """Steps done at one place. `owner` is the procedure that wrote them."""

    owner: Record
    id: str
    title: str
    at: str
    steps: tuple[Mapping[str, Any], ...]


def groups(library: Library, procedure: Record, device: str | None = None) -> tuple[Group, ...]:
    """The groups of a procedure in order; with `device`, only what is for that device."""
    return tuple(_groups(library, procedure, device, (procedure.id,)))


def _groups(library: Library, procedure: Record, device: str | None, way: tuple[str, ...]) -> Iterator[Group]:
    for entry in procedure["steps"]:
        if "draw" in entry:
            drawn = library.find("procedure", entry["draw"])
            if drawn and drawn.id not in way:  # a circle is a finding of its own
                yield from _groups(library, drawn, device, (*way, drawn.id))
        elif applies(entry, device):
            steps = for_device(entry["do"], device)
            if steps:
                yield Group(procedure, entry["id"], entry["title"], entry["at"], steps)


def applies(entry: Mapping[str, Any], device: str | None) -> bool:
    """Whether an entry is for the device; with no device at hand, everything is."""
    return device is None or device in entry.get("only", (device,))


def only_for(library: Library, entry: Mapping[str, Any]) -> tuple[Record, ...]:
    """The devices that an entry is for, to be named beside it; none where it is for each of the library."""
    found = tuple(one for id_ in entry.get("only", ()) if (one := library.find("device", id_)))
    return () if len(found) == len(library.of("device")) else found


def for_device(entries: tuple[Mapping[str, Any], ...], device: str | None) -> tuple[Mapping[str, Any], ...]:
    """The steps, causes or checks that are for the device."""
    return tuple(entry for entry in entries if applies(entry, device))


def own_steps(procedure: Record) -> Iterator[tuple[tuple[str | int, ...], Mapping[str, Any]]]:
    """Every step that a procedure itself writes, with its path, in the order it is done."""
    for index, entry in enumerate(procedure["steps"]):
        for number, step in enumerate(entry.get("do", ())):
            yield ("steps", index, "do", number), step
    for section in ("prove", "close_up"):
        for number, step in enumerate(procedure.listed(section)):
            yield (section, number), step
