"""The libraries of the pages are those of the packages that `package.json` pins, byte for byte."""

from __future__ import annotations

import json

import pytest

from latchside.root import ROOT

VENDOR = ROOT / "content/assets/js/vendor"
PACKAGES = ROOT / "node_modules"
SOURCES = {"lit-html.js": "lit-html/lit-html.js"}
"""Each file, and where its package has it."""


def test_every_library_has_its_package() -> None:
    assert {path.name for path in VENDOR.glob("*.js")} == set(SOURCES)
    pinned = json.loads((ROOT / "package.json").read_text("utf-8"))["devDependencies"]
    locked = json.loads((ROOT / "package-lock.json").read_text("utf-8"))["packages"]
    for source in SOURCES.values():
        name = source.split("/")[0]
        assert locked[f"node_modules/{name}"]["version"] == pinned[name]


@pytest.mark.parametrize("name", SOURCES)
def test_a_library_is_the_file_of_its_package(name: str) -> None:
    source = PACKAGES / SOURCES[name]
    if not source.exists():
        pytest.skip("no packages: run `make lint` once, or `npm ci`")
    assert (VENDOR / name).read_bytes() == source.read_bytes()


def test_a_library_says_its_licence_where_it_is_served() -> None:
    assert "SPDX-License-Identifier: BSD-3-Clause" in (VENDOR / "lit-html.js").read_text("utf-8")
