"""Python and JavaScript come from one tree: the same vectors give the same answers and the same text in both."""

from __future__ import annotations

import itertools
import json
import math
import random
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from latchside.figures.catalogue import Figure, catalogue
from latchside.figures.emit import RUNTIME, compiled, equation, javascript, python
from latchside.figures.expression import FUNCTIONS, Sort, read_expression
from latchside.figures.inputs import Input
from latchside.figures.program import constants
from latchside.figures.units import figure as shown
from latchside.root import ROOT

from ..node import Node

NAMES: dict[str, Sort] = {"a": "number", "b": "number", "wet": "condition", "sizes": "list"}
FIGURES = {id_: one for id_, one in catalogue(ROOT).items() if "model" not in one.data}
RANDOM_VECTORS = 150


def in_javascript(node: Node, functions: list[str], vectors: list[dict[str, Any]]) -> list[list[Any]]:
    """What each function gives for each vector: a number as text that holds every bit, or true or false."""
    code = f"""(vectors) => {{
      "use strict";
      {RUNTIME}
      const functions = [{", ".join(f"(v) => {one}" for one in functions)}];
      const told = (x) => typeof x === "number" ? String(x) : x;
      return vectors.map((text) => {{ const v = JSON.parse(text); return functions.map((one) => told(one(v))); }});
    }}"""
    found: list[list[Any]] = node.evaluate(code, [json.dumps(_without_nan(vector)) for vector in vectors])
    return [[_number(one) for one in row] for row in found]


def _without_nan(vector: dict[str, Any]) -> dict[str, Any]:
    """JavaScript has nothing where Python has nan: what is not given is left out."""
    return {name: value for name, value in vector.items() if not (isinstance(value, float) and math.isnan(value))}


def _number(told: Any) -> Any:
    return float(told.replace("Infinity", "inf")) if isinstance(told, str) else told


def same(ours: Any, theirs: Any, within: float) -> bool:
    if isinstance(ours, bool) or isinstance(theirs, bool):
        return ours is theirs
    if math.isnan(ours) or math.isnan(theirs):
        return math.isnan(ours) and math.isnan(theirs)
    return bool(ours == theirs or abs(ours - theirs) <= within * max(1.0, abs(ours)))


# -- emitted text --------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "as_python", "as_javascript"),
    [
        ("a - b - 1", '((v["a"] - v["b"]) - 1.0)', "((v.a - v.b) - 1)"),
        ("a / 7.3 * 2", '(div(v["a"], 7.3) * 2.0)', "((v.a / 7.3) * 2)"),
        ("-a ** 2", '(-power(v["a"], 2.0))', "(-(v.a ** 2))"),
        ("a % .5", 'mod(v["a"], 0.5)', "F.mod(v.a, 0.5)"),
        ("a == b", '(v["a"] == v["b"])', "(v.a === v.b)"),
        ("min(a, pi)", 'min(v["a"], pi)', "Math.min(v.a, Math.PI)"),
        ("piecewise(1, wet, 2)", '(1.0 if v["wet"] else 2.0)', "(v.wet ? 1 : 2)"),
        ("sum(sizes)", 'sum(v["sizes"])', "F.sum(v.sizes)"),
    ],
)
def test_order_of_operations_is_the_authors(text: str, as_python: str, as_javascript: str) -> None:
    node = read_expression(text, NAMES).node
    assert python(node) == as_python
    assert javascript(node) == as_javascript


def test_equation_has_the_signs_of_a_reader() -> None:
    assert equation("2 * a ** 2 >= b") == "2 × a ^ 2 ≥ b"


# -- random expressions --------------------------------------------------------------------------------------

EXACT = ("+", "-", "*", "/", "%")


def random_text(chance: random.Random, depth: int) -> str:
    """A random expression of operations that both languages round exactly, so that not one bit may differ."""
    if depth == 0 or chance.random() < 0.15:
        return chance.choice(("a", "b", "2", "7.3", "0.1", "1e-3", "1000", ".5"))
    below = [random_text(chance, depth - 1) for _ in range(4)]
    comparison = chance.choice(("<", "<=", ">", ">=", "==", "!="))
    return chance.choice(
        [
            *(f"({below[0]} {operator} {below[1]})" for operator in EXACT),
            f"-{below[0]}",
            f"floor({below[0]})",
            f"ceil({below[0]})",
            f"abs({below[0]})",
            f"sqrt(abs({below[0]}))",
            f"min({below[0]}, {below[1]})",
            f"max({below[0]}, {below[1]}, {below[2]})",
            f"piecewise({below[0]}, {below[1]} {comparison} {below[2]}, {below[3]})",
            f"piecewise({below[0]}, wet, {below[1]})",
            f"smallest_at_least(sizes, {below[0]})",
            f"sum(sizes) * {below[0]}",
        ]
    )


