"""Laws that each closed formula keeps: what rises with what, units that cancel, and inverses that find the input."""

from __future__ import annotations

from math import cos, exp, isclose, log10, radians, sqrt
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from latchside.figures.inputs import InputError
from tests.published.check import ask

lawful = settings(derandomize=True, max_examples=60, deadline=None)
"""The same examples on every run."""


def between(low: float, high: float) -> st.SearchStrategy[float]:
    """Any float of a range, ends included."""
    return st.floats(low, high, allow_nan=False, allow_subnormal=False)


def same(one: float, other: float, share: float = 1e-9) -> bool:
    """Alike but for rounding."""
    return isclose(one, other, rel_tol=share, abs_tol=1e-12)


@lawful
@given(between(0.1, 900), st.integers(10, 29), between(-40, 80))
def test_cable(length: float, awg: int, warm: float) -> None:
    found = ask("cable-resistance", length_m=length, awg=awg, temperature_c=warm)
    longer = ask("cable-resistance", length_m=2 * length, awg=awg, temperature_c=warm)
    assert same(longer["loop_ohm"], 2 * found["loop_ohm"])
    assert same(longer["ohm_per_km"], found["ohm_per_km"])
    assert ask("cable-resistance", length_m=length, awg=awg + 1, temperature_c=warm)["loop_ohm"] > found["loop_ohm"]
    assert ask("cable-resistance", length_m=length, awg=awg, temperature_c=warm + 5)["loop_ohm"] > found["loop_ohm"]
    for other in ("tinned", "copper-clad-aluminium"):
        worse = ask("cable-resistance", length_m=length, awg=awg, temperature_c=warm, conductor=other)
        assert worse["loop_ohm"] > found["loop_ohm"]


@lawful
@given(st.integers(10, 30))
def test_cable_by_area_is_cable_by_gauge(awg: int) -> None:
    by_gauge = ask("cable-resistance", length_m=10, awg=awg)
    area = 3.141592653589793 * by_gauge["diameter_mm"] ** 2 / 4
    assume(0.05 <= area <= 10)
    by_area = ask("cable-resistance", length_m=10, area_mm2=area)
    assert same(by_area["loop_ohm"], by_gauge["loop_ohm"])
    assert same(by_area["diameter_mm"], by_gauge["diameter_mm"])


@pytest.mark.parametrize(
    ("figure", "typed", "plain"),
    [
        ("cable-resistance", {"length": "50ft", "awg": 22}, {"length_m": 15.24, "awg": 22}),
        ("cable-resistance", {"length": "50 ft", "area": "0,22"}, {"length_m": 15.24, "area_mm2": 0.22}),
        ("supervised-loop", {"supply": "5V", "pull_up": "4.7k", "loop": "2.2kohm"},
         {"supply_v": 5, "pull_up_ohm": 4700, "loop_ohm": 2200}),
        ("free-space-loss", {"frequency": "0.8683GHz", "distance": "100ft"},
         {"frequency_mhz": 868.3, "distance_m": 30.48}),
        ("slab-loss", {"material": "wood", "thickness": "1in"}, {"material": "wood", "thickness_mm": 25.4}),
        ("reed-gap", {"operate": "10G", "length": "2cm"}, {"operate_mt": 1, "length_mm": 20}),
        ("standby-battery", {"standby": "120mA", "alarm": "0.5A", "standby_h": 12, "alarm_min": "0.25h"},
         {"standby_a": 0.12, "alarm_a": 0.5, "standby_h": 12, "alarm_min": 15}),
        ("ladder", {"working_length": "10ft"}, {"working_length_m": 3.048}),
    ],
)  # fmt: skip
def test_units_cancel(figure: str, typed: dict[str, Any], plain: dict[str, Any]) -> None:
    by_unit, by_name = ask(figure, **typed), ask(figure, **plain)
    for name, value in by_name.items():
        assert same(by_unit[name], value) if isinstance(value, float) else by_unit[name] == value, name


@lawful
@given(between(1, 30), between(100, 1e5), between(1, 1e5))
def test_supervised_loop(supply: float, pull_up: float, loop: float) -> None:
    found = ask("supervised-loop", supply_v=supply, pull_up_ohm=pull_up, loop_ohm=loop)["loop_v"]
    assert 0 < found < supply
    assert ask("supervised-loop", supply_v=supply, pull_up_ohm=pull_up, loop_ohm=loop * 1.1)["loop_v"] > found
    assert same(pull_up * found / (supply - found), loop, 1e-6)
    assert same(ask("supervised-loop", supply_v=supply, pull_up_ohm=pull_up, loop_ohm=pull_up)["loop_v"], supply / 2)


