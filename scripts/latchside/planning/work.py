"""The order of work, with minutes for each stage and for each day.

One opening is done from its first mark to its proof before the next is begun, so that never more than one is half
fitted, and none overnight. Openings whose figures say poor or test on site come first: what they show may change the
plan while there is time. An opening that is, or may be, fire-rated or an escape way comes after those that need no
answer first. The entry door comes last: people and tools go through it all day, and its delayed response is proved
with the rest of the route in place. Otherwise the order is that of the walk.

A loop to the panel is fixed and metered at its opening, which is closed up before the next is begun. Once a day, with
the panel powered down, all such loops are landed; then each is enrolled and proved.

Where the system was another firm's, or nobody has its code, it is taken over on the first day before anything is
changed.

Waiting is filled with other work at the same opening, never with another opening: only a second technician works
elsewhere meanwhile.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from latchside.library.model import Library, Record
from latchside.messages import Message, messages, within
from latchside.planning.at_opening import AtOpening
from latchside.planning.days import Laid, Piece, Times, lay
from latchside.planning.house import House, Rules
from latchside.planning.plan import Day, Line, Problem, Stage
from latchside.planning.times import (
    AT_OPENING,
    CHECK_IN,
    NONE,
    ONCE,
    RESPONSE,
    Span,
    WorkTimes,
    fixed,
    total,
    waiting_left,
)

message = messages(__name__)
PACK, ARRIVE, LEAVE, HAND_OVER = "prepare-at-yard", "arrive-and-go-on-test", "go-off-test", "hand-over"
TAKE_OVER = "take-over-system"
"""Done once, before anything is changed, where the system was another firm's or nobody has its code."""
ON_THE_SET = ("position", "fix")
"""Work on the set itself, which a contact that stays does not need."""

LAND = "land-on-terminals"
AFTER_LANDING = ("enrol", "set-up", "prove")
"""Stages of a loop to the panel that come after it is landed; fixing, metering and the rest come before."""

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
    taken_over: bool = False,
) -> Work:
    """The work for the openings with a device. `figures` has the lines of each opening, by its id."""
    order = ordered(parts, figures)
    clock = _Clock(library, house)
    of_opening = {part.opening.id: tuple(clock.stages(part)) for part in order}
    loops = {part.opening.id: part.zones for part in order if part.wired}
    pieces = [
        Piece(
            id_, total(map(_span, of_opening[id_])) + clock.of(LAND).scaled(loops.get(id_, 0)),
            last=part.opening.use == "entry-route", panel=id_ in loops,
        )
        for part in order
        for id_ in [part.opening.id]
    ]  # fmt: skip
    closing = tuple(clock.closing(radio=any(not part.wired for part in order)))
    times = Times(
        arrive=clock.of(ARRIVE),
        leave=clock.of(LEAVE),
        close=total(map(_span, closing)),
        day=rules.day_minutes,
        technicians=rules.technicians,
        over=int(house["day-over"]),
        panel=fixed(house["panel-minutes"]),
        begin=clock.of(TAKE_OVER) if taken_over else NONE,
    )
    laid = lay(pieces, times)
    first = (clock.take_over(),) if taken_over else ()
    on_site = (one for day in laid.days for one in clock.day(day, laid, of_opening, loops, closing, first))
    stages = (*_before(len(order), questions, clock, house), *on_site)
    return Work(stages, of_opening, laid.days, laid.problems)


def ordered(parts: Sequence[AtOpening], figures: Mapping[str, Sequence[Line]]) -> tuple[AtOpening, ...]:
    """The openings with a device in the order of work."""

    def key(part: AtOpening) -> tuple[bool, bool, int]:
        verdicts = (_RANK.get(line.verdict, 2) for line in figures.get(part.opening.id, ()))
        return part.opening.use == "entry-route", part.life_safety is not False, min(verdicts, default=2)

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


def _kind(procedure: str, library: Library) -> str:
    """The stage of the procedure itself, whichever stage a profile lists it under."""
    record = library.find("procedure", procedure)
    return str(record["stage"]) if record else ""


