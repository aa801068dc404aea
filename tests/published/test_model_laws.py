"""Laws that the models keep: loops, walls, slabs, reeds, spacers and resistors."""

from __future__ import annotations

import random
from itertools import pairwise
from math import sqrt
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from latchside.figures.inputs import InputError
from latchside.figures.models import loop_states, reed_gap
from latchside.figures.models.resistor import DIGITS, TENS
from tests.published.check import ask, figures
from tests.published.outside import library
from tests.published.test_laws import between, lawful, same

LAYOUTS = st.sampled_from(loop_states.LAYOUTS)
OHMS = between(500, 20000)


@lawful
@given(
    LAYOUTS, OHMS, OHMS, OHMS, between(0, 15), between(0, 100), st.one_of(st.none(), between(1e4, 1e6)), st.randoms()
)
def test_windows_hold_every_case(
    layout: str, pull: float, end: float, contact: float, tolerance: float, cable: float, leak: float | None,
    chance: random.Random,
) -> None:  # fmt: skip
    about = {"supply_v": 12, "layout": layout}
    found = ask(
        "loop-states", **about, pull_up_ohm=pull, end_ohm=end, contact_ohm=contact, tolerance_percent=tolerance,
        cable_ohm=cable, leakage_ohm=leak,
    )["states"]  # fmt: skip

    def some(value: float) -> float:
        return value * (1 + chance.uniform(-1, 1) * tolerance / 100)

    for _ in range(5):
        case = ask(
            "loop-states", **about, pull_up_ohm=some(pull), end_ohm=some(end), contact_ohm=some(contact),
            tolerance_percent=0, cable_ohm=some(cable), leakage_ohm=leak and leak * chance.uniform(1, 10),
        )["states"]  # fmt: skip
        for state, window in found.items():
            slack = 1e-9 * 12
            assert window["low_v"] - slack <= case[state]["typical_v"] <= window["high_v"] + slack, state
    for state, window in found.items():
        assert window["low_v"] <= window["typical_v"] <= window["high_v"], state


@lawful
@given(LAYOUTS, OHMS, OHMS, OHMS, between(0, 15))
def test_states_are_grouped_once(layout: str, pull: float, end: float, contact: float, tolerance: float) -> None:
    about = {"layout": layout, "pull_up_ohm": pull, "end_ohm": end, "contact_ohm": contact}
    found = ask("loop-states", **about, tolerance_percent=tolerance)
    alike = [state for group in found["same_reading"] for state in group]
    assert len(alike) == len(set(alike))
    assert {"cut", "tamper"} <= set(alike)
    assert found["smallest_gap_v"] >= 0
    alone = [found["states"][state] for state in found["states"] if state not in alike]
    for one, other in pairwise(sorted(alone, key=lambda window: window["low_v"])):
        assert other["low_v"] - one["high_v"] >= found["smallest_gap_v"] - 1e-12
    wider = ask("loop-states", **about, tolerance_percent=tolerance + 5)
    assert sum(map(len, wider["same_reading"])) >= len(alike)


def test_one_state_cannot_hide_in_a_wide_tolerance() -> None:
    """With a small resistor across the contact, shut and open meet within the tolerance and are said to."""
    found = ask("loop-states", layout="double", end_ohm=4700, contact_ohm=200, tolerance_percent=10)
    assert ["shut", "open"] in found["same_reading"]


@lawful
@given(between(80, 6000), between(1, 98), st.sampled_from(("traditional", "efficient")))
def test_entry_loss(frequency: float, percent: float, building: str) -> None:
    about = {"frequency_mhz": frequency, "building": building}
    found = ask("entry-loss", **about, percent=percent)["loss_db"]
    assert ask("entry-loss", **about, percent=percent + 1)["loss_db"] > found > -3
    middle = {kind: ask("entry-loss", frequency_mhz=frequency, building=kind) for kind in ("traditional", "efficient")}
    assert middle["efficient"]["loss_db"] > middle["traditional"]["loss_db"]


MATERIALS = st.sampled_from(("concrete", "brick", "plasterboard", "wood", "glass", "ceiling-board", "chipboard"))


@lawful
@given(MATERIALS, between(0.1, 1000), between(100, 10000))
def test_a_slab_never_gains(material: str, thickness: float, frequency: float) -> None:
    about = {"material": material, "frequency_mhz": frequency}
    assert ask("slab-loss", **about, thickness_mm=thickness)["loss_db"] > 0
    assert ask("slab-loss", **about, thickness_mm=0.1)["loss_db"] < 0.2
    doubled = ask("slab-loss", **about, thickness_mm=1000)["loss_db"]
    assert doubled > ask("slab-loss", **about, thickness_mm=1)["loss_db"]


