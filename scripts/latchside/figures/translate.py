"""A model's module as JavaScript, so that a page works out what Python does: one source for each formula.

A model is plain Python: numbers, texts, lists, dicts, frozen records, functions, loops and comprehensions. What is not
known here is refused with its line, and the page of the figure then has no calculator. What the translation calls is
`content/assets/js/figure/python.js`, as `P`.
"""

from __future__ import annotations

import ast
import inspect
from collections.abc import Iterator, Mapping
from functools import cache
from importlib import import_module
from types import ModuleType

from latchside.figures.translate_expressions import Scope, Shape, UntranslatableError, expression, name_of
from latchside.figures.translate_statements import body
from latchside.messages import resource
from latchside.messages.javascript import functions

MODELS = "latchside.figures.models"
MESSAGES = "const message = {{\n{words}}};"

_OURS = "latchside.figures."
_UNSEEN = {"__future__", "collections.abc", "dataclasses", "functools", "typing", "latchside.messages"}
"""Modules whose names say nothing at run time, or are known by themselves."""
_NATIVE = {
    "math": {
        **{name: f"Math.{name}" for name in ("sqrt", "log", "log10", "exp", "sin", "cos", "atan2", "hypot", "floor")},
        "pi": "Math.PI", "inf": "Infinity", "copysign": "P.copysign",
    },
    "itertools": {name: f"P.{name}" for name in ("pairwise", "product", "combinations")},
    "latchside.figures.arithmetic": {"deviate": "P.deviate"},
}  # fmt: skip
"""What JavaScript has for a name that is imported."""


def model_scripts(models: list[str]) -> str:
    """The modules of models and of what they import, each a constant with its functions; the imported ones first."""
    wanted: dict[str, None] = {}
    for model in models:
        _collect(import_module(f"{MODELS}.{model.replace('-', '_')}"), wanted)
    return "".join(_script(import_module(name)) for name in wanted)


def translatable(model: str) -> bool:
    """Whether a model can be worked out in a page."""
    try:
        model_scripts([model])
    except UntranslatableError:
        return False
    return True


def compute_call(model: str) -> str:
    """The JavaScript function that works a model out for `v`, its inputs by name."""
    module = import_module(f"{MODELS}.{model.replace('-', '_')}")
    names = inspect.signature(module.compute).parameters
    return f"(v) => {_constant(module.__name__)}.compute({', '.join(f'v.{name}' for name in names)})"


def _collect(module: ModuleType, wanted: dict[str, None]) -> None:
    for node in _tree(module.__name__).body:
        if isinstance(node, ast.ImportFrom) and _is_ours(node.module or ""):
            _collect(import_module(str(node.module)), wanted)
    wanted.setdefault(module.__name__)


def _is_ours(module: str) -> bool:
    return module.startswith(_OURS) and module not in _NATIVE


@cache
def _tree(module: str) -> ast.Module:
    return ast.parse(inspect.getsource(import_module(module)))


def _constant(module: str) -> str:
    return module.removeprefix(_OURS).replace(".", "_")


def _shapes(tree: ast.Module) -> dict[str, Shape]:
    """The functions and records of a module, each with the names of its arguments."""
    found: dict[str, Shape] = {}
    for node in tree.body:
        if isinstance(node, ast.FunctionDef):
            found[node.name] = tuple(one.arg for one in (*node.args.args, *node.args.kwonlyargs))
        elif isinstance(node, ast.ClassDef):
            found[node.name] = tuple(name for name, _ in _fields(node))
    return found


def _fields(node: ast.ClassDef) -> Iterator[tuple[str, ast.expr | None]]:
    for one in node.body:
        if isinstance(one, ast.AnnAssign) and isinstance(one.target, ast.Name):
            yield one.target.id, one.value
        elif not (isinstance(one, ast.Expr) and isinstance(one.value, ast.Constant)):
            raise UntranslatableError(one, "a record holds fields alone")


