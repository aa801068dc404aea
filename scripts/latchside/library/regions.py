"""Words and units that differ by the reader's region: what stands on a page for each, and where none is chosen."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import partial
from typing import Any

from latchside.library.model import Record
from latchside.library.text import RecordLink

_WORD = re.compile(r"[A-Za-z]+")
REGIONS = ("north_america", "united_kingdom", "continent")
"""The regions, as a word record and the pages name them."""

REGION_OF: Mapping[str, str] = {
    "united-states": "north_america",
    "canada": "north_america",
    "united-kingdom": "united_kingdom",
    "europe": "continent",
}
"""The region whose words and units hold at a site, by the region that its survey names."""


def form_of(word: Record, asked: str | None) -> Mapping[str, Any] | None:
    """The form of a word that a text asks for by any of its three words; the first where it asks for none.

    None where the record has no such form.
    """
    if asked is None:
        return word["forms"][0]  # type: ignore[no-any-return]
    small = asked.lower()
    return next((form for form in word["forms"] if small in (form[region].lower() for region in REGIONS)), None)


def by_region(word: Record, asked: str | None) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Each of the different words, with the regions that say it; one that is asked for with a capital has one.

    Empty where the record has no such form.
    """
    said: dict[str, list[str]] = {}
    form = form_of(word, asked) or {}
    for region in REGIONS if form else ():
        text = form[region]
        said.setdefault(text[:1].upper() + text[1:] if asked and asked[:1].isupper() else text, []).append(region)
    return tuple((text, tuple(regions)) for text, regions in said.items())


def named_in(name: str, words: Iterable[Record], region: str | None) -> str:
    """A whole name, such as that of a tool, as a region says it.

    Where no word record has it, it stays as it is but for words within it that are only spelled otherwise there.
    """
    spelled = name
    for word in words if region in REGIONS else ():
        for text, regions in by_region(word, name):
            if region in regions:
                return text
        if word.get("spelling"):
            spelled = _WORD.sub(partial(_spelled, word, region), spelled)
    return spelled


def _spelled(word: Record, region: str | None, found: re.Match[str]) -> str:
    here = (text for text, regions in by_region(word, found[0]) if region in regions)
    return next(here, found[0])


def told(link: RecordLink, target: Record | None) -> str:
    """What a link itself says where it can lead nowhere: the words it was given; of a word by region, all of them.

    Empty where it leaves that to the name of its target.
    """
    return in_every_region(target, link.words) if target and link.kind == "word" else link.words or ""


def in_every_region(word: Record, asked: str | None) -> str:
    """The words of all regions, for places that know no reader: `arm/set`."""
    return "/".join(text for text, _ in by_region(word, asked)) or asked or word.name
