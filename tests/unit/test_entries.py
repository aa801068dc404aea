"""The field above a list of terms, tools or sources: which entries it leaves, under node."""

from __future__ import annotations

import pytest

from latchside.root import ROOT

from ..node import Node

NARROW = (ROOT / "content/assets/js/entries/narrow.js").as_uri()
ENTRIES = [
    {"id": "keep", "names": "keep\nstrike, strike plate, keeper\nkeep, striking plate"},
    {"id": "end-of-line-resistor", "names": "end-of-line resistor\nEOL, EOLR"},
    {"id": "series-resistor", "names": "series resistor\nline resistor"},
    {"id": "facade", "names": "fa\u00e7ade"},
]


@pytest.mark.parametrize(
    ("typed", "left"),
    [
        ("", {"keep", "end-of-line-resistor", "series-resistor", "facade"}),
        ("  ", {"keep", "end-of-line-resistor", "series-resistor", "facade"}),
        ("KEEP", {"keep"}),
        ("strike pl", {"keep"}),
        ("eol", {"end-of-line-resistor"}),
        ("end of line", {"end-of-line-resistor"}),
        ("resistor", {"end-of-line-resistor", "series-resistor"}),
        ("facade", {"facade"}),
        ("<b>", set()),
        ("siren", set()),
    ],
)
def test_a_list_is_narrowed_by_all_that_an_entry_is_called(node: Node, typed: str, left: set[str]) -> None:
    code = f"async ({{entries, typed}}) => [...(await import({NARROW!r})).narrowed(entries, typed)]"
    assert set(node.evaluate(code, {"entries": ENTRIES, "typed": typed})) == left
