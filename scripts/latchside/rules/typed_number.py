"""Numbers come by reference."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.figures.units import symbol
from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import written
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas import Schemas

message = messages(__name__)
CODE = "typed-number"
_ALSO = (
    "km", "inch", "inches", "feet", "yd", "g", "lb", "amp", "amps", "Hz", "kHz", "GHz", "sec", "secs", "mins", "hr",
    "hrs", "week", "weeks", "degree", "degrees", "meter", "meters", "AT", "ampere-turns",
)  # fmt: skip
"""Unit words that no value uses, and other spellings of those that do."""
_NOT = ("in", "")
""""in" is a word of every sentence."""
_OWN_WORDS = {"source": {"title", "name", "publisher", "edition", "taken"}}


def check(library: Library) -> Iterator[Finding]:
    """No text holds digits followed by a known unit."""
    typed = _pattern(library.schemas)
    for record in library:
        for path, text, sort in library.texts(record):
            if sort == "line" or path[0] in _OWN_WORDS.get(record.kind.id, ()):
                continue
            for match in filter(None, map(typed.search, written(text))):
                yield record.finding(CODE, path, *message.finding("typed", number=match[0]))


def _pattern(schemas: Schemas) -> re.Pattern[str]:
    forms = set(_ALSO)
    for unit, word in schemas.words("unit").items():
        forms |= {unit, symbol(unit), word, f"{word}s"}
    units = "|".join(re.escape(form) for form in sorted(forms - set(_NOT), key=lambda form: (-len(form), form)))
    number = r"\d+(?:[.,]\d+)*"
    start = r"(?:(?<![\w.-])|(?<![\w.])[-\u2212])"
    return re.compile(rf"{start}{number}(?:\s*(?:to|-|–)\s*{number})?[\s\u00a0-]?(?:{units}|per ?cent)(?!\w)")


RULE = Rule(CODE, check)
