"""When an opening can be worked on: the hours at which people on site can do without it."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.messages import messages
from latchside.planning import question_words
from latchside.planning.at_opening import AtOpening
from latchside.planning.decides import effect
from latchside.planning.plan import Question
from latchside.surveys.survey import Opening, Survey

message = messages(__name__)
FIELD = "free"
BUSY = 40
"""Openings on a busy day from which a door is taken to be needed while it is worked on; common practice."""
_ORDER = effect("fixing", "").order
"""A question of hours decides as much as one of how something is fixed."""
_IN_DAY = {"morning": 0, "afternoon": 2, "closed": 3}


def in_day(opening: Opening) -> int:
    """The place of an opening within a day: what is free in the morning first, what is free after closing last."""
    return _IN_DAY.get(opening.free or "", 1)


def at_hours(opening: Opening) -> str | None:
    """When people can do without it, where that is not at any hour: `morning`, `afternoon` or `closed`."""
    return opening.free if opening.free in _IN_DAY else None


def told(opening: Opening) -> str | None:
    """When it is free, where that is not at any hour."""
    when = at_hours(opening)
    return message("free", when=when) if when else None


def hours_asked(survey: Survey, parts: list[AtOpening]) -> Iterator[Question]:
    """The question for each busy opening of a site where people work or live during the job."""
    if not survey.site.occupied:
        return
    for part in parts:
        one = part.opening
        if part.fitted and one.free is None and (one.openings_a_day or 0) >= BUSY:
            yield Question(one.id, FIELD, question_words.text(FIELD), message("decides"), _ORDER)
