"""What `pyproject.toml` says is needed to run is what the package imports: no library of the tests, and none unused."""

from __future__ import annotations

import ast
import re
import sys
import tomllib
from collections.abc import Iterator
from importlib.metadata import packages_distributions
from pathlib import Path

from latchside.root import ROOT

NOT_IMPORTED = {
    "mkdocs-material": "the theme, named in mkdocs.yml",
    "mkdocs-macros-plugin": "a plugin, named in mkdocs.yml",
    "setuptools": "builds the package itself",
}
"""Needed without an import, and why."""


def imported(module: Path) -> Iterator[str]:
    """The outermost packages that a module imports, at its top or in a function."""
    for node in ast.walk(ast.parse(module.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (name.name.split(".")[0] for name in node.names)
        elif isinstance(node, ast.ImportFrom) and not node.level and node.module:
            yield node.module.split(".")[0]


def plain(distribution: str) -> str:
    return re.sub(r"[-_.]+", "-", distribution).lower()


def test_dependencies_are_what_is_imported() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    declared = {plain(re.split(r"[<>=!~ ;\[]", one)[0]) for one in project["dependencies"]}
    packages = {name for module in (ROOT / "scripts" / "latchside").rglob("*.py") for name in imported(module)}
    outside = packages - set(sys.stdlib_module_names) - {"latchside"}
    provided = packages_distributions()
    found = {plain(next(iter(provided[name]))) for name in outside}
    assert found == declared - set(NOT_IMPORTED)
    assert set(NOT_IMPORTED) <= declared
