"""The free positions of the panel, weighed after every opening was chosen for by its own facts.

While they suffice nothing changes. Where they do not, the cheapest change comes first, and each is named with its
reason: two contacts of one opening share a loop; a wired opening gets a transmitter at its loop where radio can do; a
radio opening is wired where there is a way for a cable. What is still left over is told, with what gives it a position.
A choice of the lead is never changed, and a number of positions that nobody told limits nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from latchside.library.model import Library
from latchside.planning.at_opening import AtOpening
from latchside.planning.choose import instead
from latchside.planning.plan import Choice, Problem, Verdict
from latchside.planning.standing import Standing, standings
from latchside.surveys.survey import ControlUnit, Opening

WIRED, RADIO = "wired", "radio"
_RANK: Mapping[Verdict | None, int] = {"good": 0, "none": 0, "test on site": 1, None: 1}
_USES = ("other", None, "on-route", "entry-route")
"""Uses of an opening, the one that goes without a position first."""


@dataclass(frozen=True)
class Wanted:
    """An opening, its spoken name, and the choice by its own facts."""

    opening: Opening
    spoken: str
    choice: Choice


Judge = Callable[[Opening, Choice], Mapping[str, Verdict]]
"""The verdict of each figure of an opening with a choice, by the id of the figure: the worst of several."""


def assigned(
    wanted: Sequence[Wanted], unit: ControlUnit, library: Library, judge: Judge
) -> tuple[tuple[Choice, ...], tuple[Problem, ...]]:
    """The choices with the positions weighed, in the same order, and what stands against them."""
    board = _Board(wanted, unit, library)
    if not board.short(WIRED) and not board.short(RADIO):
        return tuple(board.choices), ()
    why = {link: board.why(link) for link in (WIRED, RADIO)}
    _share(board, why[WIRED])
    _to_radio(board, judge, why[WIRED])
    _to_wire(board, judge, why[RADIO])
    _share_radio(board, why[RADIO])
    left = {link: _left_over(board, link) for link in (WIRED, RADIO)}
    for indices in left.values():
        for index in indices:
            board.choices[index] = replace(board.choices[index], lacks=True)
    return tuple(board.choices), tuple(_problems(board, left))


class _Board:
    """The choices as they stand, and the zones that they take."""

    def __init__(self, wanted: Sequence[Wanted], unit: ControlUnit, library: Library) -> None:
        self.wanted, self.library = wanted, library
        self.choices = [one.choice for one in wanted]
        self.free = {WIRED: unit.wired_positions, RADIO: unit.radio_positions}
        self.taken = [self._takes(index) for index in range(len(wanted))]
        self.used = {link: sum(zones for one, zones in self.taken if one == link) for link in (WIRED, RADIO)}

    def at(self, index: int) -> AtOpening:
        return _at(self.wanted[index].opening, self.choices[index], self.library)

    def _takes(self, index: int) -> tuple[str, int]:
        at = self.at(index)
        return (WIRED if at.wired else RADIO), at.zones

    def short(self, link: str) -> int:
        """Zones for which there is no position."""
        free = self.free[link]
        return 0 if free is None else max(0, self.used[link] - free)

    def room(self, link: str) -> float:
        """Positions that are left."""
        free = self.free[link]
        return float("inf") if free is None else free - self.used[link]

    def put(self, index: int, choice: Choice) -> None:
        """Another choice in the place of one."""
        link, zones = self.taken[index]
        self.used[link] -= zones
        self.choices[index] = choice
        self.taken[index] = link, zones = self._takes(index)
        self.used[link] += zones

    def movable(self, link: str) -> Iterator[int]:
        """The openings on a link that nobody chose for by hand, the last of the walk first."""
        for index in reversed(range(len(self.wanted))):
            if self.taken[index][0] == link and self.taken[index][1] and not self.wanted[index].opening.override:
                yield index

    def why(self, link: str) -> str:
        """What is short, in words."""
        return f"The panel has {_count(self.free[link] or 0, link)} for {self.used[link]} {link} zones of this job"


def _at(opening: Opening, choice: Choice, library: Library) -> AtOpening:
    device, contact = (library.find("device", id_) if id_ else None for id_ in (choice.device, choice.contact))
    return AtOpening(opening, device, "", contact, choice.shared)


def _rank_of_use(opening: Opening) -> int:
    return _USES.index(opening.use) if opening.use in _USES else 0


def _share(board: _Board, why: str) -> None:
    """Two wired contacts of one opening in series on one loop: nothing is ordered for it, and no device changes."""
    pairs = [index for index in board.movable(WIRED) if board.taken[index][1] > 1]
    for index in sorted(pairs, key=lambda one: _rank_of_use(board.wanted[one].opening)):
        if board.short(WIRED):
            said = f"{why}: its two contacts share one loop and one name."
            board.put(index, replace(board.choices[index], shared=True, moved=said))


def _to_radio(board: _Board, judge: Judge, why: str) -> None:
    """A transmitter at the loop, or another radio class, where radio can do."""
    if not board.short(WIRED) or board.room(RADIO) < 1:
        return
    found = []
    for place, index in enumerate(board.movable(WIRED)):
        one = board.wanted[index]
        for device in _radio_classes(one.opening, board.library):
            choice = _moved(one, device, f"{why}. Radio reaches the panel from here.", board.library)
            heard = judge(one.opening, choice).get("radio-margin")
            if heard != "poor":
                cost = (_RANK[heard], _rank_of_use(one.opening), bool(one.opening.cable), bool(one.opening.old_contact))
                found.append(((*cost, place), index, choice))
                break
    for _, index, choice in sorted(found, key=lambda one: one[0]):
        if board.short(WIRED) and board.room(RADIO) >= _at(board.wanted[index].opening, choice, board.library).zones:
            board.put(index, choice)


def _to_wire(board: _Board, judge: Judge, why: str) -> None:
    """A cable where one ends at the opening, or where the run of one was measured."""
    if not board.short(RADIO) or board.room(WIRED) < 1:
        return
    found = []
    for place, index in enumerate(board.movable(RADIO)):
        one = board.wanted[index]
        device = _wired_class(one.opening, board.library)
        if device is None:
            continue
        way = "A cable ends here." if one.opening.cable else "The run of a cable was measured here."
        choice = _moved(one, device, f"{why}. {way}", board.library)
        if judge(one.opening, choice).get("cable-resistance") != "poor":
            found.append(((not one.opening.cable, one.opening.cable_length_m or 0.0, place), index, choice))
    for _, index, choice in sorted(found, key=lambda one: one[0]):
        if board.short(RADIO) and board.room(WIRED) >= 1:
            shared = board.room(WIRED) < _at(board.wanted[index].opening, choice, board.library).zones
            board.put(index, replace(choice, shared=shared))


def _share_radio(board: _Board, why: str) -> None:
    """Two contacts of one opening on the loop of one transmitter."""
    pairs = [index for index in board.movable(RADIO) if board.taken[index][1] > 1]
    for index in sorted(pairs, key=lambda one: _rank_of_use(board.wanted[one].opening)):
        one = board.wanted[index]
        device = next(
            (known.profile.id for known in _possible(one.opening, board.library) if known.profile.transmits), None
        )
        if not board.short(RADIO) or device is None:
            continue
        choice = _moved(one, device, f"{why}: its two contacts share one transmitter and one name.", board.library)
        if choice.contact is not None:
            board.put(index, choice)


def _moved(one: Wanted, device: str, why: str, library: Library) -> Choice:
    return instead(one.opening, one.choice, device, why, library)


def _possible(opening: Opening, library: Library) -> list[Standing]:
    """The classes that may be fitted there: where a sound contact stays, only those that keep it."""
    found = [one for one in standings(opening, library) if one.possible]
    return [one for one in found if one.keeps == found[0].keeps]


def _radio_classes(opening: Opening, library: Library) -> list[str]:
    """Radio classes for an opening that would be wired, the best first.

    Where a cable or a contact is there, a transmitter takes over its loop, and the panel can have it back later.
    Elsewhere the classes stand as they would if no cable could be run.
    """
    allowed = {one.profile.id for one in _possible(opening, library) if not one.profile.wired}
    there = bool(opening.cable or opening.old_contact)
    bare = opening if there else replace(opening, cable=False, cable_length_m=None)
    found = [one for one in standings(bare, library) if one.profile.id in allowed]
    return [one.profile.id for one in sorted(found, key=lambda one: there and not one.profile.transmits)]


def _wired_class(opening: Opening, library: Library) -> str | None:
    """The wired class for an opening that would be on radio; None where there is no way for a cable."""
    if not opening.cable and not opening.cable_length_m:
        return None
    return next((one.profile.id for one in _possible(opening, library) if one.profile.wired), None)


def _left_over(board: _Board, link: str) -> list[int]:
    """The openings that no position is left for: by their use, then the last of the walk."""
    lacking = board.short(link)
    on_link = [index for index in reversed(range(len(board.wanted))) if board.taken[index][0] == link]
    found = []
    for index in sorted(on_link, key=lambda one: _rank_of_use(board.wanted[one].opening)):
        if lacking > 0 and board.taken[index][1]:
            found.append(index)
            lacking -= board.taken[index][1]
    return sorted(found)


def _problems(board: _Board, left: Mapping[str, Sequence[int]]) -> Iterator[Problem]:
    for link, indices in left.items():
        if not indices:
            continue
        out = _way_out(board, link, indices)
        names = ", ".join(board.wanted[index].spoken for index in indices)
        free = _count(board.free[link] or 0, link)
        found = f"{board.used[link]} {link} zones for {free}. Without one: {names}."
        yield Problem("control-unit", "too-few-positions", found, out)
        for index in indices:
            found = f"No free {link} position: the panel has {free} and other openings take them."
            yield Problem(board.wanted[index].opening.id, "no-position", found, out)


def _way_out(board: _Board, link: str, indices: Iterable[int]) -> str:
    """What gives the openings left over a position, the cheapest first."""
    openings = [board.wanted[index].opening for index in indices]
    lacking = board.short(link)
    if link == WIRED:
        first = f"Cheapest: order an expander with at least {_count(lacking, 'more wired', 'input')}."
    else:
        what = "a receiver" if not board.free[RADIO] else "another receiver, or an expander for radio,"
        first = f"Cheapest: order {what} with at least {_count(lacking, 'more radio')}. A wired input hears no radio."
        run = [one for one in openings if not one.cable_length_m and not one.cable]
        if run and board.room(WIRED) >= 1:
            first = f"Cheapest: measure the run of a cable, because wired positions are free. Else {first[10:]}"
    return f"{first} Or leave openings out, with the customer's written yes to which."


def _count(number: int, sort: str, what: str = "position") -> str:
    return f"{number} {sort} {what}{'' if number == 1 else 's'}"
