"""The zone schedule: names, positions, responses, and what stands against it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.library import Library
from latchside.messages import messages
from latchside.planning.names import heard, names, unsayable
from latchside.planning.short_names import Limit, name_key
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, Opening, Site

from .plans import RECESSED, SURFACE, TRANSMITTER, codes, id_of, opening, schedule, survey
from .support import schemas

message = messages("latchside.planning.names")
KINDS = tuple(schemas().words("opening"))
NUMBERS = tuple(message("number", number=number) for number in range(1, 21))


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def spoken(*openings: Opening) -> list[str]:
    return [name.spoken for name in names(openings)]


# -- names ---------------------------------------------------------------------------------------------------


def test_every_kind_of_opening_has_a_spoken_word() -> None:
    assert [kind for kind in KINDS if f"kind-{kind}" not in message] == []


def test_a_name_is_place_side_and_kind() -> None:
    assert spoken(opening("a", "hall", "hinged-door", side="Street")) == ["Hall street door"]


def test_the_surveys_own_name_wins() -> None:
    assert spoken(opening("a", "hall", "hinged-door", spoken="Way  in")) == ["Way in"]


@pytest.mark.parametrize(
    ("place", "side", "kind", "name"),
    [
        ("Back door", "rear", "hinged-door", "Back door rear side"),
        ("Back door", "garden side", "hinged-door", "Back door garden side"),
        ("Front", "front", "hinged-door", "Front door"),
        ("Kit.", "N", "casement", "Kitchen north window"),
        ("Bdrm 2", "", "tilt-and-turn", "Bedroom 2 window"),
        ("Garage", "", "up-and-over", "Garage overhead door"),
    ],
)
def test_a_name_says_nothing_twice_and_nothing_short(place: str, side: str, kind: str, name: str) -> None:
    assert spoken(opening("a", place, kind, side=side)) == [name]


def test_made_names_that_coincide_are_numbered_along_the_walk() -> None:
    row = [opening(f"w{n}", place, side="rear") for n, place in enumerate(("Kitchen", "kitchen", "KITCHEN"))]
    assert [name.split()[-1] for name in spoken(*row)] == ["one", "two", "three"]


def test_a_new_opening_elsewhere_changes_no_name() -> None:
    row = [opening("a", "Kitchen"), opening("b", "Hall", "hinged-door")]
    assert spoken(*row, opening("c", "Attic", "hatch"))[:2] == spoken(*row)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Back door", "BACK  DOOR"),
        ("Café window", "cafe window"),
        ("Back-door", "back door"),
    ],
)
def test_the_same_name_written_otherwise(one: str, other: str) -> None:
    assert name_key(one) == name_key(other)


@pytest.mark.parametrize("name", ["Bdrm window", "Hall/stair window", "Str. door", "Hall & stair door"])
def test_abbreviations_and_signs_cannot_be_said(name: str) -> None:
    assert unsayable(name)


@pytest.mark.parametrize("name", ["Bedroom 2 window", "Hall street door", "By-way door", "Garden-side window", ""])
def test_words_can_be_said(name: str) -> None:
    assert not unsayable(name)


@given(st.text(max_size=60), st.text(max_size=30))
def test_no_text_breaks_a_name(place: str, side: str) -> None:
    one = names([opening("a", place, side=side)])[0]
    assert (heard(one.spoken), name_key(one.spoken), unsayable(one.spoken)) is not None


def problems_of(library: Library, *spoken: str, in_use: tuple[str, ...] = ()) -> list[tuple[str, str]]:
    row = [opening(f"o{n}", "Room", spoken=name, use="entry-route") for n, name in enumerate(spoken)]
    return codes(schedule(library, survey(row, ControlUnit(zones_in_use=in_use)), SURFACE)[1])


def test_double_names_are_found(library: Library) -> None:
    assert problems_of(library, "Side door", "side  DOOR") == [("o1", "double-name")]


def test_a_name_in_use_is_found(library: Library) -> None:
    assert problems_of(library, "Side door", in_use=("SideDoor",)) == [("o0", "double-name")]


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Front", "Front door"),
        ("Front door", "Front"),
        ("Store window", "Stair window"),
        ("Hall door", "The hall doors"),
    ],
)
def test_names_that_sound_alike_are_found(library: Library, one: str, other: str) -> None:
    assert problems_of(library, one, other) == [("o1", "names-sound-alike")]
    assert problems_of(library, other, in_use=(one,)) == [("o0", "names-sound-alike")]


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Front door", "Front window"),
        ("Bedroom window", "Bathroom window"),
        ("Bedroom 1 window", "Bedroom 2 window"),
        ("Hall north window", "Hall south window"),
        ("Kitchen window one", "Kitchen window two"),
    ],
)
def test_names_that_differ_in_the_ear_are_let_be(library: Library, one: str, other: str) -> None:
    assert problems_of(library, one, other) == []


def test_number_words_sound_different() -> None:
    assert len({heard(f"Hall window {word}") for word in NUMBERS}) == len(NUMBERS)
    assert not any(character.isdigit() for character in "".join(NUMBERS))


def test_long_and_unsayable_names_are_found(library: Library) -> None:
    long = "The window beside the second stair of the upper landing"
    assert problems_of(library, long, "Frnt drs") == [("o0", "name-too-long"), ("o1", "name-not-sayable")]


def test_numbered_names_ask_for_better_ones_once(library: Library) -> None:
    row = [opening("a", "Kitchen", use="entry-route"), opening("b", "Kitchen"), opening("c", "Kitchen")]
    found = schedule(library, survey(row), SURFACE)[1]
    assert codes(found) == [("a", "names-by-number")]
    assert id_of(found[0].found) == "zone_problems#names-by-number.found"
    assert "3 openings" in found[0].found


# -- positions -----------------------------------------------------------------------------------------------


def test_positions_count_wired_and_radio_apart_in_the_order_of_the_walk(library: Library) -> None:
    row = [opening("a", "Attic"), opening("b", "Hall", "hinged-door", use="entry-route"), opening("c", "Cellar")]
    found, _ = schedule(library, survey(row), [SURFACE, RECESSED, TRANSMITTER])
    assert [(zone.position, zone.opening, zone.link) for zone in found] == [
        ("R1", "a", "radio"), ("W1", "b", "wired"), ("R2", "c", "radio"),
    ]  # fmt: skip


def test_a_second_leaf_and_an_upper_sash_have_zones_of_their_own(library: Library) -> None:
    row = [
        opening("a", "Hall", "double-door", use="entry-route", passive_leaf=True),
        opening("b", "Study", "double-hung", upper_sash=True),
        opening("c", "Study", "casement", passive_leaf=True, upper_sash=True),
    ]
    found, _ = schedule(library, survey(row), SURFACE)
    assert [(zone.position, zone.spoken, zone.response) for zone in found] == [
        ("R1", "Hall double door", "delayed"),
        ("R2", "Hall double door second leaf", "followed"),
        ("R3", "Study sash window", "instant"),
        ("R4", "Study sash window upper sash", "instant"),
        ("R5", "Study window", "instant"),
    ]


def test_both_leaves_share_the_loop_of_a_transmitter(library: Library) -> None:
    row = [opening("a", "Yard", "double-door", use="entry-route", passive_leaf=True)]
    found, _ = schedule(library, survey(row), TRANSMITTER)
    assert [zone.position for zone in found] == ["R1"]
    assert id_of(found[0].reasons[-1]) == "zones#shared-loop"


def test_an_opening_without_a_device_has_no_zone(library: Library) -> None:
    row = [opening("a", "Hall", "hinged-door", use="entry-route"), opening("b", "Attic")]
    found, problems = schedule(library, survey(row), [None, SURFACE])
    assert [zone.opening for zone in found] == ["b"]
    assert codes(problems) == [("site", "entry-route-without-delayed-zone")]


def test_a_site_without_an_entry_route_is_found(library: Library) -> None:
    row = [opening("a", "Attic"), opening("b", "Hall", "hinged-door", use="on-route")]
    assert codes(schedule(library, survey(row), SURFACE)[1]) == [("site", "no-entry-route")]


# -- settings ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("use", "response"), [("entry-route", "delayed"), ("on-route", "followed"), ("other", "instant"), (None, "instant")]
)
def test_the_response_follows_the_use(library: Library, use: str | None, response: str) -> None:
    found, _ = schedule(library, survey([opening("a", "Hall", use=use)]), SURFACE)
    assert found[0].response == response
    assert found[0].reasons


@pytest.mark.parametrize(("monitored", "reports"), [(True, True), (False, False), (None, True)])
def test_zones_report_on_a_monitored_site(library: Library, monitored: bool | None, reports: bool) -> None:
    found, _ = schedule(library, survey([opening("a", "Hall")], site=Site(monitored=monitored)), SURFACE)
    assert found[0].reports is reports


@pytest.mark.parametrize(
    ("use", "wanted", "chime"),
    [("entry-route", True, True), ("entry-route", None, False), ("entry-route", False, False), ("other", True, False)],
)
def test_chime_is_for_entry_doors(library: Library, use: str, wanted: bool | None, chime: bool) -> None:
    row = [opening("a", "Hall", "hinged-door", use=use)]
    assert schedule(library, survey(row, ControlUnit(chime=wanted)), SURFACE)[0][0].chime is chime


@pytest.mark.parametrize(("device", "input_"), [(SURFACE, "reed"), (RECESSED, "loop"), (TRANSMITTER, "terminals")])
def test_the_input_in_use_is_the_common_case_of_the_device(library: Library, device: str, input_: str) -> None:
    assert schedule(library, survey([opening("a", "Hall")]), device)[0][0].input == input_


def test_radio_zones_are_supervised_with_the_window_of_the_device(library: Library) -> None:
    found, _ = schedule(library, survey([opening("a", "Hall")], site=Site(region="united-states")), SURFACE)
    assert "12\u00a0h" in found[0].supervision


@pytest.mark.parametrize(("layout", "lines"), [("double", 1), ("parallel", 1), ("series", 0), ("none", 0), (None, 0)])
def test_tamper_has_a_line_where_the_resistors_tell_it_apart(library: Library, layout: str | None, lines: int) -> None:
    row = [opening("a", "Hall", "hinged-door", use="entry-route"), opening("b", "Attic")]
    unit = ControlUnit(layout=layout, wired_positions=1)
    found, problems = schedule(library, survey(row, unit), [RECESSED, SURFACE])
    tampers = [zone for zone in found if zone.response == "always-on"]
    assert [(zone.position, zone.spoken, zone.chime) for zone in tampers] == [("W1", "Tamper of W1", False)] * lines
    assert [zone.position for zone in found] == [*["W1"] * (1 + lines), "R1"], "it stands below its zone"
    assert problems == ()  # it takes no position of its own


def test_a_tamper_line_needs_no_name(library: Library) -> None:
    """A name that just fits is no problem because of the tamper, which the panel shows under the same name."""
    row = [opening("a", "Hall", "hinged-door", use="entry-route", spoken="Hall door")]
    unit = ControlUnit(layout="double", name_length=9)
    found, problems = schedule(library, survey(row, unit), [RECESSED])
    assert [zone.spoken for zone in found] == ["Hall door", "Tamper of W1"]
    assert problems == ()


def test_zone_names_are_unique_whatever_the_walk(library: Library) -> None:
    row = [replace(opening(f"o{n}", "Row"), kind=kind) for n, kind in enumerate([*KINDS, *KINDS])]
    found, _ = schedule(library, survey(row), SURFACE)
    assert len({name_key(zone.spoken) for zone in found}) == len(found) == len(row)


@pytest.mark.parametrize(
    ("place", "kind", "field", "second"),
    [
        ("Conservatory", "double-door", "passive_leaf", "Conservatory 2"),
        ("Upper landing", "double-hung", "upper_sash", "Upper landing 2"),
        ("Upper bathroom", "double-hung", "upper_sash", "Upper bathroom 2"),
        ("Kitchen", "double-door", "passive_leaf", "Kitchen leaf two"),
    ],
)
def test_the_second_contact_keeps_its_place_in_its_name(place: str, kind: str, field: str, second: str) -> None:
    """Sixteen letters, as many keypads have them (common practice): who hears the name has to know where to go."""
    (name,) = names([opening("a", place, kind, **{field: True})], Limit(16))
    assert name.second == second
