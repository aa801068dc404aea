"""What only one device lists: the procedures, drawings, checklists and faults that a copy of it needs its own of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from latchside.drawings import COMPUTED
from latchside.kinds import KINDS
from latchside.library.traits import Traits, devices_asked, traits_in
from latchside.new.like import Own
from latchside.read.yaml_text import read_text

_ENTRIES = {"checklist": ("points", "items"), "fault": ("causes",)}
"""Where the entries of a checklist and of a fault stand."""


def own_of(root: Path, device: str, new: str) -> Own:
    """What the device `device` of the project at `root` lists, and a device `new` of the same traits may not."""
    devices = _records(root, "device")
    this = devices[device]
    others = [one for id_, one in devices.items() if id_ != device]
    shared = {id_ for one in others for id_ in _procedures(one)}
    drawn = {id_ for one in others for id_ in _listed(one, "drawings")}
    traits = traits_in(this)
    return Own(
        frozenset(_procedures(this)) - shared,
        frozenset(_listed(this, "drawings")) - drawn - set(COMPUTED),
        frozenset(_empty(root, "checklist", _listed(this, "checklists"), new, traits)),
        frozenset(_empty(root, "fault", _listed(this, "faults"), new, traits)),
    )


def _records(root: Path, kind: str) -> dict[str, Any]:
    """The records of a kind that can be read, by id."""
    folder = root / KINDS[kind].folder
    read = {path.stem: read_text(path.read_text("utf-8"), path.name).value for path in sorted(folder.glob("*.yaml"))}
    return {id_: value for id_, value in read.items() if isinstance(value, dict)}


def _listed(record: Mapping[str, Any], key: str) -> list[str]:
    value = record.get(key)
    return [str(one) for one in value] if isinstance(value, list) else []


def _procedures(device: Mapping[str, Any]) -> Iterator[str]:
    for listed in device.get("procedures", {}).values():
        yield from map(str, listed if isinstance(listed, list) else ())


def _empty(root: Path, kind: str, listed: list[str], new: str, traits: Traits) -> Iterator[str]:
    """The ids of those records that hold nothing for a device of these traits."""
    records, known = _records(root, kind), {new: traits}
    for id_ in listed:
        entries = [records[id_]] if id_ in records else []
        for key in _ENTRIES[kind]:
            entries = [below for one in entries for below in one.get(key, ())]
        if id_ in records and not any("only" not in one or new in devices_asked(one["only"], known) for one in entries):
            yield id_
