"""An author's expression, read through an allow-list into a small tree. Nothing of it is ever run as Python.

Allowed: finite decimal numbers, declared names, + - * / ** %, one-operator comparisons, the functions below,
`sum` and `smallest_at_least` over a declared list, and `piecewise(value, condition, …, default)`. A node is a
number or a condition; the two are never mixed. Everything else is refused with words for the author.
"""

from __future__ import annotations

import ast
import re
import warnings
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from latchside.messages import messages

message = messages(__name__)

LONGEST = 400  # characters
MOST_NODES = 200
DEEPEST = 25
LARGEST = 1e12  # of a constant; the smallest is one part of it
LARGEST_BASE = 1000.0  # of a power of constants
LARGEST_EXPONENT = 16.0

Sort = Literal["number", "condition", "list"]

FUNCTIONS: dict[str, tuple[int, int]] = {
    "sqrt": (1, 1), "log10": (1, 1), "log": (1, 1), "exp": (1, 1), "floor": (1, 1), "ceil": (1, 1), "abs": (1, 1),
    "atan": (1, 1), "acos": (1, 1), "cos": (1, 1), "sin": (1, 1), "tan": (1, 1), "min": (2, 8), "max": (2, 8),
}  # fmt: skip
"""Functions of numbers, each with the fewest and most arguments; angles are in radians, `log` is natural."""

LIST_FUNCTIONS = {"sum": 1, "smallest_at_least": 2}
"""Functions whose first argument is a declared list, each with its number of arguments."""

RESERVED = frozenset({*FUNCTIONS, *LIST_FUNCTIONS, "pi", "piecewise"})
"""Words an author cannot declare as a name."""

_SIGNS = re.compile(r"[^A-Za-z0-9_ .,()+\-*/%<>=!]")
_NUMBER = re.compile(r"(?:(?:0|[1-9]\d*)(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?\Z")
_OPERATORS: dict[type[ast.operator], str] = {
    ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Pow: "**", ast.Mod: "%",
}  # fmt: skip
_COMPARISONS: dict[type[ast.cmpop], str] = {
    ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=", ast.Eq: "==", ast.NotEq: "!=",
}  # fmt: skip


class ExpressionError(ValueError):
    """An expression that is refused: what was found in it, and what is allowed instead."""

    def __init__(self, found: str, expected: str) -> None:
        super().__init__(message("found-expected", found=found, expected=expected))
        self.found = found
        self.expected = expected


def _refusal(id: str, **values: str | int) -> ExpressionError:
    return ExpressionError(message(f"{id}.found", **values), message(f"{id}.expected", **values))


@dataclass(frozen=True)
class Number:
    """A constant, as the author wrote it."""

    value: float
    text: str


@dataclass(frozen=True)
class Name:
    """A declared name, or `pi`."""

    name: str


@dataclass(frozen=True)
class Sign:
    """`-operand` or `+operand`."""

    operator: str
    operand: Node


@dataclass(frozen=True)
class Binary:
    """`left operator right`: arithmetic gives a number, a comparison a condition."""

    operator: str
    left: Node
    right: Node


@dataclass(frozen=True)
class Call:
    """A function of numbers, or of a list and numbers."""

    function: str
    arguments: tuple[Node, ...]


@dataclass(frozen=True)
class Piecewise:
    """The value of the first condition that holds, else the default."""

    cases: tuple[tuple[Node, Node], ...]
    default: Node


Node = Number | Name | Sign | Binary | Call | Piecewise


@dataclass(frozen=True)
class Expression:
    """A read expression: the author's text, its tree, and whether it is a number or a condition."""

    text: str
    node: Node
    sort: Sort

    @property
    def names(self) -> frozenset[str]:
        """The declared names it uses."""
        return frozenset(node.name for node in walk(self.node) if isinstance(node, Name) and node.name != "pi")


def read_expression(text: str, names: Mapping[str, Sort]) -> Expression:
    """The expression in `text`, which may use `names`.

    Raises ExpressionError for everything that is not on the allow-list.
    """
    if len(text) > LONGEST:
        raise _refusal("too-long", length=str(len(text)), most=str(LONGEST))
    strange = _SIGNS.search(text)
    if strange:
        raise _refusal("strange-sign", sign=repr(strange[0]))
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            parsed = ast.parse(text.strip(), mode="eval")
    except (SyntaxError, ValueError, RecursionError, MemoryError, Warning):
        raise _refusal("no-expression") from None
    node, sort = _Reader(text.strip(), names).read(parsed.body, 1)
    if sort == "list":
        raise _refusal("list")
    return Expression(text, node, sort)


def walk(node: Node) -> Iterator[Node]:
    """The node and all below it."""
    yield node
    for below in children(node):
        yield from walk(below)


def children(node: Node) -> tuple[Node, ...]:
    """The nodes right below a node."""
    if isinstance(node, Sign):
        return (node.operand,)
    if isinstance(node, Binary):
        return node.left, node.right
    if isinstance(node, Call):
        return node.arguments
    if isinstance(node, Piecewise):
        return (*(part for case in node.cases for part in case), node.default)
    return ()


