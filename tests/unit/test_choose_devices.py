"""Choosing and asking: every opening gets a class, a question or a problem, by its own facts alone."""

from __future__ import annotations

from dataclasses import fields, replace
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.messages import Message, resource
from latchside.planning.choose import choice_problems, choose
from latchside.planning.house import house_of
from latchside.planning.plan import Choice, Question
from latchside.planning.questions import questions
from latchside.planning.standing import standings
from latchside.surveys.survey import ControlUnit, Opening, Override, Site, Survey, Wall

from .random_surveys import draws
from .support import schemas

DEVICES = (
    "recessed-contact", "steel-door-contact", "surface-contact", "wide-reach-contact", "wired-input-transmitter",
    "wired-surface-contact",
)  # fmt: skip
DRILLED = ("recessed-contact", "steel-door-contact")
PLACE = Opening(id="one", place="Hall", kind="hinged-door")
SOUND = Opening(
    id="one", place="Hall", kind="hinged-door", fire_rated=False, escape=False, play_mm=1, leaf_material="wood",
    frame_material="wood", steel="none", gap_mm=4, step_mm=0, use="other", height_m=2, distance_m=8, walls=(), floors=0,
    outer_wall="no", cable=False, cable_length_m=10, old_contact=False, outdoors=False, drill=True, wish="none",
    openings_a_day=5, powered=False, hardware=(), width_m=0.9, glazed=False,
)  # fmt: skip
MATERIALS = ("wood", "plastic", "aluminium", "steel", "glass", "composite", "unknown")

maybe = st.sampled_from([True, False, None])
length = st.none() | st.sampled_from([0.0, 1.0, 3.0, 4.0, 5.0, 10.0, 19.0, 21.0, 40.0, 120.0])
FACTS: dict[str, st.SearchStrategy[Any]] = {
    "fire_rated": maybe, "escape": maybe, "cable": maybe, "outdoors": maybe, "drill": maybe, "old_contact": maybe,
    "passive_leaf": maybe, "upper_sash": maybe, "loose_lid": maybe,
    "leaf_material": st.none() | st.sampled_from(MATERIALS),
    "frame_material": st.none() | st.sampled_from(MATERIALS),
    "steel": st.sampled_from([None, "none", "leaf", "frame", "both", "unknown"]),
    "gap_mm": length, "play_mm": length, "step_mm": length, "height_m": length, "distance_m": length,
    "cable_length_m": length, "use": st.sampled_from([None, "entry-route", "on-route", "other"]),
    "wish": st.sampled_from([None, "hidden", "surface", "none"]),
    "outer_wall": st.sampled_from([None, "no", "traditional", "efficient", "unknown"]),
    "walls": st.sampled_from([None, (), (Wall("brick", 200.0),), (Wall("foil"), Wall("metal"))]),
    "floors": st.none() | st.integers(0, 3),
}  # fmt: skip
openings = st.builds(
    Opening, id=st.just("one"), place=st.just("Hall"),
    kind=st.sampled_from(list(schemas().words("opening"))), **FACTS,
)  # fmt: skip


def chosen(opening: Opening, library: Library) -> Choice:
    return choose(opening, Site(), ControlUnit(), library)


def found_in(survey: Survey, library: Library) -> tuple[Question, ...]:
    return questions(survey, library, catalogue(), date(2026, 1, 31), house_of(library))


def asked(opening: Opening, library: Library) -> set[str]:
    survey = Survey("job", "Job", (opening,))
    return {one.field for one in found_in(survey, library) if one.about == opening.id}


@given(opening=openings)
@draws(40)
def test_every_opening_gets_a_class_a_question_or_a_problem(opening: Opening, shipped_library: Library) -> None:
    choice = chosen(opening, shipped_library)
    assert choice.device or asked(opening, shipped_library) or choice_problems(opening, choice, shipped_library)
    assert choice.reasons or choice.device is None
    others = [one.device for one in choice.passed_over]
    assert sorted([*others, *filter(None, [choice.device])]) == sorted(DEVICES)
    assert all(one.why for one in choice.passed_over)
    texts = (*choice.reasons, *choice.against, *(why for one in choice.passed_over for why in one.why))
    assert not any("[[" in text for text in texts)


@given(opening=openings)
@draws(40)
def test_what_is_ruled_out_is_never_chosen(opening: Opening, shipped_library: Library) -> None:
    choice = chosen(opening, shipped_library)
    device = shipped_library.find("device", choice.device) if choice.device else None
    if device:
        assert opening.kind in device["openings"]
    if opening.fire_rated or opening.escape or opening.drill is False:
        assert choice.device not in DRILLED
        if opening.drill is not False:
            assert "life-safety" in [one.code for one in choice_problems(opening, choice, shipped_library)]


