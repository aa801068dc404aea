"""The figures of a device: worked with its own ratings, left out where a rating is missing, true to the catalogue."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise
from math import floor
from typing import Any

import pytest

from latchside.figures.catalogue import catalogue
from latchside.figures.for_device import Worked, for_device, power, radio
from latchside.figures.for_device.worked import Missing, Ratings
from latchside.figures.rounding import between, say
from latchside.library import Library, Record
from latchside.library.text import RecordLink, text_parts
from latchside.library.traits import Part, Traits, traits
from latchside.messages import messages

FIGURES = catalogue()
Values = dict[str, dict[str, Any]]

SURFACE: Values = {
    "reach": {"value": 20, "unit": "mm", "status": "typical"},
    "release": {"value": 25, "unit": "mm", "status": "typical"},
    "reach-on-steel": {"value": 12, "unit": "mm", "status": "on the label"},
    "sensor-height": {"value": 13, "unit": "mm", "status": "typical"},
    "magnet-height": {"value": 8, "unit": "mm", "status": "typical"},
    "spacer": {"value": 5, "unit": "mm", "status": "typical"},
    "magnet-diameter": {"value": 5, "unit": "mm", "status": "typical"},
    "magnet-length": {"value": 20, "unit": "mm", "status": "typical"},
    "magnet-remanence": {"value": 0.4, "unit": "T", "status": "typical"},
    "end-of-line": {"one_of": [4700, 2200], "unit": "ohm", "tolerance": {"percent": 1}, "status": "typical"},
    "cable-area": {"value": 0.22, "unit": "mm2", "status": "typical"},
    "cable-length": {"max": 10, "unit": "m", "status": "typical"},
    "cell-voltage": {"value": 3, "unit": "V", "status": "typical"},
    "cell-capacity": {"value": 800, "unit": "mAh", "status": "typical"},
    "cell-life": {"max": 5, "unit": "year", "status": "on the label"},
    "standby-current": {"value": 12, "unit": "uA", "status": "typical"},
    "report-current": {"value": 15, "unit": "mA", "status": "typical"},
    "report-time": {"value": 0.2, "unit": "s", "status": "typical"},
    "frequency": {"one_of": [315, 433.92, 868.3], "unit": "MHz", "status": "typical"},
    "radiated-power": {"max": 10, "unit": "mW", "status": "typical"},
    "radio-margin": {"min": 10, "unit": "dB", "status": "typical"},
    "check-in": {"value": 60, "unit": "min", "tolerance": {"percent": 10}, "status": "typical"},
    "missed-window": {"value": 12, "unit": "h", "status": "typical"},
}
"""A made-up radio contact."""
PARTS = tuple(Part(role, role, 1, "in-set", "surface") for role in ("sensor", "magnet", "spacer", "cell"))
RADIO_CONTACT = Traits("reed-and-magnet", "radio", "surface", PARTS, ("own-sensor", "wired-contact"))
"""What it is: it has terminals too."""
NEEDED = {
    "reach": ("reach", "magnet-diameter", "magnet-length", "magnet-remanence", "magnet-height", "spacer"),
    "spacer": ("sensor-height", "magnet-height", "spacer"),
    "loop-series": ("end-of-line",),
    "cell": ("cell-capacity", "standby-current", "report-current", "report-time", "check-in"),
    "supervision": ("check-in", "missed-window"),
    "margin": ("frequency", "radiated-power"),
}
IDS = list(NEEDED)


def worked(
    values: Values = SURFACE, what: Traits = RADIO_CONTACT, **changes: dict[str, Any] | None
) -> dict[str, Worked]:
    """The figures by id, for ratings with some changed, or left out by None."""
    named = {name.replace("_", "-"): value for name, value in changes.items()}
    ratings = {name: value for name, value in {**values, **named}.items() if value is not None}
    return {one.id: one for one in for_device(ratings, what, FIGURES)}


USUAL = worked()


def test_every_figure_in_its_order() -> None:
    assert list(USUAL) == IDS
    assert worked({}) == {}


@pytest.mark.parametrize(("id_", "rating"), [(id_, one) for id_, needed in NEEDED.items() for one in needed])
def test_a_missing_rating_leaves_its_figure_out_and_no_other(id_: str, rating: str) -> None:
    left = worked({name: value for name, value in SURFACE.items() if name != rating})
    assert set(IDS) - set(left) == {one for one, needed in NEEDED.items() if rating in needed}
    assert id_ not in left


def test_a_rating_out_of_range_or_of_another_kind_leaves_its_figure_out() -> None:
    assert "reach" not in worked(magnet_remanence={"value": 9, "unit": "T", "status": "typical"})
    assert "cell" not in worked(cell_capacity={"value": 800, "unit": "mm", "status": "typical"})


def test_figures_that_are_not_there_are_left_out() -> None:
    assert for_device(SURFACE, RADIO_CONTACT, {}) == ()
    assert [one.id for one in for_device(SURFACE, RADIO_CONTACT, {"spacer": FIGURES["spacer"]})] == ["spacer"]


@pytest.mark.parametrize("id_", IDS)
def test_a_table_is_whole_and_says_what_it_means(id_: str) -> None:
    one = USUAL[id_]
    assert one.rows
    assert all(len(row) == len(one.columns) for row in one.rows)
    assert all(cell.strip() for row in one.rows for cell in row)
    assert len({row[0] for row in one.rows}) == len(one.rows)
    assert one.notes
    for text in (one.title, one.meaning, *one.columns, *(note.words for note in one.notes)):
        assert not re.search(r"\bnan\b|\binf\b|None|\{|\}", text), text
    assert one.meaning.endswith(".")


@pytest.mark.parametrize("id_", IDS)
def test_the_link_carries_inputs_that_the_figure_takes(id_: str) -> None:
    one = USUAL[id_]
    assert FIGURES[one.figure].answer(one.inputs).outputs
    assert all(figure in FIGURES for figure in one.also)


def test_ratings_are_read_in_the_unit_that_is_asked_for() -> None:
    same = worked(
        report_time={"value": 200, "unit": "ms", "status": "typical"},
        check_in={"value": 1, "unit": "h", "tolerance": {"percent": 10}, "status": "typical"},
        cell_capacity={"value": 0.8, "unit": "Ah", "status": "typical"},
        cable_length={"max": 1000, "unit": "cm", "status": "typical"},
        missed_window={"value": 720, "unit": "min", "status": "typical"},
    )
    for id_ in ("cell", "loop-series", "supervision"):
        assert same[id_].rows == USUAL[id_].rows


def test_ratings_say_least_most_and_limit() -> None:
    ratings = Ratings(SURFACE)
    assert (ratings.least("end-of-line", "ohm"), ratings.most("end-of-line", "ohm")) == (2200, 4700)
    assert ratings.limit("check-in", "min") == pytest.approx(66)
    assert ratings.limit("frequency", "MHz") == 868.3
    assert ratings.most("radiated-power", "dBm") == pytest.approx(10)
    assert "reach" in ratings
    with pytest.raises(Missing):
        ratings.most("hole-depth", "mm")


# -- magnet ------------------------------------------------------------------------------------------------------


def first_number(words: str) -> float:
    found = re.match(r"(\u2212?)([\d,]+\.?\d*)", words)
    assert found, words
    return float(found[2].replace(",", "")) * (-1 if found[1] else 1)


@pytest.mark.parametrize("drilled", [False, True])
def test_reach_in_air_is_the_labels_and_steel_takes_from_it(drilled: bool) -> None:
    extra: Values = {
        "hole-depth": {"value": 35, "unit": "mm", "status": "typical"},
        "body-width": {"value": 9.5, "unit": "mm", "status": "typical"},
    }
    what = replace(RADIO_CONTACT, mounts="drilled") if drilled else RADIO_CONTACT
    one = worked({**SURFACE, **(extra if drilled else {})}, what)["reach"]
    assert one.inputs["mount"] == ("end-on" if drilled else "parallel")
    closes, opens = ([first_number(row[column]) for row in one.rows] for column in (2, 3))
    assert (closes[0], opens[0]) == (20, 25)
    assert closes[1] == min(closes)
    assert closes[1:] == sorted(closes[1:])  # the farther from steel, the more is left
    assert all(close <= closes[0] for close in closes)
    assert all(close < opened for close, opened in zip(closes, opens, strict=True))
    assert any("12\u00a0mm" in note.words and note.status == "on the label" for note in one.notes)


def test_reach_is_what_the_figure_answers() -> None:
    one = USUAL["reach"]
    found = FIGURES["reed-gap"].answer({**one.inputs, "steel_mm": 4 + 5}).outputs
    assert one.rows[2][2] == say(found["operate_mm"], "mm")
    assert f"leaves {one.rows[1][4]} of the make distance" in one.meaning


def test_spacer_brings_the_tops_level() -> None:
    rows = {row[0]: row for row in USUAL["spacer"].rows}
    assert rows["Surfaces level"][2] == f"one spacer of {say(5, 'mm')} under the magnet"
    assert rows["Surfaces level"][3] == "in line"
    assert rows[f"Sensor {say(5, 'mm')} deeper"][1:] == ("in line", "no spacer", "in line")
    assert "under the sensor" in rows[f"Sensor {say(10, 'mm')} deeper"][2]
    assert rows[f"Sensor {say(10, 'mm')} proud"][3] == f"magnet {say(5, 'mm')} too low"


# -- loop --------------------------------------------------------------------------------------------------------


def test_loop_reads_what_the_figure_answers() -> None:
    one = USUAL["loop-series"]
    assert one.inputs["end_ohm"] == 2200
    assert one.inputs["tolerance_percent"] == 1
    states = FIGURES["loop-states"].answer(one.inputs).outputs["states"]
    for row, state in zip(one.rows, ("shut", "open", "short", "cut"), strict=True):
        assert row[2] == between(states[state]["low_v"], states[state]["high_v"], "V")
    assert "Door open and pair cut read the same" in one.meaning


@pytest.mark.parametrize("layout", ["loop-double", "loop-double-across"])
def test_two_resistors_only_where_a_control_unit_reads_the_loop(layout: str) -> None:
    assert layout not in USUAL
    one = worked(SURFACE, replace(RADIO_CONTACT, reports="loop"))[layout]
    assert "All four states read differently" in one.meaning
    assert len({row[2] for row in one.rows}) == 4


def test_loop_without_a_cable_rating_counts_none() -> None:
    assert worked(cable_area=None)["loop-series"].inputs["cable_ohm"] == 0


# -- cell --------------------------------------------------------------------------------------------------------


def test_life_falls_with_use_and_the_change_is_rounded_down() -> None:
    one = USUAL["cell"]
    currents, lives = ([first_number(row[column]) for row in one.rows] for column in (1, 2))
    assert currents == sorted(currents)
    assert lives == sorted(lives, reverse=True)
    for row, years in zip(one.rows, lives, strict=True):
        after = re.search(r"after (\d+) year", row[3])
        assert after
        assert int(after[1]) == min(floor(years), 5)
    assert one.rows[0][3] == "after 5 years, the label's limit"


def test_life_falls_as_check_ins_grow_more_frequent() -> None:
    lives = []
    for minutes in (240, 60, 10, 1):
        check_in = {"value": minutes, "unit": "min", "status": "typical"}
        lives.append([first_number(row[2]) for row in worked(check_in=check_in)["cell"].rows])
    for fewer, more in pairwise(lives):
        assert all(longer >= shorter for longer, shorter in zip(fewer, more, strict=True))
    assert lives[-1][0] < lives[0][0] / 3


@pytest.mark.parametrize(
    ("years", "label", "words"),
    [(0.9, 5, "within the first year"), (1.99, 5, "after 1 year"), (6.9, 5, "after 5 years, the label's limit"),
     (5.4, 5, "after 5 years"), (30, None, "after 10 years"), (7.99, None, "after 7 years")],
)  # fmt: skip
def test_years_to_the_change(years: float, label: float | None, words: str) -> None:
    values = {} if label is None else {"cell-life": {"max": label, "unit": "year", "status": "on the label"}}
    assert power.change(years, Ratings(values), FIGURES) == words


# -- radio -------------------------------------------------------------------------------------------------------


def test_tries_and_chances_are_those_of_the_figure() -> None:
    one = USUAL["supervision"]
    assert {row[1] for row in one.rows} == {"12"}
    assert "all 12 in a row are lost" in one.meaning
    assert f"up to {say(12, 'h')}" in one.meaning
    assert one.rows[-1][2] == "1 in 4,100"  # two to the twelfth, in two digits
    assert any("10 fall within the window" in note.words for note in one.notes)
    assert not any("fall within" in note.words for note in worked(
        check_in={"value": 60, "unit": "min", "status": "typical"})["supervision"].notes)  # fmt: skip


def test_margin_falls_along_the_ways_and_lies_within_its_spread() -> None:
    one = USUAL["margin"]
    for column in range(1, 4):
        margins = [[first_number(part) for part in row[column].split(" / ")] for row in one.rows]
        assert all(low < middle < high for low, middle, high in margins)
        assert [low for low, _, _ in margins] == sorted((low for low, _, _ in margins), reverse=True)
    link = FIGURES["radio-margin"].answer(one.inputs).outputs
    assert one.rows[2][2].split(" / ")[1] == f"{link['margin_db']:.0f}"


def test_the_ways_that_are_named_are_those_below_the_margin_to_accept() -> None:
    message = messages("latchside.figures.for_device.radio")
    one = USUAL["margin"]
    for way, row in zip(radio.WAYS, one.rows, strict=True):
        weak = any(first_number(cell.split(" / ")[0]) < 10 for cell in row[1:])
        assert (message(f"way-{way.id}.inside") in one.meaning) == weak, way.id
    easy = worked(radio_margin={"min": -60, "unit": "dB", "status": "typical"})["margin"]
    assert "in a bad spot: none" in easy.meaning


@pytest.mark.parametrize("band", [315, 433.92, 868.3])
def test_power_is_the_labels_or_the_limit_where_it_is_less(band: float) -> None:
    power_dbm = radio.eirp_dbm(Ratings(SURFACE), FIGURES, band)
    region = "united-states" if band == 315 else "europe"
    limit = FIGURES["field-limit"].answer({"region": region, "frequency_mhz": band}).outputs["eirp_dbm"]
    assert power_dbm == pytest.approx(min(10 + 2.15, limit))


# -- the shipped devices -----------------------------------------------------------------------------------------

SHIPPED = {
    "surface-contact": IDS,
    "recessed-contact": ["reach", "loop-series", "loop-double", "loop-double-across"],
    "steel-door-contact": ["reach", "loop-series", "loop-double", "loop-double-across"],
    "wired-surface-contact": ["reach", "spacer", "loop-series", "loop-double", "loop-double-across"],
    "wired-input-transmitter": ["loop-series", "cell", "supervision", "margin"],
}


@pytest.mark.parametrize("id_", list(SHIPPED))
def test_shipped_devices_have_the_figures_that_matter_to_them(id_: str, shipped_library: Library) -> None:
    device = shipped_library.find("device", id_)
    assert isinstance(device, Record)
    found = for_device(device["values"], traits(device), FIGURES)
    assert [one.id for one in found] == SHIPPED[id_]
    statuses = shipped_library.schemas.words("status")
    for one in found:
        assert all(note.status in statuses for note in one.notes)
        for text in (one.meaning, *(note.words for note in one.notes)):
            for part in text_parts(text):
                if isinstance(part, RecordLink):
                    assert shipped_library.find(part.kind, part.id), part
