"""The questions of a plan come from the plan: what is not asked changes nothing, and what is asked does."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from latchside.figures.catalogue import Figure
from latchside.library import Library
from latchside.planning import questions as asking
from latchside.planning.answers import NO_FACTS, fields
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan, Question
from latchside.planning.question_words import ASKED_BY, can_matter, text
from latchside.surveys.build import attribute
from latchside.surveys.survey import ControlUnit, Opening, Override, Site, Survey

from .plans import id_of
from .random_surveys import FACTS, SITE_FACTS, UNIT_FACTS, draws, surveys
from .support import schemas

pytestmark = pytest.mark.slow

ON = date(2026, 1, 31)
MANY = draws(60)
WITH_OTHERS = "With other answers"
SOUND = Opening(
    "one", "Hall", "hinged-door", fire_rated=False, escape=False, powered=False, hardware=(), width_m=0.9, play_mm=1,
    leaf_material="wood", frame_material="wood", glazed=False, steel="none", gap_mm=4, step_mm=0, use="other",
    height_m=2, distance_m=8, walls=(), floors=0, outer_wall="no", cable=False, cable_length_m=10, old_contact=False,
    outdoors=False, drill=True, wish="none", openings_a_day=5,
)  # fmt: skip


def noticed(plan: Plan, id_: str) -> dict[str, Any]:
    """What a reader would notice of one opening."""
    one = next(each for each in plan.openings if each.opening.id == id_)
    return {
        "device": (one.choice.device, one.choice.contact),
        "fixing": one.fixing,
        "verdicts": [(line.name, line.verdict) for line in one.figures],
        "zones": [
            (zone.link, zone.response, zone.reports, zone.chime, zone.supervision)
            for zone in plan.zones
            if zone.opening == id_
        ],
        "cautions": sorted(one.cautions),
        "problems": sorted({each.code for each in plan.problems if each.about == id_}),
    }


def parts(plan: Plan) -> list[tuple[str, float]]:
    """What is packed for the whole job."""
    return [(one.name, one.quantity) for one in plan.items if one.sort != "tool"]


def whole(plan: Plan) -> dict[str, Any]:
    """What a reader would notice of the site, and of every opening."""
    return {
        "figures": [(line.name, line.verdict) for line in plan.site_figures],
        "cautions": sorted(one.caution for one in plan.cautions if "site" in one.about),
        "problems": sorted({one.code for one in plan.problems if one.about in ("site", "control-unit")}),
        "openings": [noticed(plan, one.opening.id) for one in plan.openings],
        "parts": parts(plan),
    }


def asked(plan: Plan, about: str) -> set[str]:
    """The fields that are asked, and those that the same question answers."""
    found = {one.field for one in plan.questions if one.about == about}
    return {attribute(one) for one in found | {one for one, by in ASKED_BY.items() if by in found}}


NOT_OF_ALL = ("hardware", "powered", "cable_area", "cable_awg")


def told(of: Survey, name: str, value: object) -> Survey:
    """The survey with one fact of its first opening told."""
    return replace(of, openings=(replace(of.openings[0], **{name: value}), *of.openings[1:]))  # type: ignore[arg-type]


@given(of=surveys(most=1), data=st.data())
@MANY
def test_no_answer_to_a_field_that_is_not_asked_changes_the_plan(
    library: Library, figures: Mapping[str, Figure], of: Survey, data: st.DataObject
) -> None:
    plan = make_plan(of, library, figures, ON)
    opening = of.openings[0]
    known = asked(plan, opening.id)
    beside = {attribute(one) for one in NOT_OF_ALL if not can_matter(one, opening)}  # what it cannot have, or we choose
    names = [name for name in FACTS if getattr(opening, name) is None and name not in known | beside]
    assume(names)
    name = data.draw(st.sampled_from(names))
    value = data.draw(FACTS[name].filter(lambda one: one is not None))
    after = make_plan(told(of, name, value), library, figures, ON)
    assert noticed(after, opening.id) == noticed(plan, opening.id), (name, value)
    assert parts(after) == parts(plan), (name, value)


@given(of=surveys(most=3), data=st.data())
@MANY
def test_no_answer_to_a_field_of_the_site_that_is_not_asked_changes_the_plan(
    library: Library, figures: Mapping[str, Figure], of: Survey, data: st.DataObject
) -> None:
    plan = make_plan(of, library, figures, ON)
    part, about, facts = data.draw(
        st.sampled_from([("site", "site", SITE_FACTS), ("control_unit", "control-unit", UNIT_FACTS)])
    )
    known = asked(plan, about)
    names = [name for name in facts if getattr(getattr(of, part), name) is None and name not in known]
    names = [name for name in names if name not in NO_FACTS]
    assume(names)
    name = data.draw(st.sampled_from(names))
    value = data.draw(facts[name].filter(lambda one: one is not None))
    changed = replace(getattr(of, part), **{name: value})
    after = make_plan(replace(of, **{part: changed}), library, figures, ON)
    assert whole(after) == whole(plan), (name, value)


@given(of=surveys(most=1))
@draws(25)
def test_every_field_that_is_asked_has_an_answer_that_changes_the_plan(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    plan = make_plan(of, library, figures, ON)
    known = {one.name: one for one in fields(library).opening}
    for question in plan.questions:
        if question.about != of.openings[0].id or question.why.startswith(WITH_OTHERS):
            continue
        if question.field == "free":  # decides the order of work alone
            continue
        field = known[question.field]
        before = (noticed(plan, question.about), parts(plan))
        tried = (*field.answers, *field.choosing, *field.beside(plan.openings[0].choice.device))
        after = (make_plan(told(of, field.attribute, value), library, figures, ON) for value in dict.fromkeys(tried))
        assert any((noticed(one, question.about), parts(one)) != before for one in after), question


def ask(library: Library, figures: Mapping[str, Figure], opening: Opening, **more: Any) -> dict[str, Question]:
    plan = make_plan(Survey("job", "Job", (opening,), **more), library, figures, ON)
    return {one.field: one for one in plan.questions if one.about == opening.id}


def test_nothing_is_asked_twice_or_after_it_was_told(library: Library, figures: Mapping[str, Figure]) -> None:
    assert ask(library, figures, SOUND) == {}
    site = Site("europe", 1990, occupied=True, monitored=True, keyholder_arranged=True)
    unit = ControlUnit(
        frequency_mhz=868.3, sensitivity_dbm=-105, two_way=True, wired_positions=8, radio_positions=8, name_length=32,
        supply_v=12, pull_up_ohm=2200, layout="series", end_of_line_ohm=2200, standby_ma=100, alarm_ma=600, chime=True,
        owner="customer", installer_access=True,
    )  # fmt: skip
    plan = make_plan(Survey("job", "Job", (SOUND,), site=site, control_unit=unit), library, figures, ON)
    assert {one.field for one in plan.questions} <= {"building", "listed", "consent", "grade"}


@pytest.mark.parametrize(
    ("field", "value", "why"),
    [
        # the choosing of the library: a wooden entry door takes a hole where one is allowed
        ("drill", {"cable": True, "drill": None}, "decides#device-between"),
        ("old_contact", {"old_contact": None}, "decides#"),
        ("gap", {"gap_mm": None}, "decides#"),
        ("height", {"height_m": None}, "decides#"),
    ],
)
def test_a_question_says_what_it_decides(
    library: Library, figures: Mapping[str, Figure], field: str, value: Mapping[str, Any], why: str
) -> None:
    found = ask(library, figures, replace(SOUND, **value))
    assert field in found
    assert found[field].text.endswith("?")
    assert id_of(found[field].why).startswith(why)
    if why.endswith("between"):
        assert "recessed contact" in found[field].why


def test_what_decides_most_comes_first(library: Library, figures: Mapping[str, Figure]) -> None:
    bare = replace(SOUND, drill=None, cable=True, openings_a_day=None, height_m=None)
    found = list(ask(library, figures, bare))
    assert found.index("drill") < found.index("height")


def test_an_opening_of_which_nothing_is_known_is_asked_about(library: Library, figures: Mapping[str, Figure]) -> None:
    for kind in schemas().words("opening"):
        found = ask(library, figures, Opening("one", "Hall", kind))
        assert {"fire_rated", "gap", "use"} & set(found), kind


def test_the_lead_s_own_choice_is_not_asked_about(library: Library, figures: Mapping[str, Figure]) -> None:
    """A class chosen by hand stays; what is asked then concerns its figures, its fixing and its cautions."""
    found = ask(library, figures, replace(SOUND, override=Override("surface-contact", "It is there"), drill=None))
    assert not any(id_of(one.why) == "decides#device-between" for one in found.values())


def test_every_fact_of_the_schema_has_a_question(library: Library) -> None:
    known = fields(library)
    for field in (*known.site, *known.unit, *known.opening):
        question = text(field.name)
        assert question.endswith("?")
        assert field.name in ASKED_BY or question.id != "planning/question_words#ask-any", field.name


def test_a_second_plan_works_only_the_questions_of_what_changed(
    library: Library, figures: Mapping[str, Figure], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A lead fills in a survey answer by answer; twelve openings are not worked again for one of them."""
    worked, work = list[str](), asking._of_opening

    def counted(seen: asking._Seen, *rest: Any) -> tuple[Any, ...]:
        worked.append(seen.facts[0].kind)
        return work(seen, *rest)

    monkeypatch.setattr(asking, "_of_opening", counted)
    asking._outcomes.cache_clear()
    rows = [Opening(f"o{n}", f"Room {n}", kind) for n, kind in enumerate(("hinged-door", "casement", "gate"))]
    of = Survey("t", "T", tuple(rows))
    make_plan(of, library, figures, ON)
    assert sorted(worked) == ["casement", "gate", "hinged-door"]
    worked.clear()
    second = make_plan(told(of, "gap_mm", 4.0), library, figures, ON)
    assert worked == ["hinged-door"]
    asking._outcomes.cache_clear()
    assert make_plan(told(of, "gap_mm", 4.0), library, figures, ON) == second
