"""Conditions of a device held against an opening: yes, no, or not known and what would tell."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from latchside.figures.for_device.worked import Missing, Ratings
from latchside.library import Library
from latchside.planning import facts
from latchside.planning.conditions import Condition, bound_in, profiles
from latchside.planning.looked_at import looked
from latchside.surveys.survey import Opening, Wall

from ..each import each
from .support import schemas

BARE = Opening(id="one", place="Hall", kind="hinged-door")
RATINGS = Ratings(
    {
        "reach": {"value": 20, "unit": "mm", "tolerance": {"percent": 10}, "status": "typical"},
        "release": {"value": 2.5, "unit": "cm", "tolerance": {"plus_minus": 0.1}, "status": "typical"},
        "fit-gap": {"min": 3, "max": 8, "unit": "mm", "status": "typical"},
    }
)


def told(field: str, words: tuple[str, ...], **said: Any) -> tuple[bool | None, tuple[str, ...]]:
    return facts.is_one_of(field, frozenset(words))(replace(BARE, **said))


def both(*tests: facts.Test) -> Condition:
    return Condition("It is so.", "Because.", tests, frozenset(), 1)


def test_the_fields_are_those_of_the_vocabulary() -> None:
    """Every field a record may name can be answered, as a word or as a figure in its unit."""
    entry = schemas().documents["vocabulary.schema.json"]["$defs"]["opening-field"]
    assert set(entry["x-vocabulary"]) | set(entry["x-dimension"]) == set(entry["enum"])
    assert not set(entry["x-vocabulary"]) & set(entry["x-dimension"])
    assert set(facts.UNITS) == set(entry["x-dimension"])
    for field in entry["x-vocabulary"]:
        assert facts.is_one_of(field, frozenset())(BARE)[0] in (None, False)
    for field in facts.UNITS:
        assert facts.above(field, 0)(BARE)[0] is None


def test_each_field_is_asked_by_its_name_in_the_survey() -> None:
    opening = schemas().documents["job.schema.json"]["$defs"]["opening"]["properties"]
    assert set(facts.ASKED.values()) <= set(opening)


@pytest.mark.parametrize(
    ("field", "name"),
    [("fire-rated", "fire_rated"), ("escape", "escape"), ("cable", "cable"), ("outdoors", "outdoors"),
     ("drill", "drill"), ("old-contact", "old_contact")],
)  # fmt: skip
def test_yes_no_and_not_known(field: str, name: str) -> None:
    assert told(field, ("yes",), **{name: True}) == (True, ())
    assert told(field, ("yes",), **{name: False}) == (False, ())
    assert told(field, ("no",), **{name: False}) == (True, ())
    assert told(field, ("yes",)) == (None, (name,))


def test_unknown_as_a_word_is_not_known() -> None:
    assert told("leaf-material", ("wood",), leaf_material="unknown") == (None, ("leaf_material",))
    assert told("outer-wall", ("no",), outer_wall="unknown") == (None, ("outer_wall",))
    assert told("wish", ("none",), wish="none") == (True, ())
    assert told("wish", ("none",)) == (None, ("wish",))


def test_steel_that_nobody_looked_for() -> None:
    """A steel leaf is steel in the leaf, whatever its frame may hide; any other may hide some."""
    some, nowhere = ("leaf", "frame", "both"), ("none",)
    for word in (None, "unknown"):
        assert told("steel", some, steel=word, leaf_material="steel") == (True, ())
        assert told("steel", nowhere, steel=word, leaf_material="steel") == (False, ())
        assert told("steel", ("leaf",), steel=word, leaf_material="steel") == (None, ("steel",))
        assert told("steel", ("both",), steel=word, leaf_material="steel", frame_material="steel") == (True, ())
        assert told("steel", nowhere, steel=word, leaf_material="plastic") == (None, ("steel",))


def test_a_part_of_steel_is_steel_whatever_a_magnet_is_said_to_have_found() -> None:
    """Common practice: a test magnet that finds none in a steel door was held to the wrong place, or it is no steel."""
    for word, leaf, frame, found in (
        ("none", "steel", "wood", "leaf"), ("none", "wood", "steel", "frame"), ("none", "steel", "steel", "both"),
        ("leaf", "wood", "steel", "both"), ("frame", "steel", None, "both"), ("frame", "wood", "steel", "frame"),
        ("none", "aluminium", "wood", "none"),
    ):  # fmt: skip
        assert told("steel", (found,), steel=word, leaf_material=leaf, frame_material=frame) == (True, ())


def test_what_is_on_the_way() -> None:
    foil = (Wall("brick"), Wall("foil"))
    assert told("way", ("foil", "metal"), walls=foil) == (True, ())
    assert told("way", ("metal",), walls=foil) == (False, ())
    assert told("way", ("metal",), walls=()) == (False, ())
    assert told("way", ("metal",)) == (None, ("walls",))


def test_limits_are_strict() -> None:
    gap = replace(BARE, gap_mm=10.0)
    assert facts.above("gap", 10.0)(gap) == facts.below("gap", 10.0)(gap) == (False, ())
    assert facts.above("gap", 9.99)(gap) == (True, ())
    assert facts.below("gap", 10.01)(gap) == (True, ())
    assert facts.above("gap", 1.0)(BARE) == (None, ("gap",))
    assert facts.below("step", -3.0)(replace(BARE, step_mm=-4.0)) == (True, ())
    assert facts.above("step", -3.0)(BARE) == (None, ("step",))


def test_a_sum_is_known_as_soon_as_one_part_decides() -> None:
    test = facts.above("gap-and-play", 10.0)
    assert test(replace(BARE, gap_mm=11.0)) == (True, ())
    assert test(replace(BARE, gap_mm=9.0)) == (None, ("play",))
    assert test(BARE) == (None, ("gap", "play"))
    assert test(replace(BARE, gap_mm=9.0, play_mm=1.0)) == (False, ())
    assert facts.above("gap-and-play", 0.3)(replace(BARE, gap_mm=0.1, play_mm=0.2)) == (
        False,
        (),
    )  # not 0.30000000000000004


def test_one_test_that_fails_decides() -> None:
    wood, cable = facts.is_one_of("leaf-material", frozenset(["wood"])), facts.is_one_of("cable", frozenset(["yes"]))
    condition = both(wood, cable)
    assert condition.of(BARE).holds is None
    assert condition.of(BARE).missing == ("leaf_material", "cable")
    assert condition.of(replace(BARE, cable=False)).holds is False
    assert condition.of(replace(BARE, cable=True)).missing == ("leaf_material",)
    assert condition.of(replace(BARE, cable=True, leaf_material="wood")).holds is True


@each("field", sorted(facts.READS))
@each("said", [{}, {"glazed": True}, {"leaf_material": "steel"}, {"cable": False, "gap_mm": 2.0}])
def test_a_field_reads_no_fact_beside_those_that_are_named_for_it(field: str, said: dict[str, Any]) -> None:
    number = field in facts.UNITS and field != "trip-room"
    test = facts.above(field, 1) if number else facts.is_one_of("kind" if field == "trip-room" else field, frozenset())
    _, looks = looked(test, replace(BARE, **said))
    assert {name for _, name in looks} <= set(facts.READS[field])


def test_bounds_are_converted_and_take_the_limit_they_name() -> None:
    assert bound_in({"value": 2, "unit": "in"}, "mm", RATINGS) == 50.8
    assert bound_in({"value": 6, "unit": "ft"}, "m", RATINGS) == 1.8288
    assert bound_in({"of": "reach"}, "mm", RATINGS) == 20
    assert bound_in({"of": "reach", "limit": "min"}, "mm", RATINGS) == 18
    assert bound_in({"of": "reach", "limit": "max"}, "mm", RATINGS) == 22
    assert bound_in({"of": "fit-gap", "limit": "min"}, "mm", RATINGS) == 3
    assert bound_in({"of": "fit-gap", "limit": "max"}, "mm", RATINGS) == 8
    assert bound_in({"of": "reach", "share": 0.5}, "mm", RATINGS) == 10
    assert bound_in({"of": "release", "less": "reach"}, "mm", RATINGS) == 5
    assert bound_in({"of": "release", "less": "reach", "share": 0.8}, "mm", RATINGS) == 4
    with pytest.raises(Missing):
        bound_in({"of": "spacer"}, "mm", RATINGS)


def test_bounds_of_a_contact_as_it_is_mounted() -> None:
    """A reach of 20 mm, a tenth of tolerance, and 3 % of warmth: 17.46 mm; a tenth kept free and 2 mm of sag: 13.71.

    Where a profile states no drift, 5 % are taken.
    """
    drift = {"temperature-drift": {"value": 3, "unit": "%", "status": "computed"}}
    ratings = Ratings(
        {"reach": {"value": 20, "unit": "mm", "tolerance": {"percent": 10}, "status": "typical"}, **drift}
    )
    assert bound_in({"of": "reach", "limit": "sure"}, "mm", ratings) == pytest.approx(20 * 0.9 * 0.97)
    assert bound_in({"of": "reach", "limit": "most"}, "mm", ratings) == pytest.approx(20 * 1.1 * 1.03)
    assert bound_in({"of": "reach", "limit": "rest"}, "mm", ratings) == pytest.approx(17.46 * 0.9 - 2)
    assert bound_in({"of": "reach", "limit": "sure"}, "mm", RATINGS) == pytest.approx(18 * 0.95)


def test_the_room_for_the_trip_goes_by_the_kind(shipped_library: Library) -> None:
    wide = next(one for one in profiles(shipped_library) if one.id == "wide-reach-contact")
    late = next(one for one in wide.avoid if "trip-room" in one.fields)
    for kind, holds in (("hinged-door", True), ("sliding", True), ("roller-door", False), ("gate", False)):
        assert late.of(replace(BARE, kind=kind)).holds is holds, kind


def test_profiles_are_plain_words(shipped_library: Library) -> None:
    """No sheet or file shows the marks of a reference."""
    for profile in profiles(shipped_library):
        for condition in (*profile.suits, *profile.avoid):
            for text in (condition.text, condition.reason):
                assert text
                assert "[[" not in text
                assert "]]" not in text
                assert text.rstrip('"')[-1] in ".?"


def test_a_value_in_a_sentence_is_shown_in_figures(shipped_library: Library) -> None:
    recessed = next(one for one in profiles(shipped_library) if one.id == "recessed-contact")
    assert any("10\u00a0mm" in condition.reason for condition in recessed.avoid)
