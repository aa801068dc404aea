"""Where each thing on the van goes: the numbers of its openings along the walk."""

from __future__ import annotations

from latchside.library import Library
from latchside.messages import within
from latchside.planning.plan import Item, OpeningPlan, Plan

_LENGTH, _RUN = "m", "run-cable"
"""Cable goes by length, to the openings where a run is made."""


def goes_to(item: Item, plan: Plan, library: Library) -> list[int]:
    """The openings that an item is for; none where it is for no opening more than for another."""
    if item.openings:
        return [number for number, one in enumerate(plan.openings, 1) if one.opening.id in item.openings]
    device = _device(item, plan, library)
    return [number for number, one in enumerate(plan.openings, 1) if _for(item, device, one)]


def _for(item: Item, device: str | None, one: OpeningPlan) -> bool:
    if device:
        return device in (one.choice.device, one.choice.contact)
    if item.unit == _LENGTH:
        return any(_RUN in stage.procedures for stage in one.stages)
    return one.spoken in item.used_for


def _device(item: Item, plan: Plan, library: Library) -> str | None:
    """The class that an item is, or is a part of: its name then ends with that of the class."""
    kind, _, id_ = (item.record or "").rpartition("/")
    if kind == "device":
        return id_
    ids = dict.fromkeys(id_ for one in plan.openings for id_ in (one.choice.device, one.choice.contact) if id_)
    classes = [record for id_ in ids if (record := library.find("device", id_))]
    return next((one.id for one in classes if item.name.endswith(f", {within(one.name)}")), None)
