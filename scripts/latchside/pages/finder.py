"""The index of the quick finder: everything a reader may search for, under each of its names."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping

from latchside.kinds import KINDS
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.pages.page import Page

message = messages(__name__)

ORDER = (
    "fault", "checklist", "device", "install", "procedure", "caution", "formula", "term", "table", "tool", "job",
    "page",
)  # fmt: skip
"""The order of equal matches: what is needed on site before what explains it."""

Entry = tuple[int, str, str, list[str], list[str]]


def finder_index(library: Library, pages: Mapping[str, str]) -> str:
    """JSON: `kinds` (what each is called, and its address) and `entries`.

    An entry is kind, id, name, other names, and what people say; empty lists at the end are left out. `pages` are the
    hand-written pages to be found, title by address.
    """
    addresses = {"install": f"{KINDS['device'].address}install/", "page": "{id}"}
    kinds = [(message(f"kind-{kind}"), addresses.get(kind) or KINDS[kind].address) for kind in ORDER]
    entries = [_short(entry) for kind in ORDER for entry in _entries(library, kind, pages)]
    data = {"kinds": kinds, "entries": entries}
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n"


def _entries(library: Library, kind: str, pages: Mapping[str, str]) -> Iterator[Entry]:
    number = ORDER.index(kind)
    if kind == "page":
        yield from ((number, address, title, [], []) for address, title in sorted(pages.items()))
    elif kind == "install":
        for device in library.of("device"):
            others: list[str] = [
                message("fit", device=device.name),
                *(message("install", device=name) for name in device.listed("also_called")),
            ]
            yield number, device.id, message("installing", device=device.name), others, []
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