class _Reader:
    def __init__(self, text: str, names: Mapping[str, Sort]) -> None:
        self._text = text
        self._names = names
        self._nodes = 0

    def read(self, node: ast.expr, depth: int) -> tuple[Node, Sort]:
        self._nodes += 1
        if self._nodes > MOST_NODES:
            raise _refusal("many-parts", most=str(MOST_NODES))
        if depth > DEEPEST:
            raise _refusal("many-levels", most=str(DEEPEST))
        if isinstance(node, ast.Constant):
            return self._number(node), "number"
        if isinstance(node, ast.Name):
            return self._name(node)
        if isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub | ast.UAdd):
            return Sign("-" if isinstance(node.op, ast.USub) else "+", self._value(node.operand, depth)), "number"
        if isinstance(node, ast.BinOp) and type(node.op) in _OPERATORS:
            return self._binary(node, depth), "number"
        if isinstance(node, ast.Compare):
            return self._comparison(node, depth), "condition"
        if isinstance(node, ast.Call):
            return self._call(node, depth)
        raise _refusal("not-allowed", text=self._cut(node))

    def _value(self, node: ast.expr, depth: int) -> Node:
        return self._of_sort(node, depth, "number")

    def _of_sort(self, node: ast.expr, depth: int, wanted: Sort) -> Node:
        read, sort = self.read(node, depth + 1)
        if sort != wanted:
            raise _refusal("other-sort", text=self._cut(node), sort=sort, wanted=wanted)
        return read

    def _number(self, node: ast.Constant) -> Number:
        text = self._cut(node)
        if not _NUMBER.match(text):
            raise _refusal("no-decimal", text=text)
        value = float(text)
        if value and not 1 / LARGEST <= value <= LARGEST:
            raise _refusal("out-of-range", text=text, low=f"{1 / LARGEST:g}", high=f"{LARGEST:g}")
        return Number(value, text)

    def _name(self, node: ast.Name) -> tuple[Node, Sort]:
        if node.id == "pi":
            return Name("pi"), "number"
        if node.id not in self._names:
            known = ", ".join(sorted(self._names)[:12])
            raise _refusal("unknown-name", name=node.id, known=known)
        return Name(node.id), self._names[node.id]

    def _binary(self, node: ast.BinOp, depth: int) -> Binary:
        left, right = self._value(node.left, depth), self._value(node.right, depth)
        operator = _OPERATORS[type(node.op)]
        if operator == "**":
            self._power(node, left, right)
        return Binary(operator, left, right)

    def _power(self, node: ast.BinOp, base: Node, exponent: Node) -> None:
        if any(isinstance(below, Binary) and below.operator == "**" for below in (*walk(base), *walk(exponent))):
            raise _refusal("power-of-power", text=self._cut(node))
        fixed_base, fixed_exponent = _fixed(base), _fixed(exponent)
        if fixed_exponent is not None and abs(fixed_exponent) > LARGEST_EXPONENT:
            raise _refusal("large-exponent", text=self._cut(node), most=f"{LARGEST_EXPONENT:g}")
        if fixed_base is not None and abs(fixed_base) > LARGEST_BASE:
            raise _refusal("large-base", text=self._cut(node), most=f"{LARGEST_BASE:g}")
        if not any(isinstance(below, Name) for below in (*walk(base), *walk(exponent))) and None in (
            fixed_base, fixed_exponent,
        ):  # fmt: skip
            raise _refusal("unclear-power", text=self._cut(node))

    def _comparison(self, node: ast.Compare, depth: int) -> Binary:
        if len(node.ops) != 1 or type(node.ops[0]) not in _COMPARISONS:
            raise _refusal("comparisons", text=self._cut(node))
        left, right = self._value(node.left, depth), self._value(node.comparators[0], depth)
        return Binary(_COMPARISONS[type(node.ops[0])], left, right)

    def _call(self, node: ast.Call, depth: int) -> tuple[Node, Sort]:
        if not isinstance(node.func, ast.Name):
            raise _refusal("unknown-call", text=self._cut(node))
        name, count = node.func.id, len(node.args)
        if node.keywords or any(isinstance(argument, ast.Starred) for argument in node.args):
            raise _refusal("arguments", text=self._cut(node))
        if name == "piecewise":
            return self._piecewise(node, depth)
        if name in LIST_FUNCTIONS:
            if count != LIST_FUNCTIONS[name]:
                raise _refusal("list-arguments", count=count, function=name, needed=str(LIST_FUNCTIONS[name]))
            first = self._of_sort(node.args[0], depth, "list")
            return Call(name, (first, *(self._value(argument, depth) for argument in node.args[1:]))), "number"
        if name not in FUNCTIONS:
            known = ", ".join((*FUNCTIONS, *LIST_FUNCTIONS))
            raise _refusal("unknown-function", function=name, known=f"{known}, piecewise")
        low, high = FUNCTIONS[name]
        if not low <= count <= high:
            id_ = "other-count" if low == high else "count-out-of-range"
            raise _refusal(id_, count=count, function=name, low=str(low), high=str(high))
        return Call(name, tuple(self._value(argument, depth) for argument in node.args)), "number"

    def _piecewise(self, node: ast.Call, depth: int) -> tuple[Node, Sort]:
        count = len(node.args)
        if count < 3 or count % 2 == 0:
            raise _refusal("piecewise", count=count)
        values = [self.read(argument, depth + 1) for argument in (*node.args[:-1:2], node.args[-1])]
        conditions = [self._of_sort(argument, depth, "condition") for argument in node.args[1::2]]
        sorts = {sort for _, sort in values}
        if len(sorts) != 1 or "list" in sorts:
            raise _refusal("mixed", text=self._cut(node))
        nodes = [value for value, _ in values]
        return Piecewise(tuple(zip(nodes[:-1], conditions, strict=True)), nodes[-1]), sorts.pop()

    def _cut(self, node: ast.expr) -> str:
        text = self._text[node.col_offset : node.end_col_offset]
        return text if len(text) <= 60 else text[:59] + "…"


def _fixed(node: Node) -> float | None:
    """The value of a plain number, with its sign; None for anything else."""
    if isinstance(node, Sign):
        below = _fixed(node.operand)
        return below if below is None or node.operator == "+" else -below
    return node.value if isinstance(node, Number) else None
