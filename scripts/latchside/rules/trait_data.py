"""A profile states the values and lists the parts that its traits ask for, and none that do not fit them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.traits import traits
from latchside.messages import listed, messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "trait-data"
Asked = Mapping[str, tuple[str, ...]]


def check(library: Library) -> Iterator[Finding]:
    """Each device has the values and the roles of parts that the vocabulary asks of its traits, and no others."""
    vocabulary = library.schemas.documents[VOCABULARY]["$defs"]
    for device in library.of("device"):
        yield from _needed(library, device, "values", set(device["values"]), vocabulary["value-name"])
        yield from _needed(library, device, "parts", set(traits(device).roles), vocabulary["part-role"])
        yield from _foreign(library, device, vocabulary)


def _needed(
    library: Library, device: Record, where: str, known: set[str], words: Mapping[str, Any]
) -> Iterator[Finding]:
    for name, asked in words["x-needs"].items():
        if name not in known and traits(device).fit(asked):
            problem = message.finding(
                "value-not-stated" if where == "values" else "part-not-listed",
                name=name,
                word=words["x-words"][name],
                traits=_stated(asked, library),
            )
            yield device.finding(CODE, (where,), *problem)


def _foreign(library: Library, device: Record, vocabulary: Mapping[str, Any]) -> Iterator[Finding]:
    own = traits(device)
    values = [(("values", name), name, vocabulary["value-name"]) for name in device["values"]]
    parts = [(("parts", index, "role"), one.role, vocabulary["part-role"]) for index, one in enumerate(own.parts)]
    for path, name, words in (*values, *parts):
        asked = words["x-only"].get(name)
        if asked and not own.fit(asked):
            problem = message.finding("does-not-fit", name=name, traits=_stated(asked, library))
            yield device.finding(CODE, path, *problem)


def _stated(asked: Asked, library: Library) -> str:
    """Traits in words: `reports: on a loop of its own or by radio`."""
    vocabulary_of = {"parts": "part-role", "inputs": "input-kind"}
    stated = [
        f"{name}: {listed([library.schemas.words(vocabulary_of.get(name, name))[word] for word in words], 'or')}"
        for name, words in asked.items()
    ]
    return listed(stated)


RULE = Rule(CODE, check)
