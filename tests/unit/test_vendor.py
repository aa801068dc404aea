"""The libraries of the pages are those of the packages that `package.json` pins, byte for byte."""

from __future__ import annotations

import json

import pytest

from latchside.root import ROOT
from vendor import PACKAGES, SOURCES, VENDOR, library

LICENCES = {"lit-html.js": "SPDX-License-Identifier: BSD-3-Clause", "minisearch.js": "@license MIT"}


def test_every_library_has_its_package() -> None:
    assert {path.name for path in VENDOR.glob("*.js")} == set(SOURCES)
    pinned = json.loads((ROOT / "package.json").read_text("utf-8"))["devDependencies"]
    locked = json.loads((ROOT / "package-lock.json").read_text("utf-8"))["packages"]
    for source in SOURCES.values():
        name = source.split("/")[0]
        assert locked[f"node_modules/{name}"]["version"] == pinned[name]


@pytest.mark.parametrize("name", SOURCES)
def test_a_library_is_that_of_its_package(name: str) -> None:
    if not (PACKAGES / SOURCES[name]).exists():
        pytest.skip("no packages: run `make lint` once, or `npm ci`")
    assert (VENDOR / name).read_bytes() == library(name).encode("utf-8")


@pytest.mark.parametrize("name", SOURCES)
def test_a_library_says_its_licence_where_it_is_served(name: str) -> None:
    assert LICENCES[name] in (VENDOR / name).read_text("utf-8")
    assert "Copyright" in (VENDOR / name).read_text("utf-8")
