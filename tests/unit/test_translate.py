"""Models as JavaScript: plain Python gives the same under node, and what is not plain is refused with its line."""

from __future__ import annotations

import ast
import json
from typing import Any

import pytest

from latchside.figures import translate
from latchside.figures.translate_expressions import Scope, UntranslatableError, expression
from latchside.root import ROOT

from ..node import Node

SCOPE = Scope({}, {}, frozenset({"one", "other", "x", "y"}))
PYTHON = (ROOT / "content/assets/js/figure/python.js").as_uri()


@pytest.mark.parametrize(
    "text",
    [
        "7 // 2 - -7 // 2",
        "[-7 % 3, 7 % -3, 6 % 3]",
        "2 ** 3 ** 2 - -2 ** 2",
        "1 < 2 < 3 and not 3 < 2",
        "[] or [1]",
        "[0] and 2",
        "0.0 or 5",
        "None or 'text'",
        "3 if [] else 4",
        "4 if '' else 5",
        "'ab' if 0 else [1, 2][-1]",
        "[x * y for x in range(4) if x % 2 for y in (1, 10)]",
        "{x: y for x, y in [('a', 1), ('b', 2)]}",
        "sum(x for x in (1.5, 2.5))",
        "min([3, 1, 2], key=lambda x: -x)",
        "min([(2, 1), (1, 9), (1, 3)])",
        "max([], default=7)",
        "max(1, 5, 3)",
        "sorted({'b': 1, 'a': 2})",
        "sorted([(1, 'b'), (1, 'a'), (0, 'z')])",
        "[list(zip([1, 2], [3, 4], strict=True)), list(enumerate([5, 6]))]",
        "round(2.34567, 2)",
        "'a' in {'a': 1} and 2 not in [1, 3]",
        "f'{12}e{-2}'",
        "f'{12.5678:.3g} at {0.00012345:.2g}'",
        "float('4.7e3')",
        "len([1, 2]) + len({'a': 1})",
        "[*[1, 2], *(3,)]",
        "{**{'a': 1}, 'b': 2}",
        "bool([0])",
        "'case' == 'case'",
    ],
)
def test_an_expression_gives_the_same_in_both(text: str, node: Node) -> None:
    ours = json.loads(json.dumps(eval(text)))
    code = expression(ast.parse(text, mode="eval").body, SCOPE)
    theirs: Any = node.evaluate(f'async () => {{ const P = await import("{PYTHON}"); return {code}; }}')
    assert theirs == ours, code


@pytest.mark.parametrize(
    "text",
    ["open('x')", "one.upper()", "3j", "one[1:2]", "one @ other", "unknown", "{1, 2}", "(lambda: 1)()", "print(one)"],
)
def test_what_is_not_plain_is_refused_with_its_line(text: str) -> None:
    with pytest.raises(UntranslatableError, match="line 1: "):
        expression(ast.parse(text, mode="eval").body, SCOPE)


@pytest.mark.parametrize(
    "source",
    [
        "import math\n",
        "from os import path\n",
        "def f(*given):\n    return given\n",
        "def f():\n    with open('x') as one:\n        return one\n",
        "def f():\n    try:\n        return 1\n    except ValueError:\n        return 2\n",
        "class A:\n    def f(self):\n        return 1\n",
        "for x in (1, 2):\n    y = x\n",
        "def f(x, y):\n    return g(x, z=y)\ndef g(x):\n    return x\n",
    ],
)
def test_a_module_that_is_not_plain_has_no_script(source: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(translate, "_tree", lambda _: ast.parse(source))
    with pytest.raises(UntranslatableError):
        translate.model_scripts(["spacer"])
    assert not translate.translatable("spacer")


def test_statements_run_in_order(node: Node, monkeypatch: pytest.MonkeyPatch) -> None:
    source = """
from dataclasses import dataclass
A, B = 1.5, [2, 4]

@dataclass(frozen=True)
class Pair:
    first: float
    new: float = 3.0

def compute(x, y=2.0):
    found: list[float] = []
    total = 0.0
    for one, (left, right) in [(x, (1, 2)), (y, (3, 4))]:
        if one < 0:
            continue
        elif one > 100:
            total += 100
        else:
            total += one * left - right
        found.append(total)
    while total > 0:
        total -= 10

    def twice(of):
        return 2 * of

    pair = Pair(new=twice(A), first=B[-1])
    if not found:
        raise ValueError(f"nothing above {x}")
    return {"found": found, "total": total, "pair": [pair.first, pair.new]}
"""
    names: dict[str, Any] = {"__name__": "here"}
    exec(compile(source, "here", "exec", dont_inherit=True), names)
    monkeypatch.setattr(translate, "_tree", lambda _: ast.parse(source))
    script = translate.model_scripts(["spacer"])
    code = f"""async (all) => {{ const P = await import("{PYTHON}"); {script}
      const asked = (given) => {{
        try {{ return models_spacer.compute(...given); }} catch (error) {{ return error.message; }}
      }};
      return all.map(asked); }}"""
    given = [[5], [5, 7], [-1, 4], [200, 3], [-1, -1]]

    def ours(one: list[int]) -> Any:
        try:
            return names["compute"](*one)
        except ValueError as error:
            return str(error)

    assert node.evaluate(code, given) == [ours(one) for one in given]
