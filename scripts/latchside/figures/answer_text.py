"""An answer as a person or a program reads it: text for a terminal, and a JSON object."""

from __future__ import annotations

import json
import math
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

from latchside.figures.catalogue import Answer, Figure
from latchside.figures.typed import shown_value
from latchside.figures.units import figure as rounded
from latchside.figures.units import with_unit
from latchside.kinds import KINDS
from latchside.messages import messages
from latchside.read.yaml_text import read_text
from latchside.root import schema_folder

message = messages(__name__)


def as_json(figure: Figure, answer: Answer, root: Path) -> str:
    """The outputs by name at the top level, beside what went in and what is said of them."""
    return json.dumps(
        _plain(
            {
                **answer.outputs,
                "figure": figure.id,
                "units": {one["name"]: one["unit"] for one in figure.data["outputs"] if "unit" in one},
                "inputs": answer.inputs,
                "judgement": answer.judgement,
                "warnings": list(answer.warnings),
                "formula": figure.formula,
                "sources": list(sources(figure, root)),
            }
        ),
        ensure_ascii=False,
        indent=2,
    )


def as_text(figure: Figure, answer: Answer, given: Mapping[str, object], root: Path) -> str:
    """What went in, what came out, what has to be said with it, the formula and where it comes from."""
    lines = [figure.name, ""]
    names = {key.strip().lower().replace("-", "_") for key in given}
    for one in figure.inputs:
        value = answer.inputs[one.name]
        if value is not None:
            line = f"  {one.name} = {_shown(value, one.unit, shown_value)}"
            lines.append(line if names & {one.name, one.bare} else f"{line}  {message('default')}")
    lines.append("")
    for entry in figure.data["outputs"]:
        lines += _output(figure, entry, answer.outputs[entry["name"]])
    lines += ["", *([answer.judgement] if answer.judgement else ()), *(f"! {words}" for words in answer.warnings)]
    lines += [figure.plain_text(figure.data["meaning"]), ""]
    lines += [message("formula"), *(f"  {line}" for line in figure.formula.splitlines())]
    lines += [message("sources"), *(f"  {_source(source)}" for source in sources(figure, root))]
    return "\n".join(lines)


def listing(figures: Mapping[str, Figure]) -> str:
    """Every figure with its inputs and outputs."""
    lines = []
    for figure in figures.values():
        lines.append(f"{figure.id}: {figure.name}")
        outputs = ", ".join(entry["name"] for entry in figure.data["outputs"])
        lines.append(f"  {message('takes', inputs=', '.join(_taken(figure)))}")
        lines.append(f"  {message('gives', outputs=outputs)}")
    return "\n".join(lines)


def listing_json(figures: Mapping[str, Figure]) -> str:
    """Every figure as a JSON list: id, name, inputs with what they accept, outputs with their units."""
    return json.dumps(
        [
            {
                "id": figure.id,
                "name": figure.name,
                "inputs": [
                    {
                        "name": one.name, "label": one.label, "unit": one.unit, "accepts": one.accepts,
                        "default": one.default, "optional": one.optional, "instead_of": one.instead_of,
                        "when": dict(one.when),
                    }
                    for one in figure.inputs
                ],
                "outputs": [
                    {"name": entry["name"], "label": entry["label"], "unit": entry.get("unit", "")}
                    for entry in figure.data["outputs"]
                ],
            }
            for figure in figures.values()
        ],
        ensure_ascii=False,
        indent=2,
    )  # fmt: skip


def sources(figure: Figure, root: Path) -> Iterator[dict[str, str]]:
    """What the figure rests on: status in words, and the source's name and what was taken from it, where it has one."""
    vocabulary = json.loads((schema_folder(root) / "vocabulary.schema.json").read_text("utf-8"))
    words = vocabulary["$defs"]["status"]["x-words"]
    for entry in figure.data["basis"]:
        source = {"status": words[entry["status"]]}
        if "source" in entry:
            path = root / KINDS["source"].folder / f"{entry['source']}.yaml"
            record = read_text(path.read_text("utf-8"), path.name).value if path.is_file() else None
            name = record.get("name") if isinstance(record, dict) else None
            source |= {"source": entry["source"], "name": str(name or entry["source"])}
        if "note" in entry:
            source["note"] = figure.plain_text(entry["note"])
        yield source


def _source(source: Mapping[str, str]) -> str:
    name = f"{source['name']} – " if "name" in source else ""
    note = f": {source['note']}" if "note" in source else ""
    return f"{name}{source['status']}{note}"


def _taken(figure: Figure) -> Iterator[str]:
    for one in figure.inputs:
        if one.instead_of:
            yield message("instead-of", input=one.name, other=one.instead_of)
        elif one.default is not None:
            yield f"{one.name}={_default(one.default)}"
        else:
            yield message("optional", input=one.name) if one.optional else one.name


def _default(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    return ",".join(map(str, value)) if isinstance(value, list | tuple) else str(value)


def _output(figure: Figure, entry: Mapping[str, Any], value: Any) -> Iterator[str]:
    unit = entry.get("unit", "")
    label = figure.plain_text(entry["label"])
    if isinstance(value, Mapping):
        yield f"  {entry['name']}  {label}"
        for name, below in value.items():
            cells = below.items() if isinstance(below, Mapping) else [("", below)]
            yield f"    {name}: " + ", ".join(f"{key} {_shown(one, '')}".strip() for key, one in cells)
    else:
        yield f"  {entry['name']} = {_shown(value, unit)}  {label}"


def _rounded(value: float, unit: str) -> str:
    return with_unit(rounded(value), unit).replace("\u00a0", " ")


def _shown(value: Any, unit: str, write: Callable[[float, str], str] = _rounded) -> str:
    if value is None:
        return message("none")
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        return write(float(value), unit)
    if isinstance(value, list | tuple):
        return ", ".join(_shown(one, unit, write) for one in value) or message("none")
    if isinstance(value, Mapping):
        return ", ".join(f"{key} {_shown(one, unit, write)}" for key, one in value.items())
    return str(value)


def _plain(value: Any) -> Any:
    """The value as JSON can hold it: what is no finite number becomes null."""
    if isinstance(value, float):
        return value if math.isfinite(value) else None
    if isinstance(value, Mapping):
        return {str(key): _plain(below) for key, below in value.items()}
    return [_plain(below) for below in value] if isinstance(value, list | tuple) else value
