"""A zone's name as the keypad of the panel shows it, line by line."""

from __future__ import annotations

from dataclasses import dataclass
from textwrap import wrap

from latchside.library import Library
from latchside.planning.house import house_if_any
from latchside.planning.plan import Plan
from latchside.planning.short_names import Limit, limit_of


@dataclass(frozen=True)
class Shown:
    """The lines of a name, its letters, and whether all of it is shown."""

    lines: tuple[str, ...]
    letters: int
    fits: bool


@dataclass(frozen=True)
class Keypad:
    """What the keypad shows of a name; nothing is cut where neither the survey nor the house says."""

    limit: Limit | None

    @property
    def words(self) -> str:
        """The limit, for a reader."""
        return self.limit.words() if self.limit else "–"

    def shown(self, name: str) -> Shown:
        """A name on the keypad."""
        if self.limit is None:
            return Shown((name,), len(name), True)
        lines = wrap(name, self.limit.letters, break_on_hyphens=False)
        return Shown(tuple(lines), len(name), self.limit.fits(name))


def keypad(plan: Plan, library: Library) -> Keypad:
    """The keypad of the panel of a job."""
    house = house_if_any(library)
    return Keypad(limit_of(plan.survey.control_unit, house) if house else None)
