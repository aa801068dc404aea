"""What a figure declares fits together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pkgutil import iter_modules
from typing import Any

from latchside.figures import models
from latchside.figures.inputs import declared
from latchside.figures.typed import TypedError
from latchside.findings import Finding, did_you_mean
from latchside.library import Library, Record
from latchside.messages import listed, messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "formula-input"
_SORTS = ("choices", "list", "yes_no", "integer")


def check(library: Library) -> Iterator[Finding]:
    """Defaults are accepted, inputs name inputs that exist, what is out of view may be, and a model is there."""
    known_models = sorted(module.name.replace("_", "-") for module in iter_modules(models.__path__))
    for record in library.of("formula"):
        names = [entry["name"] for entry in record["inputs"]]
        for index, entry in enumerate(record["inputs"]):
            yield from _entry(record, index, entry, names)
        model = record.get("model")
        if model is not None and model not in known_models:
            problem = message.finding("no-such-model", model=model, models=", ".join(known_models))
            yield record.finding(CODE, ("model",), *problem)


def _entry(record: Record, index: int, entry: Mapping[str, Any], names: list[str]) -> Iterator[Finding]:
    path = ("inputs", index)
    if entry.get("min", 0) > entry.get("max", entry.get("min", 0)):
        problem = message.finding("limits-crossed", least=str(entry["min"]), most=str(entry["max"]))
        yield record.finding(CODE, path, *problem)
    sorts = [sort for sort in _SORTS if entry.get(sort)]
    if len(sorts) > 1:
        yield record.finding(CODE, path, *message.finding("several-sorts", sorts=listed(sorts)))
    other = entry.get("instead_of")
    if other is not None and (other not in names or other == entry["name"]):
        problem = message.finding("no-other-input", input=other, hint=did_you_mean(other, set(names) - {entry["name"]}))
        yield record.finding(CODE, (*path, "instead_of"), *problem)
    if entry.get("more") and not entry.get("optional") and "default" not in entry:
        yield record.finding(CODE, (*path, "more"), *message.finding("more-needed", input=entry["name"]))
    yield from _when(record, path, entry)
    if "default" in entry and len(sorts) < 2:
        try:
            declared([entry])[0].read(entry["default"])
        except TypedError as error:
            yield record.finding(CODE, (*path, "default"), *message.finding("default-refused", why=str(error)))


def _when(record: Record, path: tuple[str, int], entry: Mapping[str, Any]) -> Iterator[Finding]:
    choices = {one["name"]: one["choices"] for one in record["inputs"] if "choices" in one}
    for name, word in entry.get("when", {}).items():
        if word not in choices.get(name, {}):
            problem = message.finding("no-such-choice", input=name, word=str(word))
            yield record.finding(CODE, (*path, "when", name), *problem)


RULE = Rule(CODE, check)
