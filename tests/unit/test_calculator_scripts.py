"""What a calculator does in a page, under node: it reads, works out and judges as Python does, and opens as told."""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from latchside.figures.catalogue import Answer, Figure, catalogue
from latchside.figures.inputs import Input, InputError
from latchside.figures.lengths import UNITS, LengthError, typed_length
from latchside.figures.typed import TypedError
from latchside.library import Library
from latchside.messages.javascript import scripts
from latchside.pages.figure_script import PATH, script
from latchside.root import ROOT

from ..node import Node

FIGURES = catalogue(ROOT)
DRAWN = 60

Call = Callable[..., Any]


@pytest.fixture(scope="module")
def call(node: Node, library: Library, tmp_path_factory: pytest.TempPathFactory) -> Call:
    """Calls a function of a module of the page's scripts: `body` is its code over `it`, the module, and `given`."""
    folder = tmp_path_factory.mktemp("site")
    source = ROOT / "content"
    texts = {str(path.relative_to(source)): path.read_text("utf-8") for path in (source / "assets/js").rglob("*.js")}
    for path, text in {**texts, **scripts(), PATH: script(library), "package.json": '{"type": "module"}'}.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, "utf-8")

    def called(module: str, body: str, given: Any) -> Any:
        figures, asked = (Path(folder, path).as_uri() for path in (PATH, f"assets/js/{module}.js"))
        code = f"""async (given) => {{
          const [{{ FIGURES }}, it] = await Promise.all([import("{figures}"), import("{asked}")]);
          {body}
        }}"""
        return node.evaluate(code, given)

    return called


# -- answers -------------------------------------------------------------------------------------------------


def some(one: Input, chance: random.Random) -> Any:
    """A value in the range of an input: an end, the default, or any between, small ones as often as large ones."""
    if one.choices:
        return chance.choice(list(one.choices))
    if one.yes_no:
        return chance.random() < 0.5
    if one.many:
        return [number(one, chance) for _ in range(chance.randint(0, 4))]
    return number(one, chance)


def number(one: Input, chance: random.Random) -> float:
    low, high = float(one.low or 0), float(one.high or 0)
    known = [low, high, *([float(one.default)] if isinstance(one.default, int | float) else [])]
    least = max(low, high * 1e-6)
    drawn = math.exp(chance.uniform(math.log(least), math.log(high))) if low >= 0 else chance.uniform(low, high)
    value = chance.choice([*known, *[drawn] * 5])
    return float(round(value)) if one.integer else float(f"{value:.6g}")


def drawn(figure: Figure, chance: random.Random) -> dict[str, Any]:
    """Inputs that fit together: one of two, those that are asked for, and of those that may be empty a half."""
    given = {one.name: some(one, chance) for one in figure.inputs}
    for one in figure.inputs:
        if one.instead_of:
            given[chance.choice((one.name, one.instead_of))] = None
        if one.optional and chance.random() < 0.5:
            given[one.name] = None
    for one in figure.inputs:
        if any(given[name] != word for name, word in one.when.items()):
            given[one.name] = None
    return given


def cases(figure: Figure) -> Iterator[dict[str, Any]]:
    chance = random.Random(figure.id)
    for _ in range(DRAWN):
        yield drawn(figure, chance)
    for example in figure.data["examples"]:
        yield figure.answer(example["inputs"]).inputs


def asked(figure: Figure, given: dict[str, Any]) -> Answer | list[str]:
    try:
        return figure.answer({name: value for name, value in given.items() if value is not None})
    except InputError as error:
        return list(error.lines)


def same(ours: Any, theirs: Any) -> bool:
    """Equal, but for the last digits of numbers, in which the two languages' functions may differ."""
    if isinstance(ours, bool) or isinstance(theirs, bool) or not isinstance(ours, int | float):
        if isinstance(ours, dict) and isinstance(theirs, dict):
            return ours.keys() == theirs.keys() and all(same(ours[key], theirs[key]) for key in ours)
        if isinstance(ours, list | tuple) and isinstance(theirs, list):
            return len(ours) == len(theirs) and all(map(same, ours, theirs))
        return bool(ours == theirs)
    return isinstance(theirs, int | float) and abs(ours - theirs) <= 1e-8 * max(1.0, abs(ours))


