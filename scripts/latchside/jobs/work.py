"""The order of work, with minutes for each stage and for each day.

One opening is done from its first mark to its proof before the next is begun, so that no more than one is ever
half fitted, and none is left so overnight. Openings whose figures say poor or test on site come first: what they
show may change the plan, and then there is still a day to change it in. An opening that is, or may be, fire-rated or
an escape way waits for its answer behind those that need none. The entry door comes last: people and tools go
through it all day, and its delayed response is proved with the rest of the route in place. Otherwise the order is
that of the walk.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from latchside.jobs.at_opening import AtOpening
from latchside.jobs.days import Laid, Times, lay
from latchside.jobs.house import House, Rules
from latchside.jobs.plan import Day, Line, Problem, Stage
from latchside.library.model import Library

AT_OPENING = ("position", "wire", "power", "enrol", "set-up", "try", "fix", "prove")
"""The stages at an opening, in the fixed order of the job."""

ONCE = ("prove-check-in",)
"""Procedures of those stages that are done once for all openings, at the end."""

_CONTACT = " Fix the wired contact of its loop as well."
_HELD = {
    True: " Begin only with a written yes of those who answer for its certificate and for local code.",
    None: " Begin only when it is known not to be fire-rated and no escape way.",
    False: "",
}
_HIGH = " The work is high: stand the ladder."
_RANK = {"poor": 0, "test on site": 1}


@dataclass(frozen=True)
class Work:
    """The order of work: stages in order, those of each opening, the days, and what stands against them."""

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
) -> Work:
    """The work for the openings that have a device. `figures` are the worked figures of each opening, by its id."""
    order = ordered(parts, figures)
    clock = _Clock(library, house)
    of_opening = {part.opening.id: tuple(clock.stages(part)) for part in order}
    minutes = [(id_, sum(stage.minutes for stage in stages)) for id_, stages in of_opening.items()]
    radio = any(part.fitted and not part.wired for part in order)
    times = Times(
        arrive=clock.of("arrive-and-go-on-test"),
        leave=clock.of("go-off-test"),
        close=clock.of("hand-over") + (clock.of("prove-check-in") if radio else 0),
        day=rules.day_minutes,
        technicians=rules.technicians,
    )
    laid = lay(minutes, times)
    stages = (*_before(len(order), questions, clock, house), *_on_site(laid, of_opening, radio, clock))
    return Work(stages, of_opening, laid.days, laid.problems)


def ordered(parts: Sequence[AtOpening], figures: Mapping[str, Sequence[Line]]) -> tuple[AtOpening, ...]:
    """The openings with a device in the order of work."""

    def key(part: AtOpening) -> tuple[bool, bool, int]:
        verdicts = (_RANK.get(line.verdict, 2) for line in figures.get(part.opening.id, ()))
        return part.opening.use == "entry-route", part.life_safety is not False, min(verdicts, default=2)

    return tuple(sorted((part for part in parts if part.fitted), key=key))


def procedures_at(part: AtOpening, stage: str) -> tuple[str, ...]:
    """The procedures of a stage at an opening: no cable where one is there, no hole where a contact stays."""
    if part.device is None or (stage == "wire" and not part.loop):
        return ()
    listed = part.device["procedures"][stage]
    ids = () if isinstance(listed, Mapping) else tuple(listed)
    stays = not part.sets and stage in ("position", "fix")
    own = tuple(id_ for id_ in ids if id_ not in ONCE and not stays and (part.new_cable or id_ != "run-cable"))
    return (*of_contact(part, stage), *own)


def of_contact(part: AtOpening, stage: str) -> tuple[str, ...]:
    """The procedures of the new wired contacts on the loop of a transmitter, where their class is named."""
    if part.contact is None or not part.on_loop or stage not in ("position", "fix"):
        return ()
    return tuple(part.contact["procedures"][stage])


class _Clock:
    """Minutes of procedures: all of them for the first opening, the house's share of them for each further one."""

    def __init__(self, library: Library, house: House) -> None:
        self._library, self._house = library, house
        self._share = house["each-further"] / 100
        self._met: Counter[str] = Counter()

    def of(self, procedure: str) -> int:
        """The minutes that a procedure states."""
        record = self._library.find("procedure", procedure)
        return int(record["minutes"]) if record else 0

    def name(self, procedure: str) -> str:
        """Its name, or its id where there is no sound record of it."""
        record = self._library.find("procedure", procedure)
        return record.name if record else procedure.replace("-", " ").capitalize()

    def stages(self, part: AtOpening) -> Iterator[Stage]:
        """The stages at one opening, in order."""
        house, height = self._house, part.opening.height_m
        high = height is not None and height > house["ladder-height"]
        extra = house["move-minutes"] + (house["ladder-minutes"] if high else 0)
        first = f"{_HELD[part.life_safety]}{_HIGH if high else ''}"
        for stage in AT_OPENING:
            ids = procedures_at(part, stage)
            if not ids:
                continue
            fixed = part.on_loop if stage == "fix" and part.contact is None else 0
            near = of_contact(part, stage)
            times = self._times(part, stage)
            minutes = sum(self._spent(id_, part.on_loop if id_ in near else times) for id_ in ids) + extra
            minutes += fixed * house["contact-minutes"]
            words = f"{_listed([self.name(id_) for id_ in ids])}.{first}{_CONTACT if fixed else ''}"
            yield Stage(stage, part.opening.id, words, ceil(minutes), ids)
            extra, first = 0, ""

    def _times(self, part: AtOpening, stage: str) -> int:
        """How often a stage is done at an opening: once for each contact, zone or set that it is about."""
        if stage in ("position", "fix", "power"):
            return part.sets
        return part.zones if stage in ("enrol", "set-up") else part.contacts

    def _spent(self, procedure: str, times: int) -> int:
        minutes = 0
        for _ in range(times):
            minutes += ceil(self.of(procedure) * (self._share if self._met[procedure] else 1) - 1e-9)
            self._met[procedure] += 1
        return minutes


