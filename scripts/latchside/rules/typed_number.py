"""Numbers come by reference."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import Words, parts
from latchside.rules.rule import Rule

CODE = "typed-number"
_UNITS = (
    "mm|cm|m|km|inch|inches|ft|foot|feet|yd|mm2|mm²|AWG|kg|g|lb|N|V|mV|kV|volts?|A|mA|µA|uA|amps?|mAh|Ah|W|mW|watts?|"
    "ohms?|Ω|kΩ|MΩ|kohm|mT|T|tesla|Hz|kHz|MHz|GHz|dB|dBm|dBi|ms|s|sec|secs|seconds?|min|mins|minutes?|h|hrs?|hours?|"
    "days?|weeks?|months?|years?|°C|°F|degrees?|%|per cent|percent|metres?|meters?|millimetres?|centimetres?|"
    "kilograms?|AT|ampere-turns?|rungs?"
)
_TYPED = re.compile(rf"(?<![\w.-])\d+(?:[.,]\d+)?(?:\s*(?:to|-|–)\s*\d+(?:[.,]\d+)?)?[\s\u00a0-]?(?:{_UNITS})(?![\w])")
_OWN_WORDS = {"source": {"title", "name", "publisher", "edition", "taken"}}


def check(library: Library) -> Iterator[Finding]:
    """No text holds digits followed by a known unit."""
    for record in library:
        for path, text, sort in library.texts(record):
            if sort == "line" or path[0] in _OWN_WORDS.get(record.kind.id, ()):
                continue
            for part in parts(text):
                match = _TYPED.search(part.text) if isinstance(part, Words) else None
                if match:
                    yield record.finding(
                        CODE, path, f'"{match[0]}" typed in text', "a reference such as [[=name]] to a value",
                        "Add it under values and refer to it.",
                    )  # fmt: skip


RULE = Rule(CODE, "A number with a unit is never typed in text; it comes by reference from a value.", check)
