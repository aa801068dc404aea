"""The order of work and its minutes, against the minutes that procedures state."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import ceil
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.jobs.days import Times, lay
from latchside.jobs.house import rules_of
from latchside.jobs.plan import Line, Verdict
from latchside.jobs.survey import JobRules, Opening
from latchside.jobs.work import AT_OPENING, Work, procedures_at, work
from latchside.library import Library
from latchside.project import Checked

from .plans import RECESSED, SURFACE, TRANSMITTER, WIDE, at, house, opening


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def line(verdict: Verdict) -> Line:
    return Line("Radio", "", verdict, "", "radio-margin", {})


def planned(
    library: Library,
    openings: Sequence[Opening],
    devices: Sequence[str | None],
    rules: JobRules | None = None,
    figures: Mapping[str, Sequence[Line]] | None = None,
    questions: int = 0,
) -> Work:
    firm = house(library)
    job = rules_of(rules or JobRules(), firm)
    return work(at(library, openings, devices), figures or {}, questions, library, firm, job)


def minutes(library: Library, *procedures: str) -> list[int]:
    found = [library.find("procedure", one) for one in procedures]
    return [int(one["minutes"]) for one in found if one is not None]


def order(done: Work) -> list[str]:
    return list(dict.fromkeys(stage.about for stage in done.stages if stage.about != "site"))


ROW = [
    opening("front", "Hall", "hinged-door", use="entry-route"),
    opening("a", "Kitchen"),
    opening("b", "Study"),
    opening("c", "Attic", "hatch"),
]


def test_one_opening_is_proved_before_the_next_and_the_entry_door_is_last(library: Library) -> None:
    done = planned(library, ROW, [SURFACE] * 4)
    assert order(done) == ["a", "b", "c", "front"]
    at_opening = [stage.about for stage in done.stages if stage.about != "site"]
    assert at_opening == sorted(at_opening, key=order(done).index)


def test_doubtful_openings_come_first(library: Library) -> None:
    figures = {"b": [line("good"), line("test on site")], "c": [line("poor")], "a": [line("none")]}
    assert order(planned(library, ROW, [SURFACE] * 4, figures=figures)) == ["c", "b", "a", "front"]


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"fire_rated": True}, "written yes"),
        ({"escape": True}, "written yes"),
        ({"fire_rated": None}, "known not to be"),
    ],
)
def test_life_safety_waits_for_its_answer(library: Library, more: dict[str, bool | None], words: str) -> None:
    known: dict[str, Any] = {"fire_rated": False, "escape": False}
    row = [
        opening("front", "Hall", "hinged-door", use="entry-route", **known),
        opening("a", "Kitchen", **{**known, **more}),
        opening("b", "Study", **known),
    ]
    done = planned(library, row, [SURFACE] * 3)
    assert order(done) == ["b", "a", "front"]
    assert words in done.of_opening["a"][0].words
    assert all("Begin only" not in stage.words for id_ in ("b", "front") for stage in done.of_opening[id_])


def test_the_visit_begins_on_test_and_ends_off_test(library: Library) -> None:
    done = planned(library, ROW, [SURFACE] * 4, questions=3)
    site = [stage.procedures for stage in done.stages if stage.about == "site"]
    assert site == [
        ("survey-openings",), ("prepare-at-yard",), ("arrive-and-go-on-test",),
        ("prove-check-in",), ("hand-over",), ("go-off-test",),
    ]  # fmt: skip
    assert "3 open questions" in done.stages[0].words


def test_wired_openings_need_no_check_in(library: Library) -> None:
    row = [opening("a", "Hall", "hinged-door", cable=True)]
    assert all("prove-check-in" not in stage.procedures for stage in planned(library, row, [RECESSED]).stages)


@pytest.mark.parametrize("device", [SURFACE, RECESSED, TRANSMITTER])
def test_stages_of_an_opening_are_those_of_its_device_in_the_fixed_order(library: Library, device: str) -> None:
    stages = planned(library, [opening("a", "Hall", "hinged-door")], [device]).of_opening["a"]
    assert [stage.stage for stage in stages] == [one for one in AT_OPENING if one in {s.stage for s in stages}]
    assert [stage.words[0].isupper() for stage in stages] == [True] * len(stages)


def test_nothing_is_landed_where_the_reed_is_in_use(library: Library) -> None:
    stages = planned(library, [opening("a", "Hall", "hinged-door")], [SURFACE]).of_opening["a"]
    assert [stage.stage for stage in stages] == ["position", "power", "enrol", "set-up", "try", "fix", "prove"]


def test_the_first_opening_takes_the_minutes_of_the_record(library: Library) -> None:
    stages = planned(library, [opening("a", "Kitchen")], [SURFACE]).of_opening["a"]
    stated = minutes(
        library, "position-surface-contact", "fit-cell", "enrol-by-operating", "set-up-zone", "try-gap",
        "try-radio-margin", "fix-surface-contact", "prove-opening",
    )  # fmt: skip
    moving = house(library)["move-minutes"]
    assert sum(stage.minutes for stage in stages) == sum(stated) + moving


def test_each_further_opening_takes_the_firms_share(library: Library) -> None:
    done = planned(library, [opening("a", "Kitchen"), opening("b", "Study")], [SURFACE] * 2)
    share = house(library)["each-further"] / 100
    fix = {id_: next(s.minutes for s in stages if s.stage == "fix") for id_, stages in done.of_opening.items()}
    assert fix["b"] == ceil(fix["a"] * share)


def test_work_above_the_ladder_height_takes_the_ladder(library: Library) -> None:
    row = [opening("a", "Kitchen", height_m=2.4), opening("b", "Kitchen", height_m=1.8)]
    for one, extra in zip(row, (house(library)["ladder-minutes"], 0), strict=True):
        first = planned(library, [one], [SURFACE]).of_opening[one.id][0]
        assert first.minutes == minutes(library, "position-surface-contact")[0] + 3 + extra
        assert ("ladder" in first.words) == bool(extra)


def test_an_existing_cable_is_not_run_again_and_a_sound_contact_stays(library: Library) -> None:
    def procedures(**more: bool) -> set[str]:
        stages = planned(library, [opening("a", "Hall", "hinged-door", **more)], [RECESSED]).of_opening["a"]
        return {one for stage in stages for one in stage.procedures}

    new, cabled, kept = procedures(), procedures(cable=True), procedures(cable=True, old_contact=True)
    assert new - cabled == {"run-cable"}
    assert cabled - kept == {"position-recessed-contact", "fix-recessed-contact"}


def test_a_second_contact_takes_its_time(library: Library) -> None:
    one = planned(library, [opening("a", "Hall", "double-door", passive_leaf=False)], [SURFACE])
    two = planned(library, [opening("a", "Hall", "double-door", passive_leaf=True)], [SURFACE])
    assert sum(s.minutes for s in two.of_opening["a"]) > sum(s.minutes for s in one.of_opening["a"])


def test_the_contact_of_a_transmitter_is_counted(library: Library) -> None:
    new = planned(library, [opening("a", "Yard", "gate")], [TRANSMITTER]).of_opening["a"]
    kept = planned(library, [opening("a", "Yard", "gate", old_contact=True)], [TRANSMITTER]).of_opening["a"]
    fix = [next(stage for stage in stages if stage.stage == "fix") for stages in (new, kept)]
    assert fix[0].minutes - fix[1].minutes == house(library)["contact-minutes"]
    assert "wired contact" in fix[0].words
    assert "wired contact" not in fix[1].words


def test_a_named_contact_of_a_transmitter_brings_its_own_procedures(library: Library) -> None:
    one = opening("a", "Yard", "gate")
    part = at(library, [one], [TRANSMITTER], WIDE)[0]
    assert procedures_at(part, "position") == ("position-wide-reach-contact", "position-transmitter")
    assert procedures_at(part, "fix") == ("fix-wide-reach-contact", "fix-transmitter")
    kept = at(library, [opening("a", "Yard", "gate", old_contact=True)], [TRANSMITTER], WIDE)[0]
    assert procedures_at(kept, "fix") == ("fix-transmitter",)


# -- days ----------------------------------------------------------------------------------------------------

TIMES = Times(arrive=20, leave=10, close=40, day=420, technicians=1)


def test_openings_are_laid_whole_into_days() -> None:
    laid = lay([("a", 200), ("b", 150), ("c", 100), ("d", 100)], TIMES)
    assert [day.openings for day in laid.days] == [("a", "b"), ("c", "d")]
    assert [day.minutes for day in laid.days] == [20 + 350 + 10, 20 + 200 + 40 + 10]
    assert laid.problems == ()


def test_two_technicians_share_a_day() -> None:
    laid = lay([("a", 200), ("b", 150), ("c", 100), ("d", 100)], Times(20, 10, 40, 420, 2))
    assert [day.openings for day in laid.days] == [("a", "b", "c", "d")]
    assert laid.days[0].minutes == 20 + 300 + 40 + 10  # a and d, beside b and c


def test_a_full_last_day_leaves_the_close_to_the_next() -> None:
    laid = lay([("a", 380)], TIMES)
    assert [(day.openings, day.minutes) for day in laid.days] == [(("a",), 410), ((), 70)]


def test_an_opening_longer_than_a_day_is_a_problem() -> None:
    laid = lay([("a", 100), ("b", 500), ("c", 10)], TIMES)
    assert [(one.about, one.code) for one in laid.problems] == [("b", "longer-than-a-day")]
    assert [id_ for day in laid.days for id_ in day.openings] == ["a", "b", "c"]


def test_a_job_without_work_has_no_day(library: Library) -> None:
    done = planned(library, [opening("a", "Hall")], [None], questions=1)
    assert done.days == ()
    assert [stage.stage for stage in done.stages] == ["survey"]


@given(st.lists(st.integers(1, 390), max_size=40), st.integers(1, 4))
def test_every_opening_has_one_day_and_no_day_overruns(openings: list[int], technicians: int) -> None:
    named = [(f"o{number}", float(spent)) for number, spent in enumerate(openings)]
    times = Times(20, 10, 40, 420, technicians)
    laid = lay(named, times)
    assert [id_ for day in laid.days for id_ in day.openings] == [id_ for id_, _ in named]
    assert all(day.minutes <= times.day for day in laid.days)
    assert [day.number for day in laid.days] == list(range(1, len(laid.days) + 1))


def test_every_day_goes_on_test_and_off_it(library: Library) -> None:
    row = [opening(f"w{n}", "Room", spoken=f"Window {n}") for n in range(30)]
    done = planned(library, row, [SURFACE] * 30)
    assert len(done.days) > 2
    for procedure in ("arrive-and-go-on-test", "go-off-test"):
        assert sum(stage.procedures == (procedure,) for stage in done.stages) == len(done.days)
    assert sum(stage.procedures == ("hand-over",) for stage in done.stages) == 1
    assert "Day 1" in next(stage.words for stage in done.stages if stage.procedures == ("arrive-and-go-on-test",))
