"""The answers of one fact of an opening that choosing may tell apart, each with what the conditions then say.

Many answers make no difference to any condition: of those that the conditions answer alike, the first is enough. Which
these are hangs on few other facts of the opening, so they are worked once for all openings that have these alike.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import Any

from latchside.library.model import Library
from latchside.planning.answers import Field
from latchside.planning.conditions import Condition, Truth, book_of, truth
from latchside.planning.looked_at import told
from latchside.surveys.survey import Opening

BY_ITSELF = frozenset(
    {"old_contact", "passive_leaf", "upper_sash", "loose_lid", "fire_rated", "escape", "drill", "wish"}
)
"""Facts that choosing may read by themselves; all others it reads through the conditions of the profiles."""
_MOST = 2_000
_PARTNER = {"gap": "play_mm", "play": "gap_mm"}
"""Facts that share the limits for their sum."""


class Tried:
    """The answers of a field that are tried. `numbers` are the conditions that read it."""

    def __init__(self, field: Field, library: Library) -> None:
        book = book_of(library)
        self._field = field
        self._all = field.attribute in BY_ITSELF
        self.numbers = book.reading(field.attribute)
        self._columns = [_Column(book.conditions[one], field.attribute) for one in self.numbers]

    def at(self, opening: Opening) -> Iterable[tuple[Any, tuple[Truth, ...]]]:
        """The answers that are tried at an opening that tells none, each with the truths of these conditions."""
        if not self._columns:
            return [(value, ()) for value in self._field.choosing] if self._all else ()
        partner = getattr(opening, _PARTNER[self._field.name]) if self._field.name in _PARTNER else None
        values = (getattr(opening, self._field.attribute), *self._values(partner))
        rows = zip(*[one.at(opening, values, partner) for one in self._columns], strict=True)
        if self._all:
            return list(zip(values, rows, strict=True))[1:]
        first = dict[tuple[Truth, ...], Any]()
        for value, truths in zip(values, rows, strict=True):
            first.setdefault(truths, value)
        return [(value, truths) for truths, value in first.items()][1:]

    def _values(self, partner: float | None) -> tuple[Any, ...]:
        """The answers that some condition may tell apart."""
        choosing = self._field.choosing
        return (*choosing, *(one - partner for one in choosing if one > partner)) if partner else choosing


class _Column:
    """What one condition says of each answer. It reads few facts, so its column is met again at many openings."""

    def __init__(self, condition: Condition, attribute: str) -> None:
        self._condition, self._attribute = condition, attribute
        self._known: dict[Any, tuple[Truth, ...]] = {}

    def at(self, opening: Opening, values: tuple[Any, ...], partner: float | None) -> tuple[Truth, ...]:
        facts = (self._condition.read(opening), partner)
        found = self._known.get(facts)
        if found is None:
            if len(self._known) >= _MOST:
                self._known.clear()
            found = self._known[facts] = self._worked(opening, values)
        return found

    def _worked(self, opening: Opening, values: tuple[Any, ...]) -> tuple[Truth, ...]:
        if self._condition.fails_without(self._attribute, opening):
            return (truth(False),) * len(values)
        return tuple([self._condition.of(told(opening, self._attribute, value)) for value in values])


@lru_cache(maxsize=256)
def tried(field: Field, library: Library) -> Tried:
    """The answers of a field of an opening that are tried."""
    return Tried(field, library)
