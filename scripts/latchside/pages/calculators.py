"""What the page of a figure shows, and the script that works it out again without a network.

Figures that are expressions are emitted once as JavaScript, in the author's own order of operations; the page's
script reads the same inputs, holds them to the same ranges and writes the same text. Figures with a model are
worked out here, at build time, for their examples.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import Any

from latchside.figures.catalogue import Figure
from latchside.figures.emit import RUNTIME, javascript
from latchside.figures.inputs import Input
from latchside.figures.program import constants
from latchside.figures.units import figure as shown_figure
from latchside.figures.units import other_system, symbol, with_unit
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.reads import EVERY, note

message = messages(__name__)

SCRIPT = "assets/js/figure/figures.js"
MODULE = """\
// Written by the build from shared/formulas; change the records, not this file.
{runtime}
export const FIGURES = {{
{figures}
}};
"""


def figure_of(record: Record) -> Figure:
    """The figure that a record states."""
    note((*record.key, EVERY))
    return _figure_of(record)


@lru_cache(maxsize=256)
def _figure_of(record: Record) -> Figure:
    return Figure(record.id, record.data)


def is_calculator(record: Record) -> bool:
    """Whether the page can work it out by itself: every figure that is expressions."""
    return "model" not in record.data


def worked(record: Record) -> Iterator[dict[str, Any]]:
    """Each example of a figure: inputs and outputs in words, warnings, and where it comes from."""
    figure = figure_of(record)
    for example in record["examples"]:
        answer = figure.answer(example["inputs"])
        yield {
            "inputs": [(one.label, _input_words(one, answer.inputs[one.name])) for one in figure.inputs
                       if answer.inputs[one.name] is not None],
            "outputs": [(entry["label"], output_words(entry, answer.outputs[entry["name"]]))
                        for entry in record["outputs"]],
            "warnings": answer.warnings,
            "basis": example,
            "note": example.get("note", ""),
        }  # fmt: skip


def default_words(one: Input) -> str:
    """The default of an input in words; empty where it has none."""
    if one.default is None or one.default == "":
        return ""
    if isinstance(one.default, bool):
        return _yes_no(one.default)
    return _input_words(one, one.read(one.default))


def typed(value: object) -> str:
    """An example's input as it is typed on the command line."""
    if isinstance(value, list | tuple):
        return ",".join(str(one) for one in value)
    return str(value).lower() if isinstance(value, bool) else str(value)


def output_words(entry: Mapping[str, Any], value: Any) -> str:
    """An output as a reader sees it."""
    unit = entry.get("unit", "")
    if value is None:
        return message("none")
    if isinstance(value, bool):
        return _yes_no(value)
    if isinstance(value, str):
        return value
    if isinstance(value, Mapping):
        return "; ".join(f"{key.replace('_', ' ')} {output_words({}, one)}" for key, one in value.items())
    if isinstance(value, list | tuple):
        return ", ".join(output_words(entry, one) for one in value) or message("none")
    return _both(float(value), unit)


def _yes_no(value: bool) -> str:
    return message("yes") if value else message("no")


def _both(value: float, unit: str) -> str:
    other = other_system(value, unit)
    text = with_unit(shown_figure(value), unit)
    return f"{text} ({with_unit(shown_figure(other[0]), other[1])})" if other else text


def _input_words(one: Input, value: Any) -> str:
    if one.choices:
        return one.choices[value]
    if one.yes_no:
        return _yes_no(value)
    if one.many:
        return ", ".join(with_unit(shown_figure(float(each)), one.unit) for each in value) or message("none")
    return _both(float(value), one.unit)


def script(library: Library) -> str:
    """The module that holds every calculator: `FIGURES` by id, and what the emitted code calls."""
    figures = {record.id: _emitted(record) for record in library.of("formula") if is_calculator(record)}
    return MODULE.format(
        runtime=RUNTIME, figures=",\n".join(f"  {json.dumps(id_)}: {text}" for id_, text in figures.items())
    )


def _emitted(record: Record) -> str:
    figure = figure_of(record)
    program = figure.program
    facts = {
        "constants": constants(record.data),
        "example": {name: typed(value) for name, value in record["examples"][0]["inputs"].items()},
        "inputs": [_described(one) for one in figure.inputs],
        "outputs": [
            {"name": entry["name"], "label": figure.said(entry["label"]), "unit": entry.get("unit", ""),
             "sign": symbol(entry.get("unit", "")), "others": _others(entry.get("unit", "")),
             "empty": figure.said(entry["empty"]) if "empty" in entry else None}
            for entry in record["outputs"]
        ],
    }  # fmt: skip
    lets = " ".join(f"v.{line.name} = {javascript(line.expression.node)};" for line in program.lets)
    outputs = " ".join(f"v.{line.name} = {javascript(line.expression.node)};" for line in program.outputs)
    limits = ", ".join(
        f"{{holds: (v) => {javascript(limit.test.node)}, words: {json.dumps(figure.said(limit.words))}, "
        f"refuses: {json.dumps(limit.refuses)}, needs: {json.dumps(sorted(limit.needs))}, "
        f"late: {json.dumps(limit.late)}}}"
        for limit in program.limits
    )
    stated = json.dumps(facts, ensure_ascii=False, separators=(",", ":"))
    return f"{{...{stated}, lets(v) {{ {lets} }}, work(v) {{ {outputs} }}, limits: [{limits}]}}"


def _described(one: Input) -> dict[str, Any]:
    return {
        "name": one.name, "label": one.label, "unit": one.unit, "sign": symbol(one.unit), "low": one.low,
        "high": one.high, "default": one.default, "choices": list(one.choices), "integer": one.integer,
        "many": one.many, "yesNo": one.yes_no, "optional": one.optional, "insteadOf": one.instead_of,
        "when": dict(one.when), "accepts": one.accepts, "others": _others(one.unit),
    }  # fmt: skip


def _others(unit: str) -> list[Any]:
    """The unit of the other system as [sign, factor, offset]: value in it = factor × value + offset."""
    at_zero, at_one = other_system(0.0, unit), other_system(1.0, unit)
    if at_zero is None or at_one is None:
        return []
    return [symbol(at_one[1]), float(f"{at_one[0] - at_zero[0]:.12g}"), float(f"{at_zero[0]:.12g}")]
