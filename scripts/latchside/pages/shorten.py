"""Less of what is long: a text by its first sentence, many names by the first of them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from latchside.messages import messages

message = messages(__name__)

MANY = 4
"""The most names that are given in full."""

SHORT = 60
"""The most words of a text that stands ahead of a table as a whole."""

_SENTENCE = re.compile(r"(.+?[.?!])(?:\s|$)", re.DOTALL)


def first_sentence(text: str) -> str:
    """The text up to the end of its first sentence."""
    sentence = _SENTENCE.match(text)
    return sentence[1] if sentence else text


def lead(text: str) -> tuple[str, str]:
    """What stands ahead of a table, and what behind it: a short text ahead, of a long one its first sentence."""
    first = text if len(text.split()) <= SHORT else first_sentence(text)
    return first, text[len(first) :].strip()


def some(names: Sequence[str]) -> str:
    """All of a few names; the first of many, and how many more there are."""
    few = names if len(names) <= MANY else names[: MANY - 1]
    more = len(names) - len(few)
    return message("and-more", names=", ".join(few), more=more) if more else ", ".join(few)
