"""What a good reading is, in words, on a page: the quantity itself, or the value of the device at hand."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from latchside.figures.words import accepted
from latchside.library import Record
from latchside.library.quantity import quantity
from latchside.messages import messages
from latchside.pages.readings import of_layouts, typical_values

if TYPE_CHECKING:
    from latchside.pages.page import Page

message = messages(__name__)

_ON_LABEL = {"at least": "least-on-label", "at most": "most-on-label"}


def expected(page: Page, measure: Mapping[str, Any], owner: Record, only: tuple[str, ...] | None = None) -> str:
    """What a measurement of `owner` should give; every value of a device that is named is noted on the page.

    On a page for no one device, the label decides, and the typical values of the devices it concerns are named.
    """
    expect = measure["expect"]
    if "device_value" not in expect:
        return accepted(quantity(expect))
    name = expect["device_value"]
    if page.device and name in page.device.get("values", {}):
        return _asked(page, page.device, expect) or _of_device(page, page.device, expect)
    devices = page.records("device", only) or page.library.referring(owner.kind.id, owner.id, "device")
    known = [] if page.device else [one for one in devices if name in one["values"]]
    if known and (asked := _asked(page, known[0], expect)):
        return asked
    typical = typical_values(page.library, known, expect)
    for _, device, value in typical:
        page.note_value(device, value, quantity(device["values"][value]))
    on_label = message(_ON_LABEL.get(expect.get("bound", ""), "on-label"), value=page.value_label(name))
    return (
        f"{on_label} {message('typical', values='; '.join(words for words, _, _ in typical))}" if typical else on_label
    )


def _asked(page: Page, device: Record, expect: Mapping[str, Any]) -> str:
    """A figure that a standard asks and no label has, with its condition; empty for any other."""
    stated = device["values"][expect["device_value"]]
    if stated["status"] not in ("standard", "from memory") or "condition" not in stated:
        return ""
    return f"{_of_device(page, device, expect)}. {stated['condition']}"


def _of_device(page: Page, device: Record, expect: Mapping[str, Any]) -> str:
    """What a device states, for each layout of resistors that it may have."""
    own = of_layouts(page.library, device, expect)
    for name in own:
        page.note_value(device, name, quantity(device["values"][name]))
    return "; ".join(own.values())
