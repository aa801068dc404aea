"""The expressions of the records, worked out by SymPy to fifty digits, give what the figures give."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping
from math import exp, log
from typing import Any

import pytest

from latchside.figures.catalogue import Answer, Figure
from latchside.figures.inputs import Input, InputError
from latchside.figures.program import constants
from tests.published.check import figures
from tests.published.outside import library

POINTS = 40
DIGITS = 50
WRITTEN = [figure.id for figure in figures().values() if "model" not in figure.data]


@pytest.mark.parametrize("id_", WRITTEN)
def test_expressions_to_fifty_digits(id_: str) -> None:
    figure = figures()[id_]
    for answer in _answers(figure):
        wanted = _worked(figure, answer.inputs)
        for name, ours in answer.outputs.items():
            other = wanted[name]
            if ours is None:
                assert not other.is_finite, name
            elif isinstance(ours, bool):
                assert ours == bool(other), name
            else:
                assert abs(ours - float(other)) <= 1e-12 * max(1, abs(float(other))), (name, answer.inputs)


def _answers(figure: Figure) -> Iterator[Answer]:
    """Answers at random inputs within their ranges; what the figure refuses is passed over."""
    chance, found = random.Random(figure.id), 0
    for _ in range(20 * POINTS):
        try:
            yield figure.answer(_inputs(figure, chance))
        except InputError:
            continue
        found += 1
        if found == POINTS:
            return
    raise AssertionError(f"{figure.id} refuses too much: {found} answers")


def _inputs(figure: Figure, chance: random.Random) -> dict[str, Any]:
    """Random inputs: one of each group that stands for one thing, some defaults left out."""
    groups: dict[str, list[Input]] = {}
    for one in figure.inputs:
        groups.setdefault(one.instead_of or one.name, []).append(one)
    chosen: dict[str, Any] = {}
    for group in groups.values():
        one = chance.choice(group)
        asked = all(chosen.get(name) == word for name, word in one.when.items())
        if asked and (one.choices or one.default is None or chance.random() < 0.7):
            chosen[one.name] = _value(one, chance)
    return chosen


def _value(one: Input, chance: random.Random) -> Any:
    if one.choices:
        return chance.choice(list(one.choices))
    if one.yes_no:
        return chance.random() < 0.5
    if one.many:
        return [round(chance.uniform(0, 20), 2) for _ in range(chance.randrange(4))]
    low, high = one.low or 0.0, one.high if one.high is not None else 1e6
    wide = low > 0 and high / low > 100
    number = exp(chance.uniform(log(low), log(high))) if wide else chance.uniform(low, high)
    return min(max(round(number), low), high) if one.integer else number


def _worked(figure: Figure, given: Mapping[str, Any]) -> dict[str, Any]:
    """Every output, by SymPy alone, from the text of the record."""
    sympy = library("sympy")
    parser = library("sympy.parsing.sympy_parser")
    names: dict[str, Any] = {
        "ceil": sympy.ceiling, "min": sympy.Min, "max": sympy.Max, "abs": sympy.Abs,
        "log10": lambda x: sympy.log(x, 10), "piecewise": _piecewise, "sum": lambda some: sum(some, sympy.Integer(0)),
        "smallest_at_least": lambda some, least: min([one for one in some if one >= least], default=sympy.nan),
    }  # fmt: skip
    names |= {name: _exact(sympy, value) for name, value in constants(figure.data).items()}
    for one in figure.inputs:
        value = given[one.name]
        names |= {f"{one.name}_is_{word.lower().replace('-', '_')}": value == word for word in one.choices}
        names[f"{one.name}_given"] = value is not None
        if not one.choices:
            names[one.name] = sympy.nan if value is None else _exact(sympy, value)
    transformations = (*parser.standard_transformations, parser.rationalize)
    lines = (*figure.data.get("let", ()), *figure.data["outputs"])
    for line in lines:
        found = parser.parse_expr(line["expression"], local_dict=names, transformations=transformations)
        names[line["name"]] = found.evalf(DIGITS) if hasattr(found, "evalf") and not isinstance(found, bool) else found
    return {line["name"]: names[line["name"]] for line in figure.data["outputs"]}


def _exact(sympy: Any, value: Any) -> Any:
    if isinstance(value, list):
        return [_exact(sympy, one) for one in value]
    return value if isinstance(value, bool) else sympy.Float(sympy.Rational(value), DIGITS)


def _piecewise(*parts: Any) -> Any:
    """The value before the first condition that holds, or the last."""
    for value, condition in zip(parts[:-1:2], parts[1::2], strict=True):
        if bool(condition):
            return value
    return parts[-1]
