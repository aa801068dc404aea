"""The order of work, with minutes for each stage and for each day.

One opening is done from its first mark to its proof before the next is begun, so that never more than one is half
fitted, and none overnight. Openings whose figures say poor or test on site come first: what they show may change the
plan while there is time. An opening that is, or may be, fire-rated or an escape way comes after those that need no
answer first, and so does one that the figures say is not heard: it waits for the walk test. Entry doors come late,
because people and tools go through them all day; what follows them comes after them and never on an earlier day,
because without their delay whoever comes in sets off the alarm. What is free in the afternoon or after closing comes
after all that is free before, entry doors too: a day that begins with it begins with a wait. Pads come before screws,
because they harden for a day. Otherwise the order is that of the walk.

A loop to the panel is fixed and metered at its opening and its end made safe before the next is begun. Once a day,
with the panel powered down, all such loops are landed; then each is enrolled and proved.

Where the system was another firm's, or nobody has its code, it is taken over on the first day before anything is
changed.

Waiting is filled with other work at the same opening, never with another opening: only a second technician works
elsewhere meanwhile.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from latchside.library.model import Library, Record
from latchside.messages import messages
from latchside.planning.access import overhead
from latchside.planning.at_opening import AtOpening
from latchside.planning.clock import Clock, span_of, stage_of
from latchside.planning.days import Piece, Times, lay
from latchside.planning.holes import in_doubt
from latchside.planning.hours import at_hours, in_day, told
from latchside.planning.house import House, Rules
from latchside.planning.on_site import ARRIVE, ENTRY, FOLLOWS, LAND, LEAVE, Site, SiteClock
from latchside.planning.plan import Day, Line, Problem, Stage
from latchside.planning.times import (
    AT_OPENING,
    NONE,
    ONCE,
    Span,
    fixed,
    total,
    waiting_left,
)

message = messages(__name__)
PACK = "prepare-at-yard"
ON_THE_SET = ("position", "fix")
"""Work on the set itself, which a contact that stays does not need."""

_ROUTE = {ENTRY: 1, FOLLOWS: 2}
"""Openings on the way in, which come after all others: entry doors, then what follows them."""
_PLAIN = Site()
_RANK = {"poor": 0, "test on site": 1}


@dataclass(frozen=True)
class Work:
    """The order of work: all stages in order, the stages of each opening, the days, and the problems of the days.

    Landing loops at the panel is work of the day and belongs to no opening.
    """

    stages: tuple[Stage, ...]
    of_opening: Mapping[str, tuple[Stage, ...]]
    days: tuple[Day, ...]
    problems: tuple[Problem, ...]


def work(
    parts: Sequence[AtOpening],
    figures: Mapping[str, Sequence[Line]],
    questions: int,
    library: Library,
    house: House,
    rules: Rules,
    *,
    site: Site = _PLAIN,
) -> Work:
    """The work for the openings with a device. `figures` has the lines of each opening, by its id."""
    order = ordered(parts, figures)
    clock, around = _Clock(library, house), SiteClock(library, house)
    silent = {part.opening.id for part in order if unheard(figures.get(part.opening.id, ()))}
    of_opening = {part.opening.id: tuple(clock.stages(part, silent=part.opening.id in silent)) for part in order}
    loops = {part.opening.id: part.zones for part in order if part.wired}
    pieces = [_piece(part, of_opening[part.opening.id], loops, clock) for part in order]
    first = tuple(around.first(site, order, silent))
    before, after = around.closing(site, radio=any(not part.wired for part in order))
    times = Times(
        arrive=clock.of(ARRIVE),
        leave=total(map(span_of, around.proving(site))) + clock.of(LEAVE),
        close=total(map(span_of, (*before, *after))),
        day=rules.day_minutes,
        technicians=rules.technicians,
        over=int(house["day-over"]),
        panel=fixed(house["panel-minutes"]),
        begin=total(map(span_of, first)),
        takes_over=site.taken_over,
        people=max(
            (_people(id_, library) for one in of_opening.values() for stage in one for id_ in stage.procedures),
            default=1,
        ),
    )
    laid = lay(pieces, times)
    on_site = (one for day in laid.days for one in around.day(day, laid, of_opening, order, site, first))
    return Work((*_before(len(order), questions, clock, house), *on_site), of_opening, laid.days, laid.problems)


def _piece(part: AtOpening, stages: Sequence[Stage], loops: Mapping[str, int], clock: _Clock) -> Piece:
    """The work at an opening as a day takes it, with the landing of its loops."""
    id_ = part.opening.id
    takes = total(map(span_of, stages)) + clock.of(LAND).scaled(loops.get(id_, 0))
    return Piece(id_, takes, _ROUTE.get(part.opening.use or "", 0), id_ in loops, at_hours(part.opening))


def _people(procedure: str, library: Library) -> int:
    record = library.find("procedure", procedure)
    return int(record.get("persons", 1)) if record else 1


def unheard(lines: Sequence[Line]) -> bool:
    """Whether the figures of an opening say that its radio is not heard even in a good spot."""
    return any(line.figure == "radio-margin" and line.verdict == "poor" for line in lines)


def ordered(parts: Sequence[AtOpening], figures: Mapping[str, Sequence[Line]]) -> tuple[AtOpening, ...]:
    """The openings with a device in the order of work."""

    def key(part: AtOpening) -> tuple[int, int, bool, bool, int, bool]:
        lines = figures.get(part.opening.id, ())
        route = _ROUTE.get(part.opening.use or "", 0)
        rank = min((_RANK.get(line.verdict, 2) for line in lines), default=2)
        return in_day(part.opening), route, part.life_safety is not False, unheard(lines), rank, not part.padded

    return tuple(sorted((part for part in parts if part.fitted), key=key))


def procedures_at(part: AtOpening, stage: str, library: Library) -> tuple[str, ...]:
    """The procedures of a stage at an opening: no cable where there is one, no hole where a contact stays.

    Procedures done once for several openings are not among them.
    """
    if part.device is None or (stage == "wire" and not part.loop):
        return ()
    near = of_contact(part, stage, library) if stage == "position" else ()
    done = of_contact(part, "position", library) if stage == "try" else ()
    elsewhere = (*ONCE, *done, *((LAND,) if part.wired else ()), *(() if part.new_cable else ("run-cable",)))
    own = (id_ for id_ in _listed_at(part.device, stage) if id_ not in elsewhere)
    stays = not part.sets
    kept = [id_ for id_ in own if not stays or not {stage, _kind(id_, library)} & set(ON_THE_SET)]
    if stage == "wire" and LAND in kept:  # the contact on its loop is fixed and metered before the loop is landed
        at = kept.index(LAND)
        kept[at:at] = of_contact(part, "fix", library)
    return (*near, *kept)


def of_contact(part: AtOpening, stage: str, library: Library) -> tuple[str, ...]:
    """The procedures of the new wired contacts on the loop of a transmitter, where their class is named.

    The contact may be fixed while its loop is wired; the transmitter is fixed in a stage of its own.
    """
    if part.contact is None or not part.on_loop or stage not in ON_THE_SET:
        return ()
    if stage == "position":
        return _listed_at(part.contact, stage)
    every = (id_ for one in AT_OPENING for id_ in _listed_at(part.contact, one))
    return tuple(id_ for id_ in every if _kind(id_, library) == stage)


def _listed_at(device: Record, stage: str) -> tuple[str, ...]:
    listed = device["procedures"][stage]
    return () if isinstance(listed, Mapping) else tuple(listed)


def _fixes(ids: Sequence[str], library: Library) -> bool:
    return any(_kind(id_, library) == "fix" for id_ in ids)


def _kind(procedure: str, library: Library) -> str:
    """The stage of the procedure itself, whichever stage a profile lists it under."""
    record = library.find("procedure", procedure)
    return str(record["stage"]) if record else ""


class _Clock(Clock):
    """Makes the stages of an opening."""

    def stages(self, part: AtOpening, *, silent: bool) -> Iterator[Stage]:
        """The stages at one opening, in order. Waiting that is left is counted with the proof, which comes after it.

        `silent` where the figures say that its radio is not heard.
        """
        height = part.opening.height_m or 0.0
        high = height > self._house["ladder-height"]
        extra = fixed(self._house["move-minutes"] + (self._house["ladder-minutes"] if high else 0))
        first = [*([message("unheard")] if silent else ()), *self._before_first(part, height)]
        waits: list[tuple[float, float]] = []
        for stage in AT_OPENING:
            ids = procedures_at(part, stage, self._library)
            if not ids:
                continue
            span, words = self._spent(part, stage, ids), [self.procedures(ids), *first]
            if stage == "wire" and part.on_loop and part.contact is None:
                words.append(message("fix-contact"))
            if part.padded and _fixes(ids, self._library):
                words.append(message("pads"))
            if stage == "wire" and part.wired:
                words.append(message("made-safe"))
            if stage == "prove" and (left := waiting_left(waits)) > 0:
                span = span + fixed(left)
                words.append(message("waiting"))
            waits.append((span.usual, max(map(self._times.waiting, ids))))
            yield stage_of(stage, part.opening.id, " ".join(words), span + extra, ids)
            extra, first = NONE, []

    def _before_first(self, part: AtOpening, height: float) -> Iterator[str]:
        """What is settled or set up before anything is done at an opening."""
        if (hours := told(part.opening)) is not None:
            yield hours
        if part.life_safety is not False:
            yield message("written-yes") if part.life_safety else message("in-doubt", what=in_doubt(part.opening))
        if height > self._house["ladder-most"]:
            yield message("too-high")
        elif height > self._house["ladder-height"]:
            yield message("overhead" if overhead(part.opening) else "high")

    def _spent(self, part: AtOpening, stage: str, ids: Sequence[str]) -> Span:
        """How long a stage takes: each procedure once for each contact, zone or set that it is for."""
        near = {id_ for one in ON_THE_SET for id_ in of_contact(part, one, self._library)}
        span = total(self.of(id_).scaled(part.on_loop if id_ in near else self._how_often(part, id_)) for id_ in ids)
        if stage == "wire" and part.contact is None:
            span = span + fixed(self._house["contact-minutes"]).scaled(part.on_loop)
        return span.scaled(self._times.pace(part.device.id) if part.device is not None else 1)

    def _how_often(self, part: AtOpening, procedure: str) -> int:
        kind = _kind(procedure, self._library)
        if kind in (*ON_THE_SET, "power"):
            return part.sets
        return part.zones if kind in ("enrol", "set-up") else part.contacts


def _before(openings: int, questions: int, clock: _Clock, house: House) -> Iterator[Stage]:
    """Work before the day on site."""
    if questions:
        span = fixed(questions * house["question-minutes"])
        yield stage_of("survey", "site", message("questions", count=questions), span, ("survey-openings",))
    if openings:
        pack, bags = clock.of(PACK), openings * house["bag-minutes"]
        span = Span(max(pack.low, bags), max(pack.usual, bags), max(pack.high, bags))
        yield stage_of("prepare", "site", clock.procedures([PACK]), span, (PACK,))
