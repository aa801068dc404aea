"""What some plan could ask: the facts that the form of a survey asks for, found by asking a set of surveys.

Every fact of the site and of the control unit could be asked. Of openings, each kind is planned with nothing told. The
usual kind is planned with each class chosen by hand, with single facts told that bring further questions, and with all
told but one fact.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from typing import Any

from latchside.figures.catalogue import figures_of
from latchside.library.model import Library
from latchside.planning.answers import fields
from latchside.planning.hours import FIELD
from latchside.planning.house import house_of
from latchside.planning.looked_at import told
from latchside.planning.question_words import ASKED_BY, can_matter
from latchside.planning.questions import questions
from latchside.surveys.build import survey_of
from latchside.surveys.survey import ControlUnit, Opening, Override, Site, Survey
from latchside.surveys.template import EXAMPLE

_DAY = date(2000, 1, 1)
"""The day decides no question: it only moves the dates of a plan."""
_USUAL = "hinged-door"
_TOLD: tuple[Mapping[str, Any], ...] = (
    {"cable": True}, {"cable": False, "cable_length_m": 10.0}, {"old_contact": True, "cable": True}, {"glazed": True},
    {"leaf_material": "steel", "frame_material": "steel"},
)  # fmt: skip
_SITE = Site(
    region="europe", year_built=1970, building="home", listed=False, consent="owner", occupied=True, monitored=True,
    keyholder_arranged=True, grade="grade-2",
)  # fmt: skip
_UNIT = ControlUnit(
    owner="customer", installer_access=True, frequency_mhz=868.3, sensitivity_dbm=-105, two_way=False,
    wired_positions=8, radio_positions=8, name_length=16, supply_v=12, pull_up_ohm=2200, layout="series",
    end_of_line_ohm=2200, standby_ma=100, alarm_ma=600, chime=True,
)  # fmt: skip


@dataclass(frozen=True)
class Askable:
    """The fields of the site, the control unit, and of openings by their kind, that some plan could ask."""

    site: frozenset[str]
    unit: frozenset[str]
    opening: Mapping[str, frozenset[str]]

    def kinds(self, field: str) -> tuple[str, ...]:
        """The kinds of opening at which a field could be asked."""
        return tuple(kind for kind, names in self.opening.items() if field in names)


@lru_cache(maxsize=2)
def askable(library: Library) -> Askable:
    """What some plan could ask, with this library."""
    kinds = tuple(library.schemas.words("opening"))
    bare = [Opening("", "", kind) for kind in kinds]
    usual = replace(bare[0], kind=_USUAL)
    own = [_of_openings(library, [one, *list(_chosen(library, one))[:1]]) for one in bare]
    shared = set.intersection(*own) | _of_openings(library, [replace(usual, **facts) for facts in _TOLD])
    shared |= _of_openings(library, _chosen(library, usual)) | _of_openings(library, _but_one(library), known=True)
    shared.add(FIELD)
    known = fields(library)
    return Askable(
        frozenset(one.name for one in known.site),
        frozenset(one.name for one in known.unit),
        {one.kind: frozenset(_can(one, names | shared)) for one, names in zip(bare, own, strict=True)},
    )


def _can(opening: Opening, names: Iterable[str]) -> Iterator[str]:
    return (name for name in names if can_matter(name, opening))


def _chosen(library: Library, opening: Opening) -> Iterator[Opening]:
    """An opening with each class chosen by hand."""
    for device in library.of("device"):
        if opening.kind in device["openings"]:
            yield replace(opening, override=Override(device.id, ""))


def _example() -> Opening:
    """The opening that shows the form of a survey, of which all is told."""
    example = survey_of({"id": "one", "name": "one", "openings": [EXAMPLE]}).openings[0]
    return replace(example, escape=False)


def _but_one(library: Library) -> Iterator[Opening]:
    """The example with each class, and one fact missing."""
    for one in _chosen(library, _example()):
        yield from (told(one, field.attribute, None) for field in fields(library).opening)


def _of_openings(library: Library, listed: Iterable[Opening], *, known: bool = False) -> set[str]:
    row = tuple(replace(one, id=f"o{number}") for number, one in enumerate(listed))
    survey = Survey("", "", row, site=_SITE, control_unit=_UNIT) if known else Survey("", "", row)
    return _asked(survey, library, {one.id for one in row})


def _asked(survey: Survey, library: Library, about: Iterable[str]) -> set[str]:
    found = questions(survey, library, figures_of(library), _DAY, house_of(library))
    names = {one.field for one in found if one.about in about}
    return names | {name for name, by in ASKED_BY.items() if by in names}