def test_a_slab_echoes() -> None:
    """The loss does not rise steadily with frequency, and foil stops everything."""
    brick = [ask("slab-loss", material="brick", thickness_mm=100, frequency_mhz=f)["loss_db"] for f in (315, 868.3)]
    assert brick[1] < brick[0]
    assert ask("slab-loss", material="metal", thickness_mm=0.1, frequency_mhz=433.92)["loss_db"] > 100


@pytest.mark.parametrize(
    ("material", "frequency", "beyond"),
    [("wood", 315, False), ("glass", 100, False), ("glass", 868.3, False), ("brick", 999.9, True),
     ("brick", 1000, False), ("concrete", 868.3, True), ("plasterboard", 433.92, True)],
)  # fmt: skip
def test_a_slab_says_where_it_is_extrapolated(material: str, frequency: float, beyond: bool) -> None:
    answer = figures()["slab-loss"].answer({"material": material, "thickness_mm": 20, "frequency_mhz": frequency})
    assert answer.outputs["extrapolated"] == beyond
    assert bool(answer.warnings) == beyond


ROD = {"shape": "cylinder", "remanence_t": 0.4, "diameter_mm": 5, "length_mm": 20}
few = settings(lawful, max_examples=20)
"""For what takes several fields each time."""
MOUNTS = st.sampled_from(("end-on", "parallel"))


def _rod(**more: Any) -> dict[str, Any]:
    return ask("reed-gap", **{**ROD, "operate_mt": 1, "release_mt": 0.6, **more})


@few
@given(MOUNTS, between(0.3, 3), between(0.5, 0.95), between(0.2, 0.7), between(0.5, 2))
def test_reed_gap(mount: str, operate: float, share: float, remanence: float, scale: float) -> None:
    about = {"mount": mount, "operate_mt": operate, "release_mt": operate * share}
    found = _rod(**about, remanence_t=remanence)
    assert found["release_mm"] >= found["operate_mm"] >= 0
    assume(found["operate_mm"] > 1)
    assert _rod(**about, remanence_t=remanence * 1.1)["operate_mm"] > found["operate_mm"]
    assert _rod(**{**about, "operate_mt": operate * 1.05}, remanence_t=remanence)["operate_mm"] < found["operate_mm"]
    larger = _rod(**about, remanence_t=remanence, diameter_mm=5 * scale, length_mm=20 * scale)
    assert same(larger["operate_mm"], scale * found["operate_mm"], 1e-6)
    assert same(larger["release_mm"], scale * found["release_mm"], 1e-6)


@few
@given(MOUNTS, between(4, 60))
def test_reed_gap_from_the_label_comes_back(mount: str, label: float) -> None:
    found = ask("reed-gap", **ROD, mount=mount, label_gap_mm=label)
    assert same(found["operate_mm"], label, 1e-6)
    assert same(found["of_label_percent"], 100, 1e-6)
    again = _rod(mount=mount, operate_mt=found["threshold_mt"], release_mt=0.02)
    assert same(again["operate_mm"], label, 1e-6)


@few
@given(between(2.5, 60))
def test_steel_shortens_the_reach_side_by_side(height: float) -> None:
    air, over = _rod(mount="parallel"), _rod(mount="parallel", steel_mm=height)
    assert over["operate_mm"] < air["operate_mm"]
    assert over["of_label_percent"] < 100
    assert _rod(mount="parallel", steel_mm=height * 1.1)["operate_mm"] > over["operate_mm"]


@few
@given(between(2.5, 15))
def test_steel_close_beneath_shortens_the_reach_end_on(height: float) -> None:
    air, over = _rod(mount="end-on"), _rod(mount="end-on", steel_mm=height)
    assert over["operate_mm"] < air["operate_mm"]


def test_steel_far_beneath_does_next_to_nothing() -> None:
    """End on it even helps a little: the image lies beside the reed, where its field runs the magnet's way."""
    for mount in ("end-on", "parallel"):
        assert same(_rod(mount=mount, steel_mm=200)["operate_mm"], _rod(mount=mount)["operate_mm"], 2e-3)
    assert 100 < _rod(mount="end-on", steel_mm=25)["of_label_percent"] < 101


def test_field_leaves_steel_at_right_angles() -> None:
    """On the plate itself magnet and image together have no field along it, as an endless soft plate demands."""
    magnets = library("magpylib").magnet
    real = magnets.Cylinder(polarization=(0, 0, 0.4), dimension=(5, 20), position=(0, 0, 0))
    image = magnets.Cylinder(polarization=(0, 0, -0.4), dimension=(5, 20), position=(0, -14, 0))
    for x, z in ((0, 0), (3, 8), (12, -5), (30, 20)):
        along = real.getB((x, -7, z)) + image.getB((x, -7, z))
        assert max(abs(along[0]), abs(along[2])) < 1e-12


