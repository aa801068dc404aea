"""How each device class stands at an opening: what speaks for it and against it, what rules it out, what is open.

A sound contact in place stays, whatever could be fitted in its stead: the class that stands for it, and a transmitter
at its loop, come before all others. Its own hole is there already and its own label bears its gap, so what a profile
says of gap, material and holes is not held against it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from operator import attrgetter, itemgetter

from latchside.library.model import Library
from latchside.planning.conditions import Condition, Profile, Truth, book_of, profiles, truth
from latchside.planning.facts import Test, is_one_of
from latchside.planning.names import contacts
from latchside.planning.once import Once
from latchside.surveys.survey import Opening


@dataclass(frozen=True, eq=False)
class Standing:
    """One device class at one opening. An open condition comes with the fields that would tell.

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
        """What holds and means that it is never fitted there."""
        return tuple([one for one in self.avoid if one.rules_out])

    @Once
    def possible(self) -> bool:
        """It is used on such openings, and nothing that is known rules it out."""
        return self.listed and not self.ruling_out

    @Once
    def score(self) -> int:
        """What is known to speak for it, less what is known to speak against it."""
        against = sum([one.weight for one in self.avoid if not one.rules_out])
        return sum([one.weight for one in self.suits]) - against

    @Once
    def least(self) -> int:
        """The score if all that is not known turned out against it, short of ruling it out."""
        return self.score - sum(one.weight for one, _ in self.open_avoid if not one.rules_out)

    @Once
    def most(self) -> int:
        """The score if all that is not known turned out in its favour."""
        return self.score + sum(one.weight for one, _ in self.open_suits)

    @Once
    def could_fall(self) -> int:
        """How many conditions that are not known could yet rule it out."""
        return sum([one.rules_out for one, _ in self.open_avoid])

    @Once
    def rank(self) -> tuple[bool, bool, int, int, bool, str]:
        """Where it stands among others, the best first."""
        return not self.possible, not self.keeps, -self.score, self.could_fall, not self.profile.wired, self.profile.id


@lru_cache(maxsize=256)
def standings(opening: Opening, library: Library) -> tuple[Standing, ...]:
    """Every device class at an opening, the best first.

    What is possible comes before what is not, and what keeps a sound contact before what throws it away. Then the
    higher score wins. Of equal scores, first the one that fewer unanswered questions could rule out, then the wired
    one, which has no cell to change and no radio path to lose, then the first by id.
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
    """Picks the truths of the conditions of a profile, those for it first, from the truths of all."""
    numbers = [book_of(library).numbers[one] for one in (*profile.suits, *profile.avoid)]
    return itemgetter(*numbers) if len(numbers) > 1 else lambda truths: tuple(truths[one] for one in numbers)


@lru_cache(maxsize=8192)
def _stood(
    profile: Profile, listed: bool, truths: tuple[Truth, ...], *, keeps: bool = False, bare: tuple[Truth, ...] = ()
) -> Standing:
    """Many openings differ in what no condition tells apart: the same answers make the same standing."""
    avoid = (*profile.avoid, *_ALL_BARE) if bare else profile.avoid
    held, still = _held(profile.suits, truths[: len(profile.suits)])
    against, still_against = _held(avoid, (*truths[len(profile.suits) :], *bare))
    return Standing(profile, listed, held, against, still, still_against, keeps)


_Open = tuple[tuple[Condition, tuple[str, ...]], ...]


def _held(conditions: Sequence[Condition], truths: Sequence[Truth]) -> tuple[tuple[Condition, ...], _Open]:
    answers = [(one, truth) for one, truth in zip(conditions, truths, strict=True) if truth.holds is not False]
    held = tuple([one for one, truth in answers if truth.holds])
    return held, tuple([(one, truth.missing) for one, truth in answers if truth.holds is None])


_TO_THE_UNIT = frozenset({"cable", "cable-way", "cable-length", "distance", "way", "outer-wall"})
"""Facts of the way to the control unit, which a transmitter takes over from the contact on its loop."""
_OF_CONTACT = frozenset({
    "gap", "play", "gap-and-play", "step", "steel", "leaf-material", "frame-material", "drill", "fire-rated", "escape",
    "wish", "glazed", "rail-depth", "width", "hardware", "trip-room",
})  # fmt: skip
"""Facts of the place of a contact, which one that is in place has settled."""


@lru_cache(maxsize=256)
def on_loop(opening: Opening, library: Library) -> Standing | None:
    """The wired class whose new contact goes on the loop of a transmitter there; None where nothing tells.

    One that nothing speaks for is named only where no other is made for such an opening.
    """
    found = _wired(opening, library, _TO_THE_UNIT)
    listed = sum(one.listed for one in found)
    return next((one for one in found[:1] if one.possible and (one.suits or listed == 1)), None)


def new_contact(opening: Opening, library: Library) -> bool:
    """Some wired class may have a new contact fitted there, so far as is known."""
    return any(one.possible for one in _wired(opening, library, _TO_THE_UNIT))


def _stays(opening: Opening, library: Library) -> str | None:
    """The wired class that stands for a sound contact in place; None where there is none.

    Which class it is, nobody said. It is the one that would be fitted today, or the nearest to it: one that is made
    for such an opening, where there is any.
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
    """A class without what its profile says of these facts."""
    kept = [tuple(one for one in list_ if not one.fields & fields) for list_ in (profile.suits, profile.avoid)]
    return replace(profile, suits=kept[0], avoid=kept[1])


