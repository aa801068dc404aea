"""Expressions are read through an allow-list: what is allowed keeps its order, and everything else is refused."""

from __future__ import annotations

import contextlib
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.emit import compiled
from latchside.figures.expression import (
    DEEPEST,
    LARGEST,
    LONGEST,
    MOST_NODES,
    Expression,
    ExpressionError,
    Sort,
    read_expression,
    walk,
)

from ..each import each

NAMES: dict[str, Sort] = {"a": "number", "b": "number", "wet": "condition", "sizes": "list"}
VALUES = {"a": 3.0, "b": 0.5, "wet": True, "sizes": [1.0, 2.5, 7.0]}


def read(text: str) -> Expression:
    return read_expression(text, NAMES)


@each(
    ("text", "expected"),
    [
        ("2", 2.0),
        (".5", 0.5),
        ("1e-6 * a", 3e-6),
        ("a - b - 1", 1.5),
        ("a / b / 2", 3.0),
        ("a / (b / 2)", 12.0),
        ("-a ** 2", -9.0),
        ("2 ** -1", 0.5),
        ("92 ** ((36 - a) / 39)", 92 ** (33 / 39)),
        ("-7 % a", 2.0),
        ("floor(a / b)", 6.0),
        ("ceil(b)", 1.0),
        ("min(a, b, 2) + max(a, b)", 3.5),
        ("sqrt(a * a)", 3.0),
        ("log10(1000) + log(exp(2))", 5.0),
        ("acos(0.25) * 180 / pi", 75.52248781407008),
        ("atan(1) * 4", math.pi),
        ("abs(-a)", 3.0),
        ("sum(sizes)", 10.5),
        ("smallest_at_least(sizes, a)", 7.0),
        ("smallest_at_least(sizes, 2.5)", 2.5),
        ("piecewise(1, a < 2, 2, a < 4, 3)", 2.0),
        ("piecewise(1, wet, 2)", 1.0),
        ("piecewise(1 / 0, a > 5, 2)", 2.0),
        ("a < b", False),
        ("a != b", True),
        ("piecewise(a > 2, wet, wet)", True),
    ],
)
def test_what_is_allowed(text: str, expected: float) -> None:
    assert compiled(read(text))(VALUES) == pytest.approx(expected, rel=1e-15)


HOSTILE = [
    "", " ", "()", "[1]", "{1}", "'a'", '"a"', "f'{a}'", "a b", "a;b", "a\nb(", "a\\", "a # b", "a := 1", "(a := 1)",
    "a.real", "().__class__", "a.__class__.__base__", "__import__('os')", "__import__(a)", "eval(a)", "open(a)",
    "print(a)", "lambda: a", "lambda x: x", "a if b else 1", "a and b", "not a", "a or b", "~a", "a // b", "a @ b",
    "a << 2", "a & b", "a | b", "a ^ b", "a is b", "a in b", "1 < a < 3", "a < b < 2", "a[0]", "*a", "sqrt(*sizes)",
    "sqrt(x=a)", "sqrt(**a)", "sqrt()", "sqrt(a, b)", "min(a)", "piecewise(1)", "piecewise(1, wet)", "piecewise()",
    "piecewise(1, 2, 3)", "piecewise(1, wet, wet)", "piecewise(sizes, wet, sizes)", "sizes", "sizes + 1", "sum(a)",
    "sum(sizes, 1)", "smallest_at_least(sizes)", "sqrt", "sqrt + 1", "pi()", "a()", "a(b)", "sqrt(a)(b)",
    "c", "A", "_", "__a", "1_0", "0x10", "0b1", "0o7", "1j", "1e999", "-1e999", "1e13", "1e-13", "1.", "True",
    "None", "...", "inf", "nan", "9 ** 9 ** 9", "a ** a ** a", "(a ** 2) ** 2", "((9 ** 16) ** 16) ** 16", "2 ** 17",
    "2 ** 1e9", "a ** 17", "1001 ** a", "1001 ** 2", "(1 + 1) ** 2", "wet + 1", "wet * a", "wet == wet", "-wet",
    "(a < b) + 1", "(a < b) < 2", "sqrt(wet)", "а", "a + ５", "a\u2212b", "a\u00a0+ b", "yield a", "await a", "del a",
    "a = b", "a += 1", "import os", "1 if", "((", "0777", "00", "01.5", "1and 2", "a\x00b", "a\tb", "a\r+b", "1e",
    "a" * 401, "(" * 199 + "a", "-" * 60 + "a", "+".join(["a"] * 199), "sqrt(" * 26 + "a" + ")" * 26,
]  # fmt: skip


@each("text", HOSTILE)
def test_what_is_refused(text: str) -> None:
    with pytest.raises(ExpressionError) as refused:
        read(text)
    assert refused.value.found
    assert refused.value.expected


def test_limits_are_limits() -> None:
    assert read("a" + " " * (LONGEST - 1)).names == {"a"}
    assert len(list(walk(read("+".join(["a"] * (DEEPEST))).node))) == 2 * DEEPEST - 1
    wide = f"max({', '.join(['min(a, b, a, b, a, b, a, b)'] * 8)})"
    assert len(list(walk(read(wide).node))) < MOST_NODES
    assert read(f"{LARGEST:.0f}").sort == "number"


def test_names_are_those_used() -> None:
    assert read("piecewise(a, wet, sum(sizes)) * pi").names == {"a", "wet", "sizes"}


def test_refusal_says_what_was_found() -> None:
    with pytest.raises(ExpressionError, match='the name "lenght"'):
        read("2 * lenght")
    with pytest.raises(ExpressionError, match=r"the sign '\['"):
        read("a[0]")


@given(st.text(st.characters(max_codepoint=0x2FF), max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    with contextlib.suppress(ExpressionError):
        assert read(text).sort in ("number", "condition")


WORDS = "a b wet sizes 1 2.5 1e9 pi ( ) , + - * / ** % < >= == sqrt( min( piecewise( sum( floor( ."
_PIECES = st.lists(st.sampled_from(WORDS.split()), max_size=40)


@given(_PIECES)
def test_any_pieces_are_read_and_worked_out_or_refused(pieces: list[str]) -> None:
    try:
        expression = read(" ".join(pieces))
    except ExpressionError:
        return
    assert isinstance(compiled(expression)(VALUES), float | bool)
