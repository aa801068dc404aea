"""The first screens answer: how many words a page shows before anything is opened, at most, by its kind."""

from __future__ import annotations

import re
from copy import deepcopy

import pytest
from lxml.html import HtmlElement

from latchside.library import Library

# The address of a page of the kind, and the most words in view on it.
CAPS = {
    "home": (r"", 250),
    "on site": (r"on-site/", 500),
    "device": (r"devices/[a-z-]+/", 600),
    "installation": (r"devices/[a-z-]+/install/", 700),
    "stage": (r"devices/[a-z-]+/(?!install/)[a-z-]+/", 1500),
    "procedure": (r"procedures/[a-z-]+/", 1500),
    "the list of faults": (r"faults/", 700),
    "another list": (r"(?:procedures|checklists|devices|cautions|figures|tables|words|jobs)/", 600),
    "the terms": (r"terms/", 2200),
    "tools": (r"tools/", 600),
    "sources": (r"sources/", 900),
    "finding a fault": (r"faults/find/", 1500),
    "a fault": (r"faults/(?!find/)[a-z-]+/", 900),
    "the list of figures": (r"figures/", 250),
    "a figure": (r"figures/[a-z-]+/", 250),
    "a checklist of all devices": (r"checklists/[a-z-]+/", 1200),
}
ONE_DEVICE = 600
"""The most words of a checklist once the device is chosen: the items of the others are gone then."""
HERE = {"united_kingdom", "metric"}
NOT_IN_VIEW = {"script", "style", "template", "noscript", "svg", "dialog"}


def in_view(element: HtmlElement) -> str:
    """The text that a reader in one region sees without opening anything; of what is folded, its summary."""
    if element.tag in NOT_IN_VIEW or element.get("hidden") is not None or {"ls-print", "ls-or"} & set(element.classes):
        return ""
    if element.get("data-of") and not HERE & set(element.get("data-of", "").split()):
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


def for_one(article: HtmlElement, device: str) -> HtmlElement:
    """A checklist as its script shows it for a device: without the items, and the points, of others."""
    shown = deepcopy(article)
    for point in shown.find_class("ls-point"):
        for item in point.xpath(".//li[@data-only]"):
            if device not in item.get("data-only").split():
                item.drop_tree()
        if not point.find_class("ls-item"):
            point.drop_tree()
    for only in shown.find_class("ls-only"):
        only.drop_tree()
    return shown


def test_a_checklist_shows_few_words_once_its_device_is_chosen(
    articles: dict[str, HtmlElement], shipped_library: Library
) -> None:
    counted = {
        (checklist.id, device.id): len(in_view(for_one(articles[f"checklists/{checklist.id}/"], device.id)).split())
        for checklist in shipped_library.of("checklist")
        for device in shipped_library.referring("checklist", checklist.id, "device")
    }
    assert len(counted) > 50
    assert not {key: words for key, words in counted.items() if words > ONE_DEVICE}
