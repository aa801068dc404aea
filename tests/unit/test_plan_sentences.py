"""What a plan always, never or only does, each sentence with the test that holds it, over surveys made by chance.

In `test_plan_laws`: a figure that fails is always a problem, with what to order or change, and *problem* at a glance;
a plan never takes more positions than there are, and tells of each opening that lacks one; positions change a choice
only with a reason; a sound contact always stays; no new hole on a fire, an escape or a no-holes opening, never into
glass, and never pads that cannot bear the part; a wish that cannot be met is always put to the customer; two contacts
always have two lines; what is added never makes a name too long; a chime is only set where it was asked for; work
above a ladder always names access equipment.

In `test_plan_properties`: an added opening changes no other device while positions suffice, and else each change has
its reason; more distance, walls or floors never raise a margin. In `test_plan_work`: no day stands where fewer
suffice.

Here: never "0 problems" beside *poor*; a cable is judged only by what it adds; a thickness that is not known never
lowers a loss; what is not known never makes anything better; more positions never leave more openings without one;
what bars a hole never throws a sound contact away; a contact that stays is never judged by another class; no screws
for leaf or frame where no hole may be; what stands in the way of the job is always a problem; Canada is never the
United States; one opening is always finished before the next, and only a second technician overlaps openings.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import asdict, replace
from datetime import date
from itertools import groupby
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.catalogue import Figure
from latchside.library import Library
from latchside.planning.failing import worst
from latchside.planning.house import house_of
from latchside.planning.make import make_plan
from latchside.planning.plan import Line, OpeningPlan, Plan
from latchside.planning.summary import as_text
from latchside.surveys.survey import ControlUnit, Opening, Override, Site, Survey, Wall

from .plans import RECESSED, SURFACE, TRANSMITTER, at, unasked
from .random_surveys import WALL, draws, openings, surveys

pytestmark = pytest.mark.slow

ON = date(2026, 1, 31)
FEW = draws(30)
RANK = {"poor": 0, "test on site": 1, "none": 2, "good": 2}


def of_one(
    opening: Opening, library: Library, figures: Mapping[str, Figure], unit: ControlUnit | None = None,
    site: Site | None = None,
) -> OpeningPlan:  # fmt: skip
    """The plan of one opening by itself."""
    survey = Survey("t", "T", (opening,), site=site or Site(), control_unit=unit or ControlUnit())
    return unasked(survey, library, figures, ON).openings[0]


def line(plan: OpeningPlan, figure: str) -> Line | None:
    return next((one for one in plan.figures if one.figure == figure), None)


# -- figures -------------------------------------------------------------------------------------------------


@given(of=surveys())
@FEW
def test_never_no_problems_beside_poor(library: Library, figures: Mapping[str, Figure], of: Survey) -> None:
    plan = unasked(of, library, figures, ON)
    lines = (*plan.site_figures, *(line for one in plan.openings for line in one.figures))
    if any(one.verdict == "poor" for one in lines):
        assert " 0 problems" not in as_text(plan)


@given(
    opening=openings("o"), length=st.floats(1, 400), area=st.sampled_from([0.22, 0.5, 1.0]), more=st.floats(1, 3),
    end=st.sampled_from([1000.0, 2200.0, 4700.0, 10000.0]), there=st.booleans(),
)  # fmt: skip
@FEW
def test_a_cable_is_judged_by_what_it_adds(
    library: Library, figures: Mapping[str, Figure], opening: Opening, length: float, area: float, more: float,
    end: float, there: bool,
) -> None:  # fmt: skip
    """Ohm's law: longer or thinner is never better, a larger resistor never worse, and as much copper reads alike."""
    plain = replace(
        opening, override=Override(RECESSED, "Trial"), cable=there, cable_length_m=float(round(length)), cable_awg=None,
        cable_area_mm2=area,
    )  # fmt: skip

    def rank(said: Opening, ohm: float = end, layout: str = "series") -> int:
        unit = ControlUnit(layout=layout, end_of_line_ohm=ohm, second_resistor_ohm=ohm)
        found = line(of_one(said, library, figures, unit), "cable-resistance")
        assert found is not None
        return RANK[found.verdict]

    usual = rank(plain)
    assert rank(replace(plain, cable_length_m=plain.cable_length_m * more)) <= usual  # type: ignore[operator]
    assert rank(replace(plain, cable_area_mm2=area * more)) >= usual
    assert rank(plain, end * more) >= usual
    assert rank(plain, layout="double-across") <= usual  # two in parallel leave half the room
    if there:  # no spare is added, so twice the length of twice the copper is the same loop
        twice = replace(plain, cable_length_m=plain.cable_length_m * 2, cable_area_mm2=area * 2)  # type: ignore[operator]
        assert rank(twice) == usual