def _before(openings: int, questions: int, clock: _Clock, house: House) -> Iterator[Stage]:
    if questions:
        words = (
            f"Settle {questions} open question{'' if questions == 1 else 's'} of the survey before parts are packed."
        )
        yield Stage("survey", "site", words, ceil(questions * house["question-minutes"]), ("survey-openings",))
    if openings:
        minutes = max(clock.of("prepare-at-yard"), ceil(openings * house["bag-minutes"]))
        yield Stage("prepare", "site", f"{clock.name('prepare-at-yard')}.", minutes, ("prepare-at-yard",))


def _on_site(laid: Laid, of_opening: Mapping[str, tuple[Stage, ...]], radio: bool, clock: _Clock) -> Iterator[Stage]:
    arrive, leave, give = "arrive-and-go-on-test", "go-off-test", "hand-over"
    for day in laid.days:
        mark = f"Day {day.number}: " if len(laid.days) > 1 else ""
        yield Stage("prepare", "site", f"{mark}{clock.name(arrive)}.", clock.of(arrive), (arrive,))
        for id_ in day.openings:
            yield from of_opening[id_]
        if day is laid.days[-1]:
            if radio:
                check = "prove-check-in"
                yield Stage("prove", "site", f"{mark}{clock.name(check)}.", clock.of(check), (check,))
            yield Stage("hand-over", "site", f"{mark}{clock.name(give)}.", clock.of(give), (give,))
        yield Stage("hand-over", "site", f"{mark}{clock.name(leave)}.", clock.of(leave), (leave,))


def _listed(names: Sequence[str]) -> str:
    """Names of procedures in a row, the first with its capital."""
    return "; ".join([names[0], *(name[:1].lower() + name[1:] for name in names[1:])])
