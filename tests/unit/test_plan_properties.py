"""Laws that hold for the plan of every survey."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.catalogue import Figure
from latchside.library import Library
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan
from latchside.planning.short_names import name_key
from latchside.surveys.survey import Opening, Override, Survey, Wall

from .plans import unasked
from .random_surveys import WALL, draws, openings, surveys

pytestmark = pytest.mark.slow

ON = date(2026, 1, 31)
EVERY = draws(50)


@given(of=surveys())
@EVERY
def test_every_opening_has_a_device_or_something_is_said(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    plan = make_plan(of, library, figures, ON)
    assert [one.opening for one in plan.openings] == list(of.openings)
    told = {one.about for one in plan.questions} | {one.about for one in plan.problems}
    for one in plan.openings:
        assert one.choice.device is not None or one.opening.id in told
        assert (one.input is None) == (one.choice.device is None)


def test_a_device_that_the_library_does_not_have_is_a_problem(library: Library, figures: Mapping[str, Figure]) -> None:
    one = Opening("a", "Hall", "hinged-door", use="entry-route", override=Override("no-such-part", "It was cheap"))
    plan = make_plan(Survey("t", "T", (one,)), library, figures, ON)
    assert plan.openings[0].choice.device is None
    assert (plan.openings[0].figures, plan.zones, plan.days) == ((), (), ())
    told = {problem.code: problem.found for problem in plan.problems if problem.about == "a"}
    assert "no-such-part" in told["unknown-device"]
    assert "no-device" not in told


def test_problems_stand_in_the_order_of_the_walk(library: Library, figures: Mapping[str, Figure]) -> None:
    row = tuple(Opening(id_, "Hall", "hinged-door", fire_rated=True) for id_ in ("z", "m", "a"))
    about = [problem.about for problem in make_plan(Survey("t", "T", row), library, figures, ON).problems]
    assert about[0] == "site"
    assert [id_ for id_ in dict.fromkeys(about) if len(id_) == 1] == ["z", "m", "a"]


@given(of=surveys(), on=st.dates(date(2000, 1, 1), date(2100, 1, 1)))
@EVERY
def test_the_same_survey_and_date_make_the_same_plan(
    library: Library, figures: Mapping[str, Figure], of: Survey, on: date
) -> None:
    assert make_plan(of, library, figures, on) == make_plan(of, library, figures, on)


@given(of=surveys(most=4), more=openings("added"), data=st.data())
@EVERY
def test_an_added_opening_changes_no_other_device_while_positions_suffice(
    library: Library, figures: Mapping[str, Figure], of: Survey, more: Opening, data: st.DataObject
) -> None:
    """Where they do not suffice, each change is named with its reason."""
    index = data.draw(st.integers(0, len(of.openings)))
    longer = replace(of, openings=(*of.openings[:index], more, *of.openings[index:]))
    before = {one.opening.id: one for one in unasked(of, library, figures, ON).openings}
    after = {one.opening.id: one for one in unasked(longer, library, figures, ON).openings}
    assert after.keys() == {*before, "added"}
    short = any(one.choice.moved or one.choice.lacks for one in (*before.values(), *after.values()))
    for id_, one in before.items():
        now = after[id_]
        if short and now.choice != one.choice:
            assert any((now.choice.moved, one.choice.moved, now.choice.lacks, one.choice.lacks))
            continue
        assert (now.choice, now.input, now.contacts, now.figures, now.expected, now.fixing, now.cautions) == (
            one.choice, one.input, one.contacts, one.figures, one.expected, one.fixing, one.cautions,
        )  # fmt: skip


@given(of=surveys(most=4))
@EVERY
def test_an_opening_added_at_the_end_moves_no_position_while_they_suffice(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    of = replace(of, control_unit=replace(of.control_unit, wired_positions=99, radio_positions=None))
    shorter = replace(of, openings=of.openings[:-1] or of.openings)
    before = _positions(unasked(shorter, library, figures, ON))
    after = _positions(unasked(of, library, figures, ON))
    assert {key: after[key] for key in before} == before


def _positions(plan: Plan) -> dict[tuple[str, str, str], str]:
    met: dict[tuple[str, str, str], str] = {}
    for zone in plan.zones:
        part = sum(key[0] == zone.opening for key in met)
        met[zone.opening, zone.response, str(part)] = zone.position
    return met


@given(of=surveys())
@EVERY
def test_zones_have_positions_of_their_own_and_names_are_one_or_a_problem(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    plan = unasked(of, library, figures, ON)
    zones = [zone for zone in plan.zones if zone.response != "always-on"]
    assert len({zone.position for zone in zones}) == len(zones)
    assert {zone.opening for zone in zones} == {one.opening.id for one in plan.openings if one.choice.device}
    doubled = {one.about for one in plan.problems if one.code == "double-name"}
    single = [name_key(zone.spoken) for zone in zones if zone.opening not in doubled]
    assert len(set(single)) == len(single)
    for zone in zones:
        assert zone.position[0] == ("W" if zone.link == "wired" else "R")
        assert zone.reasons


@given(of=surveys())
@EVERY
def test_work_parts_and_dates_hang_together(library: Library, figures: Mapping[str, Figure], of: Survey) -> None:
    plan = unasked(of, library, figures, ON)
    fitted = [one.opening.id for one in plan.openings if one.choice.device]
    assert sorted(id_ for day in plan.days for id_ in day.openings) == sorted(fitted)
    listed = [stage for stage in plan.work if stage.about not in ("site", "control-unit")]
    assert sorted(map(str, listed)) == sorted(str(stage) for one in plan.openings for stage in one.stages)
    assert all(stage.minutes >= 0 and stage.words for stage in plan.work)
    assert all(item.quantity + item.spare > 0 <= item.quantity and item.used_for for item in plan.items)
    assert all(one.due > ON for one in plan.service)
    known = set(library.records["caution"])
    assert {id_ for one in plan.openings for id_ in one.cautions} <= known
    assert {one.caution for one in plan.cautions} <= known


@given(opening=openings("o0"), further=st.floats(0, 60), wall=WALL, floor=st.booleans())
@EVERY
def test_more_distance_walls_or_floors_never_raise_a_margin(
    library: Library, figures: Mapping[str, Figure], opening: Opening, further: float, wall: Wall, floor: bool
) -> None:
    near = replace(opening, distance_m=opening.distance_m or 3.0, walls=opening.walls or ())
    far = replace(
        near,
        distance_m=(near.distance_m or 0) + round(further, 1),
        walls=(*(near.walls or ()), wall),
        floors=(near.floors or 0) + floor if near.floors is not None or floor else None,
    )
    rank = {"poor": 0, "test on site": 1, "good": 2, "none": 3}
    lines = [
        {line.figure: line for line in unasked(Survey("t", "T", (one,)), library, figures, ON).openings[0].figures}
        for one in (near, far)
    ]
    if "radio-margin" in lines[0] and "radio-margin" in lines[1]:
        assert rank[lines[1]["radio-margin"].verdict] <= rank[lines[0]["radio-margin"].verdict]