@pytest.mark.parametrize("id_", FIGURES)
def test_a_page_answers_and_judges_as_python_does(id_: str, call: Call) -> None:
    figure = FIGURES[id_]
    made = list(cases(figure))
    # what is left out takes its default in Python; a page has it in the field
    full = [dict(given) for given in made]
    for given in full:
        for one in figure.inputs:
            unasked = any(given[name] != word for name, word in one.when.items())
            if given[one.name] is None and not (unasked or one.instead_of or one.optional):
                replaced = any(other.instead_of == one.name for other in figure.inputs)
                given[one.name] = None if replaced else one.default
            if one.many and given[one.name] is None:
                given[one.name] = []
    theirs = call("figure/answer", f'return given.map((one) => it.answer(FIGURES["{id_}"], one));', full)
    answered = 0
    for given, page in zip(full, theirs, strict=True):
        ours = asked(figure, given)
        if isinstance(ours, list):
            assert page["refusals"], (given, ours)
            assert not page["outputs"], given
            continue
        answered += 1
        assert not page["refusals"], (given, page["refusals"])
        assert same(ours.outputs, page["outputs"]), (given, ours.outputs, page["outputs"])
        assert sorted(ours.warnings) == sorted(page["warnings"]), given
        assert ours.judgement == page["judgement"], given
        assert ours.judgement or ours.warnings, f"nothing says what it means: {given}"
    assert answered > DRAWN / 6


def test_every_figure_is_worked_out_in_the_page(call: Call) -> None:
    assert call("figure/answer", "return Object.keys(FIGURES);", None) == sorted(FIGURES)


def test_the_normal_deviate_is_that_of_the_standard_library(call: Call) -> None:
    from statistics import NormalDist

    shares = [1e-9, 0.001, 0.0249, 0.075, 0.0751, 0.3, 0.5, 0.9, 0.975, 0.999, 1 - 1e-9]
    found = call("figure/python", "return given.map(it.deviate);", shares)
    assert found == pytest.approx([NormalDist().inv_cdf(share) for share in shares], rel=1e-12, abs=1e-15)


# -- what is typed -------------------------------------------------------------------------------------------


def some_length(chance: random.Random) -> str:
    """A length as people write it, now and then with something wrong."""

    def figure() -> str:
        whole, over = chance.randint(0, 40), chance.randint(1, 9)
        forms = (
            f"{whole}", f"{whole}.{over}", f"{whole},{over}", f".{over}", f"{over}/8", f"{whole} {over}/16",
            f"{whole}-{over}/4", f"{whole}\u00bd", f"{whole},{over}00", f"{over}/0", f"{whole}{over} ",
        )  # fmt: skip
        return chance.choice(forms)

    def unit() -> str:
        return chance.choice([*UNITS, "inches", "feet", "'", '"', "metres", "\u2033", "parsec", "kg", ""])

    space = chance.choice(["", " "])
    if chance.random() < 0.3:
        feet, inches = chance.choice([("'", '"'), (" ft", " in"), (" feet ", "inches"), ("\u2032", "\u2033")])
        return f"{chance.randint(0, 30)}{feet}{space}{figure()}{inches}"
    return f"{chance.choice(['', '', '-', '+'])}{figure()}{space}{unit()}"


@pytest.mark.parametrize("unit", ["mm", "m", "in", "ft"])
def test_a_length_is_read_as_the_command_line_reads_it(unit: str, call: Call) -> None:
    chance = random.Random(unit)
    texts = ["50 ft", "1/2 in", "3 1/2", "12mm", "5'6\"", "2,5 m", *(some_length(chance) for _ in range(600))]
    theirs = call("core/lengths", f'return given.map((text) => it.lengthIn(text, "{unit}"));', texts)
    read = 0
    for text, found in zip(texts, theirs, strict=True):
        try:
            ours = typed_length(text, unit, unit)
        except LengthError:
            assert found is None, (text, found)
            continue
        read += 1
        assert found == pytest.approx(ours, rel=1e-11), text
    assert read > 200


