"""Labels to print: a code that opens a page, with the page's name beneath."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import segno
from markupsafe import Markup

from latchside.library import Library
from latchside.messages import messages

message = messages(__name__)

KINDS_WITH_LABELS = ("device", "checklist", "fault")
"""The kinds of records that get a label: those needed at a panel, in a van or inside a cabinet door."""


@dataclass(frozen=True)
class Label:
    """One label. `code` is the drawing of it."""

    name: str
    address: str
    code: Markup


def labels(library: Library, base: str) -> list[tuple[str, list[Label]]]:
    """Labels under the title of their kind. `base` is the address of the site, ending in a slash."""
    return [
        (records[0].kind.title, [Label(one.name, base + one.address, _code(base + one.address)) for one in records])
        for kind in KINDS_WITH_LABELS
        if (records := library.of(kind))
    ]


def sound_base(address: str) -> str:
    """The address of a site as labels need it, ending in a slash.

    Raises ValueError where it is none that a phone could open.
    """
    start, _, rest = address.partition("://")
    if start not in ("http", "https") or not rest or any(sign in rest for sign in " ?#\"'<>\\"):
        raise ValueError(message("no-address", address=address))
    return address if address.endswith("/") else address + "/"


@cache
def _code(address: str) -> Markup:
    """The code as a drawing without a style of its own; it survives a scratch over a seventh of it."""
    drawn = segno.make(address, error="m", micro=False).svg_inline(border=4, omitsize=True)
    return Markup(drawn.replace("<svg ", '<svg role="img" aria-hidden="true" ', 1))