def test_random_expressions_agree_in_every_bit(node: Node) -> None:
    chance = random.Random(20261125)
    texts: list[str] = []
    while len(texts) < 400:
        text = random_text(chance, 3)
        if len(text) <= 400:
            texts.append(text)
    read = [read_expression(text, NAMES) for text in texts]
    numbers = [0.0, 1.0, -1.0, 0.1, 7.3, 14.6, 2.5, -2.5, 1e-9, 1e9, *(chance.uniform(-50, 50) for _ in range(6))]
    vectors = [
        {"a": a, "b": b, "wet": wet, "sizes": [1.2, 7.0, 12.0]}
        for a, b in itertools.product(numbers, numbers)
        for wet in (True, False)
    ]
    theirs = in_javascript(node, [javascript(one.node) for one in read], vectors)
    ours = [compiled(one) for one in read]
    for vector, row in zip(vectors, theirs, strict=True):
        for text, work_out, found in zip(texts, ours, row, strict=True):
            assert same(work_out(vector), found, 0), (text, vector)


@pytest.mark.parametrize("function", sorted(name for name, (fewest, _) in FUNCTIONS.items() if fewest == 1))
def test_functions_agree(function: str, node: Node) -> None:
    chance = random.Random(function)
    points = [0.0, -0.0, 1.0, -1.0, 0.25, 0.5, 1e-12, 1e12, 700.0, -700.0, 800.0]
    vectors = [
        {"a": a} for a in (*points, *(chance.uniform(-1.2, 1.2) for _ in range(200)), *(10.0**n for n in range(-9, 9)))
    ]
    expression = read_expression(f"{function}(a)", NAMES)
    work_out = compiled(expression)
    for vector, (found,) in zip(vectors, in_javascript(node, [javascript(expression.node)], vectors), strict=True):
        assert same(work_out(vector), found, 1e-12), vector


def test_powers_and_floors_agree_at_exact_boundaries(node: Node) -> None:
    texts = ["floor(a / 7.3)", "ceil(a / 0.1)", "a % 7.3", "a ** b", "92 ** ((36 - a) / 39)", "10 ** (a / 10)", "b / a"]
    vectors = [{"a": k * 7.3, "b": b} for k in range(-300, 300) for b in (-2.0, -0.5, 0.0, 0.5, 1.0, 3.0)]
    read = [read_expression(text, NAMES) for text in texts]
    ours = [compiled(one) for one in read]
    for vector, row in zip(vectors, in_javascript(node, [javascript(one.node) for one in read], vectors), strict=True):
        for text, work_out, found in zip(texts, ours, row, strict=True):
            assert same(work_out(vector), found, 1e-12), (text, vector)


# -- the figures ---------------------------------------------------------------------------------------------


def edges(one: Input, data: Any, chance: random.Random) -> list[Any]:
    """Values of an input at which something may change: its ends, its default, and every constant of its unit."""
    if one.choices:
        return list(one.choices)
    if one.yes_no:
        return [True, False]
    if one.many:
        return [[], [3.2], [3.2, 0.1, 12.0]]
    low, high = float(one.low or 0), float(one.high or 0)
    found = {low, high, float(one.default)} if one.default is not None else {low, high}
    for entry in data.get("values", {}).values():
        if entry["unit"] == one.unit:
            figures = [entry[key] for key in ("value", "min", "max") if key in entry] + list(entry.get("one_of", ()))
            found |= {
                near
                for edge in figures
                for near in (math.nextafter(edge, -1e9), float(edge), math.nextafter(edge, 1e9))
            }
    within = sorted(value for value in found if low <= value <= high)
    drawn = [chance.uniform(low, high) for _ in range(4)]
    if low >= 0:
        drawn.append(math.exp(chance.uniform(math.log(max(low, 1e-3)), math.log(high))))
    return [float(round(value)) if one.integer else value for value in (*within, *drawn)]


def vectors_of(figure: Figure) -> Iterator[dict[str, Any]]:
    """Inputs in range: each tested value of each input beside random others, random ones, and the examples."""
    chance = random.Random(figure.id)
    values = {one.name: edges(one, figure.data, chance) for one in figure.inputs}
    for one in figure.inputs:
        for value in values[one.name]:
            for _ in range(6):
                yield {other.name: chance.choice(values[other.name]) for other in figure.inputs} | {one.name: value}
    for _ in range(RANDOM_VECTORS):
        yield {other.name: chance.choice(values[other.name]) for other in figure.inputs}
    for example in figure.data["examples"]:
        yield figure.answer(example["inputs"]).inputs
    yield from BOUNDARIES.get(figure.id, lambda: iter(()))()


def _whole_windows() -> Iterator[dict[str, Any]]:
    for check_in, tries in itertools.product((0.1, 0.3, 1.0, 7.3, 60.0, 66.0), range(1, 60)):
        window = check_in * tries / 60
        for near in (math.nextafter(window, 0), window, math.nextafter(window, 1e9)):
            yield {"check_in_min": check_in, "window_h": near, "loss_probability": 0.3, "devices": 7}


