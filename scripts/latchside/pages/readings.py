"""What a reading is judged against, as data for the page: the good ranges in every unit a technician may read in.

The limits are those that are shown, rounded as they are shown, so that the verdict never contradicts the page.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

from markupsafe import Markup

from latchside.escape import safe
from latchside.figures.units import other_system, readable, rounded_other, symbol
from latchside.figures.words import accepted, accepted_in_both, shown_limits
from latchside.library import Library, Record
from latchside.library.alike import alike
from latchside.library.quantity import Quantity, quantity
from latchside.markup import markup
from latchside.messages import messages
from latchside.pages import regional
from latchside.pages.shorten import some

message = messages(__name__)

_FAMILIES: tuple[dict[str, float], ...] = (
    {"ohm": 1, "kohm": 1e3, "Mohm": 1e6},
    {"mV": 1e-3, "V": 1},
    {"s": 1, "min": 60, "h": 3600},
)
"""Units that a meter or a display changes between by itself."""

Range = dict[str, float]
Figure = tuple[str, str, dict[str, Any]]
"""Whose figure it is, by id (empty for nobody's own) and name, and what a reading is judged against."""


def by_layout(library: Library, expect: Mapping[str, Any]) -> Mapping[str, str]:
    """The values that a measurement may be judged by, each with the layout of resistors it is for.

    The reading of a loop depends on the layout that the receiving equipment asks for; any other value has no layout.
    """
    name: str = expect["device_value"]
    return library.schemas.layouts().get(name, {name: ""})


def of_device(device: Record, name: str, expect: Mapping[str, Any]) -> Quantity:
    """A value of a device, as it binds in a measurement: within, at least or at most."""
    stated = quantity(device["values"][name])
    if "bound" not in expect or stated.one_of:
        return stated
    low, high = shown_limits(stated)
    more = expect["bound"] == "at least"
    return Quantity(
        stated.unit, stated.status, low=low if more else None, high=None if more else high, condition=stated.condition
    )


def worded(stated: Quantity, layout: str) -> str:
    """What a good reading is, with the layout that it is for."""
    return message("with-layout", reading=accepted(stated), layout=layout) if layout else accepted(stated)


def shown(stated: Quantity, layout: str = "") -> Markup:
    """The same on a page, in the reader's system of units."""
    words = regional.figure(accepted_in_both(stated))
    return markup(message, "with-layout", reading=words, layout=layout) if layout else words


def of_layouts(library: Library, device: Record, expect: Mapping[str, Any]) -> dict[str, Markup]:
    """What a measurement is on a device, on a page, for each layout whose value it states, by the name of the value."""
    values = device.get("values", {})
    return {
        name: shown(of_device(device, name, expect), layout)
        for name, layout in by_layout(library, expect).items()
        if name in values
    }


def of_devices(
    library: Library, devices: Iterable[Record], expect: Mapping[str, Any]
) -> tuple[list[Record], list[Markup]]:
    """The devices that state what a measurement is judged by, and what a good reading is on them, each once."""
    known = [device for device in devices if expect["device_value"] in device.get("values", {})]
    words = (one for device in known for one in of_layouts(library, device, expect).values())
    return known, list(dict.fromkeys(words))


def typical_values(
    library: Library, devices: Iterable[Record], expect: Mapping[str, Any]
) -> list[tuple[Markup, Record, str]]:
    """What a measurement is on each of these devices, on a page, each figure once.

    Each with the first device that has it and the name of its value there.
    """
    every = [(device, name, words) for device in devices for name, words in of_layouts(library, device, expect).items()]
    figures = alike(every, lambda one: one[2])
    return [
        (Markup("{} {}").format(safe(some([device.name for device, _, _ in whose])), figure), whose[0][0], whose[0][1])
        for figure, whose in figures.items()
    ]


def measure_of(measure: Mapping[str, Any]) -> str | None:
    """The name of a reading, by which a plan has its own expectation at an opening; None where none can have."""
    named: str | None = measure.get("planned") or measure["expect"].get("device_value")
    return named


def expectations(library: Library, measure: Mapping[str, Any], owner: Record, only: Any = None) -> Markup:
    """The figures a reading may be judged against, as JSON for an attribute; an empty list where there is none.

    A figure says whose it is: `of` holds the names of its devices by id, or a name for it where it is nobody's own.
    `both` holds it in metric and in imperial units, where these differ.
    """
    shared = alike(_figures(library, measure, owner, only), lambda one: json.dumps(one[2]))
    rows = [{"of": {device: name for device, name, _ in whose}, **whose[0][2]} for whose in shared.values()]
    return safe(json.dumps(rows, ensure_ascii=False, separators=(",", ":")))


def _figures(library: Library, measure: Mapping[str, Any], owner: Record, only: Any) -> list[Figure]:
    expect = measure["expect"]
    if "device_value" not in expect:
        return _rows("", message("this-figure"), quantity(expect))
    found = [library.find("device", id_) for id_ in only or ()]
    devices = [device for device in found if device] or list(library.referring(owner.kind.id, owner.id, "device"))
    return [
        row
        for device in devices
        if expect["device_value"] in device.get("values", {})
        for name, layout in by_layout(library, expect).items()
        if name in device["values"]
        for row in _rows(device.id, device.name, of_device(device, name, expect), layout)
    ]


def _rows(device: str, name: str, stated: Quantity, layout: str = "") -> list[Figure]:
    """A row for the quantity, or one for each of its alternatives."""
    if not stated.one_of:
        return _row(device, name, stated, layout)
    single = (
        Quantity(stated.unit, stated.status, value, percent=stated.percent, plus_minus=stated.plus_minus,
                 condition=stated.condition)
        for value in stated.one_of
    )  # fmt: skip
    return [row for one in single for row in _row(device, name, one, layout)]


def _row(device: str, name: str, stated: Quantity, layout: str) -> list[Figure]:
    low, high = shown_limits(stated)
    known = tuple(value for value in (low, high) if value is not None)
    if not known:
        return []
    legible, unit = readable(known, stated.unit)
    rounded = [float(f"{value:.4g}") for value in legible]
    pair = (rounded[0] if low is not None else None, rounded[-1] if high is not None else None)
    scales = [_scale(unit, *pair), *_others(unit, pair)]
    told: dict[str, Any] = {"words": worded(stated, layout), "note": stated.condition, "scales": scales}
    own, other, imperial = accepted_in_both(stated)
    if other is not None:
        told["both"] = [own, other] if not imperial else [other, own]
    return [(device, name, told)]


def _others(unit: str, pair: tuple[float | None, float | None]) -> list[dict[str, Any]]:
    """The same range in the units beside it, and in the other system."""
    family = next((family for family in _FAMILIES if unit in family), {})
    scales = [
        _scale(other, *(None if value is None else float(f"{value * family[unit] / factor:.6g}") for value in pair))
        for other, factor in family.items()
        if other != unit
    ]
    converted = [None if value is None else other_system(value, unit) for value in pair]
    units = {found[1] for found in converted if found}
    return scales + [
        _scale(other, *(None if found is None else _as_shown(*found) for found in converted)) for other in units
    ]


def _as_shown(value: float, unit: str) -> float:
    return float(rounded_other(value, unit).replace("\u2212", "-").replace(",", ""))


def _scale(unit: str, low: float | None, high: float | None) -> dict[str, Any]:
    limits_: Range = {key: _plain(value) for key, value in (("low", low), ("high", high)) if value is not None}
    return {"unit": symbol(unit), "ranges": [limits_]}


def _plain(value: float) -> float:
    return int(value) if value == int(value) else value
