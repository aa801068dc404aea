"""The open questions of a plan as they are put to a reader: what is asked alike at many openings is asked once."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from latchside.library.alike import alike
from latchside.planning.plan import Question


@dataclass(frozen=True)
class Asked:
    """One question, and what its answer decides, each with the ids of what it is asked of."""

    text: str
    decides: tuple[tuple[str, tuple[str, ...]], ...]


def asked(questions: Iterable[Question]) -> tuple[Asked, ...]:
    """Each question once, what decides most first; of those that decide as much, the one that is first asked."""
    groups = sorted(
        alike(questions, lambda one: one.text).items(), key=lambda group: min(one.order for one in group[1])
    )
    return tuple(
        Asked(text, tuple((why, tuple(one.about for one in same)) for why, same in _by_why(found)))
        for text, found in groups
    )


def by_part(questions: Sequence[Question]) -> dict[str, tuple[Asked, ...]]:
    """The same of the site, of the control unit, and, under no name, of all openings."""
    above = ("site", "control-unit")
    found = {part: asked(one for one in questions if one.about == part) for part in above}
    return {**found, "": asked(one for one in questions if one.about not in above)}


def _by_why(found: Iterable[Question]) -> Iterable[tuple[str, Sequence[Question]]]:
    return alike(found, lambda one: one.why).items()