@given(opening=openings("o"), wall=WALL, mhz=st.sampled_from([433.92, 868.3]), share=st.floats(0.35, 1.85))
@FEW
def test_a_thickness_that_is_not_known_never_lowers_a_loss(
    library: Library, figures: Mapping[str, Figure], opening: Opening, wall: Wall, mhz: float, share: float
) -> None:
    """In the bad spot a wall that nobody measured takes as much as any that it may be; in the good one as little."""
    house = house_of(library)
    known = Wall(wall.material, round(house[f"wall-{wall.material}"] * share, 1) + 0.03)  # read finer than to a unit
    near = replace(
        opening, override=Override(SURFACE, "Trial"), distance_m=5.0, floors=0, outer_wall="no", frame_material="wood",
        steel="none", leaf_material="wood",
    )  # fmt: skip
    unit, margins = ControlUnit(frequency_mhz=mhz, sensitivity_dbm=-105.0), []
    for walls in ((), (known,), (Wall(wall.material),)):
        one = of_one(replace(near, walls=walls), library, figures, unit, Site("europe"))
        margins.append(line(one, "radio-margin"))
    none, stated, unmeasured = (one.inputs if one else {} for one in margins)
    if "low_margin_db" in stated and "low_margin_db" in unmeasured and "low_margin_db" in none:
        assert unmeasured["low_margin_db"] <= stated["low_margin_db"] + 0.05 <= none["low_margin_db"] + 0.1
        assert unmeasured["high_margin_db"] >= stated["high_margin_db"] - 0.05


BLANKED = (
    "gap_mm", "play_mm", "step_mm", "distance_m", "walls", "floors", "outer_wall", "cable_length_m", "cable_area_mm2",
    "height_m", "steel", "leaf_material", "frame_material", "openings_a_day", "hardware", "powered", "outdoors",
    "fire_rated", "escape", "drill", "width_m",
)  # fmt: skip
OF_UNIT = ("frequency_mhz", "sensitivity_dbm", "layout", "end_of_line_ohm", "second_resistor_ohm", "two_way")


@given(of=surveys(most=1), field=st.sampled_from((*BLANKED, *OF_UNIT, "region", "grade", "building")))
@draws(120)
def test_what_is_not_known_never_makes_anything_better(
    library: Library, figures: Mapping[str, Figure], of: Survey, field: str
) -> None:
    """With the same device, no figure turns good because somebody left a field out."""
    gone: dict[str, Any] = {field: None}
    if field in BLANKED:
        bare = replace(of, openings=(replace(of.openings[0], **gone),))
    elif field in OF_UNIT:
        bare = replace(of, control_unit=replace(of.control_unit, **gone))
    else:
        bare = replace(of, site=replace(of.site, **gone))
    full, less = (unasked(one, library, figures, ON).openings[0] for one in (of, bare))
    if (full.choice.device, full.choice.contact) == (less.choice.device, less.choice.contact):
        before = {one.name: one.verdict for one in full.figures}
        after = {one.name: one.verdict for one in less.figures if one.name in before}
        assert [name for name, verdict in after.items() if verdict == "good" and before[name] != "good"] == []


# -- positions -----------------------------------------------------------------------------------------------


@given(of=surveys(), more=st.integers(1, 4), link=st.sampled_from(["wired_positions", "radio_positions"]))
@FEW
def test_more_free_positions_never_leave_more_openings_without_one(
    library: Library, figures: Mapping[str, Figure], of: Survey, more: int, link: str
) -> None:
    unit = replace(
        of.control_unit, wired_positions=of.control_unit.wired_positions or 0,
        radio_positions=of.control_unit.radio_positions or 0,
    )  # fmt: skip
    wider = replace(unit, **{link: getattr(unit, link) + more})
    lacking = [
        sum(one.choice.lacks for one in unasked(replace(of, control_unit=each), library, figures, ON).openings)
        for each in (unit, wider)
    ]
    assert lacking[1] <= lacking[0]


# -- what stays, and holes -----------------------------------------------------------------------------------


def kept(one: OpeningPlan, library: Library) -> bool:
    (part,) = at(library, [one.opening], [one.choice.device], one.choice.contact)
    return part.kept == 1


@given(opening=openings("o"), bars=st.sets(st.sampled_from(["fire_rated", "escape", "drill"]), min_size=1))
@FEW
def test_what_bars_a_hole_never_throws_a_sound_contact_away(
    library: Library, figures: Mapping[str, Figure], opening: Opening, bars: set[str]
) -> None:
    """Its hole is there already. What is ordered does not grow by it either."""
    free = replace(
        opening, override=None, old_contact=True, fire_rated=False, escape=False, drill=True, passive_leaf=False,
        upper_sash=False, loose_lid=False, cable=bool(opening.cable),
    )  # fmt: skip
    barred = replace(free, **{field: field != "drill" for field in bars})  # type: ignore[arg-type]
    plans = [of_one(one, library, figures) for one in (free, barred)]
    for one in plans:
        assert kept(one, library)
        assert one.choice.contact is None
        assert {row.verdict for row in one.figures if "in place" in row.name} == {"test on site"}


