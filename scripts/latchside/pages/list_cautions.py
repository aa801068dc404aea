"""The cautions that stand before an item of a checklist: those of the step that it confirms."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from typing import Any

from latchside.library import Record
from latchside.pages.page import Page

Warned = tuple[Record, bool]
"""A caution, and whether its readers were told before what to do, so that its name is enough."""


def item_cautions(page: Page, checklist: Record) -> dict[str, list[Warned]]:
    """The cautions before each item, by the item's id.

    Each device has a list of its own: an item of another device does not count as having told.
    """
    everyone = [device.id for device in page.library.referring("checklist", checklist.id, "device")]
    told: defaultdict[str, set[str]] = defaultdict(set)
    for id_ in checklist.listed("cautions"):
        told[id_].update(everyone)
    items = (item for point in checklist["points"] for item in point["items"])
    return {item["id"]: _before(page, item, everyone, told) for item in items}


def _before(page: Page, item: Mapping[str, Any], everyone: list[str], told: defaultdict[str, set[str]]) -> list[Warned]:
    readers = set(item.get("only") or everyone)
    found = []
    for caution in page.records("caution", page.step(item["step"]).get("cautions")):
        found.append((caution, readers <= told[caution.id]))
        told[caution.id] |= readers
    return found
