"""What the tests of a plan share: openings with a device chosen by the test, and plans made of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any
from unittest.mock import patch

from latchside.figures.catalogue import Figure
from latchside.library import Library
from latchside.messages import Message
from latchside.planning.at_opening import AtOpening
from latchside.planning.house import House, house_of
from latchside.planning.make import make_plan
from latchside.planning.names import contacts, names
from latchside.planning.plan import Choice, Line, OpeningPlan, Plan, Problem, Zone
from latchside.planning.questions import questions
from latchside.planning.zone_problems import zone_problems
from latchside.planning.zones import zones
from latchside.surveys.survey import ControlUnit, Opening, Site, Survey

from ..long import LONG

SURFACE, RECESSED, TRANSMITTER = "surface-contact", "recessed-contact", "wired-input-transmitter"
WIDE, STEEL_DOOR, WIRED_SURFACE = "wide-reach-contact", "steel-door-contact", "wired-surface-contact"


def opening(id_: str, place: str, kind: str = "casement", **more: Any) -> Opening:
    """An opening of which nothing else is known, unless `more` says it."""
    return Opening(id_, place, kind, **more)


def survey(openings: Sequence[Opening], unit: ControlUnit | None = None, site: Site | None = None) -> Survey:
    return Survey("trial", "Trial", tuple(openings), control_unit=unit or ControlUnit(), site=site or Site())


def unasked(of: Survey, library: Library, figures: Mapping[str, Figure], on: date) -> Plan:
    """A plan for laws that its questions have no part in, and without them, for they take most of the time.

    In the long run they are there. The laws of questions are in `test_questions`.
    """
    with patch("latchside.planning.make.questions", questions if LONG else lambda *_: ()):
        return make_plan(of, library, figures, on)


def at(
    library: Library, openings: Sequence[Opening], devices: Sequence[str | None], contact: str | None = None
) -> list[AtOpening]:
    """The openings with the devices that the test chose for them, and the contact on the loops of transmitters."""
    on_loop = library.find("device", contact) if contact else None
    return [
        AtOpening(one, library.find("device", device) if device else None, one.spoken or one.id, on_loop)
        for one, device in zip(openings, devices, strict=True)
    ]


def plans(parts: Sequence[AtOpening], figures: Mapping[str, Sequence[Line]] | None = None) -> tuple[OpeningPlan, ...]:
    """A plan of each opening with nothing in it but its choice."""
    return tuple(
        OpeningPlan(
            opening=part.opening,
            spoken=name.spoken,
            choice=Choice(part.device.id if part.device else None, (), (), ()),
            contacts=contacts(part.opening),
            zones=part.zones,
            input=part.input,
            fixing=None,
            figures=tuple((figures or {}).get(part.opening.id, ())),
            expected=(),
            cautions=(),
            stages=(),
        )
        for part, name in zip(parts, names([part.opening for part in parts]), strict=True)
    )


def schedule(
    library: Library, of: Survey, devices: Sequence[str | None] | str
) -> tuple[tuple[Zone, ...], tuple[Problem, ...]]:
    """The zone schedule and its problems, with these devices on the openings."""
    chosen = [devices] * len(of.openings) if isinstance(devices, str) else devices
    made = plans(at(library, of.openings, chosen))
    found = zones(of, made, library)
    return found, tuple(zone_problems(of, made, names(of.openings), found, house(library)))


def house(library: Library) -> House:
    return house_of(library)


def id_of(text: str | None) -> str:
    """The id of the message that a text of a plan is, below `planning/`."""
    assert isinstance(text, Message), text
    return text.id.removeprefix("planning/")


def codes(problems: Sequence[Problem]) -> list[tuple[str, str]]:
    return [(one.about, one.code) for one in problems]