def _bare_truths(opening: Opening, library: Library) -> tuple[Truth, ...]:
    """A transmitter goes with the contacts of its loop: where none goes on without a hole, or none trips in time."""
    bare = [one.of(opening) for one in _BARE]
    late = not any(one.holds for one in bare) and _too_late(opening, library)
    return (*bare, truth(late))


def _too_late(opening: Opening, library: Library) -> bool:
    """The gap is too wide for what is made for such an opening, and what reaches farther lets its edge open too far."""
    wired = _wired(opening, library, _TO_THE_UNIT)
    wide = any(_GAP & cause.fields for one in wired if one.listed for cause in one.ruling_out)
    return wide and any("trip-room" in cause.fields for one in wired for cause in one.ruling_out)


_GAP = frozenset({"gap", "gap-and-play"})


def _bare(field: str, word: str, text: str) -> Condition:
    reason = "Every wired contact for its loop that is made for such an opening needs a hole or screws."
    tests: tuple[Test, ...] = (is_one_of(field, frozenset([word])),)
    return Condition(text, reason, tests, frozenset([field]), 1, rules_out=True)


_BARE = (
    _bare("fire-rated", "yes", "A fire-rated opening without a contact in place."),
    _bare("escape", "yes", "An opening on an escape way without a contact in place."),
    _bare("drill", "no", "A place that may not be drilled, without a contact in place."),
)


_LATE = Condition(
    "No contact for its loop.", "What reaches over this gap lets the edge open past its limit before it trips.",
    (), frozenset({"gap"}), 1, rules_out=True,
)  # fmt: skip
_ALL_BARE = (*_BARE, _LATE)


def contenders(found: Sequence[Standing]) -> tuple[Standing, ...]:
    """The best, and each other class that what is not known could still put before it."""
    possible = [one for one in found if one.possible]
    rivals = [one for one in possible if one.keeps == possible[0].keeps]
    return tuple(one for one in rivals if one is rivals[0] or one.most >= rivals[0].least)


def says_too_little(found: Sequence[Standing]) -> bool:
    """Nothing that is known speaks for the best class, another would do as well, and something could still tell."""
    rivals = contenders(found)
    return len(rivals) > 1 and not rivals[0].suits and any(one.open_suits or one.open_avoid for one in rivals)


def second_is_new(opening: Opening) -> bool:
    """A contact stays, and a second leaf or sash wants a new one."""
    return bool(opening.old_contact) and contacts(opening) > 1
