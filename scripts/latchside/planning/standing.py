"""How each device class ranks at an opening: what speaks for it and against it, what rules it out, what is open.

A sound contact in place stays, whatever could be fitted instead: the class that stands for it, and a transmitter at
its loop, come before all others. Its hole exists and its own label tells its gap, so what a profile says of gap,
material and holes does not count against it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from operator import attrgetter, itemgetter

from latchside.library.model import Library
from latchside.messages import messages
from latchside.planning.conditions import Condition, Profile, Truth, book_of, profiles, truth
from latchside.planning.facts import Test, is_one_of
from latchside.planning.holes import NO_HOLE
from latchside.planning.names import contacts
from latchside.planning.once import Once
from latchside.surveys.survey import Opening

message = messages(__name__)


@dataclass(frozen=True, eq=False)
class Standing:
    """One device class at one opening. An open condition is one that is not known, with the fields that would tell.

    `keeps` says that a sound contact in place stays in use with it.
    """

    profile: Profile
    listed: bool
    suits: tuple[Condition, ...]
    avoid: tuple[Condition, ...]
    open_suits: tuple[tuple[Condition, tuple[str, ...]], ...]
    open_avoid: tuple[tuple[Condition, tuple[str, ...]], ...]
    keeps: bool = False

    @Once
    def ruling_out(self) -> tuple[Condition, ...]:
        """The conditions that hold and mean that it is never fitted there."""
        return tuple([one for one in self.avoid if one.rules_out])

    @Once
    def possible(self) -> bool:
        """Whether it is made for such openings and nothing that is known rules it out."""
        return self.listed and not self.ruling_out

    @Once
    def score(self) -> int:
        """The weight of what is known to speak for it, less what is known to speak against it."""
        against = sum([one.weight for one in self.avoid if not one.rules_out])
        return sum([one.weight for one in self.suits]) - against

    @Once
    def least(self) -> int:
        """The score if all that is not known turned out against it without ruling it out."""
        return self.score - sum(one.weight for one, _ in self.open_avoid if not one.rules_out)

    @Once
    def most(self) -> int:
        """The score if all that is not known turned out for it."""
        return self.score + sum(one.weight for one, _ in self.open_suits)

    @Once
    def could_fall(self) -> int:
        """How many conditions that are not known could still rule it out."""
        return sum([one.rules_out for one, _ in self.open_avoid])

    @Once
    def rank(self) -> tuple[bool, bool, int, int, bool, str]:
        """Its sort key among the other classes, the best first."""
        return not self.possible, not self.keeps, -self.score, self.could_fall, not self.profile.wired, self.profile.id


@lru_cache(maxsize=256)
def standings(opening: Opening, library: Library) -> tuple[Standing, ...]:
    """Every device class at an opening, the best first.

    A possible class comes before one that is not, and one that keeps a sound contact before one that throws it away.
    Then the higher score wins. Between equal scores: the one that fewer unanswered questions could rule out, then the
    wired one, which has no cell to change and no radio path to lose, then the first by id.
    """
    stays = _stays(opening, library)
    found = [_at(profile, opening, library, stays) for profile in profiles(library)]
    return tuple(sorted(found, key=_RANK))


_RANK = attrgetter("rank")


def _at(profile: Profile, opening: Opening, library: Library, stays: str | None) -> Standing:
    truths = book_of(library).truths(opening)
    listed = opening.kind in profile.kinds
    if stays is not None and (profile.id == stays or profile.transmits):
        rest = _without(profile, _OF_CONTACT)
        return _stood(rest, listed or not profile.transmits, _own(rest, library)(truths), keeps=True)
    bare = profile.transmits and not new_contact(opening, library)
    return _stood(profile, listed, _own(profile, library)(truths), bare=_bare_truths(opening, library) if bare else ())


@lru_cache(maxsize=128)
def _own(profile: Profile, library: Library) -> Callable[[Sequence[Truth]], tuple[Truth, ...]]:
    """Picks from the truths of all conditions those of one profile, what speaks for it first."""
    numbers = [book_of(library).numbers[one] for one in (*profile.suits, *profile.avoid)]
    return itemgetter(*numbers) if len(numbers) > 1 else lambda truths: tuple(truths[one] for one in numbers)


@lru_cache(maxsize=8192)
def _stood(
    profile: Profile, listed: bool, truths: tuple[Truth, ...], *, keeps: bool = False, bare: tuple[Truth, ...] = ()
) -> Standing:
    """One standing for all openings at which the conditions have the same truths."""
    avoid = (*profile.avoid, *_bare_conditions()) if bare else profile.avoid
    held, still = _held(profile.suits, truths[: len(profile.suits)])
    against, still_against = _held(avoid, (*truths[len(profile.suits) :], *bare))
    return Standing(profile, listed, held, against, still, still_against, keeps)


_Open = tuple[tuple[Condition, tuple[str, ...]], ...]


def _held(conditions: Sequence[Condition], truths: Sequence[Truth]) -> tuple[tuple[Condition, ...], _Open]:
    answers = [(one, truth) for one, truth in zip(conditions, truths, strict=True) if truth.holds is not False]
    held = tuple([one for one, truth in answers if truth.holds])
    return held, tuple([(one, truth.missing) for one, truth in answers if truth.holds is None])


_TO_THE_UNIT = frozenset({"cable", "cable-way", "cable-length", "distance", "way", "outer-wall"})
"""Facts of the way to the control unit, which the transmitter bridges for the contact on its loop."""
_OF_CONTACT = frozenset({
    "gap", "play", "gap-and-play", "step", "steel", "leaf-material", "frame-material", "drill", "fire-rated", "escape",
    "wish", "glazed", "rail-depth", "width", "hardware", "trip-room",
})  # fmt: skip
"""Facts of the place of a contact, which do not matter to one that is in place."""


def for_loop(opening: Opening, library: Library) -> tuple[Standing, ...]:
    """The wired classes as a new contact on the loop of a transmitter there, the best first."""
    return _wired(opening, library, _TO_THE_UNIT)


@lru_cache(maxsize=256)
def on_loop(opening: Opening, library: Library) -> Standing | None:
    """The wired class for a new contact on the loop of a transmitter there; None where it cannot be told.

    A class that nothing speaks for is named only where no other is possible.
    """
    possible = [one for one in for_loop(opening, library) if one.possible]
    return possible[0] if possible and (possible[0].suits or len(possible) == 1) else None


def new_contact(opening: Opening, library: Library) -> bool:
    """Whether a new contact of some wired class may be fitted there, as far as is known."""
    return any(one.possible for one in for_loop(opening, library))


def _stays(opening: Opening, library: Library) -> str | None:
    """The wired class that stands for a sound contact in place; None where there is no such contact.

    Nobody said which class it is. It counts as the one that would be fitted today, or else the nearest to it: one
    made for such an opening, where there is any.
    """
    if not opening.old_contact:
        return None
    if opening.override and any(one.wired and one.id == opening.override.device for one in profiles(library)):
        return opening.override.device
    new = on_loop(opening, library)
    found = [new] if new else _wired(opening, library, _TO_THE_UNIT | _OF_CONTACT)
    return next((one.profile.id for one in sorted(found, key=lambda one: (not one.listed, one.profile.holes))), None)


@lru_cache(maxsize=256)
def _wired(opening: Opening, library: Library, but: frozenset[str]) -> tuple[Standing, ...]:
    truths, kind = book_of(library).truths(opening), opening.kind
    found = [_stood(one, kind in one.kinds, _own(one, library)(truths)) for one in _wired_but(library, but)]
    return tuple(sorted(found, key=_RANK))


@lru_cache(maxsize=16)
def _wired_but(library: Library, but: frozenset[str]) -> tuple[Profile, ...]:
    return tuple(_without(profile, but) for profile in profiles(library) if profile.wired)


@lru_cache(maxsize=128)
def _without(profile: Profile, fields: frozenset[str]) -> Profile:
    """A class without the conditions of its profile that are about these facts."""
    kept = [tuple(one for one in list_ if not one.fields & fields) for list_ in (profile.suits, profile.avoid)]
    return replace(profile, suits=kept[0], avoid=kept[1])


def _bare_truths(opening: Opening, library: Library) -> tuple[Truth, ...]:
    """The truths of `_bare_conditions`: a transmitter needs a contact for its loop."""
    *no_hole, _ = _bare_conditions()
    truths = [one.of(opening) for one in no_hole]
    late = not any(one.holds for one in truths) and _too_late(opening, library)
    return (*truths, truth(late))


def _too_late(opening: Opening, library: Library) -> bool:
    """The gap is too wide for the classes made for such an opening, and a wide-gap class would trip too late."""
    wired = for_loop(opening, library)
    wide = any(_GAP & cause.fields for one in wired if one.listed for cause in one.ruling_out)
    return wide and any("trip-room" in cause.fields for one in wired for cause in one.ruling_out)


_GAP = frozenset({"gap", "gap-and-play"})


@cache
def _bare_conditions() -> tuple[Condition, ...]:
    """What rules out a transmitter where no contact is in place: no hole may be made for one, or none trips in time."""
    late = Condition(message("trips-late.text"), message("trips-late.reason"), (), frozenset({"gap"}), 1, True)
    return (*(_bare(field, word) for field, word in NO_HOLE.items()), late)


def _bare(field: str, word: str) -> Condition:
    tests: tuple[Test, ...] = (is_one_of(field, frozenset([word])),)
    return Condition(message(f"bare-{field}"), message("bare-reason"), tests, frozenset([field]), 1, rules_out=True)


def contenders(found: Sequence[Standing]) -> tuple[Standing, ...]:
    """The best class, and each other that could still come before it by what is not known."""
    possible = [one for one in found if one.possible]
    rivals = [one for one in possible if one.keeps == possible[0].keeps]
    return tuple(one for one in rivals if one is rivals[0] or one.most >= rivals[0].least)


def says_too_little(found: Sequence[Standing]) -> bool:
    """Whether nothing known speaks for the best class, another is as good, and an answer could still decide."""
    rivals = contenders(found)
    return len(rivals) > 1 and not rivals[0].suits and any(one.open_suits or one.open_avoid for one in rivals)


def second_is_new(opening: Opening) -> bool:
    """Whether a contact stays and the second leaf or sash needs a new one."""
    return bool(opening.old_contact) and contacts(opening) > 1
