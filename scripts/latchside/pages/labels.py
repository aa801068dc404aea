"""Labels to print: a code that opens a page, with the page's name beneath."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from latchside.library import Library
from latchside.qr import code

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
        (records[0].kind.title, [Label(one.name, base + one.address, code(base + one.address)) for one in records])
        for kind in KINDS_WITH_LABELS
        if (records := library.of(kind))
    ]
