"""Makes pieces of work, with the minutes of the firm's table."""

from __future__ import annotations

from collections.abc import Sequence

from latchside.library.model import Library
from latchside.messages import Message, messages, within
from latchside.planning.house import House
from latchside.planning.plan import Stage
from latchside.planning.times import Span, WorkTimes

message = messages(__name__)


class Clock:
    """Minutes and names of procedures."""

    def __init__(self, library: Library, house: House) -> None:
        self._library, self._house = library, house
        self._times = WorkTimes(library)

    def of(self, procedure: str) -> Span:
        """The minutes of a procedure."""
        return self._times.of(procedure)

    def name(self, procedure: str) -> str:
        """Its name, or its id where it has no sound record."""
        record = self._library.find("procedure", procedure)
        return record.name if record else procedure

    def procedures(self, ids: Sequence[str]) -> Message:
        """The names of procedures in a row, the first with its capital."""
        first, *others = [self.name(id_) for id_ in ids]
        return message("procedures", names="; ".join([first, *map(within, others)]))


def span_of(stage: Stage) -> Span:
    """The minutes of a piece of work."""
    return Span(stage.low, stage.minutes, stage.high)


def stage_of(stage: str, about: str, words: str, span: Span, procedures: tuple[str, ...]) -> Stage:
    """A piece of work in whole minutes."""
    whole = span.whole()
    return Stage(stage, about, words, whole.usual, procedures, whole.low, whole.high)