@lawful
@given(between(5, 30), between(0.001, 0.5), between(1, 50), st.integers(14, 24), between(1, 20))
def test_voltage_drop(supply: float, current: float, length: float, awg: int, limit: float) -> None:
    about = {"supply_v": supply, "current_a": current, "awg": awg, "limit_percent": limit}
    try:
        found = ask("voltage-drop", length_m=length, **about)
    except InputError:
        return
    assert same(found["drop_v"] + found["load_v"], supply)
    assert same(found["drop_percent"], 100 * found["drop_v"] / supply)
    assert same(found["drop_v"], current * ask("cable-resistance", length_m=length, awg=awg)["loop_ohm"])
    assume(0.1 <= found["longest_m"] <= 2000)
    assert same(ask("voltage-drop", length_m=found["longest_m"], **about)["drop_percent"], limit)


@lawful
@given(between(50, 5000), between(1, 500), between(0.01, 5))
def test_cell_life(capacity: float, current: float, loss: float) -> None:
    about = {"capacity_mah": capacity, "average_ua": current}
    found = ask("cell-life", **about, loss_percent_per_year=loss)
    assert 0 < found["years"] < found["years_without_loss"]
    assert ask("cell-life", **about, loss_percent_per_year=loss * 1.5)["years"] < found["years"]
    stronger = ask("cell-life", capacity_mah=capacity, average_ua=current * 1.2, loss_percent_per_year=loss)
    assert stronger["years"] < found["years"]
    share = loss / 100
    drawn = capacity / found["years_without_loss"]
    assert same(drawn * (exp(share * found["years"]) - 1) / share, capacity, 1e-6)


@lawful
@given(between(0, 100), between(1, 50), between(1, 500), between(1, 200), between(5, 300), between(0, 100))
def test_cell_current(standby: float, sending: float, report: float, check: float, every: float, events: float) -> None:
    about = {"standby_ua": standby, "report_ma": sending, "report_ms": report, "check_in_ms": check}
    found = ask("cell-current", **about, check_in_min=every, events_per_day=events)["average_ua"]
    assert found > standby
    assert ask("cell-current", **about, check_in_min=every * 2, events_per_day=events)["average_ua"] < found
    halves = ask("cell-current", **about, check_in_min=every, events_per_day=2 * events, reports_per_event=1)
    assert same(halves["average_ua"], found)
    life = ask("cell-life", capacity_mah=1500, average_ua=max(found, 0.1))
    assert life["years"] < life["years_without_loss"]


@lawful
@given(between(1, 240), st.integers(1, 20), between(0.01, 0.9), st.integers(1, 40))
def test_missed_check_in(every: float, tries: int, lost: float, devices: int) -> None:
    window = every * (tries + 0.5) / 60
    found = ask("missed-check-in", check_in_min=every, window_h=window, loss_probability=lost, devices=devices)
    assert found["tries_per_window"] == tries
    assert same(found["chance_per_window"] ** (1 / tries), lost, 1e-6)
    assert same(found["worst_delay_h"], window)
    one = ask("missed-check-in", check_in_min=every, window_h=window, loss_probability=lost)
    assert same(found["false_troubles_per_year"], devices * one["false_troubles_per_year"])
    more = ask("missed-check-in", check_in_min=every, window_h=window + every / 60, loss_probability=lost)
    assert more["chance_per_window"] < one["chance_per_window"]


@lawful
@given(between(174, 1000))
def test_field_limit(frequency: float) -> None:
    control = ask("field-limit", frequency_mhz=frequency, use="control")
    periodic = ask("field-limit", frequency_mhz=frequency, use="periodic")
    assert same(control["uv_per_m"], 2.5 * periodic["uv_per_m"])
    power = 10 ** (control["eirp_dbm"] / 10) / 1000
    assert same(sqrt(30 * power) / 3 * 1e6, control["uv_per_m"])
    assert 3750 <= control["uv_per_m"] <= 12500


@lawful
@given(between(1, 500), between(1, 600))
def test_duty(message: float, count: float) -> None:
    found = ask("duty", message_ms=message, messages_per_hour=count, limit_percent=1)
    again = ask("duty", message_ms=2 * message, messages_per_hour=count / 2, limit_percent=1)
    assert same(again["percent"], found["percent"])
    assert found["within"] == (found["percent"] <= 1 + 1e-9) or same(found["percent"], 1)
    assert same(found["seconds_per_hour"] / 36, found["percent"])


@lawful
@given(between(300, 1000), between(2, 400))
def test_free_space(frequency: float, distance: float) -> None:
    found = ask("free-space-loss", frequency_mhz=frequency, distance_m=distance)["loss_db"]
    assert same(
        ask("free-space-loss", frequency_mhz=frequency, distance_m=2 * distance)["loss_db"] - found, 20 * log10(2)
    )
    wavelength = 299.792458 / frequency
    assert same(wavelength / (4 * 3.141592653589793) * 10 ** (found / 20), distance)