@pytest.mark.parametrize(
    ("id_", "name", "texts"),
    [
        ("cable-resistance", "length_m", ["50 ft", "1/2 in", "3 1/2", "12mm", "5'6\"", "30,5", "1,500", "3 m; 4"]),
        ("reed-gap", "diameter_mm", ["3/16 in", "1/4\"", "5", "5 mm", "0,5 cm", "1,000", "60", "thick"]),
        ("resistor", "ohm", ["4700", "4k7", "5.6k", "2M2", "470R", "4.7 kΩ", "4,7k", "470 ohm", "1,000", "9 V"]),
        ("supervised-loop", "supply_v", ["5", "5 V", "13,8", "5 ft", "five"]),
    ],
)  # fmt: skip
def test_a_field_takes_what_the_command_line_takes(id_: str, name: str, texts: list[str], call: Call) -> None:
    one = next(one for one in FIGURES[id_].inputs if one.name == name)
    body = f"""const one = FIGURES["{id_}"].inputs.find(({{ name }}) => name === "{name}");
      return given.map((text) => it.read(one, text, false));"""
    for text, found in zip(texts, call("figure/typed", body, texts), strict=True):
        try:
            ours = one.read(text)
        except TypedError:
            assert found.get("error"), (text, found)
            continue
        assert found.get("value") == pytest.approx(ours, rel=1e-11), (text, found)


def test_spacers_in_inches_are_read_one_by_one(call: Call) -> None:
    body = """const one = FIGURES.spacer.inputs.find(({ name }) => name === "spacers_mm");
      const read = (text) => it.readList(one, text, false);
      return [read("1/16 in; 3 mm"), it.turned(one, "1; 2,5", false), read("1 x")];"""
    read, turned, wrong = call("figure/typed", body, None)
    assert read["values"] == pytest.approx([1.5875, 3])  # 25.4 mm an inch exactly: NIST SP 811, appendix B.8
    assert turned == "0.0393701; 0.0984252"
    assert "x" in wrong["error"]


# -- how a page opens ----------------------------------------------------------------------------------------

OPENED = """return given.map(([id, link, imperial]) => {
  const state = it.opening(FIGURES[id], new URLSearchParams(link), imperial);
  const { given, errors } = it.gather(state);
  const seen = state.figure.inputs.filter((one) => it.inView(state, one)).map(({ name }) => name);
  return { typed: state.typed, given, errors, seen, more: state.more, link: it.query(state.figure, given) };
});"""


def opened(call: Call, id_: str, link: str = "", *, imperial: bool = False) -> Any:
    return call("figure/state", OPENED, [[id_, link, imperial]])[0]


@pytest.mark.parametrize("imperial", [False, True])
@pytest.mark.parametrize("id_", FIGURES)
def test_a_page_opens_with_nothing_missing(id_: str, imperial: bool, call: Call) -> None:
    assert not opened(call, id_, imperial=imperial)["errors"]


def test_gauge_is_asked_for_in_north_america_and_area_elsewhere(call: Call) -> None:
    for id_ in ("cable-resistance", "voltage-drop"):
        assert "awg" in opened(call, id_, imperial=True)["seen"]
        assert "area_mm2" not in opened(call, id_, imperial=True)["seen"]
        assert "area_mm2" in opened(call, id_)["seen"]
        assert "awg" not in opened(call, id_)["seen"]


def test_a_link_is_taken_in_its_own_units_and_given_back(call: Call) -> None:
    link = "length_m=42&awg=22&temperature_c=20&conductor=tinned"
    metric, other = opened(call, "cable-resistance", link), opened(call, "cable-resistance", link, imperial=True)
    assert metric["typed"]["length_m"] == "42"
    assert metric["link"] == link
    assert other["typed"]["length_m"] == "137.795"  # 42 m in feet: 0.3048 m a foot exactly
    assert other["given"]["length_m"] == pytest.approx(42, rel=1e-5)
    assert metric["more"], "a conductor that is not the usual one is in view"


def test_a_short_link_takes_the_defaults(call: Call) -> None:
    found = opened(call, "cable-resistance", "length_m=30&awg=22")
    assert not found["errors"]
    assert found["given"]["temperature_c"] == 20
    assert found["given"]["conductor"] == "copper"
    assert not found["more"]


def test_a_link_with_both_of_two_shows_both_and_says_so(call: Call) -> None:
    found = opened(call, "cable-resistance", "length_m=30&awg=22&area_mm2=0.22")
    assert {"awg", "area_mm2"} <= set(found["seen"])
    assert "one of the two" in found["errors"]["awg"]
