"""Where a text mentions terms of the library: by a name that means one thing, or in a phrase in which it does.

A word with two senses, or one that is a verb elsewhere (*set new holes*, *point of contact*), links by the phrases its
term lists under `links_as`, and by nothing else but a mark in the text.
"""

from __future__ import annotations

import re
from functools import lru_cache

from latchside.library import Library, Record
from latchside.reads import EVERY, note, noted_instead

NAMES = tuple(("term", EVERY, name) for name in ("name", "links_as"))


def mentions(library: Library, text: str) -> tuple[tuple[int, int, Record], ...]:
    """Where a text mentions terms. Of a phrase, the name in it alone."""
    note(*NAMES)
    return _mentions(library, text)


@lru_cache(maxsize=20_000)  # the same text stands on many pages
def _mentions(library: Library, text: str) -> tuple[tuple[int, int, Record], ...]:
    names, pattern = _term_names(library)
    return tuple((m.start(), m.end(), names[_singular(m[0], names)]) for m in pattern.finditer(_small(text)))


@lru_cache(maxsize=4)
def _term_names(library: Library) -> tuple[dict[str, Record], re.Pattern[str]]:
    with noted_instead(*NAMES):
        return _read_names(library)


def _read_names(library: Library) -> tuple[dict[str, Record], re.Pattern[str]]:
    names = {term.name.lower(): term for term in library.of("term")}
    words: dict[tuple[str, str], str] = {}
    for term in library.of("term"):
        name = term.name.lower()
        if term.get("links_as") is None:
            words[name, name] = f"{re.escape(name)}s?"
        for phrase in term.listed("links_as"):
            words[phrase.lower(), name] = _in_phrase(phrase.lower(), name)
            if name not in phrase.lower():
                names[phrase.lower()] = term
    longest_first = "|".join(words[key] for key in sorted(words, key=lambda key: (-len(key[0]), key))) or "(?!)"
    return names, re.compile(rf"(?<![\w-])(?:{longest_first})(?![\w-])")


def _small(text: str) -> str:
    """A text in small letters, each in its place, so that the pattern need not mind their case."""
    small = text.lower()
    return small if len(small) == len(text) else "".join(low if len(low := one.lower()) == 1 else one for one in text)


def _in_phrase(phrase: str, name: str) -> str:
    """A pattern for the name where it stands in a phrase; for the whole phrase where the name is not in it."""
    inside = re.search(rf"(?<![\w-]){re.escape(name)}s?(?![\w-])", phrase)
    if inside is None:
        return re.escape(phrase)
    before, after = phrase[: inside.start()], phrase[inside.end() :]
    behind = rf"(?<=\b{re.escape(before)})" if before else ""
    ahead = rf"(?={re.escape(after)}\b)" if after else ""
    return f"{behind}{re.escape(inside[0])}{ahead}"


def _singular(word: str, names: dict[str, Record]) -> str:
    return word if word in names else word.removesuffix("s")
