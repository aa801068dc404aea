"""The few references a text may hold; everything else in a text is only text."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.library.text import Part, RecordLink, ValueLink, Words, plain, text_parts


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("[[term/reed]]", RecordLink("term", "reed", None, None)),
        ("[[term/reed|the reed]]", RecordLink("term", "reed", None, "the reed")),
        ("[[procedure/fit-cell#look]]", RecordLink("procedure", "fit-cell", "look", None)),
        ("[[procedure/fit-cell#look|that step]]", RecordLink("procedure", "fit-cell", "look", "that step")),
        ("[[card/meter|the card]]", RecordLink("card", "meter", None, "the card")),
        ("[[=push-time]]", ValueLink(None, "push-time")),
        ("[[=device/reach]]", ValueLink(("device", None), "reach")),
        ("[[=device/surface-contact/reach]]", ValueLink(("device", "surface-contact"), "reach")),
        ("[[=table/cells/low-2]]", ValueLink(("table", "cells"), "low-2")),
    ],
)
def test_reference(text: str, part: Part) -> None:
    assert list(text_parts(text)) == [part]
    assert list(text_parts(f"a {text}, b")) == [Words("a "), part, Words(", b")]
    assert list(text_parts(text + text)) == [part, part]


@pytest.mark.parametrize(
    "text",
    [
        "", "plain", "[term/reed]", "[[term]]", "[[term/]]", "[[/reed]]", "[[Term/reed]]", "[[term/Reed]]",
        "[[ term/reed ]]", "[[term /reed]]", "[[term/reed", "term/reed]]", "[[term/reed|]]", "[[term/reed|a|b]]",
        "[[term/reed|a]b]]", "[[term/-reed]]", "[[term/reed-]]", "[[term/re--ed]]", "[[term/reed#]]",
        "[[term/../reed]]", "[[=]]", "[[=Reach]]", "[[=a/b/c/d]]", "[[=reach|words]]", "[[= reach]]", "[[term/1st]]",
        "[[term/réed]]", "[[term/reed\n]]",
    ],
)  # fmt: skip
def test_only_text(text: str) -> None:
    assert [part for part in text_parts(text) if not isinstance(part, Words)] == []
    assert "".join(part.text for part in text_parts(text) if isinstance(part, Words)) == text


def test_inner_brackets() -> None:
    """The inner of two pairs is the reference; the outer brackets are text."""
    assert list(text_parts("[[[term/reed]]]")) == [Words("["), RecordLink("term", "reed", None, None), Words("]")]


def test_words_may_hold_anything_but_brackets_and_bars() -> None:
    assert list(text_parts("[[term/reed|<b> & {{ x }} # / =]]")) == [
        RecordLink("term", "reed", None, "<b> & {{ x }} # / =")
    ]


def test_plain_keeps_shown_words_only() -> None:
    assert plain("Fit the [[term/reed|reed]] at [[=gap]] by [[tool/drill]]").split() == [
        "Fit",
        "the",
        "reed",
        "at",
        "by",
    ]


@pytest.mark.parametrize("text", ["Fit the [[term/reed|reed]].", "Fit ([[term/reed|the]]) [[term/reed|reed]], now"])
def test_plain_adds_no_word(text: str) -> None:
    """Rules count words and look at their ends, so a sign after a link is not a word of its own."""
    shown = text.replace("[[term/reed|", "").replace("]]", "")
    assert plain(text).split() == shown.split()


def written(part: Part) -> str:
    if isinstance(part, Words):
        return part.text
    if isinstance(part, ValueLink):
        return "[[=" + "/".join(word for word in (*(part.owner or ()), part.name) if word) + "]]"
    return f"[[{part.kind}/{part.id}{f'#{part.step}' if part.step else ''}{f'|{part.words}' if part.words else ''}]]"


PIECES = st.sampled_from(
    ["[[", "]]", "[", "]", "|", "=", "#", "/", "term", "reed", "-", "a", " ", "\n", "é", "[[term/reed]]"]
)


@given(st.lists(PIECES, max_size=14).map("".join) | st.text())
def test_no_character_is_lost(text: str) -> None:
    assert "".join(written(part) for part in text_parts(text)) == text


def test_long_text_of_brackets_is_quick() -> None:
    """A text of the longest kind, all openings, must not make the pattern try every way."""
    text = "[[a/" * 50_000
    assert list(text_parts(text)) == [Words(text)]
