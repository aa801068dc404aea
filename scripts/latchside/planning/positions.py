"""The free positions of the panel, weighed after a device was chosen for each opening by its own facts.

While there are enough, nothing changes. Where there are too few, the cheapest change comes first, each with its
reason: two contacts of one opening share a loop; a wired opening gets a transmitter at its loop where radio is good
enough; a radio opening is wired where a cable can be run. An opening that is still left over is a problem that says
what gives it a position. A choice of the lead is never changed, and a number of positions nobody told sets no limit.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from latchside.library.model import Library
from latchside.messages import Message, listed, messages
from latchside.planning.at_opening import AtOpening
from latchside.planning.choose import instead
from latchside.planning.plan import Choice, Problem, Verdict
from latchside.planning.standing import Standing, standings
from latchside.surveys.survey import ControlUnit, Opening

message = messages(__name__)
WIRED, RADIO = "wired", "radio"
_RANK: Mapping[Verdict | None, int] = {"good": 0, "none": 0, "test on site": 1, None: 1}
_USES = ("other", None, "on-route", "entry-route")
"""Uses of an opening; the first goes without a position first."""


@dataclass(frozen=True)
class Wanted:
    """An opening, its spoken name, and the choice made by its own facts."""

    opening: Opening
    spoken: str
    choice: Choice


Judge = Callable[[Opening, Choice], Mapping[str, Verdict]]
"""The worst verdict of each figure of an opening with a choice, by the id of the figure."""


def assigned(
    wanted: Sequence[Wanted], unit: ControlUnit, library: Library, judge: Judge
) -> tuple[tuple[Choice, ...], tuple[Problem, ...]]:
    """The choices after the positions are weighed, in the same order, and the problems that remain."""
    board = _Board(wanted, unit, library)
    if not board.short(WIRED) and not board.short(RADIO):
        return tuple(board.choices), ()
    counts = {link: board.counts(link) for link in (WIRED, RADIO)}
    _share(board, counts[WIRED])
    _to_radio(board, judge, counts[WIRED])
    _to_wire(board, judge, counts[RADIO])
    _share_radio(board, counts[RADIO])
    left = {link: _left_over(board, link) for link in (WIRED, RADIO)}
    for indices in left.values():
        for index in indices:
            board.choices[index] = replace(board.choices[index], lacks=True)
    return tuple(board.choices), tuple(_problems(board, left))


class _Board:
    """The choices so far, and the zones that they take."""

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
        """Positions that are still free."""
        free = self.free[link]
        return float("inf") if free is None else free - self.used[link]

    def put(self, index: int, choice: Choice) -> None:
        """Replaces the choice of an opening."""
        link, zones = self.taken[index]
        self.used[link] -= zones
        self.choices[index] = choice
        self.taken[index] = link, zones = self._takes(index)
        self.used[link] += zones

    def movable(self, link: str) -> Iterator[int]:
        """The openings on a link whose device nobody chose by hand, the last of the walk first."""
        for index in reversed(range(len(self.wanted))):
            if self.taken[index][0] == link and self.taken[index][1] and not self.wanted[index].opening.override:
                yield index

    def counts(self, link: str) -> dict[str, int]:
        """Positions of the panel and zones of the job, as messages take them."""
        return {"free": self.free[link] or 0, "used": self.used[link]}


def _at(opening: Opening, choice: Choice, library: Library) -> AtOpening:
    device, contact = (library.find("device", id_) if id_ else None for id_ in (choice.device, choice.contact))
    return AtOpening(opening, device, "", contact, choice.shared)


def _rank_of_use(opening: Opening) -> int:
    return _USES.index(opening.use) if opening.use in _USES else 0


def _share(board: _Board, counts: Mapping[str, int]) -> None:
    """Two wired contacts of one opening in series on one loop: nothing to order, and no device changes."""
    pairs = [index for index in board.movable(WIRED) if board.taken[index][1] > 1]
    for index in sorted(pairs, key=lambda one: _rank_of_use(board.wanted[one].opening)):
        if board.short(WIRED):
            why = message("share-loop", **counts)
            board.put(index, replace(board.choices[index], shared=True, moved=why))


def _to_radio(board: _Board, judge: Judge, counts: Mapping[str, int]) -> None:
    """A transmitter at the loop, or another radio class, where radio is good enough."""
    if not board.short(WIRED) or board.room(RADIO) < 1:
        return
    moves = []
    for place, index in enumerate(board.movable(WIRED)):
        one = board.wanted[index]
        for device in _radio_classes(one.opening, board.library):
            choice = _moved(one, device, message("to-radio", **counts), board.library)
            heard = judge(one.opening, choice).get("radio-margin")
            if heard != "poor":
                cost = (_RANK[heard], _rank_of_use(one.opening), bool(one.opening.cable), bool(one.opening.old_contact))
                moves.append(((*cost, place), index, choice))
                break
    for _, index, choice in sorted(moves, key=lambda move: move[0]):
        if board.short(WIRED) and board.room(RADIO) >= _at(board.wanted[index].opening, choice, board.library).zones:
            board.put(index, choice)


def _to_wire(board: _Board, judge: Judge, counts: Mapping[str, int]) -> None:
    """A wired class where a cable ends at the opening, or where the run of one was measured."""
    if not board.short(RADIO) or board.room(WIRED) < 1:
        return
    moves = []
    for place, index in enumerate(board.movable(RADIO)):
        one = board.wanted[index]
        device = _wired_class(one.opening, board.library)
        if device is None:
            continue
        why = message("to-cable" if one.opening.cable else "to-measured-run", **counts)
        choice = _moved(one, device, why, board.library)
        if judge(one.opening, choice).get("cable-resistance") != "poor":
            in_doubt = one.opening.fire_rated is None or one.opening.escape is None
            new = not one.opening.cable
            moves.append(((new, new and in_doubt, one.opening.cable_length_m or 0.0, place), index, choice))
    for _, index, choice in sorted(moves, key=lambda move: move[0]):
        if board.short(RADIO) and board.room(WIRED) >= 1:
            shared = board.room(WIRED) < _at(board.wanted[index].opening, choice, board.library).zones
            board.put(index, replace(choice, shared=shared))


def _share_radio(board: _Board, counts: Mapping[str, int]) -> None:
    """Two contacts of one opening on the loop of one transmitter, where the panel hears radio at all."""
    if not board.free[RADIO]:
        return
    pairs = [index for index in board.movable(RADIO) if board.taken[index][1] > 1]
    for index in sorted(pairs, key=lambda one: _rank_of_use(board.wanted[one].opening)):
        one = board.wanted[index]
        device = next(
            (known.profile.id for known in _possible(one.opening, board.library) if known.profile.transmits), None
        )
        if not board.short(RADIO) or device is None:
            continue
        choice = _moved(one, device, message("share-transmitter", **counts), board.library)
        if choice.contact is not None:
            board.put(index, choice)


def _moved(one: Wanted, device: str, why: Message, library: Library) -> Choice:
    return instead(one.opening, one.choice, device, why, library)


def _possible(opening: Opening, library: Library) -> list[Standing]:
    """The classes that may be fitted there: where a sound contact stays, only those that keep it."""
    possible = [one for one in standings(opening, library) if one.possible]
    return [one for one in possible if one.keeps == possible[0].keeps]


def _radio_classes(opening: Opening, library: Library) -> list[str]:
    """Radio classes for an opening that would be wired, the best first.

    Where there is a cable or a contact, a transmitter takes over its loop, which can go back to the panel later.
    Elsewhere the classes rank as if no cable could be run.
    """
    allowed = {one.profile.id for one in _possible(opening, library) if not one.profile.wired}
    there = bool(opening.cable or opening.old_contact)
    bare = opening if there else replace(opening, cable=False, cable_length_m=None)
    radio = [one for one in standings(bare, library) if one.profile.id in allowed]
    return [one.profile.id for one in sorted(radio, key=lambda one: there and not one.profile.transmits)]


def _wired_class(opening: Opening, library: Library) -> str | None:
    """The wired class for an opening that would be on radio; None where no cable can be run.

    No new run is led to a fire-rated or escape door, whose frame and wall are part of what is listed; a cable that ends
    there already may be used.
    """
    if not opening.cable and (not opening.cable_length_m or opening.fire_rated or opening.escape):
        return None
    return next((one.profile.id for one in _possible(opening, library) if one.profile.wired), None)


def _left_over(board: _Board, link: str) -> list[int]:
    """The openings that no position is left for: chosen by their use, then from the end of the walk."""
    lacking = board.short(link)
    on_link = [index for index in reversed(range(len(board.wanted))) if board.taken[index][0] == link]
    without = []
    for index in sorted(on_link, key=lambda one: _rank_of_use(board.wanted[one].opening)):
        if lacking > 0 and board.taken[index][1]:
            without.append(index)
            lacking -= board.taken[index][1]
    return sorted(without)


def _problems(board: _Board, left: Mapping[str, Sequence[int]]) -> Iterator[Problem]:
    for link, indices in left.items():
        if not indices:
            continue
        out = _way_out(board, link, indices)
        names = listed([board.wanted[index].spoken for index in indices], "unit")
        counts = board.counts(link)
        found = message("too-few-positions", link=link, openings=names, **counts)
        yield Problem("control-unit", "too-few-positions", found, out)
        found = message("no-position", link=link, free=counts["free"])
        for index in indices:
            yield Problem(board.wanted[index].opening.id, "no-position", found, out)


def _way_out(board: _Board, link: str, indices: Iterable[int]) -> Message:
    """What gives the openings left over a position, the cheapest first."""
    lacking = board.short(link)
    if link == WIRED:
        return message("order-expander", lacking=lacking)
    openings = [board.wanted[index].opening for index in indices]
    unmeasured = any(not one.cable_length_m and not one.cable for one in openings)
    measure = unmeasured and board.room(WIRED) >= 1
    receiver = "another" if board.free[RADIO] else "first"
    return message("measure-or-order-receiver" if measure else "order-receiver", receiver=receiver, lacking=lacking)
