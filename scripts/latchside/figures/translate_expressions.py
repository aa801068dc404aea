"""Expressions of plain Python as JavaScript, every operation in brackets so that no precedence decides anything.

A list or tuple is an array, a dict and a record an object, None null. Truth and iteration go through `P`, because an
empty array is true in JavaScript and an object cannot be gone through.
"""

from __future__ import annotations

import ast
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from latchside.messages.javascript import camel

Shape = tuple[str, ...]
"""The names of the arguments of a function or record, in order."""

_OPERATORS: dict[type[ast.operator], str] = {
    ast.Add: "({} + {})", ast.Sub: "({} - {})", ast.Mult: "({} * {})", ast.Div: "({} / {})", ast.Pow: "({} ** {})",
    ast.FloorDiv: "Math.floor({} / {})", ast.Mod: "P.mod({}, {})",
}  # fmt: skip
_COMPARISONS: dict[type[ast.cmpop], str] = {
    ast.Lt: "{} < {}", ast.LtE: "{} <= {}", ast.Gt: "{} > {}", ast.GtE: "{} >= {}", ast.Eq: "{} === {}",
    ast.NotEq: "{} !== {}", ast.Is: "{} === {}", ast.IsNot: "{} !== {}", ast.In: "P.has({1}, {0})",
    ast.NotIn: "!P.has({1}, {0})",
}  # fmt: skip
_BUILTINS = {
    "abs": "Math.abs", "bool": "P.truth", "float": "Number", "len": "P.len", "list": "P.list", "tuple": "P.list",
    "sum": "P.sum", "range": "P.range", "zip": "P.zip", "enumerate": "P.enumerate", "round": "P.round",
    "dict": "P.dict",
}  # fmt: skip
_METHODS = {"append": "{}.push({})", "index": "{}.indexOf({})", "items": "P.items({}{})", "values": "P.values({}{})"}
_RESERVED = frozenset({"case", "const", "default", "delete", "function", "let", "new", "switch", "this", "var", "void"})


class UntranslatableError(ValueError):
    """Python that is not plain enough, with the line it stands on."""

    def __init__(self, node: ast.AST, why: str) -> None:
        super().__init__(f"line {getattr(node, 'lineno', '?')}: {why}")


@dataclass(frozen=True)
class Scope:
    """What is known of the module: imported names in JavaScript, the arguments of functions and records, all names."""

    names: Mapping[str, str]
    shapes: Mapping[str, Shape]
    known: frozenset[str]


def name_of(name: str) -> str:
    """A name that JavaScript does not keep for itself."""
    return f"{name}_" if name in _RESERVED else name


def condition(node: ast.expr, scope: Scope) -> str:
    """What stands where a truth is asked for."""
    match node:
        case ast.BoolOp(op=op, values=values):
            sign = " && " if isinstance(op, ast.And) else " || "
            return f"({sign.join(condition(one, scope) for one in values)})"
        case ast.UnaryOp(op=ast.Not(), operand=below):
            return f"!{condition(below, scope)}"
        case ast.Compare():
            return expression(node, scope)
    return f"P.truth({expression(node, scope)})"


def expression(node: ast.expr, scope: Scope) -> str:
    """The expression in JavaScript. Raises UntranslatableError."""
    emit = _EMITTERS.get(type(node))
    if emit is None:
        raise UntranslatableError(node, f"{type(node).__name__} is not known")
    return emit(node, scope)


def _constant(node: ast.Constant, _: Scope) -> str:
    if isinstance(node.value, complex | bytes) or node.value is ...:
        raise UntranslatableError(node, f"{node.value!r} has no JavaScript")
    return json.dumps(node.value, ensure_ascii=False)


def _name(node: ast.Name, scope: Scope) -> str:
    found = scope.names.get(node.id) or _BUILTINS.get(node.id) or (name_of(node.id) if node.id in scope.known else "")
    if not found:
        raise UntranslatableError(node, f"{node.id} has no JavaScript")
    return found


def _binary(node: ast.BinOp, scope: Scope) -> str:
    form = _OPERATORS.get(type(node.op))
    if form is None:
        raise UntranslatableError(node, f"{type(node.op).__name__} is not known")
    return form.format(expression(node.left, scope), expression(node.right, scope))


def _unary(node: ast.UnaryOp, scope: Scope) -> str:
    if isinstance(node.op, ast.Not):
        return condition(node, scope)
    sign = {ast.USub: "-", ast.UAdd: "+"}.get(type(node.op))
    if sign is None:
        raise UntranslatableError(node, f"{type(node.op).__name__} is not known")
    return f"({sign}{expression(node.operand, scope)})"


def _bool_op(node: ast.BoolOp, scope: Scope) -> str:
    if all(isinstance(one, ast.Compare | ast.BoolOp) for one in node.values):
        return condition(node, scope)
    first, *rest = node.values
    call = "P.and" if isinstance(node.op, ast.And) else "P.or"
    later = rest[0] if len(rest) == 1 else ast.BoolOp(node.op, rest)
    return f"{call}({expression(first, scope)}, () => {expression(later, scope)})"


def _compare(node: ast.Compare, scope: Scope) -> str:
    sides = [expression(one, scope) for one in (node.left, *node.comparators)]
    pairs = [
        _COMPARISONS[type(op)].format(left, right) for op, left, right in zip(node.ops, sides, sides[1:], strict=False)
    ]
    return f"({' && '.join(pairs)})"


def _choice(node: ast.IfExp, scope: Scope) -> str:
    return f"({condition(node.test, scope)} ? {expression(node.body, scope)} : {expression(node.orelse, scope)})"


