"""A number in words, and in the other system of units."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.units import figure, other_system, readable, rounded_other, symbol, with_unit
from latchside.figures.words import accepted, in_words, limits, shown_limits
from latchside.library.quantity import Quantity, quantity

from ..each import each
from .support import schemas

UNITS = list(schemas().words("unit"))


def words(**data: Any) -> str:
    """The quantity in words, with plain spaces."""
    return in_words(quantity({"status": "typical", **data})).replace("\u00a0", " ")


def number(text: str) -> float:
    """The number that a figure says, very small and very large ones with their power of ten."""
    plain = text.replace(",", "").replace("\u2212", "-").replace(" × 10", "e")
    return float(plain.translate(str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")))


# -- words ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("data", "said"),
    [
        ({"value": 21, "unit": "mm", "tolerance": {"percent": 10}}, "21 mm (0.83 in) ±10 %"),
        ({"value": 5, "unit": "mm", "tolerance": {"plus_minus": 1}}, "5 mm (0.2 in) ±1 mm"),
        ({"min": 3, "max": 10, "unit": "mm"}, "3 to 10 mm (0.12 to 0.39 in)"),
        ({"max": 5, "unit": "m"}, "at most 5 m (16.4 ft)"),
        ({"min": 10, "unit": "dB"}, "at least 10 dB"),
        ({"one_of": [2200], "unit": "ohm"}, "2.2 kΩ"),
        # a tolerance of six in a hundred leaves the third digit open, one of half of one the fourth
        ({"value": 2208, "unit": "ohm", "tolerance": {"percent": 6}}, "2.21 kΩ ±6 %"),
        ({"value": 2208, "unit": "ohm", "tolerance": {"percent": 0.5}}, "2.208 kΩ ±0.5 %"),
        ({"value": 2208, "unit": "ohm"}, "2.208 kΩ"),
        ({"one_of": [2200, 4700], "unit": "ohm", "tolerance": {"percent": 5}}, "2.2 or 4.7 kΩ ±5 %"),
        ({"one_of": [315, 868, 915], "unit": "MHz"}, "315, 868 or 915 MHz"),
        ({"min": -10, "max": 50, "unit": "degC"}, "−10 to +50 °C (14 to 122 °F)"),
        ({"value": 5, "unit": "count"}, "5"),
        ({"value": 45, "unit": "deg"}, "45°"),
        ({"value": 50, "unit": "%"}, "50 %"),
        ({"value": 0.22, "unit": "mm2"}, "0.22 mm²"),
        ({"value": 1500, "unit": "ms"}, "1.5 s"),
        ({"value": 0, "unit": "V"}, "0 V"),
        ({"min": 1, "unit": "Mohm"}, "at least 1 MΩ"),
    ],
)
def test_in_words(data: Mapping[str, Any], said: str) -> None:
    assert words(**data) == said


@pytest.mark.parametrize("unit", ["year", "month", "d", "rung"])
def test_one_is_not_many(unit: str) -> None:
    """Units written as words have a singular."""
    assert words(value=2, unit=unit).endswith("s")
    assert not words(value=1, unit=unit).endswith("s")


def test_figure_and_unit_stay_on_one_line() -> None:
    assert in_words(Quantity(unit="V", status="typical", value=3)) == "3\u00a0V"


def test_both_limits_in_one_unit() -> None:
    """A range is said in one unit, that of its lower end, and not as 900 Ω to 1.1 kΩ."""
    assert words(min=900, max=1100, unit="ohm") == "900 to 1,100 Ω"


def test_accepted_says_the_range_of_the_tolerance() -> None:
    expect = quantity({"value": 2200, "unit": "ohm", "tolerance": {"percent": 5}, "status": "typical"})
    assert accepted(expect).replace("\u00a0", " ") == "2.2 kΩ ±5 %: 2.09 to 2.31 kΩ"
    loop = quantity({"value": 2208, "unit": "ohm", "tolerance": {"percent": 6}, "status": "typical"})
    assert accepted(loop).replace("\u00a0", " ") == "2.21 kΩ ±6 %: 2.08 to 2.34 kΩ"
    assert shown_limits(loop) == (2080, 2340), "a reading is judged by what is shown"
    assert limits(loop) == pytest.approx((2075.52, 2340.48)), "and a working goes by the label"
    assert limits(expect) == pytest.approx((2090, 2310))


def test_limits() -> None:
    plain = Quantity(unit="V", status="typical", value=3)
    assert limits(plain) == (3, 3)
    assert accepted(plain) == in_words(plain)
    assert limits(Quantity(unit="V", status="typical", value=3, plus_minus=0.5)) == (2.5, 3.5)
    assert limits(Quantity(unit="degC", status="typical", value=-20, percent=10)) == (-22, -18)
    assert limits(Quantity(unit="V", status="typical", low=1)) == (1, None)
    assert limits(Quantity(unit="V", status="typical", high=2)) == (None, 2)


def test_quantity_of_a_mapping() -> None:
    stated = {
        "label": "l", "value": 5, "unit": "mm", "tolerance": {"plus_minus": 1}, "condition": "c",
        "status": "handbook", "source": "s",
    }  # fmt: skip
    assert quantity(stated) == Quantity(
        unit="mm", status="handbook", value=5, plus_minus=1, condition="c", source="s", label="l"
    )


# -- figures -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (0, "0"),
        (5, "5"),
        (5.0, "5"),
        (0.5, "0.5"),
        (-2.5, "\u22122.5"),
        (1234, "1,234"),
        (0.000125, "0.000125"),
        (10000, "10,000"),
    ],
)
def test_figure(value: float, said: str) -> None:
    assert figure(value) == said


@pytest.mark.parametrize("value", [433.92, 868.35, 1013.25, 12345.0])
def test_a_stated_figure_is_not_rounded_away(value: float) -> None:
    """433.92 MHz is the middle of a band that 433.9 MHz is not; what a record states is shown as it states it."""
    assert number(words(value=value, unit="MHz").removesuffix(" MHz")) == value


def test_no_minus_nought() -> None:
    assert figure(-0.0) == "0"
    assert rounded_other(-0.3, "degC") == "0"


@given(st.floats(-1e6, 1e6))
def test_figure_is_near(value: float) -> None:
    assert number(figure(value)) == pytest.approx(value, rel=5e-4, abs=1e-9)


# -- units ---------------------------------------------------------------------------------------------------


@each("unit", UNITS)
def test_every_unit_is_shown(unit: str) -> None:
    said = words(value=5, unit=unit)
    assert said.startswith("5")
    assert symbol(unit) in said
    assert "_" not in symbol(unit)


@each("unit", UNITS)
def test_every_unit_has_another_system_or_none(unit: str) -> None:
    converted = other_system(5, unit)
    if converted:
        assert rounded_other(*converted)
        assert with_unit("5", converted[1]).endswith(symbol(converted[1]))


# One of a unit in the other system. Sources: NIST SP 811 (2008), B.8: inch 25.4 mm and foot 0.3048 m, exact;
# pound 0.453 592 37 kg, exact; pound-force 4.448 222 N; and B.9, degree Fahrenheit to degree Celsius (t − 32)/1.8.
@pytest.mark.parametrize(
    ("value", "unit", "other", "there"),
    [
        (25.4, "mm", 1, "in"), (2.54, "cm", 1, "in"), (0.3048, "m", 1, "ft"), (1, "in", 25.4, "mm"),
        (1, "ft", 0.3048, "m"), (0.45359237, "kg", 1, "lb"), (4.448222, "N", 1, "lbf"),
        (0, "degC", 32, "degF"), (100, "degC", 212, "degF"), (-40, "degC", -40, "degF"),
        (32, "degF", 0, "degC"), (50, "degF", 10, "degC"),
    ],
)  # fmt: skip
def test_conversion(value: float, unit: str, other: float, there: str) -> None:
    converted = other_system(value, unit)
    assert converted
    assert converted[1] == there
    assert converted[0] == pytest.approx(other, rel=1e-6, abs=1e-9)


# Metric prefixes; source: BIPM, SI brochure, 9th edition, table 7.
@pytest.mark.parametrize(
    ("value", "unit", "shown", "larger"),
    [
        (2200, "ohm", 2.2, "kohm"), (999, "ohm", 999, "ohm"), (1e6, "ohm", 1, "Mohm"), (4700, "kohm", 4.7, "Mohm"),
        (1500, "uA", 1.5, "mA"), (2e6, "uA", 2, "A"), (250, "ms", 250, "ms"), (1000, "ms", 1, "s"),
        (-2200, "ohm", -2.2, "kohm"), (5000, "mm", 5000, "mm"),
    ],
)  # fmt: skip
def test_readable(value: float, unit: str, shown: float, larger: str) -> None:
    values, in_unit = readable((value,), unit)
    assert in_unit == larger
    assert values == pytest.approx((shown,))


@each("unit", ["mm", "cm", "m", "in", "ft", "kg"])
@each("value", [0.1, 0.25, 0.5, 1, 3, 12, 70, 250])
def test_the_other_figure_is_near_the_first(value: float, unit: str) -> None:
    """Rounded for reading, and still within a fifth, however small: nothing becomes nought."""
    converted = other_system(value, unit)
    assert converted
    assert number(rounded_other(*converted)) == pytest.approx(converted[0], rel=0.2)


def test_words_for_every_value_a_record_may_have() -> None:
    """The forms the schema allows beside each other: value, limits, choice."""
    forms = schemas().documents["common.schema.json"]["$defs"]["quantity"]["anyOf"]
    assert {key for form in forms for key in form["required"]} == {"value", "min", "max", "one_of"}
