"""One emitter, two languages: a tree becomes Python or JavaScript in the author's own order of operations.

Every operation is put in brackets, so neither language's precedence decides anything. Names are read from `v`, the
values of one working: numbers, conditions (true or false) and lists of numbers; a number that is not given is nan.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any

from latchside.figures.arithmetic import FUNCTIONS
from latchside.figures.expression import Binary, Call, Expression, Name, Node, Number, Sign

Values = Mapping[str, Any]

_PYTHON_CALLS = {"/": "div", "%": "mod", "**": "power"}
_JAVASCRIPT_COMPARISONS = {"==": "===", "!=": "!=="}
_JAVASCRIPT_CALLS = {"sum": "F.sum", "smallest_at_least": "F.smallestAtLeast", "%": "F.mod"}

RUNTIME = """\
const F = {
  mod(a, b) { const r = a % b; return r && (r < 0) !== (b < 0) ? r + b : r; },
  sum(of) { return of.reduce((a, b) => a + b, 0); },
  smallestAtLeast(of, x) { const fit = of.filter((one) => one >= x); return fit.length ? Math.min(...fit) : NaN; },
};
"""
"""What emitted JavaScript calls beside `Math`."""


def python(node: Node) -> str:
    """The node as a Python expression over `v` and `arithmetic.FUNCTIONS`."""
    if isinstance(node, Number):
        return repr(node.value)
    if isinstance(node, Name):
        return "pi" if node.name == "pi" else f'v["{node.name}"]'
    if isinstance(node, Sign):
        return f"({node.operator}{python(node.operand)})"
    if isinstance(node, Binary):
        left, right = python(node.left), python(node.right)
        call = _PYTHON_CALLS.get(node.operator)
        return f"{call}({left}, {right})" if call else f"({left} {node.operator} {right})"
    if isinstance(node, Call):
        return f"{node.function}({', '.join(map(python, node.arguments))})"
    cases = "".join(f"{python(value)} if {python(condition)} else " for value, condition in node.cases)
    return f"({cases}{python(node.default)})"


def javascript(node: Node) -> str:
    """The node as a JavaScript expression over `v`, `Math` and the runtime `F`."""
    if isinstance(node, Number):
        return node.text if not node.text.startswith(".") else f"0{node.text}"
    if isinstance(node, Name):
        return "Math.PI" if node.name == "pi" else f"v.{node.name}"
    if isinstance(node, Sign):
        return f"({node.operator}{javascript(node.operand)})"
    if isinstance(node, Binary):
        left, right = javascript(node.left), javascript(node.right)
        if node.operator in _JAVASCRIPT_CALLS:
            return f"{_JAVASCRIPT_CALLS[node.operator]}({left}, {right})"
        return f"({left} {_JAVASCRIPT_COMPARISONS.get(node.operator, node.operator)} {right})"
    if isinstance(node, Call):
        call = _JAVASCRIPT_CALLS.get(node.function, f"Math.{node.function}")
        return f"{call}({', '.join(map(javascript, node.arguments))})"
    cases = "".join(f"{javascript(condition)} ? {javascript(value)} : " for value, condition in node.cases)
    return f"({cases}{javascript(node.default)})"


def compiled(expression: Expression) -> Callable[[Values], Any]:
    """The expression as a Python function of the values. What is compiled is emitted, never the author's text."""
    code = compile(python(expression.node), "<figure>", "eval")

    def work_out(v: Values) -> Any:
        return eval(code, {"__builtins__": {}, "pi": math.pi, "v": v, **FUNCTIONS})

    return work_out


def equation(text: str) -> str:
    """An author's expression with the signs a reader is used to."""
    return text.replace("**", "^").replace("*", "×").replace("<=", "≤").replace(">=", "≥").replace("==", "=")