class _Clock:
    """Makes stages, with the minutes of the firm's table."""

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

    def stages(self, part: AtOpening) -> Iterator[Stage]:
        """The stages at one opening, in order. Waiting that is left is counted with the proof, which comes after it."""
        height = part.opening.height_m or 0.0
        high = height > self._house["ladder-height"]
        extra = fixed(self._house["move-minutes"] + (self._house["ladder-minutes"] if high else 0))
        first = list(self._before_first(part, height))
        waits: list[tuple[float, float]] = []
        for stage in AT_OPENING:
            ids = procedures_at(part, stage, self._library)
            if not ids:
                continue
            span, words = self._spent(part, stage, ids), [self.procedures(ids), *first]
            if stage == "wire" and part.on_loop and part.contact is None:
                words.append(message("fix-contact"))
            if stage == "prove" and (left := waiting_left(waits)) > 0:
                span = span + fixed(left)
                words.append(message("waiting"))
            waits.append((span.usual, max(map(self._times.waiting, ids))))
            yield _stage(stage, part.opening.id, " ".join(words), span + extra, ids)
            extra, first = NONE, []

    def _before_first(self, part: AtOpening, height: float) -> Iterator[Message]:
        """What is settled or set up before anything is done at an opening."""
        if part.life_safety is not False:
            yield message("written-yes" if part.life_safety else "life-safety-unknown")
        if height > self._house["ladder-most"]:
            yield message("too-high")
        elif height > self._house["ladder-height"]:
            yield message("high")

    def procedures(self, ids: Sequence[str]) -> Message:
        """The names of procedures in a row, the first with its capital."""
        first, *others = [self.name(id_) for id_ in ids]
        return message("procedures", names="; ".join([first, *map(within, others)]))

    def day(
        self,
        day: Day,
        laid: Laid,
        of_opening: Mapping[str, tuple[Stage, ...]],
        loops: Mapping[str, int],
        closing: Sequence[Stage],
        first: Sequence[Stage],
    ) -> Iterator[Stage]:
        """The stages of one day. `loops` counts the loops to the panel by opening; `first` is done on the first day."""

        def on_day(words: Message) -> Message:
            return message("on-day", day=day.number, work=words) if len(laid.days) > 1 else words

        yield _stage("prepare", "site", on_day(self.procedures([ARRIVE])), self.of(ARRIVE), (ARRIVE,))
        if day is laid.days[0]:
            yield from first
        later: list[Stage] = []
        for id_ in day.openings:
            waits = [one for one in of_opening[id_] if id_ in loops and one.stage in AFTER_LANDING]
            yield from (one for one in of_opening[id_] if one not in waits)
            later += waits
        if later:
            count = sum(loops.get(id_, 0) for id_ in day.openings)
            words = message("land", procedure=self.name(LAND), loops=count)
            span = self.of(LAND).scaled(count) + fixed(self._house["panel-minutes"])
            yield _stage("wire", "control-unit", on_day(words), span, (LAND,))
            yield from later
        if day is laid.days[-1]:
            yield from closing
        yield _stage("hand-over", "site", on_day(self.procedures([LEAVE])), self.of(LEAVE), (LEAVE,))

    def take_over(self) -> Stage:
        """The take-over of a system, before anything in it is changed."""
        words = message("take-over", procedure=self.name(TAKE_OVER))
        return _stage("prepare", "control-unit", words, self.of(TAKE_OVER), (TAKE_OVER,))

    def closing(self, *, radio: bool) -> Iterator[Stage]:
        """What is done once, after the last opening. The wait for check-ins runs beside the work that follows."""
        if radio:
            yield _stage("prove", "site", self.procedures([CHECK_IN]), self.of(CHECK_IN), (CHECK_IN,))
        yield _stage("prove", "site", self.procedures([RESPONSE]), self.of(RESPONSE), (RESPONSE,))
        span, words = self.of(HAND_OVER), self.procedures([HAND_OVER])
        beside = self.of(RESPONSE).usual + span.usual
        left = self._times.waiting(CHECK_IN) - beside if radio else 0.0
        if left > 0:
            span, words = span + fixed(left), message("hand-over-waits", procedure=self.name(HAND_OVER))
        yield _stage("hand-over", "site", words, span, (HAND_OVER,))

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


def _span(stage: Stage) -> Span:
    return Span(stage.low, stage.minutes, stage.high)


def _stage(stage: str, about: str, words: str, span: Span, procedures: tuple[str, ...]) -> Stage:
    whole = span.whole()
    return Stage(stage, about, words, whole.usual, procedures, whole.low, whole.high)


def _before(openings: int, questions: int, clock: _Clock, house: House) -> Iterator[Stage]:
    """Work before the day on site."""
    if questions:
        span = fixed(questions * house["question-minutes"])
        yield _stage("survey", "site", message("questions", count=questions), span, ("survey-openings",))
    if openings:
        pack, bags = clock.of(PACK), openings * house["bag-minutes"]
        span = Span(max(pack.low, bags), max(pack.usual, bags), max(pack.high, bags))
        yield _stage("prepare", "site", clock.procedures([PACK]), span, (PACK,))
