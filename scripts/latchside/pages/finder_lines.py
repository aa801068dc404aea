"""The lines of a record that a search may lead to, each with the place on its page where it stands.

What is done, had and seen, not why: the rest would double the bytes that a phone saves, in the same words.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Any

from latchside.figures.words import in_words
from latchside.library import Library, Record
from latchside.library.compiled import own_steps
from latchside.library.quantity import Quantity
from latchside.messages import messages
from latchside.pages.page import Page

message = messages(__name__)

Lines = tuple[str, ...]
"""An anchor of the page, empty for its beginning, and the texts that stand there."""

_SENTENCE = re.compile(r"(?<=[.?!]) (?=[A-Z])")


def lines(library: Library, record: Record) -> Iterator[Lines]:
    """What a reader may be looking for in a record, beside its names."""
    page = Page(library, record.address, record)
    if record.kind.id not in ("term", "tool", "caution", "source", "job"):
        yield "", _plain(page, record["summary"])
    yield from _OF_KIND.get(record.kind.id, _nothing)(page, record)


def _nothing(page: Page, record: Record) -> Iterator[Lines]:
    yield from ()


def _plain(page: Page, text: object) -> str:
    return page.plain(str(text)).unescape()


def _sentences(page: Page, *texts: Any) -> Lines:
    """Texts as single sentences, so that the one that is meant can be shown."""
    return tuple(one for text in texts for one in _SENTENCE.split(_plain(page, text)) if text)


def _fault(page: Page, record: Record) -> Iterator[Lines]:
    for check in record["checks"]:
        shown = [_plain(page, result["shows"]) for result in check["results"]]
        yield f"check-{check['id']}", _plain(page, check["do"]), *shown
    for cause in record["causes"]:
        yield f"cause-{cause['id']}", _plain(page, cause["name"])


def _checklist(page: Page, record: Record) -> Iterator[Lines]:
    for point in record["points"]:
        yield f"point-{point['id']}", _plain(page, point["title"])
        for item in point["items"]:
            subject, state = (_plain(page, item[field]) for field in ("subject", "state"))
            yield f"item-{item['id']}", message("item", subject=subject, state=state)


def _device(page: Page, record: Record) -> Iterator[Lines]:
    for field in ("suits", "avoid"):
        yield field, *(_plain(page, entry["text"]) for entry in record[field])
    yield "inputs", *(_plain(page, entry["name"]) for entry in record["inputs"])
    for name, data in record["values"].items():
        figure = in_words(page.quantity(data))
        yield f"value-{record.id}-{name}", message("value", value=page.value_label(name), figure=figure)


def _procedure(page: Page, record: Record) -> Iterator[Lines]:
    for _, step in own_steps(record):
        measured = step.get("measure", {}).get("what", "")
        yield f"step-{step['id']}", *_sentences(page, step["do"], measured)


def _caution(page: Page, record: Record) -> Iterator[Lines]:
    yield "", *_sentences(page, record["hazard"], record["consequence"])
    yield "avoid", *(_plain(page, line) for line in record["avoid"])


def _formula(page: Page, record: Record) -> Iterator[Lines]:
    yield "", *(_plain(page, one["label"]) for one in record["outputs"])
    yield "inputs", *(_plain(page, one["label"]) for one in record["inputs"])


def _term(page: Page, record: Record) -> Iterator[Lines]:
    yield "", page.gist(record).unescape()


def _tool(page: Page, record: Record) -> Iterator[Lines]:
    yield "", *_sentences(page, record["used_for"], record["check_first"])


def _table(page: Page, record: Record) -> Iterator[Lines]:
    for row in record["rows"]:
        cells = [_cell(page, row["cells"][column["id"]], column.get("unit", "count"))
                 for column in record["columns"]]  # fmt: skip
        yield f"{record.id}-{row['id']}", " · ".join(cells)


def _cell(page: Page, cell: float | str, unit: str) -> str:
    if isinstance(cell, str):
        return _plain(page, cell)
    return in_words(Quantity(unit=unit, status="computed", value=float(cell))).replace("\u00a0", " ")


_OF_KIND: dict[str, Callable[[Page, Record], Iterator[Lines]]] = {
    "fault": _fault, "checklist": _checklist, "device": _device, "procedure": _procedure, "caution": _caution,
    "formula": _formula, "term": _term, "tool": _tool, "table": _table,
}  # fmt: skip
