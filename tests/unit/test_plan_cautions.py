"""The cautions of a job: which stand, where, and why. Years are those of the published rules."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from latchside.library import Library
from latchside.messages import messages
from latchside.planning.cautions import LEVELS, bites, cautions
from latchside.planning.plan import Caution
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, JobRules, Opening, Site

from .plans import RECESSED, SURFACE, TRANSMITTER, at, house, opening, survey

message = messages("latchside.planning.cautions")
SAFE: dict[str, Any] = {
    "leaf_material": "plastic", "frame_material": "plastic", "fire_rated": False, "escape": False, "height_m": 1.2,
    "old_contact": False, "drill": False, "use": "other",
}  # fmt: skip
"""An opening with as little against it as may be."""
KNOWN = Site(region="united-states", year_built=2015, occupied=False, monitored=False)


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def found(
    library: Library, one: Opening, device: str | None = SURFACE, site: Site = KNOWN, unit: ControlUnit | None = None
) -> dict[str, Caution]:
    made = cautions(survey([one], unit, site), at(library, [one], [device]), library, house(library))
    assert len({one.caution for one in made}) == len(made)
    return {one.caution: one for one in made}


def safe(kind: str = "hinged-door", **more: Any) -> Opening:
    return opening("a", "Hall", kind, **{**SAFE, **more})


def test_little_stands_where_all_is_known_and_well(library: Library) -> None:
    assert found(library, safe()).keys() == {
        "local-code", "magnets-and-pacemakers", "lithium-cells", "swallowed-cells", "lone-working",
        "confidential-records",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("region", "year", "stands"),
    [
        # 40 CFR 745.223 and 745.82: target housing is housing built before 1978
        ("united-states", 1977, True),
        ("united-states", 1978, False),
        ("united-kingdom", 1980, True),
        ("united-kingdom", 2001, False),
        (None, 1980, True),
        ("united-states", None, True),
    ],
)
def test_lead_paint_by_region_and_year(library: Library, region: str | None, year: int | None, stands: bool) -> None:
    site = Site(region=region, year_built=year, occupied=False, monitored=False)
    one = safe(leaf_material="wood", frame_material="wood")
    assert ("lead-paint" in found(library, one, site=site)) == stands


@pytest.mark.parametrize(
    ("region", "year", "stands"),
    [
        # 29 CFR 1926.1101(b): presumed in buildings constructed no later than 1980
        ("united-states", 1980, True),
        ("united-states", 1981, False),
        # HSE: any building built or refurbished before the year 2000
        ("united-kingdom", 1999, True),
        ("united-kingdom", 2000, False),
        ("europe", 2000, True),
        (None, 1999, True),
        ("united-kingdom", None, True),
    ],
)
def test_asbestos_by_region_and_year(library: Library, region: str | None, year: int | None, stands: bool) -> None:
    site = Site(region=region, year_built=year, occupied=False, monitored=False)
    assert (
        "asbestos" in found(library, safe(drill=True, leaf_material="wood", frame_material="wood"), site=site)
    ) == stands


def test_an_unknown_year_says_so(library: Library) -> None:
    site = Site(region="united-states", occupied=False, monitored=False)
    stands = found(library, safe(drill=True, leaf_material="wood", frame_material="wood"), site=site)
    assert stands["asbestos"].why == stands["lead-paint"].why == message("no-year")


def test_nothing_is_disturbed_where_nothing_is_fitted(library: Library) -> None:
    site = Site(region="united-states", year_built=1900, occupied=False, monitored=False)
    stands = found(library, safe(leaf_material="wood", drill=True), None, site)
    assert stands.keys() == {"local-code"}


@pytest.mark.parametrize(("height", "stands"), [(1.8, False), (1.81, True), (4.0, True), (None, True)])
def test_ladders_above_the_height_of_the_firm(library: Library, height: float | None, stands: bool) -> None:
    assert ("ladders" in found(library, safe(height_m=height))) == stands


@pytest.mark.parametrize(
    ("kind", "caution"),
    [
        ("casement", "glass"), ("roof-window", "glass"), ("double-hung", "sprung-and-powered-doors"),
        ("roller-door", "sprung-and-powered-doors"), ("up-and-over", "sprung-and-powered-doors"),
        ("gate", "sprung-and-powered-doors"), ("roller-door", "mains-wiring"), ("gate", "mains-wiring"),
    ],
)  # fmt: skip
def test_kinds_bring_their_cautions(library: Library, kind: str, caution: str) -> None:
    assert found(library, safe(kind))[caution].about == ("a",)
    assert caution not in found(library, safe())


@pytest.mark.parametrize("field", ["fire_rated", "escape"])
@pytest.mark.parametrize("answer", [True, None])
def test_life_safety_stands_until_it_is_known_not_to(library: Library, field: str, answer: bool | None) -> None:
    more: dict[str, Any] = {field: answer}
    stands = found(library, safe(**more))
    assert {"life-safety", "never-drill-here"} <= stands.keys()
    assert stands["life-safety"].why == message(
        f"unknown-{field.partition('_')[0]}" if answer is None else "life-safety"
    )


@pytest.mark.parametrize(("device", "stands"), [(RECESSED, True), (TRANSMITTER, True), (SURFACE, False)])
def test_cable_through_walls_meets_what_is_hidden(library: Library, device: str, stands: bool) -> None:
    assert ("hidden-services" in found(library, safe(), device)) == stands
    assert ("dust-and-eyes" in found(library, safe(), device)) == stands


def test_one_technician_works_alone_and_two_do_not(library: Library) -> None:
    for technicians, alone in ((1, True), (2, False), (None, True)):
        asked = replace(survey([safe()], None, KNOWN), rules=JobRules(technicians=technicians))
        made = cautions(asked, at(library, [safe()], [SURFACE]), library, house(library))
        assert ("lone-working" in {one.caution for one in made}) == alone, technicians


@pytest.mark.parametrize(("occupied", "stands"), [(True, True), (None, True), (False, False)])
def test_dogs_are_asked_about_unless_nobody_is_there(library: Library, occupied: bool | None, stands: bool) -> None:
    site = Site(region="united-states", year_built=2015, occupied=occupied, monitored=False)
    assert ("dogs-and-angry-people" in found(library, safe(), site=site)) == stands


def test_a_pack_with_devices_is_confidential_and_one_without_shows_nothing(library: Library) -> None:
    assert found(library, safe())["confidential-records"].about == ("site",)
    assert "confidential-records" not in found(library, safe(), None)


@pytest.mark.parametrize("device", [SURFACE, TRANSMITTER])
def test_mains_is_not_named_where_none_is_near(library: Library, device: str) -> None:
    """A loop that ends at a transmitter on a cell, and a radio contact, have no mains beside them."""
    assert "mains-wiring" not in found(library, safe(), device)


def test_mains_is_named_at_the_openings_it_is_near_and_no_other(library: Library) -> None:
    row = [safe(), opening("b", "Side", "hinged-door", **SAFE), opening("c", "Yard", "gate", **SAFE)]
    made = cautions(survey(row, None, KNOWN), at(library, row, [SURFACE, RECESSED, SURFACE]), library, house(library))
    mains = next(one for one in made if one.caution == "mains-wiring")
    assert mains.about == ("b", "c")


def test_a_wired_zone_ends_beside_mains(library: Library) -> None:
    assert "mains-wiring" in found(library, safe(), RECESSED)
    assert "lithium-cells" not in found(library, safe(), RECESSED)


def test_a_frame_with_drain_ways_is_not_drilled_blindly(library: Library) -> None:
    aluminium = safe(drill=True, leaf_material="aluminium", frame_material="aluminium")
    assert "never-drill-here" in found(library, aluminium)
    assert "never-drill-here" not in found(library, safe(drill=True)), "pads hold on plastic"


@pytest.mark.parametrize(
    ("kind", "glazed", "stands"),
    [
        ("hinged-door", True, True), ("hinged-door", False, False), ("hinged-door", None, True),
        ("casement", None, True), ("hatch", True, True), ("gate", None, False),
    ],
)  # fmt: skip
def test_a_pane_is_told_of_wherever_a_screw_may_meet_it(
    library: Library, kind: str, glazed: bool | None, stands: bool
) -> None:
    """A glazed door has the caution and the gloves of a window; where nobody said, it has them too."""
    assert (
        "glass" in found(library, safe(kind, drill=True, leaf_material="wood", frame_material="wood", glazed=glazed))
    ) == stands


@pytest.mark.parametrize(
    ("kind", "old", "stands"),
    [("hatch", True, True), ("hinged-door", True, True), ("hatch", None, True), ("hinged-door", None, False),
     ("hatch", False, False)],
)  # fmt: skip
def test_old_switches_may_hold_mercury(library: Library, kind: str, old: bool | None, stands: bool) -> None:
    assert ("mercury-switches" in found(library, safe(kind, old_contact=old))) == stands


@pytest.mark.parametrize("answer", [True, None])
def test_what_is_not_known_of_the_site_stands(library: Library, answer: bool | None) -> None:
    site = Site(region="united-states", year_built=2015, occupied=answer, monitored=answer)
    stands = found(library, safe(), site=site)
    assert stands["monitored-site"].about == stands["occupied-premises"].about == ("site",)
    assert stands["monitored-site"].why == message("monitored-unknown" if answer is None else "monitored")
    assert stands["occupied-premises"].why == message("occupied-unknown" if answer is None else "occupied")


def test_openings_that_are_watched_today_are_named(library: Library) -> None:
    assert "opening-unprotected" in found(library, safe(), unit=ControlUnit(zones_in_use=("Hall",)))
    assert "opening-unprotected" in found(library, safe(old_contact=True))


def test_the_gravest_come_first_and_each_once(library: Library) -> None:
    row = [opening("a", "Yard", "gate"), opening("b", "Attic", "roof-window"), opening("c", "Hall", "hinged-door")]
    made = cautions(survey(row), at(library, row, [TRANSMITTER, SURFACE, RECESSED]), library, house(library))
    levels = []
    for one in made:
        record = library.find("caution", one.caution)
        assert record is not None
        levels.append(LEVELS.index(record["level"]))
    assert levels == sorted(levels)
    assert all(one.why and one.about for one in made)
    assert next(one for one in made if one.caution == "ladders").about == ("a", "b", "c")


# -- reasons and commands ------------------------------------------------------------------------------------


def test_each_reason_stands_with_its_own_openings(library: Library) -> None:
    """What is known to be an escape way is not mixed with what nobody asked."""
    row = [replace(safe(), id="a", escape=True), replace(safe(), id="b", escape=None), replace(safe(), id="c")]
    made = cautions(survey(row, None, KNOWN), at(library, row, [SURFACE] * 3), library, house(library))
    (stands,) = [one for one in made if one.caution == "life-safety"]
    assert [(one.why, one.about) for one in stands.reasons] == [
        (message("life-safety"), ("a",)),
        (message("unknown-escape"), ("b",)),
    ]
    for one in made:
        assert [id_ for reason in one.reasons for id_ in reason.about] == (
            [] if one.about == ("site",) else sorted(one.about)
        )


def test_an_opening_is_told_the_few_that_bite_as_commands(library: Library) -> None:
    """Common practice: nobody reads eleven warnings at a door. The year is told where it is known."""
    one = opening("a", "Flat", "double-hung", leaf_material="wood", drill=True, height_m=2.6, fire_rated=True)
    site = Site(region="united-kingdom", year_built=1934)
    made = cautions(survey([one], None, site), at(library, [one], [SURFACE]), library, house(library))
    told = bites(made, "a")
    assert len(told) == 3
    assert told[0] == message("do-life-safety-life-safety")
    assert message("do-sprung-and-powered-doors-sprung-double-hung") in told
    bare = replace(one, fire_rated=False, escape=False, height_m=1.2)
    made = cautions(survey([bare], None, site), at(library, [bare], [SURFACE]), library, house(library))
    assert any("Built 1934: treat the paint as lead" in command for command in bites(made, "a"))
    assert bites(made, "elsewhere") == ()
