"""What a plan holds. Texts are plain, for a reader; figures are in the unit named beside them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, Literal

from latchside.messages import Messages, Value
from latchside.read.forms import BARE
from latchside.surveys.survey import Opening, Survey

Verdict = Literal["good", "test on site", "poor", "none"]
"""How a figure bears on the job; `none` where it only informs."""


@dataclass(frozen=True)
class Question:
    """What the survey does not say. `about` is the id of an opening, `site` or `control-unit`.

    `order` is the lower, the more its answer decides.
    """

    about: str
    field: str
    text: str
    why: str
    order: int = 0


@dataclass(frozen=True)
class Problem:
    """What stands against the plan, and what to do; `about` as in a question.

    `openings` are the ids of the openings that a problem of the whole site concerns, where it names them.
    """

    about: str
    code: str
    found: str
    action: str
    openings: tuple[str, ...] = ()

    def concerns(self, id_: str) -> bool:
        """Whether it stands against the opening, site or control unit of this id."""
        return id_ == self.about or id_ in self.openings


def problem(message: Messages, about: str, code: str, /, **values: Value) -> Problem:
    """The problem that a message tells: its id is the code, its attributes what was found and what to do."""
    return Problem(about, code, message(f"{code}.found", **values), message(f"{code}.action", **values))


@dataclass(frozen=True)
class PassedOver:
    """A device class that was not chosen, and why; `ruled_out` where it may never be fitted there."""

    device: str
    why: tuple[str, ...]
    ruled_out: bool


@dataclass(frozen=True)
class Choice:
    """The device class for an opening; None where no class fits or the survey says too little.

    `contact` is the class of the wired contacts on the loop of a transmitter, where one can be named. `moved` says
    why too few free positions of the panel changed its device or put two contacts on one zone (`shared`); `lacks`
    that no position is free for it.
    """

    device: str | None
    reasons: tuple[str, ...]
    against: tuple[str, ...]
    passed_over: tuple[PassedOver, ...]
    overridden: str | None = None
    contact: str | None = None
    moved: str | None = None
    shared: bool = False
    lacks: bool = False


@dataclass(frozen=True)
class Line:
    """One figure of an opening as a reader sees it, and what it was worked from.

    `action` says what to order or change where it is poor; empty where that is the same for every such figure. Where it
    is to be tried only because a fact is not known, `action` stands if the likeliest answer makes it poor.
    """

    name: str
    shown: str
    verdict: Verdict
    meaning: str
    figure: str
    inputs: Mapping[str, Any]
    assumed: tuple[str, ...] = ()
    action: str = ""


@dataclass(frozen=True)
class Expected:
    """What a reading at this opening should be; a limit that is None does not bind."""

    measure: str
    label: str
    unit: str
    low: float | None
    high: float | None
    shown: str


@dataclass(frozen=True)
class Fixing:
    """Where and how the parts are fixed; `drawn` is the word of `FIXINGS` for the drawing that shows it."""

    sensor: str
    magnet: str
    spacer: str
    height: str
    hold: str
    drawn: str = BARE


@dataclass(frozen=True)
class Stage:
    """Work at an opening or on the site, and the procedures that tell how.

    `minutes` is what it usually takes, `low` at best and `high` at worst.
    """

    stage: str
    about: str
    words: str
    minutes: float
    procedures: tuple[str, ...]
    low: float = 0.0
    high: float = 0.0


@dataclass(frozen=True)
class Day:
    """One day on site: the openings begun and ended on it, and the minutes from arriving to leaving.

    `minutes` is what it usually takes, `low` at best and `high` at worst.
    """

    number: int
    openings: tuple[str, ...]
    minutes: float
    words: str
    low: float = 0.0
    high: float = 0.0


@dataclass(frozen=True)
class OpeningPlan:
    """Everything the plan says about one opening. `input` is the id of the device's input in use.

    `zones` is how many zones its contacts take. `contact_names` has a name for each contact, also where two share a
    zone: each is read, proved and handed over by itself. `bites` are its gravest hazards as commands, the few that a
    technician has to have in mind there.
    """

    opening: Opening
    spoken: str
    choice: Choice
    contacts: int
    zones: int
    input: str | None
    fixing: Fixing | None
    figures: tuple[Line, ...]
    expected: tuple[Expected, ...]
    cautions: tuple[str, ...]
    stages: tuple[Stage, ...]
    contact_names: tuple[str, ...] = ()
    bites: tuple[str, ...] = ()


@dataclass(frozen=True)
class Zone:
    """One line of the zone schedule. `position` numbers wired and radio positions separately, as W1 or R1.

    A line whose response is always on is the tamper of the zone at the same position, not a zone of its own.
    """

    position: str
    link: Literal["wired", "radio"]
    spoken: str
    opening: str
    device: str
    input: str
    response: str
    reports: bool
    chime: bool
    supervision: str
    reasons: tuple[str, ...]


@dataclass(frozen=True)
class Item:
    """A line of what goes on the van: a part, a consumable or a tool.

    `openings` are the ids of those it goes to, where it is packed for some.
    """

    sort: Literal["part", "consumable", "tool"]
    name: str
    quantity: float
    spare: float
    unit: str
    used_for: str
    record: str | None = None
    openings: tuple[str, ...] = ()


@dataclass(frozen=True)
class Service:
    """Something due after the job."""

    due: date
    about: str
    words: str


@dataclass(frozen=True)
class Reason:
    """One reason of a caution and the openings it holds at; `command` is what to do there, where that is told."""

    why: str
    about: tuple[str, ...]
    command: str = ""


@dataclass(frozen=True)
class Caution:
    """A caution of this job: its record, the openings or site it concerns, and why it applies.

    `reasons` tells the reasons apart, each with its openings, where it concerns openings.
    """

    caution: str
    about: tuple[str, ...]
    why: str
    reasons: tuple[Reason, ...] = ()


@dataclass(frozen=True)
class Plan:
    """The whole job. `on` is the day the plan is made for; nothing in it reads a clock."""

    survey: Survey
    on: date
    library: str
    openings: tuple[OpeningPlan, ...]
    questions: tuple[Question, ...]
    problems: tuple[Problem, ...]
    zones: tuple[Zone, ...]
    site_figures: tuple[Line, ...]
    items: tuple[Item, ...]
    work: tuple[Stage, ...]
    service: tuple[Service, ...]
    cautions: tuple[Caution, ...]
    days: tuple[Day, ...] = ()
