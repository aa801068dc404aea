"""How each device class stands at an opening: what speaks for it and against it, what rules it out, what is open."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

from latchside.jobs.conditions import Condition, Profile, profiles
from latchside.jobs.survey import Opening
from latchside.library.model import Library


@dataclass(frozen=True)
class Standing:
    """One device class at one opening. An open condition comes with the fields that would tell."""

    profile: Profile
    listed: bool
    suits: tuple[Condition, ...]
    avoid: tuple[Condition, ...]
    open_suits: tuple[tuple[Condition, tuple[str, ...]], ...]
    open_avoid: tuple[tuple[Condition, tuple[str, ...]], ...]

    @cached_property
    def ruling_out(self) -> tuple[Condition, ...]:
        """What holds and means that it is never fitted there."""
        return tuple(one for one in self.avoid if one.rules_out)

    @property
    def possible(self) -> bool:
        """It is used on such openings, and nothing that is known rules it out."""
        return self.listed and not self.ruling_out

    @cached_property
    def score(self) -> int:
        """What is known to speak for it, less what is known to speak against it."""
        against = sum(one.weight for one in self.avoid if not one.rules_out)
        return sum(one.weight for one in self.suits) - against

    @property
    def least(self) -> int:
        """The score if all that is not known turned out against it, short of ruling it out."""
        return self.score - sum(one.weight for one, _ in self.open_avoid if not one.rules_out)

    @property
    def most(self) -> int:
        """The score if all that is not known turned out in its favour."""
        return self.score + sum(one.weight for one, _ in self.open_suits)

    @property
    def could_fall(self) -> int:
        """How many conditions that are not known could yet rule it out."""
        return sum(one.rules_out for one, _ in self.open_avoid)


@lru_cache(maxsize=1024)
def standings(opening: Opening, library: Library) -> tuple[Standing, ...]:
    """Every device class at an opening, the best first.

    What is possible comes before what is not. Among the possible the higher score wins. Of equal scores, first the one
    that fewer unanswered questions could rule out, then the wired one, which has no cell to change and no radio path to
    lose, then the first by id.
    """
    found = (_standing(profile, opening) for profile in profiles(library))
    return tuple(sorted(found, key=_rank))


def _rank(one: Standing) -> tuple[bool, int, int, bool, str]:
    return not one.possible, -one.score, one.could_fall, not one.profile.wired, one.profile.id


def _standing(profile: Profile, opening: Opening) -> Standing:
    listed = opening.kind in profile.kinds
    suits, open_suits = _held(profile.suits, opening)
    avoid, open_avoid = _held(profile.avoid, opening)
    return Standing(profile, listed, suits, avoid, open_suits, open_avoid)


_Open = tuple[tuple[Condition, tuple[str, ...]], ...]


def _held(conditions: tuple[Condition, ...], opening: Opening) -> tuple[tuple[Condition, ...], _Open]:
    answers = [(one, one.of(opening)) for one in conditions]
    held = tuple(one for one, truth in answers if truth.holds)
    return held, tuple((one, truth.missing) for one, truth in answers if truth.holds is None)


_TO_THE_UNIT = {"cable", "cable-way", "cable-length", "distance", "way", "outer-wall"}
"""Facts of the way to the control unit, which a transmitter takes over from the contact on its loop."""


@lru_cache(maxsize=1024)
def on_loop(opening: Opening, library: Library) -> Standing | None:
    """The wired class whose contact goes on the loop of a transmitter there; None where nothing tells.

    One that nothing speaks for is named only where no other is made for such an opening.
    """
    near = (_near(profile) for profile in profiles(library) if profile.wired)
    found = sorted((_standing(profile, opening) for profile in near), key=_rank)
    listed = sum(one.listed for one in found)
    return next((one for one in found[:1] if one.possible and (one.suits or listed == 1)), None)


def _near(profile: Profile) -> Profile:
    """A class without what its profile says of the way to the control unit."""
    kept = [tuple(one for one in list_ if not one.fields & _TO_THE_UNIT) for list_ in (profile.suits, profile.avoid)]
    return replace(profile, suits=kept[0], avoid=kept[1])


def contenders(found: Sequence[Standing]) -> tuple[Standing, ...]:
    """The best, and each other class that what is not known could still put before it."""
    possible = [one for one in found if one.possible]
    return tuple(one for one in possible if one is possible[0] or one.most >= possible[0].least)


def says_too_little(found: Sequence[Standing]) -> bool:
    """Nothing that is known speaks for the best class, another would do as well, and something could still tell."""
    rivals = contenders(found)
    return len(rivals) > 1 and not rivals[0].suits and any(one.open_suits or one.open_avoid for one in rivals)
