"""The forms of a drawing: one file shows an opening with each way of fixing, and each of them is a drawing by itself.

A group of the file that belongs to some forms alone says under `data-for` what has to hold, all of it. The drawing that
bears the file's own name is what an editor shows of the file, without such groups as are `display="none"`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import product
from types import MappingProxyType

from latchside.read.svg import Element, Picture

BARE = "bare"
"""An opening without a contact, or with one whose place is not known."""
FIXINGS: Mapping[str, frozenset[str]] = MappingProxyType({
    "surface": frozenset({"contact", "surface", "magnet-flat", "sensor-flat"}),
    "magnet-raised": frozenset({"contact", "surface", "magnet-spacer", "sensor-flat"}),
    "sensor-raised": frozenset({"contact", "surface", "magnet-flat", "sensor-spacer"}),
    "both-raised": frozenset({"contact", "surface", "magnet-spacer", "sensor-spacer"}),
    "drilled": frozenset({"contact", "drilled", "no-sleeve"}),
    "sleeved": frozenset({"contact", "drilled", "sleeve"}),
    "bracket": frozenset({"contact", "bracket"}),
    BARE: frozenset({BARE}),
})  # fmt: skip
"""How a contact is fixed, and what then holds in a drawing."""
CONTACTS = ("one", "two")
"""Whether a second leaf or sash has a contact of its own; these hold as they are named."""
WORDS = frozenset({*CONTACTS}.union(*FIXINGS.values()))
_COMMON = frozenset({"contact"})


def forms(picture: Picture) -> Iterator[Picture]:
    """The drawing that bears the file's name, and one of each form: the name, `-drilled`, and `-two` where that counts.

    A file that names no forms has the first alone.
    """
    named = {word for one in picture.root.all() for word in words(one)}
    if not named:
        yield picture
        return
    yield replace(picture, root=_left(picture.root, None))
    fixings = [form for form, hold in FIXINGS.items() if named & (hold - _COMMON) or form == BARE]
    for form in product(fixings, CONTACTS) if named.intersection(CONTACTS) else ((one,) for one in fixings):
        root = _left(picture.root, FIXINGS[form[0]].union(form[1:]))
        yield replace(picture, id="-".join((picture.id, *form)), root=root)


def words(element: Element) -> tuple[str, ...]:
    """What has to hold for an element; nothing where it belongs to every form."""
    return tuple(element.attributes.get("data-for", "").split())


def _left(element: Element, hold: frozenset[str] | None) -> Element:
    """An element with what belongs to a form; with what an editor shows, where no form is asked for."""
    inside = tuple(_left(one, hold) if isinstance(one, Element) else one for one in element.inside if _stays(one, hold))
    if not words(element):
        return element if inside == element.inside else replace(element, inside=inside)
    shown = {name: value for name, value in element.attributes.items() if name != "display"}
    return replace(element, attributes=shown, inside=inside)


def _stays(one: Element | str, hold: frozenset[str] | None) -> bool:
    if isinstance(one, str) or not words(one):
        return True
    return one.attributes.get("display") != "none" if hold is None else hold.issuperset(words(one))
