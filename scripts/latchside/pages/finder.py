"""The documents of the finder: everything a reader may search for, under each of its names, and line by line."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence

from latchside.kinds import KINDS
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.pages.finder_lines import Lines, lines

message = messages(__name__)

ORDER = (
    "fault", "checklist", "device", "install", "procedure", "caution", "formula", "term", "table", "tool", "job",
    "page", "source",
)  # fmt: skip
"""The order of equal matches: what is needed on site before what explains it."""

Entry = tuple[int, str, str, list[str], list[str], list[Lines]]
Written = Mapping[str, tuple[str, Sequence[tuple[str, str]]]]
"""The hand-written pages by address: the title of each, and its headings with their anchors."""


def finder_index(library: Library, pages: Written) -> str:
    """JSON: `kinds` (word, what a reader calls it, address of one) and `entries`.

    An entry is kind, id, name, other names, what people say, and lines, each an anchor and its texts; empty lists at
    the end are left out. `pages` are the hand-written pages to be found.
    """
    addresses = {"install": f"{KINDS['device'].address}install/", "page": "{id}"}
    kinds = [(kind, message(f"kind-{kind}"), addresses.get(kind) or KINDS[kind].address) for kind in ORDER]
    entries = [_short(entry) for kind in ORDER for entry in _entries(library, kind, pages)]
    data = {"kinds": kinds, "entries": entries}
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n"


def _entries(library: Library, kind: str, pages: Written) -> Iterator[Entry]:
    number = ORDER.index(kind)
    if kind == "page":
        for address, (title, headings) in sorted(pages.items()):
            yield number, address, title, [], [], list(headings)
    elif kind == "install":
        for device in library.of("device"):
            others: list[str] = [
                message("fit", device=device.name),
                *(message("install", device=name) for name in device.listed("also_called")),
            ]
            yield number, device.id, message("installing", device=device.name), others, [], []
    else:
        for record in library.of(kind):
            said = record["says"] if kind == "fault" else ()
            found = [one for one in lines(library, record) if len(one) > 1]
            yield number, record.id, record.name, _names(record), list(said), found


def _names(record: Record) -> list[str]:
    """What else it is called, on both continents; each once, and not its own name again."""
    fields = ("also_called", "north_america", "europe", "instead_of")
    names = dict.fromkeys(str(words) for field in fields for words in record.listed(field))
    return [words for words in names if words.casefold() != record.name.casefold()]


def _short(entry: Entry) -> list[object]:
    short: list[object] = list(entry)
    while not short[-1]:
        short.pop()
    return short
