"""The libraries of the pages are those of the packages that `package.json` pins, byte for byte."""

from __future__ import annotations

import json

import pytest

from latchside.root import ROOT
from vendor import PACKAGES, SOURCES, VENDOR, library, unpacked

LICENCES = {"lit-html": "SPDX-License-Identifier: BSD-3-Clause", "minisearch": "@license MIT"}


def test_every_library_has_its_package() -> None:
    served = {path.relative_to(VENDOR).as_posix() for path in VENDOR.rglob("*") if path.is_file()}
    assert {name for name in served if not name.endswith((".d.ts", ".d.mts", ".txt"))} == set(SOURCES)
    pinned = json.loads((ROOT / "package.json").read_text("utf-8"))["devDependencies"]
    locked = json.loads((ROOT / "package-lock.json").read_text("utf-8"))["packages"]
    for source in SOURCES.values():
        name = source.split("/")[0]
        assert locked[f"node_modules/{name}"]["version"] == pinned[name]


@pytest.mark.parametrize("name", SOURCES)
def test_a_library_is_that_of_its_package(name: str) -> None:
    if not (PACKAGES / SOURCES[name]).exists():
        pytest.skip("no packages: run `make lint` once, or `npm ci`")
    assert unpacked(name, (VENDOR / name).read_bytes()) == unpacked(name, library(name))


def test_python_has_its_licences_beside_it() -> None:
    text = (VENDOR / "pyodide/LICENCE.txt").read_text("utf-8")
    pinned = json.loads((ROOT / "package.json").read_text("utf-8"))["devDependencies"]["pyodide"]
    assert all(word in text for word in (pinned, "Mozilla Public License 2.0", "Python Software Foundation License"))


@pytest.mark.parametrize("name", [name for name in SOURCES if not name.startswith("pyodide/")])
def test_a_library_says_its_licence_where_it_is_served(name: str) -> None:
    assert LICENCES[SOURCES[name].split("/")[0]] in (VENDOR / name).read_text("utf-8")
    assert "Copyright" in (VENDOR / name).read_text("utf-8")
