"""A worked example comes out as it says."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.catalogue import Figure
from latchside.figures.inputs import InputError
from latchside.figures.program import read_program
from latchside.findings import Finding, did_you_mean
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "formula-example"
_Path = tuple[str | int, ...]


def check(library: Library) -> Iterator[Finding]:
    """Every example of a figure made of expressions gives its outputs; a model's examples are worked in the tests."""
    for record in library.of("formula"):
        outputs = [entry["name"] for entry in record["outputs"]]
        sound = not read_program(record.data).errors
        for index, example in enumerate(record["examples"]):
            unknown = [name for name in example["outputs"] if name not in outputs]
            for name in unknown:
                problem = message.finding(
                    "no-such-output", output=name, outputs=", ".join(outputs), hint=did_you_mean(name, outputs)
                )
                yield record.finding(CODE, ("examples", index, "outputs", name), *problem)
            if sound and "model" not in record.data and not unknown:
                yield from _worked(record, ("examples", index), example)


def _worked(record: Record, path: _Path, example: Mapping[str, Any]) -> Iterator[Finding]:
    try:
        answer = Figure(record.id, record.data).answer(example["inputs"])
    except InputError as error:
        yield record.finding(CODE, (*path, "inputs"), *message.finding("inputs-refused", why="; ".join(error.lines)))
        return
    for name, expected in example["outputs"].items():
        found = answer.outputs[name]
        if not agrees(found, expected, example["tolerance"]):
            problem = message.finding(
                "comes-out-otherwise",
                output=name,
                found=repr(found),
                expected=repr(expected),
                share=f"{example['tolerance']:g}",
            )
            yield record.finding(CODE, (*path, "outputs", name), *problem)


def agrees(found: object, expected: object, tolerance: float) -> bool:
    """Whether an output is what an example says, within the share `tolerance` of it."""
    numbers = (int, float)
    if isinstance(found, numbers) and isinstance(expected, numbers) and not isinstance(expected, bool):
        return abs(found - expected) <= tolerance * (abs(expected) or 1)
    return found == expected


RULE = Rule(CODE, check)
