"""Less of what is long: a text by its first sentence, many names by the first of them."""

from __future__ import annotations

import re
from collections.abc import Sequence

MANY = 4
"""How many names are said in one line."""

_SENTENCE = re.compile(r"(.+?[.?!])(?:\s|$)", re.DOTALL)


def first_sentence(text: str) -> str:
    """The text up to the end of its first sentence."""
    found = _SENTENCE.match(text)
    return found[1] if found else text


def some(names: Sequence[str]) -> str:
    """All of a few names; the first of many, and how many more there are."""
    few = names if len(names) <= MANY else names[: MANY - 1]
    more = len(names) - len(few)
    return f"{', '.join(few)} and {more} more" if more else ", ".join(few)