def _call(node: ast.Call, scope: Scope) -> str:
    named = {str(one.arg): one.value for one in node.keywords}
    if isinstance(node.func, ast.Attribute):
        return _method(node, node.func, scope)
    if not isinstance(node.func, ast.Name):
        raise UntranslatableError(node, "only a function that has a name is called")
    name = node.func.id
    if name == "message":
        return _message(node, named, scope)
    if name in ("min", "max", "sorted"):
        return _ordered(name, node, named, scope)
    given = [expression(one, scope) for one in node.args]
    if name in scope.shapes:
        order = scope.shapes[name][len(given) :]
        if set(named) - set(order):
            raise UntranslatableError(node, f"{name} takes no {', '.join(sorted(set(named) - set(order)))}")
        last = max((order.index(one) for one in named), default=-1)
        given += [expression(named[one], scope) if one in named else "undefined" for one in order[: last + 1]]
    elif set(named) - {"strict"}:
        raise UntranslatableError(node, f"{name} is called without names of arguments")
    return f"{_name(node.func, scope)}({', '.join(given)})"


def _method(node: ast.Call, of: ast.Attribute, scope: Scope) -> str:
    form = _METHODS.get(of.attr)
    if form is None or node.keywords or len(node.args) > 1:
        raise UntranslatableError(node, f".{of.attr}() is not known")
    return form.format(expression(of.value, scope), *(expression(one, scope) for one in node.args), "")


def _message(node: ast.Call, named: Mapping[str, ast.expr], scope: Scope) -> str:
    if not (len(node.args) == 1 and isinstance(node.args[0], ast.Constant)):
        raise UntranslatableError(node, "a message is asked for by its id")
    values = ", ".join(f"{name}: {expression(value, scope)}" for name, value in named.items())
    return f"message.{camel(str(node.args[0].value))}({{ {values} }})"


def _ordered(name: str, node: ast.Call, named: Mapping[str, ast.expr], scope: Scope) -> str:
    """`min`, `max` and `sorted`: what there is to choose from, its key, and what is given for nothing."""
    given = [expression(one, scope) for one in node.args]
    items = given[0] if len(given) == 1 else f"[{', '.join(given)}]"
    key = expression(named["key"], scope) if "key" in named else "undefined"
    default = f", {expression(named['default'], scope)}" if "default" in named else ""
    return f"P.{name}({items}, {key}{default})"


def _attribute(node: ast.Attribute, scope: Scope) -> str:
    return f"{expression(node.value, scope)}.{name_of(node.attr)}"


def _subscript(node: ast.Subscript, scope: Scope) -> str:
    if isinstance(node.slice, ast.Slice):
        raise UntranslatableError(node, "a slice is not known")
    of, key = expression(node.value, scope), expression(node.slice, scope)
    return f"{of}[{key}]" if isinstance(node.ctx, ast.Store) else f"P.at({of}, {key})"


def _list(node: ast.List | ast.Tuple, scope: Scope) -> str:
    return f"[{', '.join(expression(one, scope) for one in node.elts)}]"


def _starred(node: ast.Starred, scope: Scope) -> str:
    return f"...P.each({expression(node.value, scope)})"


def _dict(node: ast.Dict, scope: Scope) -> str:
    pairs = [
        f"...{expression(value, scope)}" if key is None else f"[{expression(key, scope)}]: {expression(value, scope)}"
        for key, value in zip(node.keys, node.values, strict=True)
    ]
    return f"({{ {', '.join(pairs)} }})"


def _lambda(node: ast.Lambda, scope: Scope) -> str:
    return f"(({', '.join(name_of(one.arg) for one in node.args.args)}) => {expression(node.body, scope)})"


def _comprehension(node: ast.ListComp | ast.GeneratorExp, scope: Scope) -> str:
    return _gone_through(node.generators, expression(node.elt, scope), scope)


def _dict_comprehension(node: ast.DictComp, scope: Scope) -> str:
    pair = f"[{expression(node.key, scope)}, {expression(node.value, scope)}]"
    return f"P.dict({_gone_through(node.generators, pair, scope)})"


def _gone_through(generators: list[ast.comprehension], made: str, scope: Scope) -> str:
    for one in reversed(generators):
        target, items = expression(one.target, scope), f"P.each({expression(one.iter, scope)})"
        for test in one.ifs:
            items += f".filter(({target}) => {condition(test, scope)})"
        call = "map" if one is generators[-1] else "flatMap"
        made = f"{items}.{call}(({target}) => ({made}))"
    return made


def _text(node: ast.JoinedStr, scope: Scope) -> str:
    return f'[{", ".join(expression(one, scope) for one in node.values)}].join("")'


def _placed(node: ast.FormattedValue, scope: Scope) -> str:
    value = expression(node.value, scope)
    if node.format_spec is None:
        return f"String({value})"
    if not isinstance(node.format_spec, ast.JoinedStr) or len(node.format_spec.values) != 1:
        raise UntranslatableError(node, "a form of text is not known")
    return f"P.format({value}, {expression(node.format_spec.values[0], scope)})"


# Each takes the node that it is listed with.
_EMITTERS: dict[type[ast.expr], Callable[..., str]] = {
    ast.Constant: _constant, ast.Name: _name, ast.BinOp: _binary, ast.UnaryOp: _unary, ast.BoolOp: _bool_op,
    ast.Compare: _compare, ast.IfExp: _choice, ast.Call: _call, ast.Attribute: _attribute, ast.Subscript: _subscript,
    ast.List: _list, ast.Tuple: _list, ast.Starred: _starred, ast.Dict: _dict, ast.Lambda: _lambda,
    ast.ListComp: _comprehension, ast.GeneratorExp: _comprehension, ast.DictComp: _dict_comprehension,
    ast.JoinedStr: _text, ast.FormattedValue: _placed,
}  # fmt: skip
