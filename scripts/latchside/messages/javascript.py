"""Message files as JavaScript: the words of the browser code, one module for each of its folders.

`browser/visit/page.ftl` becomes `page` of `assets/js/messages/visit.js`: an object with a function for each message,
which takes the values of the message and gives its words. What of Fluent is not known here is refused.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cache, reduce
from types import MappingProxyType

from fluent.syntax import ast

from latchside.messages import files, resource

BROWSER = "browser/"
FOLDER = "assets/js/messages/"
COUNTS = frozenset({"zero", "one", "two", "few", "many"})
"""Words that choose by a count; `other` stands for the rest of anything."""

_NAME = re.compile(r"[a-z][A-Za-z0-9]*")


class UnknownSyntaxError(ValueError):
    """Something of Fluent that has no JavaScript here, with the message it stands in."""


@cache
def scripts() -> Mapping[str, str]:
    """Every module of words: its path below the site, and its text."""
    parts = sorted({file.removeprefix(BROWSER).split("/")[0] for file in browser_files()})
    return MappingProxyType({f"{FOLDER}{part}.js": script(part) for part in parts})


def browser_files() -> list[str]:
    """The message files of the browser code, as `Messages` names them."""
    return [file for file in files() if file.startswith(BROWSER)]


def script(part: str) -> str:
    """The module of a folder of the browser code, or of a script that stands in none."""
    own = [file for file in browser_files() if file.removeprefix(BROWSER).split("/")[0] == part]
    made = "\n".join(
        f"export const {camel(file.rpartition('/')[2])} = {{\n{''.join(functions(resource(file)))}}};\n" for file in own
    )
    used = [name for name in ("choose", "shown") if f"{name}($." in made]
    opens = f'import {{ {", ".join(used)} }} from "../core/message.js";\n\n' if used else ""
    return opens + made


def camel(id: str) -> str:
    """An id as a name of JavaScript: `none-left` is `noneLeft`."""
    first, *rest = re.split("[-_]", id)
    return first + "".join(word[:1].upper() + word[1:] for word in rest)


def functions(found: ast.Resource) -> Iterator[str]:
    """The function of each message of a file, as a property of an object."""
    for entry in found.body:
        if isinstance(entry, ast.BaseComment):
            continue
        if not isinstance(entry, ast.Message):
            raise UnknownSyntaxError(f"{type(entry).__name__} is not a message")
        if entry.attributes or entry.value is None:
            raise UnknownSyntaxError(f"{entry.id.name} has attributes")
        try:
            words = pattern(entry.value)
        except UnknownSyntaxError as error:
            raise UnknownSyntaxError(f"{entry.id.name}: {error}") from None
        values = types(entry.value)
        if values:
            yield f"  /** @param {{{{{', '.join(f'{name}: {sort}' for name, sort in values.items())}}}}} $ */\n"
        yield f"  {camel(entry.id.name)}: ({'$' if values else ''}) => {words},\n"


def pattern(node: ast.Pattern) -> str:
    """The expression that gives the words of a pattern."""
    return " + ".join(_joined(_element(one) for one in node.elements))


def _joined(parts: Iterable[str]) -> list[str]:
    """Neighbouring texts as one."""
    made: list[str] = []
    for part in parts:
        if made and made[-1].startswith('"') and part.startswith('"'):
            made[-1] = json.dumps(json.loads(made[-1]) + json.loads(part), ensure_ascii=False)
        else:
            made.append(part)
    return made


def _element(node: ast.TextElement | ast.Placeable) -> str:
    if isinstance(node, ast.TextElement):
        return json.dumps(node.value, ensure_ascii=False)
    inner = node.expression
    if isinstance(inner, ast.StringLiteral):
        return json.dumps(inner.parse()["value"], ensure_ascii=False)
    if isinstance(inner, ast.VariableReference):
        return f"shown({_value(inner)})"
    if isinstance(inner, ast.SelectExpression):
        return _choice(inner)
    raise UnknownSyntaxError(f"{type(inner).__name__} is not known")


def _value(node: ast.VariableReference) -> str:
    if not _NAME.fullmatch(node.id.name):
        raise UnknownSyntaxError(f"${node.id.name} is no name of a value")
    return f"$.{node.id.name}"


def _choice(node: ast.SelectExpression) -> str:
    if not isinstance(node.selector, ast.VariableReference):
        raise UnknownSyntaxError(f"{type(node.selector).__name__} does not choose")
    cases = [f"{json.dumps(_key(one))}: {pattern(one.value)}" for one in node.variants if not one.default]
    rest = next(pattern(one.value) for one in node.variants if one.default)
    return f"choose({_value(node.selector)}, {{ {', '.join(cases)} }}, {rest})"


def _key(variant: ast.Variant) -> str:
    key = variant.key
    return key.name if isinstance(key, ast.Identifier) else str(int(key.value))


def types(node: ast.Pattern) -> dict[str, str]:
    """The values that a pattern takes, each with its type: one that chooses by how many is a number."""

    def merged(known: dict[str, str], found: tuple[str, str]) -> dict[str, str]:
        name, sort = found
        return {**known, name: sort if known.get(name, "string | number") == "string | number" else known[name]}

    return reduce(merged, _types(node), {})


def _types(node: ast.Pattern) -> Iterator[tuple[str, str]]:
    for placeable in node.elements:
        inner = placeable.expression if isinstance(placeable, ast.Placeable) else None
        if isinstance(inner, ast.VariableReference):
            yield inner.id.name, "string | number"
        elif isinstance(inner, ast.SelectExpression) and isinstance(inner.selector, ast.VariableReference):
            counts = all(_counts(one) for one in inner.variants if not one.default)
            yield inner.selector.id.name, "number" if counts else "string"
            for one in inner.variants:
                yield from _types(one.value)


def _counts(variant: ast.Variant) -> bool:
    return isinstance(variant.key, ast.NumberLiteral) or variant.key.name in COUNTS
