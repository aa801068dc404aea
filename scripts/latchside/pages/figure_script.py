"""The script that works the figures out again in a page: each once as JavaScript, with what its calculator shows.

Expressions are emitted in the author's own order of operations, models are translated from their Python. The page's
script reads the same inputs, holds them to the same ranges and writes the same text.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import replace
from math import ceil, floor, log10
from typing import Any

from latchside.figures.catalogue import Figure
from latchside.figures.emit import RUNTIME, javascript
from latchside.figures.inputs import Input
from latchside.figures.program import constants
from latchside.figures.translate import compute_call, model_scripts
from latchside.figures.units import other_system, symbol
from latchside.library import Library
from latchside.pages.calculators import figure_of, is_calculator, typed

PATH = "assets/js/figure/figures.js"
MODULE = """\
// Written by the build from shared/formulas and the models; change those, not this file.
import {{ choose, shown }} from "../core/message.js";
import * as P from "./python.js";
{runtime}{models}
export const FIGURES = {{
{figures}
}};
"""


def script(library: Library) -> str:
    """The module that holds every calculator: `FIGURES` by id, and what the emitted code calls."""
    records = [record for record in library.of("formula") if is_calculator(record)]
    models = sorted({str(record["model"]) for record in records if "model" in record.data})
    figures = ",\n".join(f"  {json.dumps(record.id)}: {_emitted(figure_of(record))}" for record in records)
    return MODULE.format(runtime=RUNTIME, models=model_scripts(models), figures=figures)


def _emitted(figure: Figure) -> str:
    program, record = figure.program, figure.data
    facts = {
        "constants": constants(record),
        "examples": [{name: typed(value) for name, value in one["inputs"].items()} for one in record["examples"]],
        "inputs": [_input(figure, one) for one in figure.inputs],
        "outputs": [_output(figure, entry) for entry in record["outputs"]],
    }
    lets = " ".join(f"v.{line.name} = {javascript(line.expression.node)};" for line in program.lets)
    outputs = " ".join(f"v.{line.name} = {javascript(line.expression.node)};" for line in program.outputs)
    limits = ", ".join(
        f"{{holds: (v) => {javascript(limit.test.node)}, words: {_text(figure, limit.words)}, "
        f"refuses: {json.dumps(limit.refuses)}, needs: {json.dumps(sorted(limit.needs))}, "
        f"late: {json.dumps(limit.late)}}}"
        for limit in program.limits
    )
    judgements = ", ".join(
        f"{{holds: (v) => {javascript(one.test.node) if one.test else 'true'}, words: {_text(figure, one.words)}}}"
        for one in program.judgements
    )
    model = compute_call(record["model"]) if "model" in record else "null"
    stated = json.dumps(facts, ensure_ascii=False, separators=(",", ":"))
    return (
        f"{{...{stated}, lets(v) {{ {lets} }}, work(v) {{ {outputs} }}, model: {model}, limits: [{limits}], "
        f"judgements: [{judgements}]}}"
    )


def _text(figure: Figure, text: str) -> str:
    return json.dumps(figure.plain_text(text), ensure_ascii=False)


def _input(figure: Figure, one: Input) -> dict[str, Any]:
    return {
        "name": one.name, "label": figure.plain_text(one.label), "help": figure.plain_text(one.help),
        "sign": symbol(one.unit), "unit": one.unit, "low": one.low, "high": one.high, "default": one.default,
        "choices": [[word, figure.plain_text(shown)] for word, shown in one.choices.items()], "integer": one.integer,
        "many": one.many, "yesNo": one.yes_no, "optional": one.optional, "insteadOf": one.instead_of,
        "when": dict(one.when), "accepts": one.accepts, "acceptsOther": _accepts_other(one),
        "others": _others(one.unit), "more": one.more,
    }  # fmt: skip


def _accepts_other(one: Input) -> str:
    """What an input accepts in the other system, its ends rounded inwards; what it accepts where there is none."""
    target = other_system(0.0, one.unit)
    if target is None:
        return one.accepts
    ends = [
        _inwards(end, one.unit, up) if end is not None else None for end, up in ((one.low, ceil), (one.high, floor))
    ]
    return replace(one, low=ends[0], high=ends[1], unit=target[1]).accepts


def _inwards(end: float, unit: str, way: Callable[[float], int]) -> float:
    """An end of a range in the other system, to three digits."""
    value = (other_system(end, unit) or (end, unit))[0]
    step = 10.0 ** (floor(log10(abs(value))) - 2) if value else 1.0
    return float(f"{way(round(value / step, 6)) * step:.3g}")


def _output(figure: Figure, entry: Any) -> dict[str, Any]:
    return {
        "name": entry["name"], "label": figure.plain_text(entry["label"]), "sign": symbol(entry.get("unit", "")),
        "others": _others(entry.get("unit", "")),
        "empty": figure.plain_text(entry["empty"]) if "empty" in entry else None,
        "main": entry.get("main", False), "words": dict(entry.get("words", {})),
        "columns": [_output(figure, column) for column in entry.get("columns", ())],
    }  # fmt: skip


def _others(unit: str) -> list[Any]:
    """The unit of the other system as [sign, factor, offset]: value in it = factor × value + offset."""
    at_zero, at_one = other_system(0.0, unit), other_system(1.0, unit)
    if at_zero is None or at_one is None:
        return []
    return [symbol(at_one[1]), float(f"{at_one[0] - at_zero[0]:.12g}"), float(f"{at_zero[0]:.12g}")]
