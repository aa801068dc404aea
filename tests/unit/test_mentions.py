"""Terms in running text: a word with two senses links only where it means the term."""

from __future__ import annotations

from html import unescape

import pytest

from latchside.library import Library
from latchside.pages.mentions import mentions
from latchside.pages.page import Page


def linked(library: Library, text: str) -> list[tuple[str, str]]:
    return [(text[start:end], term.id) for start, end, term in mentions(library, text)]


@pytest.mark.parametrize(
    ("text", "never"),
    [
        ("Set new holes beside the old ones.", "set"),
        ("The layout is set by the receiving equipment.", "set"),
        ("They are the point of contact for the site.", "contact"),
        ("Contact the customer before the visit.", "contact"),
        ("Both faces are in contact.", "contact"),
        ("Keep the battery away from heat.", "keep"),
        ("It keeps its margin.", "keep"),
        ("A pull does not reach the terminals.", "reach"),
        ("Keep batteries out of reach of children.", "reach"),
        ("Restore every cover.", "restore"),
        ("Seal every hole with the material of the wall.", "seal"),
        ("The fire barrier has its own seal.", "seal"),
        ("Such a leaf plays and knocks.", "play"),
        ("The voltage sags under load.", "sag"),
        ("The people on site latch it themselves.", "latch"),
        ("Unset the system.", "unset"),
        ("Enrol the device anew.", "enrol"),
        ("The resistor was left out.", "zone-omit"),
        ("Some sensors rest after a report.", "rest-time"),
        ("Lead the new length in a loop wide enough not to kink.", "loop"),
        ("Work on opening the box with care.", "opening"),
        ("The voltage falls under the low threshold.", "threshold"),
        ("It reports interference with the equipment.", "interference"),
    ],
)
def test_another_sense_never_links(text: str, never: str, shipped_library: Library) -> None:
    assert never not in [term for _, term in linked(shipped_library, text)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("The contact is on the frame.", ("contact", "contact")),
        ("Two wired contacts share it.", ("contacts", "contact")),
        ("No chime sounds, because the system is set.", ("set", "set")),
        ("The latch is fully in its keep.", ("keep", "keep")),
        ("The gap is wider than the make distance.", ("make distance", "reach")),
        ("Alarm and restore stand in the log.", ("restore", "restore")),
        ("Look at latch and seal.", ("seal", "seal")),
        ("No zone left out.", ("left out", "zone-omit")),
        ("Measure the gap.", ("gap", "gap")),
        ("Two leaves, each with a magnet of its own.", ("magnet", "magnet")),
    ],
)
def test_the_term_itself_links_by_its_own_name(text: str, found: tuple[str, str], shipped_library: Library) -> None:
    assert found in linked(shipped_library, text)


def test_one_phrase_may_hold_two_terms(shipped_library: Library) -> None:
    assert linked(shipped_library, "Adjust keep or seal.") == [("keep", "keep"), ("seal", "seal")]
    assert linked(shipped_library, "The gap and play together.") == [("gap", "gap"), ("play", "play")]


def test_a_mark_in_the_text_links_always(shipped_library: Library) -> None:
    shown = Page(shipped_library, "faults/x/").text("[[term/enrol|Enrol]] the device.")
    assert unescape(shown) == '<a href="../../terms/#enrol">Enrol</a> the device.'
