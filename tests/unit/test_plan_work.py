"""The order of work and its minutes, against the minutes that procedures state."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.messages import messages
from latchside.planning.days import Laid, Piece, Times, lay
from latchside.planning.house import rules_of
from latchside.planning.make import make_plan
from latchside.planning.on_site import Site, SiteClock
from latchside.planning.plan import Day, Line, Verdict
from latchside.planning.times import AT_OPENING, Span, fixed, waiting_left
from latchside.planning.work import Work, procedures_at, work
from latchside.surveys.survey import ControlUnit, JobRules, Opening

from .plans import RECESSED, SURFACE, TRANSMITTER, WIDE, at, house, id_of, opening, survey

message = messages("latchside.planning.work")
BOUNDS = ("arrive-and-go-on-test", "go-off-test")
"""What begins and ends each day."""


def line(verdict: Verdict, figure: str = "reed-gap") -> Line:
    return Line("Figure", "", verdict, "", figure, {})


def planned(
    library: Library,
    openings: Sequence[Opening],
    devices: Sequence[str | None],
    rules: JobRules | None = None,
    figures: Mapping[str, Sequence[Line]] | None = None,
    questions: int = 0,
    site: Site | None = None,
) -> Work:
    firm = house(library)
    job = rules_of(rules or JobRules(), firm)
    return work(at(library, openings, devices), figures or {}, questions, library, firm, job, site=site or Site())


def cells(library: Library, procedure: str) -> dict[str, float]:
    table = library.find("table", "work-times")
    assert table is not None
    return next(row["cells"] for row in table["rows"] if row["id"] == procedure)


def minutes(library: Library, *procedures: str, of: str = "usual") -> list[float]:
    return [cells(library, one)[of] for one in procedures]


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


def test_every_radio_place_is_walk_tested_before_any_opening(library: Library) -> None:
    """Common practice: one device is carried to every place while nothing is fixed."""
    figures = {"b": [line("poor", "radio-margin")]}
    done = planned(library, ROW, [SURFACE, SURFACE, SURFACE, RECESSED], figures=figures)
    walk = next(stage for stage in done.stages if stage.procedures == ("try-radio-margin",))
    on_site = done.stages[1:]
    assert [one.procedures[0] for one in on_site[:2]] == ["arrive-and-go-on-test", "try-radio-margin"]
    assert id_of(walk.words) == "on_site#walk-test-unheard"
    assert "each of the 3 radio places" in walk.words
    assert "b" in walk.words.split("not heard: ")[1]
    assert walk.minutes == 3 * house(library)["walk-test-minutes"]
    wired = planned(library, [opening("a", "Hall", "hinged-door")], [RECESSED])
    assert all("try-radio-margin" not in stage.procedures for stage in wired.stages)


def test_a_place_that_is_not_heard_waits_for_its_walk_test(library: Library) -> None:
    done = planned(library, ROW, [SURFACE] * 4, figures={"a": [line("poor", "radio-margin")]})
    assert order(done) == ["b", "c", "a", "front"]
    assert message("unheard") in done.of_opening["a"][0].words
    assert all(message("unheard") not in done.of_opening[id_][0].words for id_ in ("b", "c", "front"))


def test_an_entry_door_comes_before_what_follows_it(library: Library) -> None:
    """Common practice: a followed zone without its delayed one alarms at once when somebody comes in."""
    row = [opening("landing", "Landing", "hinged-door", use="on-route"), *ROW]
    assert order(planned(library, row, [SURFACE] * 5))[-2:] == ["front", "landing"]
    done = lay([Piece("landing", fixed(200), 2), Piece("a", fixed(300)), Piece("front", fixed(250), 1)], TIMES)
    when = {id_: day.number for day in done.days for id_ in day.openings}
    assert when["front"] <= when["landing"]


def test_who_leaves_says_what_is_live_and_what_is_omitted(library: Library) -> None:
    """Two long days: the followed door is proved on the first of them only where the entry door is."""
    row = [opening(f"w{n}", "Room", spoken=f"Window {n}") for n in range(10)]
    row += [opening("front", "Hall", "hinged-door", spoken="Front door", use="entry-route")]
    row += [opening("inner", "Hall", "hinged-door", spoken="Inner door", use="on-route")]
    done = planned(library, row, [SURFACE] * 12)
    leaving = [stage.words for stage in done.stages if stage.procedures == ("go-off-test",)]
    assert len(leaving) == len(done.days) > 1
    assert "Live tonight" in leaving[0]
    assert "Window 0" in leaving[0]
    assert "Inner door" not in leaving[0]
    assert "Every zone of this job is live" in leaving[-1]


def test_what_follows_a_door_that_is_not_proved_is_omitted_overnight(library: Library) -> None:
    row = [opening("front", "Hall", "hinged-door", spoken="Front door", use="entry-route")]
    row += [opening("inner", "Hall", "hinged-door", spoken="Inner door", use="on-route")]
    parts = at(library, row, [SURFACE] * 2)
    clock = SiteClock(library, house(library))
    days = Day(1, ("inner",), 0, ""), Day(2, ("front",), 0, "")
    empty = {part.opening.id: () for part in parts}
    first, last = (list(clock.day(day, Laid(days, ()), empty, parts, Site(), ()))[-1].words for day in days)
    assert "Omitted until every entry door is proved: Inner door" in first
    assert "no zone of this job" in first
    assert "Omitted" not in last


def test_zones_that_were_there_are_proved_again_each_day(library: Library) -> None:
    """Common practice: the power was off at the panel, and a hold-up button is tried with the centre by name."""
    row = [opening(f"d{n}", "Room", "hinged-door", spoken=f"Door {n}") for n in range(9)]
    site = Site(in_use=("Safe", "Counter button"), monitored=True)
    done = planned(library, row, [RECESSED] * 9, site=site)
    proved = [stage for stage in done.stages if "Counter button" in stage.words and stage.stage == "prove"]
    assert len(proved) == len(done.days) > 1
    arrived = [stage for stage in done.stages if stage.procedures == ("arrive-and-go-on-test",)]
    assert all("Safe, Counter button" in stage.words for stage in arrived)
    ends = [done.stages.index(stage) for stage in done.stages if stage.procedures == ("go-off-test",)]
    assert [done.stages[end - 1].procedures for end in ends[:-1]] == [("prove-response",)] * (len(ends) - 1)
    assert sum(day.minutes for day in done.days) == sum(stage.minutes for stage in done.stages[1:])


@pytest.mark.parametrize(
    ("more", "first"),
    [
        ({"fire_rated": True}, "written-yes"),
        ({"escape": True}, "written-yes"),
        ({"fire_rated": None}, "fire"),
        ({"escape": None}, "escape"),
        ({"fire_rated": None, "escape": None}, "both"),
    ],
)
def test_life_safety_waits_for_its_answer(library: Library, more: dict[str, bool | None], first: str) -> None:
    known: dict[str, Any] = {"fire_rated": False, "escape": False}
    row = [
        opening("front", "Hall", "hinged-door", use="entry-route", **known),
        opening("a", "Kitchen", **{**known, **more}),
        opening("b", "Study", **known),
    ]
    done = planned(library, row, [SURFACE] * 3)
    assert order(done) == ["b", "a", "front"]
    told = message(first) if first == "written-yes" else message("in-doubt", what=first)
    assert told in done.of_opening["a"][0].words
    others = [stage.words for id_ in ("b", "front") for stage in done.of_opening[id_]]
    doubts = [message("in-doubt", what=what) for what in ("fire", "escape", "both")]
    assert not any(one in words for one in (message("written-yes"), *doubts) for words in others)


def test_the_visit_begins_on_test_and_ends_off_test(library: Library) -> None:
    done = planned(library, ROW, [SURFACE] * 4, questions=3)
    site = [stage.procedures for stage in done.stages if stage.about == "site"]
    assert site == [
        ("survey-openings",), ("prepare-at-yard",), ("arrive-and-go-on-test",), ("try-radio-margin",),
        ("prove-check-in",), ("prove-response",), ("hand-over",), ("go-off-test",),
    ]  # fmt: skip
    assert done.stages[0].words == message("questions", count=3)


def test_wired_openings_need_no_check_in(library: Library) -> None:
    row = [opening("a", "Hall", "hinged-door", cable=True)]
    assert all("prove-check-in" not in stage.procedures for stage in planned(library, row, [RECESSED]).stages)


@pytest.mark.parametrize("device", [SURFACE, TRANSMITTER])
def test_stages_of_an_opening_are_those_of_its_device_in_the_fixed_order(library: Library, device: str) -> None:
    stages = planned(library, [opening("a", "Hall", "hinged-door")], [device]).of_opening["a"]
    assert [stage.stage for stage in stages] == [one for one in AT_OPENING if one in {s.stage for s in stages}]
    assert [stage.words[0].isupper() for stage in stages] == [True] * len(stages)


def test_loops_are_fixed_each_landed_together_and_then_proved(library: Library) -> None:
    """Common practice: the panel is powered down once, with every loop of the day metered and closed up."""
    row = [opening("a", "Hall", "hinged-door"), opening("b", "Study", "hinged-door"), opening("c", "Attic")]
    done = planned(library, row, [RECESSED, RECESSED, SURFACE])
    (land,) = [stage for stage in done.stages if "land-on-terminals" in stage.procedures]
    assert (land.about, "2 loops" in land.words) == ("control-unit", True)
    (each,) = minutes(library, "land-on-terminals")
    assert land.minutes == house(library)["panel-minutes"] + 2 * each
    at = done.stages.index(land)
    for id_ in ("a", "b"):
        when = {stage.stage: done.stages.index(stage) for stage in done.stages if stage.about == id_}
        assert max(when[one] for one in ("position", "wire")) < at
        assert any("fix-recessed-contact" in stage.procedures for stage in done.stages[:at] if stage.about == id_)
        assert min(when[one] for one in ("enrol", "set-up", "prove")) > at
    assert max(done.stages.index(stage) for stage in done.stages if stage.about == "c") < at


def test_each_day_with_loops_lands_its_own(library: Library) -> None:
    row = [opening(f"d{n}", "Room", "hinged-door", spoken=f"Door {n}") for n in range(9)]
    done = planned(library, row, [RECESSED] * 9)
    assert len(done.days) > 1
    landed = [stage for stage in done.stages if "land-on-terminals" in stage.procedures]
    assert [f"{len(day.openings)} loop" in stage.words for day, stage in zip(done.days, landed, strict=True)] == [
        True
    ] * len(done.days)
    assert sum(day.minutes for day in done.days) == sum(stage.minutes for stage in done.stages[1:])


def test_no_panel_is_powered_down_for_radio(library: Library) -> None:
    done = planned(library, [opening("a", "Hall", "hinged-door")], [SURFACE])
    assert all(stage.about != "control-unit" for stage in done.stages)


def test_nothing_is_landed_where_the_reed_is_in_use(library: Library) -> None:
    stages = planned(library, [opening("a", "Hall", "hinged-door")], [SURFACE]).of_opening["a"]
    assert [stage.stage for stage in stages] == ["position", "power", "enrol", "set-up", "try", "fix", "prove"]


SURFACE_WORK = (
    "position-surface-contact", "fit-cell", "enrol-by-operating", "set-up-zone", "try-gap", "try-radio-margin",
    "fix-surface-contact", "prove-opening",
)  # fmt: skip


@pytest.mark.parametrize(("column", "name"), [("low", "low"), ("usual", "minutes"), ("high", "high")])
def test_an_opening_takes_the_minutes_of_the_firms_table(library: Library, column: str, name: str) -> None:
    stages = planned(library, [opening("a", "Kitchen")], [SURFACE]).of_opening["a"]
    moving = house(library)["move-minutes"]
    assert sum(getattr(stage, name) for stage in stages) == sum(minutes(library, *SURFACE_WORK, of=column)) + moving


def test_every_opening_alike_takes_as_long(library: Library) -> None:
    done = planned(library, [opening("a", "Kitchen"), opening("b", "Study")], [SURFACE] * 2)
    assert [stage.minutes for stage in done.of_opening["a"]] == [stage.minutes for stage in done.of_opening["b"]]


def test_check_ins_are_waited_for_while_the_job_is_proved_and_handed_over(library: Library) -> None:
    """The wait of the check-ins runs beside what follows them, and only what is longer than that is added."""
    last = planned(library, [opening("a", "Kitchen")], [SURFACE]).stages[-2]
    (response, give), waiting = (
        minutes(library, "prove-response", "hand-over"),
        cells(library, "prove-check-in")["waiting"],
    )
    assert last.procedures == ("hand-over",)
    assert last.minutes == max(give, waiting - response)


@pytest.mark.parametrize(
    ("work", "left"),
    [
        ([(5, 10), (4, 0)], 6),  # four of the ten minutes are worked through
        ([(5, 10), (12, 0)], 0),
        ([(5, 10), (4, 8), (1, 0)], 7),  # both waits run side by side: 10 - 4 - 1 and 8 - 1
        ([], 0),
    ],
)
def test_waiting_runs_beside_the_work_that_follows_it(work: list[tuple[float, float]], left: float) -> None:
    assert waiting_left(work) == left


def test_work_above_the_ladder_height_takes_the_ladder(library: Library) -> None:
    row = [opening("a", "Kitchen", height_m=2.4), opening("b", "Kitchen", height_m=1.8)]
    for one, extra in zip(row, (house(library)["ladder-minutes"], 0), strict=True):
        first = planned(library, [one], [SURFACE]).of_opening[one.id][0]
        moving = house(library)["move-minutes"]
        assert first.minutes == minutes(library, "position-surface-contact")[0] + moving + extra
        assert (message("high") in first.words) == bool(extra)


def test_an_existing_cable_is_not_run_again_and_a_sound_contact_stays(library: Library) -> None:
    def procedures(**more: bool) -> set[str]:
        stages = planned(library, [opening("a", "Hall", "hinged-door", **more)], [RECESSED]).of_opening["a"]
        return {one for stage in stages for one in stage.procedures}

    new, cabled, kept = procedures(), procedures(cable=True), procedures(cable=True, old_contact=True)
    assert new - cabled == {"run-cable"}
    assert cabled - kept == {
        "position-recessed-contact", "try-gap", "drill-recessed-contact", "fix-recessed-contact",
    }  # fmt: skip


def test_a_hole_is_drilled_before_the_cable_is_run_and_joined(library: Library) -> None:
    stages = planned(library, [opening("a", "Hall", "hinged-door")], [RECESSED]).of_opening["a"]
    done = [one for stage in stages for one in stage.procedures]
    order = ["try-gap", "drill-recessed-contact", "run-cable", "join-and-terminate", "fix-recessed-contact"]
    assert [one for one in done if one in order] == order


def test_the_gap_of_a_contact_for_a_transmitter_is_tried_once(library: Library) -> None:
    said = {"leaf_material": "wood", "frame_material": "wood", "steel": "none", "drill": True}
    stages = planned(library, [opening("a", "Hall", "hinged-door", **said)], [TRANSMITTER]).of_opening["a"]
    assert sum(stage.procedures.count("try-gap") for stage in stages) == 1


def test_a_second_contact_takes_its_time(library: Library) -> None:
    one = planned(library, [opening("a", "Hall", "double-door", passive_leaf=False)], [SURFACE])
    two = planned(library, [opening("a", "Hall", "double-door", passive_leaf=True)], [SURFACE])
    assert sum(s.minutes for s in two.of_opening["a"]) > sum(s.minutes for s in one.of_opening["a"])


def test_the_contact_of_a_transmitter_is_counted(library: Library) -> None:
    new = planned(library, [opening("a", "Yard", "gate")], [TRANSMITTER]).of_opening["a"]
    kept = planned(library, [opening("a", "Yard", "gate", old_contact=True)], [TRANSMITTER]).of_opening["a"]
    wire = [next(stage for stage in stages if stage.stage == "wire") for stages in (new, kept)]
    (run,) = minutes(library, "run-cable")
    assert wire[0].minutes - wire[1].minutes == house(library)["contact-minutes"] + run
    assert [message("fix-contact") in stage.words for stage in wire] == [True, False]


def test_a_named_contact_of_a_transmitter_brings_its_own_procedures(library: Library) -> None:
    one = opening("a", "Yard", "gate")
    part = at(library, [one], [TRANSMITTER], WIDE)[0]
    assert procedures_at(part, "position", library) == (
        "position-wide-reach-contact",
        "try-gap",
        "position-transmitter",
    )
    # common practice: a loop is landed when its contact is fixed and metered
    assert procedures_at(part, "wire", library)[-2:] == ("fix-wide-reach-contact", "land-on-terminals")
    assert procedures_at(part, "fix", library) == ("fix-transmitter",)
    kept = at(library, [opening("a", "Yard", "gate", old_contact=True)], [TRANSMITTER], WIDE)[0]
    assert "fix-wide-reach-contact" not in procedures_at(kept, "wire", library)


# -- taking over ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("owner", "access", "over"),
    [
        ("customer", True, False), ("our-firm", False, False), ("other-firm", True, True), ("leased", None, True),
        ("other-firm", None, True), ("customer", False, True), (None, None, False),
    ],
)  # fmt: skip
def test_the_system_of_another_firm_is_taken_over_first(
    library: Library, owner: str | None, access: bool | None, over: bool
) -> None:
    """Common practice: whose it is and what is there is known before anything is opened or changed."""
    unit = ControlUnit(owner=owner, installer_access=access)
    of = survey([opening("a", "Hall", "hinged-door", use="entry-route")], unit)
    done = make_plan(of, library, catalogue(), date(2026, 3, 9))
    on_site = [stage.procedures[0] for stage in done.work if stage.stage != "survey"]
    assert ("take-over-system" in on_site) is over
    if over:
        at_ = on_site.index("arrive-and-go-on-test")
        assert on_site[at_ : at_ + 2] == ["arrive-and-go-on-test", "take-over-system"]
        assert done.days[0].words.startswith("Take-over of the system, 1 opening")
        assert any(item.record == "tool/multimeter" for item in done.items), "what it is metered with is on the van"


def test_taking_over_counts_once_in_the_day(library: Library) -> None:
    row = [opening(f"w{n}", "Room", spoken=f"Window {n}") for n in range(30)]
    bare, done = (planned(library, row, [SURFACE] * 30, site=Site(taken_over=over)) for over in (False, True))
    (take,) = minutes(library, "take-over-system")
    assert sum(day.minutes for day in done.days) - sum(day.minutes for day in bare.days) >= take
    assert sum(day.minutes for day in done.days) == sum(stage.minutes for stage in done.stages[1:])
    assert [stage.procedures for stage in done.stages].count(("take-over-system",)) == 1
    (stage,) = [one for one in done.stages if one.procedures == ("take-over-system",)]
    assert (stage.about, stage.minutes) == ("control-unit", take)


# -- days ----------------------------------------------------------------------------------------------------

TIMES = Times(arrive=fixed(20), leave=fixed(10), close=fixed(40), day=420, technicians=1)


def laid(openings: Mapping[str, float], times: Times = TIMES, last: str = "") -> Laid:
    return lay([Piece(id_, fixed(spent), id_ in last) for id_, spent in openings.items()], times)


def test_openings_are_laid_whole_into_days() -> None:
    done = laid({"a": 200, "b": 150, "c": 100, "d": 100})
    assert [day.openings for day in done.days] == [("a", "b"), ("c", "d")]
    assert [day.minutes for day in done.days] == [20 + 350 + 10, 20 + 200 + 40 + 10]
    assert done.problems == ()


def test_two_technicians_share_a_day() -> None:
    done = laid({"a": 200, "b": 150, "c": 100, "d": 100}, Times(fixed(20), fixed(10), fixed(40), 420, 2))
    assert [day.openings for day in done.days] == [("a", "b", "c", "d")]
    assert done.days[0].minutes == 20 + 300 + 40 + 10  # 200 and 100, beside 150 and 100


def test_a_full_last_day_leaves_the_close_to_the_next() -> None:
    assert [(day.openings, day.minutes) for day in laid({"a": 380}).days] == [(("a",), 410), ((), 70)]


def test_no_third_day_stands_where_two_suffice() -> None:
    """In the order of work they would take three: 200 and 180, 150 and 190, and 40 with the close."""
    done = laid({"a": 200, "b": 180, "c": 150, "d": 190, "e": 10})
    assert len(done.days) == 2
    assert sorted(id_ for day in done.days for id_ in day.openings) == ["a", "b", "c", "d", "e"]
    assert all(day.minutes <= 420 for day in done.days)


def test_a_day_runs_over_where_that_saves_one_and_says_so() -> None:
    """370 of work and 40 to close are 20 more than the 390 of a day."""
    over = Times(fixed(20), fixed(10), fixed(40), 420, 1, over=30)
    assert [(day.openings, day.minutes) for day in laid({"a": 370}, over).days] == [(("a",), 440)]
    (day,) = laid({"a": 370}, over).days
    assert id_of(day.words) == "days#day-over"
    assert "20\N{NO-BREAK SPACE}min" in day.words
    assert len(laid({"a": 370}).days) == 2
    assert [day.minutes for day in laid({"a": 300}, over).days] == [20 + 300 + 40 + 10]
    assert id_of(laid({"a": 300}, over).days[0].words) == "days#day"


def test_taking_over_comes_before_the_openings_of_the_first_day_alone() -> None:
    """Two of 150 fill 300 of the 390 minutes of a day; with 100 for the take-over only one of them is left room."""
    over = Times(fixed(20), fixed(10), fixed(40), 420, 1, begin=fixed(100))
    done = laid({"a": 150, "b": 150, "c": 150}, over)
    assert [(day.openings, day.minutes) for day in done.days] == [(("a",), 280), (("b", "c"), 370)]
    assert [day.openings for day in laid({"a": 390}, over).days] == [(), ("a",), ()], "a full day waits for the next"


def test_the_entry_door_is_on_the_last_day() -> None:
    done = laid({"a": 300, "b": 300, "front": 20}, last="front")
    assert done.days[-1].openings[-1] == "front"


def test_an_opening_longer_than_a_day_is_a_problem() -> None:
    done = laid({"a": 100, "b": 500, "c": 10})
    assert [(one.about, one.code) for one in done.problems] == [("b", "longer-than-a-day")]
    assert sorted(id_ for day in done.days for id_ in day.openings) == ["a", "b", "c"]


@pytest.mark.parametrize("day", [25, 30, 31])
def test_a_day_used_up_by_arriving_and_leaving_gives_each_opening_its_own(day: int) -> None:
    """20 to arrive and 10 to leave: nothing is left of 30 minutes, and one of 31."""
    done = laid({"a": 5, "b": 500}, replace(TIMES, day=day, begin=fixed(15)))
    assert [one.openings for one in done.days] == [(), ("a",), ("b",), ()], "take-over first, close last"
    assert [one.about for one in done.problems] == ["a", "b"]
    assert f"leaves {max(0, day - 30)}\N{NO-BREAK SPACE}min" in done.problems[0].found


def test_what_is_done_once_takes_no_more_days_than_one() -> None:
    """A close of 40 in days with 10 for openings: one day of its own, which runs over, and no empty day before it."""
    done = laid({"a": 10, "b": 10}, replace(TIMES, day=40))
    assert [one.openings for one in done.days] == [("a",), ("b",), ()]


def test_a_day_says_how_short_and_how_long_it_may_be() -> None:
    takes = Span(30, 60, 100)
    (day,) = lay([Piece("a", takes), Piece("b", takes)], TIMES).days
    assert (day.low, day.minutes, day.high) == (20 + 60 + 40 + 10, 20 + 120 + 40 + 10, 20 + 200 + 40 + 10)


def fewest(openings: list[int], room: int, close: int) -> int:
    """By trying every way to share openings out over days, the close on the last."""
    for days in range(1, len(openings) + 2):
        for shared in product(range(days), repeat=len(openings)):
            spent = [close if day == days - 1 else 0 for day in range(days)]
            for day, minutes_ in zip(shared, openings, strict=True):
                spent[day] += minutes_
            if max(spent) <= room:
                return days
    raise AssertionError


@given(st.lists(st.integers(1, 390), min_size=1, max_size=6))
def test_no_other_way_takes_fewer_days(openings: list[int]) -> None:
    done = laid({f"o{number}": float(spent) for number, spent in enumerate(openings)})
    assert len(done.days) == fewest(openings, 420 - 20 - 10, 40)


def test_a_job_without_work_has_no_day(library: Library) -> None:
    done = planned(library, [opening("a", "Hall")], [None], questions=1)
    assert done.days == ()
    assert [stage.stage for stage in done.stages] == ["survey"]


@given(st.lists(st.integers(1, 390), max_size=40), st.integers(1, 4), st.sampled_from([0, 75, 150]))
def test_every_opening_has_one_day_and_no_day_overruns(openings: list[int], technicians: int, begin: int) -> None:
    named = {f"o{number}": float(spent) for number, spent in enumerate(openings)}
    times = Times(fixed(20), fixed(10), fixed(40), 420, technicians, begin=fixed(begin))
    done = laid(named, times)
    assert sorted(id_ for day in done.days for id_ in day.openings) == sorted(named)
    assert all(day.minutes <= times.day for day in done.days)
    assert [day.number for day in done.days] == list(range(1, len(done.days) + 1))


def test_eleven_radio_contacts_are_a_day_and_a_half_at_the_most(library: Library) -> None:
    """Common practice: a technician who knows the work fits ten to fifteen radio contacts a day."""
    row = [opening(f"w{n}", "Room", spoken=f"Window {n}") for n in range(11)]
    done = planned(library, row, [SURFACE] * 11)
    assert len(done.days) <= 2
    assert sum(day.minutes for day in done.days) <= 1.5 * 420


def test_every_day_goes_on_test_and_off_it(library: Library) -> None:
    row = [opening(f"w{n}", "Room", spoken=f"Window {n}") for n in range(30)]
    done = planned(library, row, [SURFACE] * 30)
    assert len(done.days) > 2
    for procedure in ("arrive-and-go-on-test", "go-off-test"):
        assert sum(stage.procedures == (procedure,) for stage in done.stages) == len(done.days)
    assert sum(stage.procedures == ("hand-over",) for stage in done.stages) == 1
    arrive = next(stage.words for stage in done.stages if stage.procedures == ("arrive-and-go-on-test",))
    assert id_of(arrive) == "on_site#on-day"
    assert arrive.startswith("Day 1")


def test_what_is_free_in_the_afternoon_begins_no_day(library: Library) -> None:
    """A roller door that is in use until noon waits, and the entry door is done before it."""
    late = opening("late", "Store", "roller-door", use="other", free="afternoon")
    early = opening("early", "Shop", "hinged-door", use="entry-route", free="morning")
    done = planned(library, [late, *ROW, early], [WIDE, *[SURFACE] * 5])
    assert order(done)[0] == "early"
    assert [one for one in order(done) if one != "control-unit"][-1] == "late"
    assert "1 of them in the morning only" in done.days[0].words
    assert "1 of them in the afternoon only" in done.days[-1].words


@pytest.mark.parametrize("minutes_of_day", [600, 130])
def test_nobody_goes_on_test_where_nobody_listens(library: Library, minutes_of_day: int) -> None:
    rules = JobRules(day_minutes=minutes_of_day)
    alone = planned(library, ROW, [SURFACE] * 4, rules, site=Site(monitored=False, notes="Ring twice."))
    watched = planned(library, ROW, [SURFACE] * 4, rules, site=Site(monitored=True))
    assert len(alone.days) == len(watched.days)
    assert not any("test" in stage.words for stage in alone.stages if stage.procedures[0] in BOUNDS)
    assert all("test" in stage.words for stage in watched.stages if stage.procedures[0] in BOUNDS)
    assert "Ring twice." in next(stage.words for stage in alone.stages if stage.procedures[0] == BOUNDS[0])


def test_one_technician_is_told_who_else_it_takes(library: Library) -> None:
    """The proof has one at the opening and one at the panel, as its procedure says: common practice."""
    alone, two = (planned(library, ROW, [SURFACE] * 4, JobRules(technicians=count)) for count in (1, 2))
    told = messages("latchside.planning.days")("one-more")
    assert all(told in day.words for day in alone.days)
    assert not any(told in day.words for day in two.days)
