"""Less of what is long: a first sentence, the first of many names, and what is said once for many devices."""

from __future__ import annotations

import json

import pytest

from latchside.library import Library
from latchside.pages.fault_lists import Find, pages
from latchside.pages.page import Page
from latchside.pages.readings import expectations, typical_values
from latchside.pages.shorten import first_sentence, lead, some

from .support import many_alike


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("One. Two.", "One."),
        ("About 2.5 of it. And more.", "About 2.5 of it."),
        ("Is it? It is.", "Is it?"),
        ("No end", "No end"),
        ("A\nb. C", "A\nb."),
        ("", ""),
    ],
)
def test_the_first_sentence(text: str, sentence: str) -> None:
    assert first_sentence(text) == sentence


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("One. Two.", ("One. Two.", "")),
        ("One. " + "two " * 70, ("One.", ("two " * 70).strip())),
        ("", ("", "")),
    ],
)
def test_a_long_text_leaves_only_its_first_sentence_ahead_of_a_table(text: str, parts: tuple[str, str]) -> None:
    assert lead(text) == parts


@pytest.mark.parametrize(
    ("count", "words"), [(0, ""), (1, "a"), (4, "a, b, c, d"), (5, "a, b, c and 2 more"), (9, "a, b, c and 6 more")]
)
def test_some_of_many_names(count: int, words: str) -> None:
    assert some(list("abcdefghi")[:count]) == words


def test_devices_with_the_same_figure_share_it() -> None:
    crowd = many_alike("surface-contact", 20)
    measure = {"expect": {"device_value": "missed-window"}}
    owner = crowd.of("checklist")[0]
    only = [device.id for device in crowd.of("device") if device.id.startswith("surface-contact")]
    (row,) = json.loads(expectations(crowd, measure, owner, only).unescape())
    assert set(row["of"]) == set(only)
    devices = [crowd.records["device"][id_] for id_ in only]
    ((words, first, name),) = typical_values(crowd, devices, measure["expect"])
    assert name == "missed-window"
    assert first is devices[0]
    assert "and 18 more" in words


def test_devices_with_the_same_causes_share_a_column(shipped_library: Library) -> None:
    def columns(library: Library) -> Find:
        return next(shown for _, _, shown in pages(library) if isinstance(shown, Find))

    few, many = columns(shipped_library), columns(many_alike("surface-contact", 20))
    assert len(many.columns) <= len(few.columns) + 1  # a copy may be left out of what the first is named for
    assert sum(map(len, many.columns)) == sum(map(len, few.columns)) + 20
    (crowd,) = (alike for alike in many.columns if len(alike) >= 20)
    assert many.label(crowd) == f"{crowd[0].name} and {len(crowd) - 1} alike"


def test_a_caution_is_told_in_full_once_on_a_page(shipped_library: Library) -> None:
    page = Page(shipped_library, "devices/surface-contact/install/")
    ladders, glass = (shipped_library.records["caution"][id_] for id_ in ("ladders", "glass"))
    assert [page.warned(one) for one in (ladders, glass, ladders, ladders)] == [False, False, True, True]
