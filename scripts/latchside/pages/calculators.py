"""What the page of a figure shows of its inputs and its worked examples."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import Any

from markupsafe import Markup

from latchside.escape import safe
from latchside.figures.catalogue import Figure
from latchside.figures.inputs import Input
from latchside.figures.translate import translatable
from latchside.library import Record
from latchside.messages import messages
from latchside.pages.figure_outputs import number, output, yes_no
from latchside.reads import EVERY, note

message = messages(__name__)


def figure_of(record: Record) -> Figure:
    """The figure that a record states."""
    note((*record.key, EVERY))
    return _figure_of(record)


@lru_cache(maxsize=256)
def _figure_of(record: Record) -> Figure:
    return Figure(record.id, record.data)


def is_calculator(record: Record) -> bool:
    """Whether the page can work it out by itself: figures that are expressions, and models that JavaScript can say."""
    return "model" not in record.data or translatable(str(record["model"]))


def worked(record: Record) -> Iterator[dict[str, Any]]:
    """Each example of a figure: inputs and outputs as a reader sees them, warnings, and where it comes from."""
    figure = figure_of(record)
    for example in record["examples"]:
        answer = figure.answer(example["inputs"])
        yield {
            "inputs": [(one.label, _input(one, answer.inputs[one.name])) for one in figure.inputs
                       if answer.inputs[one.name] is not None],
            "outputs": [(entry["label"], output(entry, answer.outputs[entry["name"]])) for entry in record["outputs"]],
            "warnings": answer.warnings,
            "basis": example,
            "note": example.get("note", ""),
        }  # fmt: skip


def default_words(one: Input) -> Markup:
    """The default of an input as a reader sees it; empty where it has none."""
    if one.default is None or one.default == "":
        return Markup("")
    return safe(yes_no(one.default)) if isinstance(one.default, bool) else _input(one, one.read(one.default))


def typed(value: object) -> str:
    """An example's input as it is typed on the command line."""
    if isinstance(value, list | tuple):
        return ",".join(str(one) for one in value)
    return str(value).lower() if isinstance(value, bool) else str(value)


def _input(one: Input, value: Any) -> Markup:
    if one.choices:
        return safe(one.choices[value])
    if one.yes_no:
        return safe(yes_no(value))
    if one.many:
        return Markup(", ").join(number(float(each), one.unit) for each in value) or safe(message("none"))
    return number(float(value), one.unit)
