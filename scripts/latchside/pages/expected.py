"""What a good reading is, in words, on a page: the quantity itself, or the value of the device at hand."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from markupsafe import Markup

from latchside.escape import safe
from latchside.figures.brief import Brief, brief
from latchside.library import Record
from latchside.library.quantity import quantity
from latchside.markup import markup
from latchside.messages import messages
from latchside.pages.readings import by_layout, of_device, of_devices, of_layouts, shown, typical_values

if TYPE_CHECKING:
    from latchside.pages.page import Page

message = messages(__name__)

_ON_LABEL = {"at least": "least-on-label", "at most": "most-on-label"}


def expected(page: Page, measure: Mapping[str, Any], owner: Record, only: tuple[str, ...] | None = None) -> Markup:
    """What a measurement of `owner` should give; every value of a device that is named is noted on the page.

    On a page for no one device, the label decides, and the typical values of the devices it concerns are named.
    """
    expect = measure["expect"]
    if "device_value" not in expect:
        return shown(quantity(expect))
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
    label = safe(on_label(page, measure))
    if not typical:
        return label
    words = Markup("; ").join(words for words, _, _ in typical)
    return Markup("{} {}").format(label, markup(message, "typical", values=words))


def on_label(page: Page, measure: Mapping[str, Any]) -> str:
    """What a good reading is where the label says it."""
    expect = measure["expect"]
    id_ = _ON_LABEL.get(expect.get("bound", ""), "on-label")
    return message(id_, value=page.value_label(expect["device_value"]))


def briefly(page: Page, measure: Mapping[str, Any]) -> list[Brief]:
    """The figure of a good reading, one for each layout that it may have; none where only the label says it."""
    expect, device = measure["expect"], page.device
    if "device_value" not in expect:
        return [brief(quantity(expect))]
    if device is None:
        return []
    names = [name for name in by_layout(page.library, expect) if name in device["values"]]
    return list(dict.fromkeys(brief(of_device(device, name, expect)) for name in names))


def expected_in_short(
    page: Page, measure: Mapping[str, Any], owner: Record, only: tuple[str, ...] | None = None
) -> Markup:
    """The one figure that a reading is held against, or that it goes by the device; `expected` says the rest."""
    expect = measure["expect"]
    if "device_value" not in expect:
        return shown(quantity(expect))
    devices = page.records("device", only) or page.library.referring(owner.kind.id, owner.id, "device")
    known, figures = of_devices(page.library, devices, expect)
    if len(figures) != 1:
        return markup(message, "by-device" if len(known) > 1 else "by-layout")
    statuses = {device["values"][expect["device_value"]]["status"] for device in known}
    return markup(message, "in-short", value=figures[0]) if statuses & {"typical", "computed"} else figures[0]


def _asked(page: Page, device: Record, expect: Mapping[str, Any]) -> Markup:
    """A figure that a standard asks and no label has, with its condition; empty for any other."""
    stated = device["values"][expect["device_value"]]
    if stated["status"] not in ("standard", "from memory") or "condition" not in stated:
        return Markup("")
    return Markup("{}. {}").format(_of_device(page, device, expect), safe(stated["condition"]))


def _of_device(page: Page, device: Record, expect: Mapping[str, Any]) -> Markup:
    """What a device states, for each layout of resistors that it may have."""
    own = of_layouts(page.library, device, expect)
    for name in own:
        page.note_value(device, name, quantity(device["values"][name]))
    return Markup("; ").join(own.values())
