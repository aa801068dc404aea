"""The firm's own figures in place of those of the library: read from a file, checked, and put into the records."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import isfinite
from types import MappingProxyType
from typing import Any

from latchside.findings import START, Finding, did_you_mean, quoted
from latchside.library.model import Library
from latchside.messages import messages
from latchside.planning.house import TABLE
from latchside.read.yaml_text import Document, read_text

message = messages(__name__)
Path = tuple[str | int, ...]
Figures = Mapping[str, float]

_WHOLE = ("count", "month")
_MAY_BE_NONE = frozenset({
    "spare-percent", "spare-least", "cable-spare", "transmitter-cable", "day-over", "bag-minutes", "question-minutes",
    "contact-minutes", "ladder-minutes", "panel-minutes", "walk-test-minutes",
    "old-zone-minutes", "move-minutes", "sag-allowance", "make-margin",
})  # fmt: skip
"""Rules that may be zero: what they stand for is added, and then nothing is."""
_FAR = 20
"""How many times the figure of the library, or which part of it, is taken for a slip."""
_MOST_PERCENT = 90


@dataclass(frozen=True)
class Rule:
    """A house rule: the library's figure, and the range in which a firm's own is taken for what it says."""

    name: str
    label: str
    unit: str
    value: float
    low: float
    high: float
    whole: bool


def rules(library: Library) -> dict[str, Rule]:
    """The house rules of a library by name; none where it has no record of them."""
    record = library.find("table", TABLE)
    return {name: _rule(name, data) for name, data in (record["values"] if record else {}).items()}


def _rule(name: str, data: Mapping[str, Any]) -> Rule:
    value, unit = float(data["value"]), str(data["unit"])
    whole = unit in _WHOLE
    low = 0.0 if name in _MAY_BE_NONE else 1.0 if whole else value / _FAR
    high = float(_MOST_PERCENT) if unit == "%" else value * _FAR
    return Rule(name, str(data["label"]), unit, value, low, high, whole)


def with_own(library: Library, own: Figures) -> Library:
    """The library with a firm's own figures for some of its house rules."""
    record = library.find("table", TABLE)
    if not own or record is None:
        return library
    values = {name: {**data, "value": own[name]} if name in own else data for name, data in record["values"].items()}
    changed = replace(record, _data=MappingProxyType({**record.data, "values": MappingProxyType(values)}))
    tables = MappingProxyType({**library.records["table"], TABLE: changed})
    return replace(library, records=MappingProxyType({**library.records, "table": tables}))


def read_own(text: str, file: str, library: Library) -> tuple[dict[str, float], tuple[Finding, ...]]:
    """The figures in a file of house rules, and what is wrong with it.

    It has the `values` of the table of house rules in the same form: all of them, or those that differ.
    """
    document = read_text(text, file)
    values = document.value.get("values") if isinstance(document.value, dict) else None
    if document.findings or not isinstance(values, dict):
        words = message.finding("no-values", example="spare-percent")
        return {}, tuple(document.findings) or (Finding(file, START, "no-values", *words),)
    known = rules(library)
    wrong = [one for name, data in values.items() for one in _wrong(name, data, known, document, file)]
    if wrong:
        return {}, tuple(wrong)
    return {name: float(data["value"]) for name, data in values.items()}, ()


def _wrong(name: str, data: Any, known: Mapping[str, Rule], document: Document, file: str) -> Iterator[Finding]:
    def finding(code: str, *path: str, **values: Any) -> Finding:
        place = document.places.get(("values", name, *path)) or document.keys.get(("values", name)) or START
        return Finding(file, place, code, *message.finding(code, **values))

    rule = known.get(name)
    if rule is None:
        yield finding("unknown-rule", name=quoted(name), close=did_you_mean(name, known))
        return
    value = data.get("value") if isinstance(data, dict) else None
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
        yield finding("no-figure", name=name, unit=rule.unit)
        return
    if data.get("unit") != rule.unit:
        yield finding("other-unit", "unit", name=name, unit=rule.unit, found=quoted(data.get("unit")))
    elif rule.whole and value != int(value):
        yield finding("not-whole", "value", name=name, found=quoted(value))
    elif not rule.low <= value <= rule.high:
        low, high = f"{rule.low:g}", f"{rule.high:g}"
        yield finding("out-of-range", "value", name=name, found=quoted(value), low=low, high=high, unit=rule.unit)
