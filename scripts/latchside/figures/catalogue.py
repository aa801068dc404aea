"""The figures: read from their records, and worked out for a caller's inputs.

Only `shared/formulas` is read, and a model's libraries are imported only when that figure is worked out.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from importlib import import_module
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from latchside.figures.emit import equation
from latchside.figures.inputs import Input, InputError, declared, read_inputs
from latchside.figures.program import Program, constants, read_program
from latchside.figures.units import stated, with_unit
from latchside.kinds import KINDS
from latchside.library.text import RecordLink, Words, text_parts
from latchside.messages import listed, messages
from latchside.read.yaml_text import read_text
from latchside.reads import EVERY, noted_instead
from latchside.root import ROOT

if TYPE_CHECKING:
    from latchside.library import Library  # a figure by itself is worked out without it

message = messages(__name__)

__all__ = ["Answer", "Figure", "InputError", "catalogue", "figures_of"]


@dataclass(frozen=True)
class Answer:
    """What came out, in the order of the record, and what has to be said beside it.

    `inputs` holds every input as it was understood, in its own unit; None where it was not given. `judgement` is what
    it means on site; empty where the warnings say it.
    """

    outputs: dict[str, Any]
    warnings: tuple[str, ...]
    inputs: dict[str, Any]
    judgement: str = ""


@dataclass(frozen=True)
class Figure:
    """One figure. `data` is its record, which has passed the check."""

    id: str
    data: Mapping[str, Any] = field(repr=False)

    @property
    def name(self) -> str:
        """The name a reader sees."""
        return str(self.data["name"])

    @cached_property
    def inputs(self) -> tuple[Input, ...]:
        """What it takes."""
        return declared(self.data["inputs"])

    @cached_property
    def program(self) -> Program:
        """Its expressions. Raises ValueError for a record that the check would refuse."""
        program = read_program(self.data)
        if program.errors:
            path, error = program.errors[0]
            raise ValueError(f"{self.id}: {'.'.join(map(str, path))}: {error}")
        return program

    @property
    def formula(self) -> str:
        """The formula as a reader sees it, one equation a line."""
        if "formula" in self.data:
            return str(self.data["formula"]).strip()
        lines = (*self.data.get("let", ()), *self.data["outputs"])
        return "\n".join(f"{line['name']} = {equation(line['expression'])}" for line in lines)

    def answer(self, inputs: Mapping[str, object]) -> Answer:
        """The outputs for `inputs`: numbers in the units of their names, or text with or without a unit.

        Raises InputError, with a line for each thing that is wrong, and works nothing out.
        """
        given = read_inputs(self.inputs, inputs)
        v = self._values(given)
        for line in self.program.lets:
            v[line.name] = line.work_out(v)
        warnings = self._held(v, given, late=False)
        if "model" in self.data:
            outputs, notes = self._model(given)
            v |= {name: float(value) for name, value in outputs.items() if _is_number(value)}
        else:
            outputs, notes = self._expressions(v)
        warnings = (*warnings, *self._held(v, given, late=True), *notes)
        return Answer(outputs, warnings, given, self._judged(v))

    def plain_text(self, text: str) -> str:
        """A text of the record without its references: values in figures, links by their words."""
        return "".join(
            part.text if isinstance(part, Words) else _words(part) if isinstance(part, RecordLink)
            else self._value(part.name) if part.owner is None else part.name.replace("-", " ")
            for part in text_parts(text)
        )  # fmt: skip

    def _values(self, given: Mapping[str, Any]) -> dict[str, Any]:
        v = constants(self.data)
        for one in self.inputs:
            value = given[one.name]
            for word in one.choices:
                v[f"{one.name}_is_{word.lower().replace('-', '_')}"] = value == word
            v[f"{one.name}_given"] = value is not None
            if one.many:
                v[one.name] = value or []
            elif not one.choices:
                v[one.name] = bool(value) if one.yes_no else math.nan if value is None else float(value)
        return v

    def _held(self, v: Mapping[str, Any], given: Mapping[str, Any], *, late: bool) -> tuple[str, ...]:
        broken = [
            limit for limit in self.program.limits
            if limit.late == late and all(given[name] is not None for name in limit.needs) and not limit.holds(v)
        ]  # fmt: skip
        refusals = [self.plain_text(limit.words) for limit in broken if limit.refuses]
        if refusals:
            raise InputError(refusals)
        return tuple(self.plain_text(limit.words) for limit in broken)

    def _judged(self, v: Mapping[str, Any]) -> str:
        first = next((one for one in self.program.judgements if one.holds(v)), None)
        return self.plain_text(first.words) if first else ""

    def _expressions(self, v: dict[str, Any]) -> tuple[dict[str, Any], tuple[str, ...]]:
        outputs: dict[str, Any] = {}
        for line in self.program.outputs:
            outputs[line.name] = v[line.name] = line.work_out(v)
        return self._finite(outputs)

    def _model(self, given: Mapping[str, Any]) -> tuple[dict[str, Any], tuple[str, ...]]:
        module = import_module(f"latchside.figures.models.{self.data['model'].replace('-', '_')}")
        try:
            result = dict(module.compute(**given))
        except ValueError as error:
            raise InputError(str(error).splitlines()) from None
        warnings = tuple(self.plain_text(str(line)) for line in result.pop("warnings", ()))
        outputs, empty = self._finite({line["name"]: result[line["name"]] for line in self.data["outputs"]})
        return outputs, (*warnings, *empty)

    def _finite(self, outputs: dict[str, Any]) -> tuple[dict[str, Any], tuple[str, ...]]:
        """The outputs with None for those that may be empty and are, and what to say of them."""
        notes = []
        for entry in self.data["outputs"]:
            value = outputs[entry["name"]]
            if value is None or (isinstance(value, float) and not math.isfinite(value)):
                if "empty" in entry:
                    outputs[entry["name"]] = None
                    notes.append(self.plain_text(entry["empty"]))
                elif value is not None:
                    raise InputError([message("no-answer", name=entry["name"])])
        return outputs, tuple(notes)

    def _value(self, name: str) -> str:
        entry = self.data["values"][name]
        figures = [entry[key] for key in ("value", "min", "max") if key in entry] or entry["one_of"]
        texts = [*(stated(float(one)) for one in figures[:-1]), with_unit(stated(float(figures[-1])), entry["unit"])]
        text = message("from-to", low=texts[0], high=texts[1]) if len(texts) == 2 else listed(texts, "or")
        return text.replace("\u00a0", " ")


def catalogue(root: Path = ROOT) -> dict[str, Figure]:
    """Every figure of the project at `root`, by id, in the order of the ids.

    Records that cannot be read are left out: the check says what is wrong with them.
    """
    folder = root / KINDS["formula"].folder
    figures: dict[str, Figure] = {}
    for path in sorted(folder.glob("*.yaml")):
        document = read_text(path.read_text("utf-8"), path.name)
        if isinstance(document.value, dict) and not document.findings:
            figures[path.stem] = Figure(path.stem, MappingProxyType(document.value))
    return figures


def figures_of(library: Library) -> Mapping[str, Figure]:
    """Every figure of a library, by id, in the order of the ids."""
    with noted_instead(("formula", EVERY, EVERY)):
        return _figures_of(library)


@lru_cache(maxsize=2)
def _figures_of(library: Library) -> Mapping[str, Figure]:
    return MappingProxyType({record.id: Figure(record.id, record.data) for record in library.of("formula")})


def _words(link: RecordLink) -> str:
    return link.words or link.id.replace("-", " ")


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)
