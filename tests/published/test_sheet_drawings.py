"""The drawing on the sheet of an opening shows what the sheet says: how many contacts, where, and on what.

What a sheet says is read from its words, and what its drawing shows from the labels and shapes of the picture, by their
ids and places; nothing here asks which drawing was meant for what. Sheets are those of every worked survey and of both
demos, and beside them every kind of opening with every class on wood and steel, level and stepped. Where nothing else
is said a fact is common practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from itertools import product
from typing import Any

import lxml.html
import pytest
from markupsafe import Markup

from latchside.drawings.seen import Box, seen
from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.library.traits import traits
from latchside.packs.document import render_document
from latchside.packs.paper import Document
from latchside.packs.view import JobView
from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.magnet import magnet
from latchside.planning.make import make_plan
from latchside.planning.opening_figures import Worker, opening_figures, worked
from latchside.planning.plan import OpeningPlan, Plan
from latchside.read.svg import Picture
from latchside.root import ROOT
from latchside.surveys.read import read_survey
from latchside.surveys.survey import ControlUnit, Opening, Site, Survey

ON = date(2026, 8, 31)
MAGNET = "#8e2472"
SURVEYS = sorted(
    path
    for folder in ("tests/jobs", "content/jobs")
    for path in (ROOT / folder).glob("*.yaml")
    if not path.name.endswith(".answers.yaml")
)
TITLES = {
    "hinged-door": "Hinged single door", "double-door": "Double door with a second leaf", "casement": "Casement window",
    "double-hung": "Double-hung window", "tilt-and-turn": "Tilt-and-turn window", "sliding": "Sliding door or window",
    "lift-and-slide": "Lift-and-slide door", "roof-window": "Roof window", "roller-door": "Roller door",
    "up-and-over": "Up-and-over door", "gate": "Gate",
}  # fmt: skip
IN_HOLES = ": recessed contact"


@dataclass(frozen=True)
class Shown:
    """What a picture shows: its title, its labels by id, and its magnets as seen from the front or in its only cut."""

    title: str
    labels: dict[str, str]
    magnets: tuple[Box, ...]

    def says(self, words: str) -> bool:
        return any(words in label.lower() for label in self.labels.values())

    def has(self, id_: str) -> bool:
        return id_ in self.labels


class Named(Document):
    """A page that names the drawing in the place of showing it."""

    def sketch(self, id_: str, name: str) -> Markup:
        return Markup(id_)


def shown(picture: Picture) -> Shown:
    elements = [one for one in seen(picture.root) if one.element.name != "svg"]
    labels = {
        str(one.element.attributes["id"]): " ".join(line.words() for line in one.element.elements)
        or one.element.words()
        for one in elements
        if one.element.name == "text"
    }
    front = next((one for one in picture.root.elements if one.attributes.get("id") in ("front", "side-hung")), None)
    inside = seen(front) if front is not None else iter(elements)
    magnets = (one.box() for one in inside if one.element.name == "rect" and one.look.get("fill") == MAGNET)
    title = next(one.words() for one in picture.root.elements if one.name == "title")
    return Shown(title, labels, tuple(box for box in magnets if box))


def drawn(library: Library, plan: Plan, one: OpeningPlan) -> Shown:
    id_ = str(JobView(plan, Named(library)).sketch(one))
    assert id_ in library.pictures, f"{one.opening.id}: no drawing"
    return shown(library.pictures[id_])


def asked(words: str) -> set[str]:
    """The pieces that a sheet asks for, from its words; what only a trial would ask for is not asked for yet."""
    words = re.sub(r"where a test magnet finds steel:.*", "", words.lower())
    words = re.sub(r"if they are stepped: by the step, measured first", "", words)
    halves = {"magnet", "sensor"}
    found = {f"{half} spacer" for half in halves if re.search(rf"spacers? .*under the {half}", words)}
    if re.search(r"under both halves", words):
        found |= {f"{half} spacer" for half in halves}
    found |= {piece for piece in ("sleeve", "bracket supplied") if piece in words}
    return found


def holds(library: Library, plan: Plan, one: OpeningPlan) -> None:
    """The drawing of a sheet, held to its words."""
    picture, opening, fixing = drawn(library, plan, one), one.opening, one.fixing
    where = f"{plan.survey.id}, {opening.id}, {opening.kind}: {fixing and fixing.spacer}"
    if opening.kind == "hatch":
        title = (
            "Hatch with a loose lid" if opening.loose_lid else "Hatch whose lid lifts" if opening.outdoors else "Hatch"
        )
    else:
        title = TITLES[opening.kind]
    assert picture.title.removesuffix(IN_HOLES) == title, where
    nothing = fixing is None or not fixing.magnet or "stays where it is" in fixing.magnet
    pieces = set() if nothing or fixing is None else asked(fixing.spacer)
    assert picture.has("spacer-under-the-magnet") == ("magnet spacer" in pieces), where
    assert picture.has("spacer-under-the-sensor") == ("sensor spacer" in pieces), where
    assert picture.says("spacer") == any("spacer" in piece for piece in pieces), where
    assert picture.says("sleeve") == ("sleeve" in pieces), where
    assert picture.says("bracket") == ("bracket supplied" in pieces), where
    if nothing or fixing is None:
        assert not picture.magnets, where
        assert not picture.says("magnet"), where
        return
    assert picture.says("magnet"), where
    told = f"{fixing.sensor} {fixing.magnet}"
    in_holes = bool(re.search(r"Reed in |its other half in ", told))
    assert picture.title.endswith(IN_HOLES) == in_holes, where
    assert picture.says("reed") == in_holes, where
    assert picture.says("sensor") != in_holes, where
    if opening.kind != "hatch" or not opening.outdoors or opening.loose_lid:  # a lid in a pavement is shown in a cut
        assert len(picture.magnets) == one.contacts, where
    places(picture, one, where)


def places(picture: Shown, one: OpeningPlan, where: str) -> None:
    """Two leaves, two sashes and a loose lid, each with the contacts that it has in the words of the sheet."""
    middles = [((box[0] + box[2]) / 2, (box[1] + box[3]) / 2) for box in picture.magnets]
    if one.opening.kind == "double-door":
        assert picture.says("first-opening leaf"), where
        assert picture.says("second leaf"), where
        assert sum("own contact" in label for label in picture.labels.values()) == (2 if one.contacts == 2 else 1), (
            where
        )
        first = [x for x, _ in middles if 180 < x < 252]  # its half towards the meeting edge, which is at 180
        second = [x for x, _ in middles if 108 < x < 180]
        assert (len(first), len(second)) == (1, one.contacts - 1), where
    elif one.opening.kind == "double-hung":
        assert picture.says("upper sash: slides down"), where
        assert picture.says("lower sash: slides up"), where
        lower = [y for _, y in middles if y > 188]  # the meeting rails are at 188
        assert (len(lower), len(middles) - len(lower)) == (1, one.contacts - 1), where
        at_the_head = picture.says("contact at the head") or picture.says("contact in the head")
        assert at_the_head == (one.contacts == 2), where
        if one.opening.upper_sash is False:
            assert one.fixing, where
            assert "upper" not in f"{one.fixing.sensor} {one.fixing.magnet}", where
    elif one.opening.loose_lid and one.opening.kind == "hatch":
        xs = sorted(x for x, _ in middles)
        assert xs[0] < 141, where  # at two opposite edges of a lid from 114 to 220
        assert xs[1] > 193, where


@cache
def planned(library: Library, path: str) -> Plan:
    survey, _ = read_survey(ROOT / path, library.schemas)
    assert survey is not None
    return make_plan(survey, library, catalogue(), survey.surveyed or ON)


@pytest.mark.parametrize("path", [path.relative_to(ROOT).as_posix() for path in SURVEYS])
def test_a_sheet_of_a_worked_survey_shows_what_it_says(shipped_library: Library, path: str) -> None:
    plan = planned(shipped_library, path)
    for one in plan.openings:
        holds(shipped_library, plan, one)


@pytest.mark.parametrize("path", ["content/jobs/corner-bakery.yaml", "content/jobs/foil-house.yaml"])
def test_every_sheet_of_a_document_holds_its_drawing(shipped_library: Library, path: str) -> None:
    plan = planned(shipped_library, path)
    page: Any = lxml.html.document_fromstring(render_document(plan, shipped_library, ""))
    sheets = page.xpath("//section[contains(@class, 'ls-sheet')]")
    assert len(sheets) == len(plan.openings)
    for sheet, one in zip(sheets, plan.openings, strict=True):
        (drawing,) = sheet.xpath(".//svg[contains(@class, 'ls-drawing')]")
        picture = drawn(shipped_library, plan, one)
        texts = [" ".join("".join(line.itertext()) for line in text) or text.text for text in drawing.iter("text")]
        assert drawing.get("aria-label") == picture.title
        assert texts == list(picture.labels.values())


def openings() -> Iterator[Opening]:
    """Openings of every kind, with one contact and two, level and stepped either way, on wood and on steel."""
    known: dict[str, Any] = {
        "gap_mm": 4.0,
        "play_mm": 1.0,
        "fire_rated": False,
        "escape": False,
        "drill": True,
        "height_m": 1.5,
    }
    sorts: list[tuple[str, dict[str, Any]]] = [(kind, {}) for kind in TITLES] + [
        ("double-door", {"passive_leaf": True}),
        ("double-hung", {"upper_sash": True}),
        ("double-hung", {"upper_sash": False}),
    ]
    sorts += [("hatch", {"outdoors": False}), ("hatch", {"outdoors": True}), ("hatch", {"loose_lid": True})]
    for (kind, said), step, steel in product(sorts, (None, -5.0, 0.0, 5.0), ("none", "leaf", None)):
        material = "steel" if steel == "leaf" else "wood" if steel else None
        for old in (False, True) if step is None else (False,):
            yield Opening(
                "o", "Hall", kind, **known, **said, step_mm=step, steel=steel, leaf_material=material, cable=old,
                frame_material=material, old_contact=old,
            )  # fmt: skip


def pieces_alone(work: Worker, context: Context) -> tuple[Any, ...]:
    """Of the figures of an opening those of its magnet, by which the pieces under it are chosen."""
    return worked(work, context) if work is magnet else ()


def test_every_kind_of_opening_with_every_class_shows_what_it_says(shipped_library: Library) -> None:
    plan = planned(shipped_library, "content/jobs/corner-bakery.yaml")
    classes = shipped_library.of("device")
    figures = catalogue()
    unit, site, count = ControlUnit(frequency_mhz=868.3), Site(region="united-kingdom"), 0
    for opening in openings():
        survey = Survey("s", "S", (opening,), site=site, control_unit=unit)
        for device in classes:
            if opening.kind not in device["openings"]:
                continue
            loops = [one for one in classes if traits(one).wired and opening.kind in one["openings"]]
            for contact in loops if traits(device).takes_loop else [None]:
                _, _, fixing = opening_figures(opening, device, survey, figures, ON, None, contact, pieces_alone)
                contacts = 2 if opening.passive_leaf or opening.upper_sash or opening.loose_lid else 1
                one = replace(plan.openings[0], opening=opening, fixing=fixing, contacts=contacts)
                holds(shipped_library, plan, one)
                count += 1
    assert count > 500