@given(opening=openings("o"), gap=st.floats(0, 60), play=st.floats(0, 20))
@FEW
def test_a_contact_that_stays_is_never_judged_by_the_gap_of_another_class(
    library: Library, figures: Mapping[str, Figure], opening: Opening, gap: float, play: float
) -> None:
    plain = replace(
        opening, override=None, old_contact=True, passive_leaf=False, upper_sash=False, loose_lid=False,
        cable=bool(opening.cable),
    )  # fmt: skip
    told = replace(plain, gap_mm=round(gap, 1), play_mm=round(play, 1))
    for one in (of_one(said, library, figures) for said in (plain, told)):
        assert worst(one.figures).get("reed-gap") == "test on site"


@given(opening=openings("o"))
@FEW
def test_a_place_without_holes_never_orders_screws_for_the_leaf(
    library: Library, figures: Mapping[str, Figure], opening: Opening
) -> None:
    told = replace(opening, override=None, drill=False, old_contact=False)
    plan = unasked(Survey("t", "T", (told,)), library, figures, ON)
    screwed = [item.name for item in plan.items if item.name.startswith("Screws, ")]
    wall = library.records["device"][TRANSMITTER].name.lower()
    assert all(wall in name for name in screwed)  # a transmitter hangs on the wall beside it, never on leaf or frame


# -- the site ------------------------------------------------------------------------------------------------


@given(of=surveys(most=3))
@FEW
def test_what_stands_in_the_way_of_the_job_is_always_a_problem(
    library: Library, figures: Mapping[str, Figure], of: Survey
) -> None:
    told = {(one.about, one.code) for one in unasked(of, library, figures, ON).problems}
    site, unit = of.site, of.control_unit
    assert (("site", "no-keyholder") in told) == (site.keyholder_arranged is False)
    assert (("site", "no-consent") in told) == (site.consent == "not-given")
    assert (("site", "listed-building") in told) == (site.listed is True)
    assert (("control-unit", "panel-of-another") in told) == (unit.owner in ("other-firm", "leased"))
    assert (("control-unit", "no-installer-access") in told) == (unit.installer_access is False)


def texts(plan: Plan) -> Iterator[str]:
    """Every text of a plan but those of the survey."""
    bare = asdict(replace(plan, survey=Survey("t", "T", ())))
    openings = ({**one, "opening": None} for one in bare["openings"])
    stack: list[Any] = [
        bare["problems"],
        bare["questions"],
        bare["zones"],
        bare["site_figures"],
        bare["work"],
        *openings,
    ]
    while stack:
        one = stack.pop()
        if isinstance(one, str):
            yield one
        elif isinstance(one, Mapping):
            stack.extend(one.values())
        elif isinstance(one, list | tuple):
            stack.extend(one)


FOREIGN = {
    "canada": ("United States", "FCC", "CFR", "15.231", "EN 50131-6"),
    "united-states": ("Canada", "ULC", "RSS", "EN 50131-6"),
}


@given(of=surveys(most=2), region=st.sampled_from(sorted(FOREIGN)))
@FEW
def test_canada_is_never_the_united_states(
    library: Library, figures: Mapping[str, Figure], of: Survey, region: str
) -> None:
    of = replace(of, site=replace(of.site, region=region, grade=None))
    said = " ".join(texts(make_plan(of, library, figures, ON)))
    assert [word for word in FOREIGN[region] if word in said] == []


# -- work ----------------------------------------------------------------------------------------------------


@given(of=surveys(), second=st.integers(2, 3))
@FEW
def test_one_opening_is_finished_before_the_next_and_only_a_second_technician_overlaps(
    library: Library, figures: Mapping[str, Figure], of: Survey, second: int
) -> None:
    """Alone, the days last at least as long as all that is done in them; two never take longer than one.

    A loop to the panel is closed up at its opening, and proved in a second turn when it is landed: no third.
    """
    alone, more = (
        unasked(replace(of, rules=replace(of.rules, technicians=count)), library, figures, ON) for count in (1, second)
    )
    for plan in (alone, more):
        runs = [about for about, _ in groupby(stage.about for stage in plan.work) if about != "site"]
        turns = [list(run) for landing, run in groupby(runs, key=lambda about: about == "control-unit") if not landing]
        assert all(len(run) == len(set(run)) for run in turns)
        assert all(runs.count(one.opening.id) <= 1 + ("control-unit" in runs) for one in plan.openings)
        assert all(stage.low <= stage.minutes <= stage.high for stage in plan.work)
    on_site = [stage.minutes for stage in alone.work if stage.procedures not in _BEFORE]
    assert sum(day.minutes for day in alone.days) >= sum(on_site) - 1
    assert sum(day.minutes for day in more.days) <= sum(day.minutes for day in alone.days)
    assert len(more.days) <= len(alone.days)


_BEFORE = (("survey-openings",), ("prepare-at-yard",))
