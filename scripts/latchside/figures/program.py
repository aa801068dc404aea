"""The expressions of a figure's record, read in order: each may use what stands before it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from latchside.figures.emit import compiled
from latchside.figures.expression import RESERVED, Expression, ExpressionError, Sort, read_expression
from latchside.messages import messages

message = messages(__name__)

Path = tuple[str | int, ...]


@dataclass(frozen=True)
class Line:
    """One named expression: an intermediate value or an output."""

    name: str
    expression: Expression
    work_out: Callable[[Mapping[str, Any]], Any]


@dataclass(frozen=True)
class Limit:
    """One limit of validity. `needs` are the inputs without which it is passed over."""

    test: Expression
    holds: Callable[[Mapping[str, Any]], Any]
    words: str
    refuses: bool
    needs: frozenset[str]
    late: bool
    """Whether it looks at an output, and so comes after the working."""


@dataclass(frozen=True)
class Judgement:
    """What an answer means on site. Without a test it always holds."""

    test: Expression | None
    holds: Callable[[Mapping[str, Any]], Any]
    words: str


@dataclass
class Program:
    """All expressions of a record, and what was wrong with it: a path and a refusal for each."""

    lets: list[Line] = field(default_factory=list)
    outputs: list[Line] = field(default_factory=list)
    limits: list[Limit] = field(default_factory=list)
    judgements: list[Judgement] = field(default_factory=list)
    errors: list[tuple[Path, ExpressionError]] = field(default_factory=list)


def read_program(data: Mapping[str, Any]) -> Program:
    """The program of a record. Never raises for bad expressions; they are among its errors."""
    program = Program()
    names: dict[str, Sort] = {}
    for path, name, sort in _declared(data):
        _declare(program, names, path, name, sort)
    for index, entry in enumerate(data.get("let", ())):
        _line(program, names, ("let", index), entry, program.lets)
    before = frozenset(names)
    for index, entry in enumerate(data["outputs"]):
        if "expression" in entry:
            if "model" in data:
                refusal = _refusal("both")
                program.errors.append((("outputs", index, "expression"), refusal))
            _line(program, names, ("outputs", index), entry, program.outputs)
        elif "model" in data:
            _declare(program, names, ("outputs", index, "name"), entry["name"], "number")
        else:
            refusal = _refusal("neither")
            program.errors.append((("outputs", index), refusal))
    inputs = frozenset(entry["name"] for entry in data["inputs"])
    for index, entry in enumerate(data.get("valid", ())):
        _limit(program, names, ("valid", index), entry, inputs, before)
    for index, entry in enumerate(data.get("judgement", ())):
        _judgement(program, names, ("judgement", index), entry)
    return program


def _refusal(id: str, **values: str) -> ExpressionError:
    return ExpressionError(message(f"{id}.found", **values), message(f"{id}.expected", **values))


def constants(data: Mapping[str, Any]) -> dict[str, Any]:
    """The constants of a record by the names its expressions use."""
    result: dict[str, Any] = {}
    for id_, entry in data.get("values", {}).items():
        name = id_.replace("-", "_")
        if "value" in entry:
            result[name] = float(entry["value"])
        if "one_of" in entry:
            result[name] = [float(one) for one in entry["one_of"]]
        for end in ("min", "max"):
            if end in entry:
                result[f"{name}_{end}"] = float(entry[end])
    return result


def _declared(data: Mapping[str, Any]) -> Iterator[tuple[Path, str, Sort]]:
    for name, value in constants(data).items():
        yield ("values",), name, "list" if isinstance(value, list) else "number"
    replaced = {entry.get("instead_of") for entry in data["inputs"]}
    for index, entry in enumerate(data["inputs"]):
        path: Path = ("inputs", index, "name")
        name = entry["name"]
        if "choices" in entry:
            for word in entry["choices"]:
                yield path, f"{name}_is_{word.lower().replace('-', '_')}", "condition"
        else:
            yield path, name, "condition" if entry.get("yes_no") else "list" if entry.get("list") else "number"
        if entry.get("optional") or "instead_of" in entry or "when" in entry or name in replaced:
            yield path, f"{name}_given", "condition"


def _declare(program: Program, names: dict[str, Sort], path: Path, name: str, sort: Sort) -> None:
    if name in names or name in RESERVED:
        program.errors.append((path, _refusal("reserved" if name in RESERVED else "taken", name=name)))
    else:
        names[name] = sort


def _line(program: Program, names: dict[str, Sort], path: Path, entry: Mapping[str, Any], into: list[Line]) -> None:
    sort: Sort = "number"
    try:
        read = read_expression(entry["expression"], names)
        into.append(Line(entry["name"], read, compiled(read)))
        sort = read.sort
    except ExpressionError as error:
        program.errors.append(((*path, "expression"), error))
    _declare(program, names, (*path, "name"), entry["name"], sort)


def _limit(
    program: Program, names: dict[str, Sort], path: Path, entry: Mapping[str, Any], inputs: frozenset[str],
    before: frozenset[str],
) -> None:  # fmt: skip
    read = _condition(program, names, path, entry["test"])
    if read is None:
        return
    words = entry.get("refuse") or entry.get("warn", "")
    program.limits.append(
        Limit(read, compiled(read), words, "refuse" in entry, read.names & inputs, not read.names <= before)
    )


def _judgement(program: Program, names: dict[str, Sort], path: Path, entry: Mapping[str, Any]) -> None:
    read = _condition(program, names, path, entry["test"]) if "test" in entry else None
    if read or "test" not in entry:
        program.judgements.append(Judgement(read, compiled(read) if read else lambda _: True, entry["say"]))


def _condition(program: Program, names: dict[str, Sort], path: Path, text: str) -> Expression | None:
    """The condition in a text; None, and an error of the program, where it is none."""
    try:
        read = read_expression(text, names)
        if read.sort != "condition":
            raise _refusal("no-condition")
    except ExpressionError as error:
        program.errors.append(((*path, "test"), error))
        return None
    return read
