"""A profile states the values and lists the parts that its traits ask for, and none that do not fit them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.rounding import joined
from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.traits import traits
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

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
            what = f"the value {name}" if where == "values" else f"a part that is a {words['x-words'][name]}"
            yield device.finding(
                CODE, (where,), f"nothing states {what}, and the device is one with {_said(asked, library)}",
                f"{name} under {where}" if where == "values" else f"a part with role: {name}",
                "Add it, or correct the traits.",
            )  # fmt: skip


def _foreign(library: Library, device: Record, vocabulary: Mapping[str, Any]) -> Iterator[Finding]:
    own = traits(device)
    stated = [(("values", name), name, vocabulary["value-name"]) for name in device["values"]]
    listed = [(("parts", index, "role"), one.role, vocabulary["part-role"]) for index, one in enumerate(own.parts)]
    for path, name, words in (*stated, *listed):
        asked = words["x-only"].get(name)
        if asked and not own.fit(asked):
            yield device.finding(
                CODE, path, f"{name}, and the device is none with {_said(asked, library)}",
                "what goes with its traits", "Take it out, or correct the traits.",
            )  # fmt: skip


def _said(asked: Asked, library: Library) -> str:
    """Traits in words: `reports: on a loop of its own or by radio`."""
    of = {"parts": "part-role", "inputs": "input-kind"}
    said = [
        f"{name}: {joined([library.schemas.words(of.get(name, name))[word] for word in words], 'or')}"
        for name, words in asked.items()
    ]
    return joined(said)


RULE = Rule(CODE, check)
