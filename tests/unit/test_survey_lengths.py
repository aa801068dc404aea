"""Lengths as people write them on a survey, and what is refused with a word that says why."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.lengths import LengthError, Unit, read_length
from latchside.figures.typed import TypedError, read_number

from ..each import each


@each(
    ("text", "unit", "read"),
    [
        ("4 mm", "mm", 4), ("4mm", "mm", 4), ("0.4 cm", "mm", 4), ("3/16 in", "mm", 4.7625), ('3/16"', "mm", 4.7625),
        ('1 3/16"', "mm", 30.1625), ("1-3/16 in", "mm", 30.1625), ("1½ in", "mm", 38.1), ("½″", "mm", 12.7),
        ("2 in.", "mm", 50.8), ("12 ft 6 in", "m", 3.81), ("12'6\"", "m", 3.81), ("12′ 6 1/2″", "m", 3.8227),
        ("5'", "m", 1.524), ("5''", "mm", 127), ("2,5 m", "m", 2.5), ("2.5 Metres", "m", 2.5), ("250 cm", "m", 2.5),
        ("0 mm", "mm", 0), ("-0 mm", "mm", 0), (".5 m", "m", 0.5), ("5. m", "m", 5), ("+3 mm", "mm", 3),
        ("0.01 km", "m", 10), ("12 mil", "mm", 0.3048), ("40 thou", "mm", 1.016), ("3 yards", "m", 2.7432),
        ("0,125 in", "mm", 3.175), ("10 feet", "m", 3.048), ("4\u00a0mm", "mm", 4), ("1,5", "m", 1.5),
    ],
)  # fmt: skip
def test_reads(text: str, unit: Unit, read: float) -> None:
    assert read_length(text, unit) == read


@pytest.mark.parametrize(
    ("value", "unit", "imperial", "read"),
    [
        (7, "mm", False, 7), (7, "m", False, 7), (7, "mm", True, 177.8), (7, "m", True, 2.1336),
        ("7", "m", True, 2.1336), (0.1875, "mm", True, 4.7625), ("3/16", "mm", True, 4.7625),
        ("7 mm", "mm", True, 7), ("7 ft", "m", False, 2.1336),
    ],
)  # fmt: skip
def test_a_bare_number_is_in_the_units_of_the_survey(value: object, unit: Unit, imperial: bool, read: float) -> None:
    assert read_length(value, unit, imperial=imperial) == read


def test_the_step_may_be_negative_and_nothing_else() -> None:
    assert read_length("-2 mm", "mm", signed=True) == -2
    assert read_length("\u22122 mm", "mm", signed=True) == -2
    assert read_length("-1 ft 6 in", "m", signed=True) == -0.4572
    with pytest.raises(LengthError, match="below zero"):
        read_length("-2 mm", "mm")
    with pytest.raises(LengthError, match="below zero"):
        read_length(-2, "mm")


@each(
    ("value", "words"),
    [
        ("1,250 mm", "could be 1250 or 1.250"), ("5' 6", "6 has no unit"), ("3/16", "3/16 has no unit"),
        ("\u00bd", "has no unit"), ("1 3", "1 has no unit"),
        ("12 furlong", '"furlong" is no unit'), ("4 kg", '"kg" is no unit'), ("12 V", '"V" is no unit'),
        ("4 mm 3 kg", '"kg" is no unit'), ("3/0 in", "no fraction"), ("1 5/4 in", "no fraction"),
        ("1.5 ft 3 in", "no whole number"), ("3 in 2 ft", "more than one"), ("1 m 2 cm", "more than one"),
        ("about 4 mm", "no length"), ("", "nothing"), ("  ", "nothing"), ("٣ mm", "no length"), ("9" * 50, "too long"),
        ("1e3 mm", "no unit"), (True, "no length"), (None, "no length"), (float("nan"), "no length"),
        (float("inf"), "no length"), (1e300, "no length"), ("--4 mm", "no length"), ("-", "no length"),
    ],
)  # fmt: skip
def test_refuses(value: object, words: str) -> None:
    with pytest.raises(LengthError, match=words):
        read_length(value, "mm", signed=True)


TEXTS = ("4", "0,4 cm", "3/16 in", '1 3/16"', "1-3/16 in", "12 ft 6 in", "5'", "2,5 m", "1 5/4 in", "1,250 mm", "5' 6",
         "12 furlong", "4 kg", "300 um", "0.01 km", "12 mil", "40 thou", "3 yd",
         "1.5 ft 3 in", "3 in 2 ft", "½ in", "1/2 ft", "3 1/2 in", "-2 mm")  # fmt: skip


@each("text", TEXTS)
@each("unit", ["mm", "m"])
def test_a_figure_takes_what_a_survey_takes_and_nothing_else(text: str, unit: Unit) -> None:
    try:
        read = read_length(text, unit, signed=True)
    except LengthError:
        with pytest.raises(TypedError):
            read_number(text, unit)
    else:
        assert read_number(text, unit) == read


@given(st.integers(0, 2000), st.integers(0, 11), st.integers(0, 15))
def test_feet_and_inches_add_up(feet: int, inches: int, sixteenths: int) -> None:
    text = f"{feet} ft {inches} {sixteenths}/16 in"
    assert read_length(text, "m") == pytest.approx((feet * 12 + inches + sixteenths / 16) * 0.0254, abs=1e-9)


@given(st.text(max_size=45))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        read = read_length(text, "mm", signed=True)
    except LengthError:
        return
    assert abs(read) < 1e11


@given(st.floats(0, 1000).map(lambda value: float(f"{value:.6g}")).filter(lambda value: value == 0 or value > 1e-3))
def test_a_typed_decimal_is_the_number(value: float) -> None:
    assert read_length(f"{value} mm", "mm") == value == read_length(value, "mm")
