"""Where a text mentions terms of the library."""

from __future__ import annotations

import re
from functools import lru_cache

from latchside.library import Library, Record


@lru_cache(maxsize=20_000)
def mentions(library: Library, text: str) -> tuple[tuple[int, int, Record], ...]:
    """Where a text mentions terms; the same text stands on many pages."""
    names, pattern = _term_names(library)
    return tuple((m.start(), m.end(), names[_singular(m[0].lower(), names)]) for m in pattern.finditer(text))


@lru_cache(maxsize=4)
def _term_names(library: Library) -> tuple[dict[str, Record], re.Pattern[str]]:
    names = {term.name.lower(): term for term in library.of("term")}
    longest_first = sorted(names, key=len, reverse=True)
    words = "|".join(map(re.escape, longest_first)) or "(?!)"
    return names, re.compile(rf"(?<![\w-])(?:{words})s?(?![\w-])", re.IGNORECASE)


def _singular(word: str, names: dict[str, Record]) -> str:
    return word if word in names else word.removesuffix("s")