@given(opening=openings)
@draws(40)
def test_a_hole_waits_for_the_answer_about_life_safety(opening: Opening, shipped_library: Library) -> None:
    """Where nobody said whether a door is fire-rated, it is asked before a hole is made in it."""
    choice = chosen(opening, shipped_library)
    if choice.device in DRILLED and opening.fire_rated is None and not opening.old_contact:
        assert "fire_rated" in asked(opening, shipped_library)
        unknown = [line for line in choice.against if isinstance(line, Message) and line.id.endswith("#not-known")]
        assert any("fire-rated" in str(line.values["fields"]) for line in unknown)


@given(opening=openings, other=openings, positions=st.integers(0, 3))
@draws(40)
def test_the_choice_is_the_opening_s_own(
    opening: Opening, other: Opening, positions: int, shipped_library: Library
) -> None:
    """Neither other openings nor free positions nor the site change it, and its questions stay."""
    site, unit = Site(region="europe", monitored=True), ControlUnit(radio_positions=positions, wired_positions=0)
    assert choose(opening, site, unit, shipped_library) == chosen(opening, shipped_library)
    two = Survey("job", "Job", (opening, replace(other, id="two")), site=site, control_unit=unit)
    of_one = [[one for one in found_in(each, shipped_library) if one.about == "one"]
              for each in (two, replace(two, openings=(opening,)))]  # fmt: skip
    assert of_one[0] == of_one[1]


@given(opening=openings)
@draws(40)
def test_nothing_is_asked_that_was_told(opening: Opening, shipped_library: Library) -> None:
    for field in asked(opening, shipped_library):
        names = {one.name for one in fields(Opening)} & {field, f"{field}_mm", f"{field}_m", f"{field}_mm2"}
        assert [getattr(opening, name) in (None, "unknown") for name in names] == [True]


def test_questions_are_in_one_order(shipped_library: Library) -> None:
    survey = Survey("job", "Job", (PLACE, replace(PLACE, id="two", kind="gate")))
    found = found_in(survey, shipped_library)
    assert found == found_in(survey, shipped_library)
    abouts = list(dict.fromkeys(one.about for one in found))
    assert abouts == ["site", "control-unit", "one", "two"]
    assert all(one.text.endswith("?") and one.why.endswith(".") for one in found)
    for about in abouts:
        orders = [one.order for one in found if one.about == about]
        assert orders == sorted(orders)


def test_questions_go_by_the_schema_s_names() -> None:
    job = schemas().documents["job.schema.json"]
    known = {**job["properties"]["site"]["properties"], **job["properties"]["control_unit"]["properties"]}
    known |= job["$defs"]["opening"]["properties"]
    asked_for = [entry.id.name for entry in resource("planning/question_words").body if hasattr(entry, "id")]
    assert {id.removeprefix("ask-").replace("-", "_") for id in asked_for} <= {*known, "any"}


def test_a_full_survey_asks_nothing(shipped_library: Library) -> None:
    site = Site(
        region="europe", year_built=1990, building="home", listed=False, consent="owner", occupied=True,
        monitored=False, keyholder_arranged=True, grade="grade-2",
    )  # fmt: skip
    unit = ControlUnit(
        owner="customer", installer_access=True, frequency_mhz=868.3, sensitivity_dbm=-105, two_way=False,
        wired_positions=8, radio_positions=8, name_length=32, supply_v=12, pull_up_ohm=2200, layout="series",
        end_of_line_ohm=2200, standby_ma=100, alarm_ma=600, chime=True,
    )  # fmt: skip
    survey = Survey("job", "Job", (SOUND,), site=site, control_unit=unit)
    assert found_in(survey, shipped_library) == ()


def test_what_does_not_matter_is_not_asked(shipped_library: Library) -> None:
    """No gauge for radio, no radio path for a wired contact, no passive leaf on a single door."""
    assert chosen(SOUND, shipped_library).device == "surface-contact"
    radio = replace(SOUND, cable_length_m=None, distance_m=None, openings_a_day=None)
    assert asked(radio, shipped_library) >= {"openings_a_day"}
    assert not asked(radio, shipped_library) & {"cable_area", "passive_leaf", "upper_sash"}
    wired = replace(SOUND, cable=True, cable_length_m=None, distance_m=None, floors=None, openings_a_day=None)
    assert chosen(wired, shipped_library).device == "recessed-contact"
    assert not asked(wired, shipped_library) & {"distance", "floors", "openings_a_day"}
    assert "cable_area" not in asked(replace(wired, cable_awg=22), shipped_library)
    assert "passive_leaf" in asked(replace(SOUND, kind="double-door"), shipped_library)
    assert "upper_sash" in asked(replace(SOUND, kind="double-hung"), shipped_library)
    survey = Survey("job", "Job", (SOUND,))
    unit = {one.field for one in found_in(survey, shipped_library) if one.about == "control-unit"}
    assert {"radio_positions", "frequency", "standby_current", "alarm_current"} <= unit
    assert not unit & {"wired_positions", "layout", "end_of_line", "pull_up", "supply"}


