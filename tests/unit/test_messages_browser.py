"""The words of the browser: each message gives under node what Python's Fluent gives; the rest of Fluent is refused."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Iterator
from itertools import product
from pathlib import Path

import pytest
from fluent.syntax import FluentParser, ast

from latchside.messages import Messages, resource
from latchside.messages.javascript import (
    UnknownSyntaxError,
    browser_files,
    camel,
    functions,
    scripts,
    types,
)
from latchside.root import ROOT

from ..node import NODE

COUNTS = [0, 1, 2, 21, 1234567]
TEXTS = ["Front door", "{ \\ } ` ${x} \u201c\u00e9\u201d"]
RUN = """
import { readFileSync } from "node:fs";
const asked = JSON.parse(readFileSync(0, "utf8"));
const said = [];
for (const { script, file, id, values } of asked) said.push((await import(script))[file][id](values));
process.stdout.write(JSON.stringify(said));
"""


def variants(node: ast.Pattern, name: str) -> Iterator[str]:
    """The words that choose by a value, wherever in a message."""
    for placeable in node.elements:
        inner = placeable.expression if isinstance(placeable, ast.Placeable) else None
        if isinstance(inner, ast.SelectExpression):
            assert isinstance(inner.selector, ast.VariableReference)
            for variant in inner.variants:
                if inner.selector.id.name == name and isinstance(variant.key, ast.Identifier):
                    yield variant.key.name
                yield from variants(variant.value, name)


def cases() -> Iterator[tuple[str, str, dict[str, str | int]]]:
    """Each message of each file with several sets of values."""
    for file in browser_files():
        for entry in resource(file).body:
            if isinstance(entry, ast.Message) and entry.value:
                taken = types(entry.value)
                kinds: dict[str, list[str | int]] = {"number": [*COUNTS], "string | number": [*TEXTS, 1234567]}
                tried: list[list[str | int]] = [
                    kinds.get(sort) or [*variants(entry.value, name), "else"] for name, sort in taken.items()
                ]
                for values in product(*tried):
                    yield file, entry.id.name, dict(zip(taken, values, strict=True))


def test_every_message_says_the_same_in_the_browser(tmp_path: Path) -> None:
    (tmp_path / "assets/js/core").mkdir(parents=True)
    core = ROOT / "content/assets/js/core/message.js"
    (tmp_path / "assets/js/core/message.js").write_text(core.read_text("utf-8"), "utf-8")
    for path, text in scripts().items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_text(text, "utf-8")
    (tmp_path / "package.json").write_text('{"type": "module"}', "utf-8")
    (tmp_path / "run.js").write_text(RUN, "utf-8")
    tried = list(cases())
    asked = [
        {
            "script": f"./assets/js/messages/{file.split('/')[1]}.js",
            "file": camel(file.rpartition("/")[2]),
            "id": camel(id),
            "values": values,
        }
        for file, id, values in tried
    ]
    run = subprocess.run(
        [NODE, tmp_path / "run.js"], input=json.dumps(asked), capture_output=True, text=True, check=True
    )
    ours = [str(Messages(file)(id, **values)) for file, id, values in tried]
    assert len(ours) > 1000
    assert json.loads(run.stdout) == ours


@pytest.mark.parametrize(
    "source",
    [
        "a = b\n    .c = d",
        "-a = b",
        "a = { b }",
        "a = { -b }",
        "a = { NUMBER($b) }",
        "a = { 5 }",
        "a = { $b-c }",
        "a = { NUMBER($b) ->\n   *[other] c\n }",
    ],
)
def test_what_the_emitter_does_not_know_is_refused(source: str) -> None:
    with pytest.raises(UnknownSyntaxError):
        "".join(functions(FluentParser().parse(source)))
