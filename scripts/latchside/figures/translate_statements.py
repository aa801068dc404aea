"""Statements of plain Python as JavaScript: the body of a function, each of its names declared once."""

from __future__ import annotations

import ast
from collections.abc import Iterator, Sequence

from latchside.figures.translate_expressions import Scope, UntranslatableError, condition, expression, name_of

REFUSAL = "throw new P.Refused({});"
LOOP = "for ({} of P.each({})) {}"

_NOT_WITHIN = (ast.FunctionDef, ast.Lambda, ast.ListComp, ast.GeneratorExp, ast.DictComp, ast.SetComp)


def body(statements: Sequence[ast.stmt], scope: Scope, taken: set[str]) -> str:
    """The statements of a function whose arguments are `taken`."""
    own = sorted({name for one in statements for name in _assigned(one)} - taken)
    declared = [f"let {', '.join(map(name_of, own))};"] if own else []
    return "\n".join([*declared, *_block(statements, scope)])


def _assigned(node: ast.AST) -> Iterator[str]:
    if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
        yield node.id
    for below in ast.iter_child_nodes(node):
        if not isinstance(below, _NOT_WITHIN):
            yield from _assigned(below)


def _block(statements: Sequence[ast.stmt], scope: Scope) -> list[str]:
    return [part for one in statements if (part := _statement(one, scope))]


def _statement(node: ast.stmt, scope: Scope) -> str:
    match node:
        case ast.Expr(value=ast.Constant()):
            return ""
        case ast.Expr(value=value):
            return f"{expression(value, scope)};"
        case ast.Return(value=value):
            return f"return {expression(value, scope) if value else 'null'};"
        case ast.Assign(targets=[*targets], value=value):
            left = " = ".join(expression(one, scope) for one in targets)
            return f";{left} = {expression(value, scope)};"
        case ast.AnnAssign(target=target, value=value) if value:
            return f"{expression(target, scope)} = {expression(value, scope)};"
        case ast.AugAssign(target=target, op=op, value=value):
            read = ast.copy_location(ast.Name(target.id, ast.Load()), target) if isinstance(target, ast.Name) else None
            if read is None:
                raise UntranslatableError(node, "only a name is added to")
            return f"{expression(target, scope)} = {expression(ast.BinOp(read, op, value), scope)};"
        case ast.FunctionDef(name=name, args=args):
            taken = [one.arg for one in args.args]
            if args.defaults or args.kwonlyargs or args.vararg or args.kwarg:
                raise UntranslatableError(node, "a function within one takes plain arguments")
            inner = body(node.body, scope, set(taken))
            return f"const {name_of(name)} = ({', '.join(map(name_of, taken))}) => {{\n{inner}\n}};"
        case ast.Raise(exc=ast.Call(func=ast.Name(id="ValueError"), args=[words])):
            return REFUSAL.format(expression(words, scope))
        case ast.Continue():
            return "continue;"
    return _compound(node, scope)


def _compound(node: ast.stmt, scope: Scope) -> str:
    match node:
        case ast.If(test=test, body=then, orelse=other):
            rest = f" else {_braced(other, scope)}" if other else ""
            return f"if ({condition(test, scope)}) {_braced(then, scope)}{rest}"
        case ast.For(target=target, iter=each, body=inner, orelse=[]):
            return LOOP.format(expression(target, scope), expression(each, scope), _braced(inner, scope))
        case ast.While(test=test, body=inner, orelse=[]):
            return f"while ({condition(test, scope)}) {_braced(inner, scope)}"
    raise UntranslatableError(node, f"{type(node).__name__} is not known")


def _braced(statements: Sequence[ast.stmt], scope: Scope) -> str:
    return "{\n" + "\n".join(_block(statements, scope)) + "\n}"