def test_nothing_told_is_not_guessed(shipped_library: Library) -> None:
    choice = chosen(PLACE, shipped_library)
    assert choice.device is None
    assert {"cable", "leaf_material", "fire_rated", "gap", "drill"} <= asked(PLACE, shipped_library)
    by_kind = {"wide-reach-contact"}  # it trips too late at every hinged door
    assert {one.device for one in choice.passed_over if one.ruled_out} <= by_kind


def test_an_override_is_kept_with_its_reason(shipped_library: Library) -> None:
    wish = Override("wired-input-transmitter", "The old contact stays.")
    choice = chosen(replace(SOUND, override=wish), shipped_library)
    assert (choice.device, choice.overridden) == ("wired-input-transmitter", "The old contact stays.")
    assert choice.against  # what speaks against it is still said
    assert choice_problems(replace(SOUND, override=wish), choice, shipped_library) == ()


@pytest.mark.parametrize(
    ("changes", "device"),
    [({"fire_rated": True}, "recessed-contact"), ({"kind": "gate"}, "recessed-contact"),
     ({"outdoors": True}, "surface-contact")],
)  # fmt: skip
def test_an_override_to_what_is_ruled_out_is_kept_and_told(
    changes: dict[str, Any], device: str, shipped_library: Library
) -> None:
    opening = replace(SOUND, **changes, override=Override(device, "The people on site insist."))
    choice = chosen(opening, shipped_library)
    assert choice.device == device
    assert "override-ruled-out" in [one.code for one in choice_problems(opening, choice, shipped_library)]


@pytest.mark.parametrize(
    ("steel", "leaf", "frame", "doubted"),
    [("none", "steel", "wood", True), ("leaf", "steel", "steel", True), ("both", "steel", "steel", False),
     ("none", "aluminium", "wood", False), (None, "steel", "steel", False), ("leaf", "steel", "wood", False)],
)  # fmt: skip
def test_steel_in_which_no_steel_was_found_is_a_problem(
    steel: str | None, leaf: str, frame: str, doubted: bool, shipped_library: Library
) -> None:
    opening = replace(SOUND, steel=steel, leaf_material=leaf, frame_material=frame)
    problems = choice_problems(opening, chosen(opening, shipped_library), shipped_library)
    assert ("steel-not-found" in [one.code for one in problems]) == doubted


def test_an_override_to_an_unknown_class_stands_for_others_to_find(shipped_library: Library) -> None:
    opening = replace(SOUND, override=Override("light-beam", "It was in the van."))
    assert chosen(opening, shipped_library).device == "light-beam"
    assert choice_problems(opening, chosen(opening, shipped_library), shipped_library) == ()


def test_equal_scores_follow_the_fixed_rule(shipped_library: Library) -> None:
    """Fewer open conditions that could rule it out, then wired before radio, then the id."""
    for opening in (PLACE, SOUND, replace(SOUND, cable=True)):
        ranks = [
            (not at.possible, -at.score, at.could_fall, not at.profile.wired, at.profile.id)
            for at in standings(opening, shipped_library)
        ]
        assert ranks == sorted(ranks)


@pytest.mark.parametrize(("gap", "told"), [(6.0, False), (18.0, False), (40.0, True)])
def test_a_contact_of_wider_reach_is_ordered_only_where_no_class_reaches(
    gap: float, told: bool, shipped_library: Library
) -> None:
    """A surface contact with a strong magnet closes at 18 mm on wood, and a recessed one does not: common practice."""
    lead = Override("wired-input-transmitter", "No cable comes that far.")
    hatch = Opening(
        "h", "Cellar", "hatch", gap_mm=gap, play_mm=4, leaf_material="wood", frame_material="wood", override=lead
    )
    choice = choose(hatch, Site(), ControlUnit(), shipped_library)
    assert ("wider-reach" in {one.code for one in choice_problems(hatch, choice, shipped_library)}) is told