@lawful
@given(between(300, 1000), between(1, 200), between(20, 40), st.integers(0, 6))
def test_indoor(frequency: float, distance: float, slope: float, floors: int) -> None:
    about = {"frequency_mhz": frequency, "n": slope}
    found = ask("indoor-loss", **about, distance_m=distance, floors=floors)["loss_db"]
    assert same(
        ask("indoor-loss", **about, distance_m=10 * distance / 2, floors=floors)["loss_db"] - found, slope * log10(5)
    )
    assert ask("indoor-loss", **about, distance_m=distance, floors=floors + 1)["loss_db"] > found


@lawful
@given(between(300, 1000), between(5, 200), st.lists(between(0, 20), max_size=5), between(0, 20), between(0, 15))
def test_radio_margin(frequency: float, distance: float, walls: list[float], mounting: float, spread: float) -> None:
    about: dict[str, Any] = {
        "eirp_dbm": -14, "frequency_mhz": frequency, "distance_m": distance, "obstacles": walls,
        "mounting_loss_db": mounting, "spread_db": spread, "sensitivity_dbm": -105,
    }  # fmt: skip
    found = ask("radio-margin", **about)
    free = ask("free-space-loss", frequency_mhz=frequency, distance_m=distance)["loss_db"]
    assert same(found["loss_db"], free + sum(walls) + mounting)
    assert same(found["margin_db"], -14 - found["loss_db"] + 105)
    assert same(found["high_margin_db"] - found["low_margin_db"], 2 * spread)
    for building in ("traditional", "efficient"):
        crossed = ask("radio-margin", **about, crosses_outer_wall=building)
        wall = ask("entry-loss", frequency_mhz=frequency, building=building)["loss_db"]
        assert same(crossed["loss_db"] - found["loss_db"], wall)


@lawful
@given(between(0.1, 1.4), between(2, 20), between(4, 50), between(1, 100), between(0.5, 1.9))
def test_magnet_field(remanence: float, diameter: float, length: float, distance: float, scale: float) -> None:
    rod = {"shape": "cylinder", "diameter_mm": diameter, "length_mm": length}
    found = ask("magnet-field", **rod, remanence_t=remanence, distance_mm=distance)["field_mt"]
    assert ask("magnet-field", **rod, remanence_t=remanence, distance_mm=distance * 1.05)["field_mt"] < found
    assert same(ask("magnet-field", **rod, remanence_t=remanence / 2, distance_mm=distance)["field_mt"], found / 2)
    larger = ask(
        "magnet-field", shape="cylinder", remanence_t=remanence, diameter_mm=diameter * scale,
        length_mm=length * scale, distance_mm=distance * scale,
    )  # fmt: skip
    assert same(larger["field_mt"], found, 1e-6)
    bar = {"shape": "bar", "remanence_t": remanence, "length_mm": length, "distance_mm": distance}
    inner = ask("magnet-field", **bar, width_mm=diameter / sqrt(2), height_mm=diameter / sqrt(2))["field_mt"]
    outer = ask("magnet-field", **bar, width_mm=diameter, height_mm=diameter)["field_mt"]
    if distance > diameter:  # nearer, the wider face spreads its field
        assert inner < found < outer


@lawful
@given(between(0.01, 2), between(0, 5), between(1, 72), between(0, 60), between(1, 2))
def test_standby_battery(standby: float, alarm: float, hours: float, minutes: float, margin: float) -> None:
    about = {"standby_h": hours, "alarm_min": minutes, "margin": margin}
    found = ask("standby-battery", standby_a=standby, alarm_a=alarm, **about)
    assert same(ask("standby-battery", standby_a=2 * standby, alarm_a=2 * alarm, **about)["ah"], 2 * found["ah"])
    assert same((found["ah"] - alarm * minutes / 60) / hours, standby, 1e-6)
    assert same(found["with_margin_ah"], margin * found["ah"])
    if found["next_size_ah"] is not None:
        assert found["next_size_ah"] >= found["with_margin_ah"] * (1 - 1e-9)


@lawful
@given(between(1.2, 12), st.booleans())
def test_ladder(length: float, landing: bool) -> None:
    found = ask("ladder", working_length_m=length, landing=landing)
    assert same(found["setback_m"] ** 2 + found["height_m"] ** 2, length**2)
    assert same(length * cos(radians(found["angle_deg"])), found["setback_m"])
    assert 74 <= found["angle_deg"] <= 77
    back = ask("ladder", support_height_m=found["height_m"], landing=landing)
    assert all(same(back[name], value) for name, value in found.items())
