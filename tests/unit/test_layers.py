"""Imports point one way, modules stay small, and nothing depends on the clock, on chance or on a network."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

import latchside

from ..each import each

PACKAGE = Path(latchside.__file__).parent
MODULES = sorted(PACKAGE.rglob("*.py"))
LAYERS: tuple[set[str], ...] = (
    {"messages"},
    {
        "all_cores",
        "archive",
        "blanks",
        "cluster",
        "collector",
        "escape",
        "findings",
        "kinds",
        "many",
        "out",
        "qr",
        "reads",
        "root",
        "version",
    },
    {"markup"},
    {"templating"},
    {"read"},
    {"schemas"},
    {"library", "drawings"},
    {"figures"},
    {"rules", "order", "charts", "visits", "new"},
    {"surveys"},
    {"planning"},
    {"packs"},
    {"pages", "project", "report"},
    {"in_page"},
    {"site"},
    {"cli"},
)
"""What stands above may be imported by what stands below, never the other way; those on one line do not meet."""

LONGEST_MODULE = 300
LONGEST_FUNCTION = 40


def layer(part: str) -> int:
    return next(number for number, parts in enumerate(LAYERS) if part in parts)


def part_of(path: Path) -> str:
    """The part of the package a module belongs to: its folder, or its own name."""
    first = path.relative_to(PACKAGE).parts[0]
    return first.removesuffix(".py")


@cache
def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text("utf-8"))


@cache
def nodes(path: Path) -> tuple[ast.AST, ...]:
    return tuple(ast.walk(tree(path)))


def imported(path: Path) -> Iterator[str]:
    """Every module that is imported, wherever in the file."""
    for node in nodes(path):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: name the whole module"
            yield node.module or ""
            yield from (f"{node.module}.{name.name}" for name in node.names)


def name(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


def test_every_part_has_a_layer() -> None:
    parts = {part_of(path) for path in MODULES} - {"__init__"}
    assert parts == set().union(*LAYERS)


@each("path", MODULES, ids=name)
def test_imports_point_one_way(path: Path) -> None:
    part = part_of(path)
    for module in imported(path):
        if not module.startswith("latchside."):
            continue
        other = module.split(".")[1]
        if other != part and any(other in parts for parts in LAYERS):
            assert layer(other) < layer(part), f"{part} imports {other}"


@each("path", MODULES, ids=name)
def test_the_site_generator_is_known_in_one_place(path: Path) -> None:
    if part_of(path) != "site":
        generator = {"mkdocs", "material", "mkdocs_macros", "markdown"}
        assert not generator & {module.split(".")[0] for module in imported(path)}


@pytest.mark.parametrize("module", ["latchside.project", "latchside.pages", "latchside.cli"])
def test_checking_does_not_load_the_site_generator(module: str) -> None:
    slow = "{'mkdocs', 'markdown', 'pint', 'jsonschema'}"
    code = f"import sys, {module}; print(sorted({{name.split('.')[0] for name in sys.modules}} & {slow}))"
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert shown.stdout.strip() == "[]"


CHANCE = {"random", "secrets", "uuid"}
NETWORK = {"socket", "ssl", "http", "urllib.request", "requests", "asyncio"}
SERVER = "site/serve.py"
"""The preview answers a browser on the same machine. No other module may meet it but the command that starts it."""
CLOCK = {"time", "datetime"}
STEADY = {"datetime.UTC", "datetime.date", "datetime.datetime", "datetime.timedelta", "uuid.UUID", "uuid.uuid5"}
"""A day that is passed in, and an id made from a name, are the same on every run."""
ASKS_A_CLOCK = {"today", "now", "utcnow", "fromtimestamp"}


@each("path", MODULES, ids=name)
def test_nothing_depends_on_chance_clock_or_network(path: Path) -> None:
    """The same records give the same bytes, and the build works without a network."""
    modules = list(imported(path))
    steady = {module.split(".")[0] for module in modules if module in STEADY}
    for module in modules:
        top = module.split(".")[0]
        if name(path) != SERVER:
            assert module not in NETWORK, module
            assert top not in NETWORK, module
            assert not module.startswith("latchside.site.serve") or name(path) == "cli/serve.py", module
        if module not in STEADY and not (module in steady and module == top):
            assert top not in CHANCE, module
            if part_of(path) != "cli":  # the command alone looks at the clock, to say what takes long
                assert top not in CLOCK, module
    asked = {node.attr for node in nodes(path) if isinstance(node, ast.Attribute)}
    assert not asked & ASKS_A_CLOCK


EMITTER = "figures/emit.py"
"""The one module that compiles code: what it has emitted itself from a tree of allowed parts, no author's text."""


@each("path", MODULES, ids=name)
def test_nothing_of_a_record_is_run(path: Path) -> None:
    for node in nodes(path):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            refused = {"exec", "__import__"} if name(path) == EMITTER else {"exec", "__import__", "eval", "compile"}
            assert node.func.id not in refused, node.lineno
        if isinstance(node, ast.Attribute):
            assert node.attr not in ("unsafe_load", "full_load", "UnsafeLoader", "system", "popen"), node.lineno
    refused = {"pickle", "marshal", "shelve", "ctypes"}
    if part_of(path) != "site":  # which asks the project's history for the date of a copy
        refused.add("subprocess")
    assert not refused & set(imported(path))


@each("path", MODULES, ids=name)
def test_module_is_short(path: Path) -> None:
    assert len(path.read_text("utf-8").splitlines()) <= LONGEST_MODULE


def length(node: ast.AST) -> int:
    """Lines of a function, without those of functions written inside it, which count for themselves."""
    assert isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    inner = [one for one in ast.walk(node) if isinstance(one, ast.FunctionDef) and one is not node]
    covered = {line for one in inner for line in range(one.lineno - len(one.decorator_list), (one.end_lineno or 0) + 1)}
    return len([line for line in range(node.lineno, (node.end_lineno or 0) + 1) if line not in covered])


@each("path", MODULES, ids=name)
def test_functions_are_short(path: Path) -> None:
    long = {
        node.name: length(node)
        for node in nodes(path)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and length(node) > LONGEST_FUNCTION
    }
    assert long == {}


@each("path", MODULES, ids=name)
def test_every_module_says_what_it_is(path: Path) -> None:
    assert (ast.get_docstring(tree(path)) or "").strip()
