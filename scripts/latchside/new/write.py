"""Writes a new record or drawing into a project, and names it in the device that it is for."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from latchside.kinds import DRAWINGS, KINDS
from latchside.new.drawing import SHEET
from latchside.new.like import copied
from latchside.new.linked import add_work_time, device_file, link
from latchside.new.own import own_of
from latchside.new.starter import starter
from latchside.schemas import Schemas

FOR_A_DEVICE = ("procedure", "checklist", "drawing")
"""What may be written for a device, which then names it."""


@dataclass(frozen=True)
class Wish:
    """How a new record is begun: as a copy of the device `like`, or for `device`, a procedure of it at `stage`.

    A new device that is no copy has these `traits`, as far as they are named.
    """

    like: str = ""
    device: str = ""
    stage: str = ""
    traits: Mapping[str, str] = field(default_factory=dict)


def write_new(root: Path, kind: str, id_: str, schemas: Schemas, wish: Wish = Wish()) -> Path:
    """Write a new record of a kind, or a `drawing`, and return its path.

    Raises FileExistsError where there is one already, and ValueError for an id or a wish that cannot be.
    """
    if not re.fullmatch(schemas.documents["common.schema.json"]["$defs"]["id"]["pattern"], id_) or len(id_) > 60:
        raise ValueError(f'"{id_}" is not an id: use lower-case words joined by hyphens, such as gate-contact')
    if wish.like and kind != "device":
        raise ValueError("--like is for a device")
    if wish.traits and (wish.like or kind != "device"):
        options = " and ".join(f"--{name}" for name in wish.traits)
        raise ValueError(f"{options}: only for a device without --like, which copies the traits")
    if wish.device and kind not in FOR_A_DEVICE:
        raise ValueError(f"--for is for a {', a '.join(FOR_A_DEVICE[:-1])} or a {FOR_A_DEVICE[-1]}")
    path = root / DRAWINGS / f"{id_}.svg" if kind == "drawing" else root / KINDS[kind].folder / f"{id_}.yaml"
    if path.exists():
        raise FileExistsError(0, "is there already", str(path))
    stage = link(root, kind, id_, wish.device, wish.stage) if wish.device else wish.stage
    text = _text(root, kind, id_, schemas, wish, stage)
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("x", encoding="utf-8") as file:
        file.write(text)
    if kind == "procedure" and wish.device:
        add_work_time(root, id_)
    return path


def _text(root: Path, kind: str, id_: str, schemas: Schemas, wish: Wish, stage: str) -> str:
    if kind == "drawing":
        return SHEET
    if wish.like:
        pattern = device_file(root, wish.like).read_text("utf-8")
        return copied(pattern, wish.like, id_, own_of(root, wish.like, id_))
    given = {"only": f"[{wish.device}]", "stage": stage or "FILL IN"} if wish.device else {}
    return starter(KINDS[kind], id_, schemas, given, wish.traits)