@few
@given(MOUNTS, between(0, 25))
def test_offset_never_helps(mount: str, offset: float) -> None:
    straight, aside = _rod(mount=mount), _rod(mount=mount, offset_mm=offset)
    assert aside["operate_mm"] <= straight["operate_mm"] + 1e-9
    assert _rod(mount=mount, offset_mm=offset + 1)["operate_mm"] <= aside["operate_mm"] + 1e-9


def test_side_lobes_are_told_and_not_counted() -> None:
    aside = _rod(mount="parallel", offset_mm=14)
    assert aside["operate_mm"] == aside["release_mm"] == 0
    (lobe,) = aside["lobes"]
    assert lobe["from_mm"] == 0
    magnet = reed_gap.Magnet(0.4, 20, 5, 5, round=True)
    for gap in (0.1, lobe["to_mm"] / 2, lobe["to_mm"] - 0.001):
        assert (
            reed_gap.field_along(magnet, 2.5 + gap, 14.0) >= 1
        )  # against the field beside the magnet, which is negative


@few
@given(MOUNTS, between(0, 14), between(0.5, 2))
def test_reed_is_closed_where_it_is_said_to_be(mount: str, offset: float, operate: float) -> None:
    found = _rod(mount=mount, offset_mm=offset, operate_mt=operate, release_mt=operate / 2)
    magnet = reed_gap.Magnet(0.4, 20, 5, 5, round=True)
    setting = reed_gap.Setting(mount, None, offset)

    def field(gap: float) -> float:
        return abs(float(reed_gap.along_reed(magnet, setting, gap)))

    near, far = found["least_mm"], found["operate_mm"]
    if far:
        for part in (0.02, 0.3, 0.7, 0.98):
            assert field(near + part * (far - near)) >= operate
        assert field(far * 1.001) < operate
        assert same(field(far), operate, 1e-5)


@pytest.mark.parametrize(
    "wrong",
    [
        {"steel_mm": 2}, {"release_mt": 2}, {"operate_mt": None, "release_mt": 2, "label_gap_mm": 20},
        {"label_gap_mm": 20}, {"shape": "bar"}, {"operate_mt": None},
    ],
)  # fmt: skip
def test_reed_gap_refuses(wrong: dict[str, Any]) -> None:
    with pytest.raises(InputError):
        _rod(mount="parallel", **wrong)


THICK = st.lists(between(0.5, 10), max_size=5)


@lawful
@given(between(0, 30), between(0, 30), between(-10, 10), THICK)
def test_spacer(sensor: float, magnet: float, step: float, spacers: list[float]) -> None:
    found = ask("spacer", sensor_mm=sensor, magnet_mm=magnet, step_mm=step, spacers_mm=spacers)
    assert found["offset_mm"] == pytest.approx(sensor + step - magnet, abs=1e-6)
    assert abs(found["left_mm"]) <= abs(found["offset_mm"]) + 1e-9
    assert found["left_mm"] == pytest.approx(found["offset_mm"] - found["use_mm"], abs=2e-6)
    assert len(found["pieces_mm"]) <= 2
    assert found["use_mm"] * found["offset_mm"] >= 0
    turned = ask("spacer", sensor_mm=magnet, magnet_mm=sensor, step_mm=-step, spacers_mm=spacers)
    assert turned["offset_mm"] == pytest.approx(-found["offset_mm"], abs=1e-6)
    more = ask("spacer", sensor_mm=sensor, magnet_mm=magnet, step_mm=step, spacers_mm=[*spacers, 1.5])
    assert abs(more["left_mm"]) <= abs(found["left_mm"]) + 1e-9


@lawful
@given(between(0.11, 9e6), st.sampled_from(("E12", "E24")))
def test_resistor(ohm: float, series: str) -> None:
    found = ask("resistor", ohm=ohm, series=series)
    widest = {"E12": 12 / 10, "E24": 13 / 12}[series] * 1.04  # widest step of the series, rounded values and all
    assert max(found["nearest_ohm"] / ohm, ohm / found["nearest_ohm"]) <= sqrt(widest * 1.02)
    assert ask("resistor", ohm=found["nearest_ohm"], series=series) == found
    first, second, tens, _ = found["bands"]
    power = {colour: power for power, colour in TENS.items()}[tens]
    decoded = float(f"{DIGITS.index(first)}{DIGITS.index(second)}e{power}")
    assert decoded == found["nearest_ohm"]
