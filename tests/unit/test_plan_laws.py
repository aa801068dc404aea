"""Laws of a plan that say always, never or only, over surveys made by chance."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.catalogue import Figure
from latchside.library import Library
from latchside.packs.view import JobView
from latchside.packs.visit import visit_json
from latchside.planning.at_opening import AtOpening
from latchside.planning.choose import choose
from latchside.planning.house import house_of
from latchside.planning.names import contacts
from latchside.planning.plan import OpeningPlan, Plan
from latchside.planning.short_names import limit_of, name_key
from latchside.planning.summary import rows
from latchside.surveys.survey import Opening, Survey

from .plans import unasked
from .random_surveys import draws, openings, surveys

pytestmark = pytest.mark.slow

ON = date(2026, 1, 31)
OF_THE_WAY = {"radio-margin", "cable-resistance", "loop-states", "cell-life", "missed-check-in", "check-ins", "ladder"}
"""Figures of the way to the panel and of the work, which no label of a contact in place sets."""
EVERY = draws(60)


def at(library: Library, one: OpeningPlan) -> AtOpening:
    device, contact = (library.find("device", id_) if id_ else None for id_ in (one.choice.device, one.choice.contact))
    return AtOpening(one.opening, device, one.spoken, contact, one.choice.shared)


# -- figures that fail ---------------------------------------------------------------------------------------


@given(of=surveys())
@EVERY
def test_a_figure_that_fails_is_always_a_problem_with_something_to_do(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    plan = unasked(of, library, figures, ON)
    lines = [("site", line) for line in plan.site_figures]
    lines += [(one.opening.id, line) for one in plan.openings for line in one.figures]
    for about, line in lines:
        told = [one for one in plan.problems if one.concerns(about) and line.shown in one.found]
        assert bool(told) or line.verdict != "poor"
        assert all(one.action and one.action not in one.found for one in told)
    for one, row in zip(plan.openings, rows(plan), strict=True):
        assert "poor" not in row[2] or "problem" in row[3]
        view = JobView(plan, None)  # type: ignore[arg-type]
        has = any(problem.concerns(one.opening.id) for problem in plan.problems)
        assert (view.verdict(one) == "problem") == (has and one.choice.device is not None)


# -- positions -----------------------------------------------------------------------------------------------


def used(plan: Plan, link: str) -> int:
    lacking = {one.opening.id for one in plan.openings if one.choice.lacks}
    return sum(zone.link == link and zone.opening not in lacking for zone in plan.zones if zone.response != "always-on")


@given(of=surveys())
@EVERY
def test_a_plan_never_takes_more_positions_than_the_panel_has(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    plan = unasked(of, library, figures, ON)
    unit = of.control_unit
    for link, free in (("wired", unit.wired_positions), ("radio", unit.radio_positions)):
        assert free is None or used(plan, link) <= free
    lacking = {one.opening.id for one in plan.openings if one.choice.lacks}
    assert {one.about for one in plan.problems if one.code == "no-position"} == lacking
    assert ("too-few-positions" in [one.code for one in plan.problems]) == bool(lacking)


@given(of=surveys())
@EVERY
def test_positions_change_a_choice_only_with_a_reason_and_never_the_leads(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    for one in unasked(of, library, figures, ON).openings:
        own = choose(one.opening, of.site, of.control_unit, library)
        if one.choice.moved is None:
            assert replace(one.choice, lacks=False) == own
        else:
            assert one.opening.override is None
            assert one.choice.shared or (one.choice.device != own.device and one.choice.moved in one.choice.reasons)


@given(of=surveys())
@EVERY
def test_positions_that_suffice_or_are_not_known_change_nothing(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    for free in (None, 999):
        unit = replace(of.control_unit, wired_positions=free, radio_positions=free)
        for one in unasked(replace(of, control_unit=unit), library, figures, ON).openings:
            assert one.choice == choose(one.opening, of.site, unit, library)


# -- what stays, and where no hole is made ------------------------------------------------------------------


@given(of=surveys())
@EVERY
def test_a_sound_contact_always_stays_unless_the_lead_says_otherwise(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    for one in unasked(of, library, figures, ON).openings:
        if one.opening.old_contact and one.choice.device and not one.opening.override:
            assert at(library, one).kept == 1
            failed = {line.figure for line in one.figures if line.verdict == "poor"}
            assert failed <= OF_THE_WAY or contacts(one.opening) > 1
            assert any(line.verdict == "test on site" and "in place" in line.name for line in one.figures)


@given(opening=openings("o0"), barred=st.sampled_from(["fire_rated", "escape", "drill"]))
@EVERY
def test_no_new_hole_is_ever_made_where_none_may_be(
    library: Library, figures: Mapping[str, Figure], opening: Opening, barred: str
) -> None:
    """A barrel needs a hole, and the housing of a wide-gap contact hangs on screws: neither is ever new there."""
    told = replace(opening, override=None, **{barred: barred != "drill"})  # type: ignore[arg-type]
    one = unasked(Survey("t", "T", (told,)), library, figures, ON).openings[0]
    part = at(library, one)
    new = part.contact if part.transmitter else part.device
    if new is not None and part.contacts > part.kept:
        second = [problem.code for problem in unasked(Survey("t", "T", (told,)), library, figures, ON).problems]
        roles = {entry["role"] for entry in new["parts"]}
        assert (new["traits"]["mounts"] == "surface" and "pad" in roles) or (part.kept and "second-contact" in second)


@given(opening=openings("o0"), depth=st.floats(0, 36.9))
@EVERY
def test_glass_within_the_depth_of_a_hole_always_rules_it_out(
    library: Library, figures: Mapping[str, Figure], opening: Opening, depth: float
) -> None:
    """A hole of 35 mm, 2 mm either way, with glass nearer than that."""
    told = replace(opening, override=None, old_contact=False, glazed=True, rail_depth_mm=depth)
    one = unasked(Survey("t", "T", (told,)), library, figures, ON).openings[0]
    for id_ in filter(None, (one.choice.device, one.choice.contact)):
        record = library.find("device", id_)
        assert record is not None
        assert "hole-depth" not in record["values"]


@given(opening=openings("o0"))
@EVERY
def test_a_wish_for_nothing_in_sight_is_met_or_put_to_the_customer(
    library: Library, figures: Mapping[str, Figure], opening: Opening
) -> None:
    told = replace(opening, wish="hidden", old_contact=False)
    plan = unasked(Survey("t", "T", (told,)), library, figures, ON)
    part = at(library, plan.openings[0])
    new = part.contact if part.transmitter else part.device
    concealed = new is not None and "hole-depth" in new["values"]
    asked = any(one.code == "wish-cannot-be-met" and "customer" in one.action for one in plan.problems)
    assert part.device is None or concealed != asked


# -- two contacts, names, chime, height ----------------------------------------------------------------------


@given(of=surveys(most=4))
@EVERY
def test_every_contact_has_its_own_line_in_the_visit_and_on_the_sheets(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    plan = unasked(of, library, figures, ON)
    entries = [one for one in json.loads(visit_json(plan))["entries"] if one["kind"] == "opening"]
    assert len(entries) == sum(contacts(one.opening) for one in plan.openings)
    assert len({one["opening"] for one in entries}) == len(entries)
    view = JobView(plan, None)  # type: ignore[arg-type]
    for one in view.plan.openings:
        spots = [spot for spot in view.contacts() if spot.plan is one]
        wanted = contacts(one.opening) if one.choice.device else 0
        assert len(spots) == len({spot.anchor for spot in spots}) == wanted
        handed = [spot for spot, _ in view.handed_over() if spot.plan is one]
        assert len(handed) == (0 if one.choice.lacks else wanted)


@given(of=surveys(), letters=st.integers(8, 40))
@EVERY
def test_what_the_planner_adds_to_a_name_never_makes_it_too_long(
    library: Library, figures: Mapping[str, Figure], of: Survey, letters: int
) -> None:
    unit = replace(of.control_unit, name_length=letters, layout="double")
    of = replace(of, control_unit=unit)
    plan = unasked(of, library, figures, ON)
    limit = limit_of(unit, house_of(library))
    fits = {one.opening.id for one in plan.openings if limit.fits(one.spoken)}
    for zone in plan.zones:
        assert limit.fits(zone.spoken) or zone.opening not in fits or zone.response == "always-on"  # it takes no name
    for one in plan.openings:
        assert len({name_key(name) for name in one.contact_names}) == contacts(one.opening)


@given(of=surveys())
@EVERY
def test_a_chime_is_only_set_where_somebody_wants_one(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    plan = unasked(of, library, figures, ON)
    assert of.control_unit.chime or not any(zone.chime for zone in plan.zones)


@given(opening=openings("o0"), height=st.floats(4.01, 30))
@EVERY
def test_work_above_what_a_ladder_is_used_for_always_names_access_equipment(
    library: Library, figures: Mapping[str, Figure], opening: Opening, height: float
) -> None:
    plan = unasked(Survey("t", "T", (replace(opening, height_m=height),)), library, figures, ON)
    one = plan.openings[0]
    if one.choice.device:
        assert "tower" in next(told.action for told in plan.problems if "ladder" in told.found.lower())
        assert one.fixing is None or "tower" in one.fixing.height
        assert any("tower" in item.name.lower() for item in plan.items)
        assert not any("ladder" in stage.words for stage in one.stages)
