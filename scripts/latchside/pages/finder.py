"""The index of the quick finder: every thing a reader may ask for, under every name it goes by."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping

from latchside.kinds import KINDS
from latchside.library import Library, Record
from latchside.pages.page import Page

ORDER = (
    "fault", "checklist", "device", "install", "procedure", "caution", "formula", "term", "table", "tool", "job",
    "page",
)  # fmt: skip
"""What comes first among equals: what is wanted on site before what explains it."""
SHOWN = {
    "device": "Device", "procedure": "Procedure", "checklist": "Checklist", "fault": "Fault", "caution": "Caution",
    "formula": "Figure", "table": "Table", "term": "Term", "tool": "Tool", "job": "Example job",
}  # fmt: skip

Entry = tuple[int, str, str, list[str], list[str]]


def finder_index(library: Library, pages: Mapping[str, str]) -> str:
    """JSON: `kinds` (what each is called, and its address) and `entries`.

    An entry is kind, id, name, other names, and what people say; empty lists at the end are left out. `pages` are the
    hand-written pages to be found, title by address.
    """
    addresses = {
        **{id_: (words, KINDS[id_].address) for id_, words in SHOWN.items()},
        "install": ("Install", f"{KINDS['device'].address}install/"),
        "page": ("Page", "{id}"),
    }
    entries = [_short(entry) for kind in ORDER for entry in _entries(library, kind, pages)]
    data = {"kinds": [addresses[kind] for kind in ORDER], "entries": entries}
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n"


def _entries(library: Library, kind: str, pages: Mapping[str, str]) -> Iterator[Entry]:
    number = ORDER.index(kind)
    if kind == "page":
        yield from ((number, address, title, [], []) for address, title in sorted(pages.items()))
    elif kind == "install":
        for device in library.of("device"):
            others = [f"fit {device.name}", *(f"install {words}" for words in device.listed("also_called"))]
            yield number, device.id, f"Install: {device.name}", others, []
    else:
        for record in library.of(kind):
            yield number, record.id, record.name, _names(record), _said(library, record)


def _names(record: Record) -> list[str]:
    """What else it is called, on both continents; each once, and not its own name again."""
    fields = ("also_called", "north_america", "europe", "instead_of")
    names = dict.fromkeys(str(words) for field in fields for words in record.listed(field))
    return [words for words in names if words.casefold() != record.name.casefold()]


def _said(library: Library, record: Record) -> list[str]:
    """What people say of a fault, and what causes it."""
    if record.kind.id != "fault":
        return []
    page = Page(library, "", record)
    return [*record["says"], *(page.plain(cause["name"]).unescape() for cause in record["causes"])]


def _short(entry: Entry) -> list[object]:
    short: list[object] = list(entry)
    while not short[-1]:
        short.pop()
    return short