def _script(module: str | ModuleType) -> str:
    name = module if isinstance(module, str) else module.__name__
    tree = _tree(name)
    scope = Scope(dict(_imported(tree)), {**_shapes(tree), **_imported_shapes(tree)}, frozenset(_named(tree)))
    parts = [part for node in tree.body for part in _top(node, scope, name)]
    public = [one for one in _shapes(tree) if not one.startswith("_")]
    return f"const {_constant(name)} = (() => {{\n{chr(10).join(parts)}\nreturn {{ {', '.join(public)} }};\n}})();\n"


def _named(tree: ast.Module) -> Iterator[str]:
    """Every name that the module gives to something."""
    for node in ast.walk(tree):
        if isinstance(node, ast.arg):
            yield node.arg
        elif isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node.name
        elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
            yield node.id


def _imported(tree: ast.Module) -> Iterator[tuple[str, str]]:
    """What each imported name is in JavaScript."""
    for node in tree.body:
        if not isinstance(node, ast.ImportFrom) or node.module in _UNSEEN:
            continue
        for alias in node.names:
            if _is_ours(str(node.module)):
                yield alias.asname or alias.name, f"{_constant(str(node.module))}.{alias.name}"
            elif alias.name in _NATIVE.get(str(node.module), {}):
                yield alias.asname or alias.name, _NATIVE[str(node.module)][alias.name]
            else:
                raise UntranslatableError(node, f"{node.module}.{alias.name} has no JavaScript")


def _imported_shapes(tree: ast.Module) -> Mapping[str, Shape]:
    found: dict[str, Shape] = {}
    for node in tree.body:
        if isinstance(node, ast.ImportFrom) and _is_ours(str(node.module)):
            shapes = _shapes(_tree(str(node.module)))
            found |= {alias.name: shapes[alias.name] for alias in node.names if alias.name in shapes}
    return found


def _top(node: ast.stmt, scope: Scope, module: str) -> Iterator[str]:
    """A statement of the module itself."""
    if isinstance(node, ast.FunctionDef):
        yield _function(node, scope)
    elif isinstance(node, ast.ClassDef):
        fields = list(_fields(node))
        taken = ", ".join(_argument(name, value, scope) for name, value in fields)
        yield f"const {node.name} = ({taken}) => ({{ {', '.join(name_of(name) for name, _ in fields)} }});"
    elif isinstance(node, ast.Assign | ast.AnnAssign):
        yield from _constant_of(node, scope, module)
    elif isinstance(node, ast.Import):
        raise UntranslatableError(node, "names are imported with from")
    elif not isinstance(node, ast.ImportFrom) and not _is_text(node):
        raise UntranslatableError(node, f"{type(node).__name__} does not stand in a module")


def _is_text(node: ast.stmt) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)


def _constant_of(node: ast.Assign | ast.AnnAssign, scope: Scope, module: str) -> Iterator[str]:
    target = node.targets[0] if isinstance(node, ast.Assign) else node.target
    if isinstance(target, ast.Name) and target.id == "message":
        words = "".join(functions(resource(module.removeprefix("latchside.").replace(".", "/"))))
        yield MESSAGES.format(words=words)
    elif node.value is not None and not _is_type(node.value):
        yield f"const {expression(target, scope)} = {expression(node.value, scope)};"


def _is_type(node: ast.expr) -> bool:
    """A name for a type, which JavaScript does without."""
    return isinstance(node, ast.Subscript) and isinstance(node.value, ast.Name) and node.value.id == "Literal"


def _argument(name: str, default: ast.expr | None, scope: Scope) -> str:
    return name_of(name) if default is None else f"{name_of(name)} = {expression(default, scope)}"


def _function(node: ast.FunctionDef, scope: Scope) -> str:
    given = node.args
    if given.vararg or given.kwarg or given.posonlyargs:
        raise UntranslatableError(node, "arguments are named one by one")
    late: list[ast.expr | None] = [*[None] * (len(given.args) - len(given.defaults)), *given.defaults]
    taken = [
        *(_argument(one.arg, default, scope) for one, default in zip(given.args, late, strict=True)),
        *(_argument(one.arg, default, scope) for one, default in zip(given.kwonlyargs, given.kw_defaults, strict=True)),
    ]
    names = {one.arg for one in (*given.args, *given.kwonlyargs)}
    return f"function {name_of(node.name)}({', '.join(taken)}) {{\n{body(node.body, scope, names)}\n}}"