def _stock_sizes() -> Iterator[dict[str, Any]]:
    for size, margin in itertools.product(
        constants(FIGURES["standby-battery"].data)["stock_sizes"], (1.0, 1.2, 1.25, 1.3)
    ):
        yield {"standby_a": size / margin / 24, "alarm_a": 0.0, "standby_h": 24.0, "alarm_min": 0.0, "margin": margin}


def _duties() -> Iterator[dict[str, Any]]:
    for limit, length in itertools.product((0.1, 1.0, 10.0), (0.1, 3.6, 36.0, 100.0, 200.0)):
        yield {"message_ms": length, "messages_per_hour": limit * 36000 / length, "limit_percent": limit}


BOUNDARIES: dict[str, Callable[[], Iterator[dict[str, Any]]]] = {
    "missed-check-in": _whole_windows,
    "standby-battery": _stock_sizes,
    "duty": _duties,
}


def prepared(figure: Figure, given: dict[str, Any]) -> dict[str, Any]:
    """The values that both languages start from, with one of each pair of inputs that exclude each other."""
    given = dict(given)
    for one in figure.inputs:
        if one.instead_of and given[one.name] is not None and given[one.instead_of] is not None:
            given[random.Random(repr(given)).choice((one.name, one.instead_of))] = None
        if any(given[name] != word for name, word in one.when.items()):
            given[one.name] = None
    return figure._values(given)


def worked_out(figure: Figure, v: dict[str, Any]) -> list[Any]:
    v = dict(v)
    for line in (*figure.program.lets, *figure.program.outputs):
        v[line.name] = line.work_out(v)
    return [v[line.name] for line in (*figure.program.lets, *figure.program.outputs)] + [
        limit.holds(v) for limit in figure.program.limits
    ]


@pytest.mark.parametrize("id_", FIGURES)
def test_figures_agree(id_: str, node: Node) -> None:
    figure = FIGURES[id_]
    lines = (*figure.program.lets, *figure.program.outputs)
    functions = [f"(v.{line.name} = {javascript(line.expression.node)})" for line in lines]
    functions += [javascript(limit.test.node) for limit in figure.program.limits]
    vectors = [prepared(figure, given) for given in vectors_of(figure)]
    assert len(vectors) > RANDOM_VECTORS
    for vector, theirs in zip(vectors, in_javascript(node, functions, vectors), strict=True):
        ours = worked_out(figure, vector)
        for name, one, other in zip(
            [*(line.name for line in lines), *functions[len(lines) :]], ours, theirs, strict=True
        ):
            assert same(one, other, 1e-12), (name, vector, one, other)
            if isinstance(one, float) and math.isfinite(one):
                assert shown(one) == shown(other), (name, vector)


def test_twelve_figures_and_more_are_expressions() -> None:
    assert len(FIGURES) >= 12


# -- the printed text ----------------------------------------------------------------------------------------


def test_numbers_are_written_alike(node: Node) -> None:
    chance = random.Random(7)
    numbers = [
        0.0,
        -0.0,
        0.5,
        1000.5,
        9999.5,
        99995.0,
        0.00099995,
        1234567.0,
        -2.5,
        3.1777,
        1e14,
        1e15,
        2.5e-8,
        0.00012345,
    ]
    numbers += [chance.choice((-1, 1)) * 10 ** chance.uniform(-12, 17) for _ in range(3000)]
    numbers += [n / 8 for n in range(-800, 800)] + [n + 0.05 for n in range(1000, 1100)]
    module = (ROOT / "content/assets/js/figure/number.js").as_uri()
    code = f"""async (numbers) => numbers.map((await import("{module}")).shown)"""
    assert node.evaluate(code, numbers) == [shown(number) for number in numbers]


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (0.0, "0"),
        (3.17773, "3.178"),
        (1000.5, "1,001"),
        (2200.0, "2,200"),
        (-19.606, "−19.61"),
        (0.000123456, "0.0001235"),
        (1e-12, "1 × 10⁻¹²"),
        (2.367e-7, "2.367 × 10⁻⁷"),
        (0.1 + 0.2, "0.3"),
        (12345678.0, "12,350,000"),
    ],
)
def test_numbers_in_text(number: float, text: str) -> None:
    assert shown(number) == text


def test_python_runs_no_text_of_an_author() -> None:
    """What is compiled holds names only as quoted keys."""
    node = read_expression("piecewise(a * 2, wet, sum(sizes) ** b)", NAMES).node
    assert re.sub(r'v\["[a-z_]+"\]', "", python(node)) == "((" + " * 2.0) if  else power(sum(), ))"


def test_the_package_is_the_one_beside_the_tests() -> None:
    assert Path(javascript.__code__.co_filename).is_relative_to(ROOT)
