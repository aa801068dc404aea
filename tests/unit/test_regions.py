"""Words and units by region: all stand on a page, and a text asks for a form by the word of any region."""

from __future__ import annotations

import pytest

from latchside.figures.words import in_both, in_words
from latchside.library import Library
from latchside.library.quantity import Quantity
from latchside.library.regions import REGION_OF, REGIONS, by_region, in_every_region
from latchside.pages.page import Page


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        (None, {"arm": ("north_america",), "set": ("united_kingdom", "continent")}),
        ("armed", {"armed": ("north_america",), "set": ("united_kingdom", "continent")}),
        ("Set", {"Arm": ("north_america",), "Set": ("united_kingdom", "continent")}),
        ("bolted", {}),
    ],
)
def test_a_form_is_asked_for_by_the_word_of_any_region(
    library: Library, asked: str | None, said: dict[str, tuple[str, ...]]
) -> None:
    word = library.find("word", "arm")
    assert word
    assert dict(by_region(word, asked)) == said


def test_a_page_holds_the_words_of_every_region(library: Library) -> None:
    shown = str(Page(library, "").words("Ask them to [[word/arm]] it."))
    assert 'data-of="north_america">arm<' in shown
    assert 'data-of="united_kingdom continent">set<' in shown


def test_what_has_no_markup_says_both(library: Library) -> None:
    word = library.find("word", "arm")
    assert word
    assert in_every_region(word, None) == "arm/set"
    assert Page(library, "").plain("Ask them to [[word/arm]] it.") == "Ask them to arm/set it."


@pytest.mark.parametrize(
    ("quantity", "text", "other"),
    [
        (Quantity("mm", "typical", 12), "12\u00a0mm", "0.47\u00a0in"),
        (Quantity("mm", "typical", 12, plus_minus=1), "12\u00a0mm ±1\u00a0mm", "0.47\u00a0in ±0.04\u00a0in"),
        (Quantity("m", "typical", low=2), "at least 2\u00a0m", "at least 6.6\u00a0ft"),
        (Quantity("in", "typical", 2), "2\u00a0in", "51\u00a0mm"),
        # a difference of 5 degrees Celsius is no 41 degrees Fahrenheit
        (Quantity("degC", "typical", 20, plus_minus=5), "20\u00a0°C ±5\u00a0°C", "68\u00a0°F ±5\u00a0°C"),
        (Quantity("V", "typical", 3), "3\u00a0V", None),
    ],
)
def test_a_quantity_in_each_system_by_itself(quantity: Quantity, text: str, other: str | None) -> None:
    """Converted by the inch of 25.4 mm and the foot of 0.3048 m."""
    shown = in_both(quantity)
    assert (shown.text, shown.other) == (text, other)
    assert shown.text.split(" ±")[0] in in_words(quantity)


def test_a_page_asks_for_no_region_that_a_word_lacks(shipped_library: Library) -> None:
    """What pages, switch and style sheet call the regions is what the records call them."""
    assert set(REGION_OF.values()) == set(REGIONS)
    for word in shipped_library.of("word"):
        assert all(set(REGIONS) == set(form) for form in word["forms"]), word.id
