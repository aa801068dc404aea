"""The first screens answer: how many words a page shows before anything is opened, at most, by its kind."""

from __future__ import annotations

import re

import pytest
from lxml.html import HtmlElement

# The address of a page of the kind, and the most words in view on it.
CAPS = {
    "finding a fault": (r"faults/", 1500),
}
NOT_IN_VIEW = {"script", "style", "template", "noscript", "svg", "dialog"}


def in_view(element: HtmlElement) -> str:
    """The text that a reader sees without opening anything; of what is folded, its summary."""
    if element.tag in NOT_IN_VIEW or element.get("hidden") is not None or "ls-print" in element.classes:
        return ""
    folded = element.tag == "details" and element.get("open") is None
    text = "" if folded else element.text or ""
    for child in element:
        if isinstance(child.tag, str) and (not folded or child.tag == "summary"):
            text += f" {in_view(child)}"
        if not folded:
            text += f" {child.tail or ''}"
    return text


@pytest.mark.parametrize(("pattern", "most"), CAPS.values(), ids=CAPS)
def test_a_page_shows_few_words_before_anything_is_opened(
    articles: dict[str, HtmlElement], pattern: str, most: int
) -> None:
    counted = {
        address: len(in_view(article).split())
        for address, article in articles.items()
        if re.fullmatch(pattern, address)
    }
    assert counted, pattern
    assert not {address: words for address, words in counted.items() if words > most}
