"""Does a record fit its schema? Every misfit becomes one finding in plain words.

A fast validator passes what is right; only a record that fails is looked at again by the reference validator,
whose errors say enough to explain.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Any

from latchside.findings import Finding, did_you_mean, one_of, quoted
from latchside.messages import listed, messages
from latchside.read.tree import RawRecord
from latchside.schemas.load import Schemas
from latchside.schemas.shape import Path

message = messages(__name__)


def schema_findings(raw: RawRecord, schemas: Schemas) -> tuple[Finding, ...]:
    """The misfits of one record, in the order of the file."""
    return tuple(sorted({finding for _, finding in misfits(raw, schemas)}))


def misfits(
    raw: RawRecord, schemas: Schemas, named: Callable[[Path], str] = lambda path: ".".join(map(str, path))
) -> Iterator[tuple[Path, Finding]]:
    """Each misfit of one record with the path of the value or key that does not fit; `named` says a path in words."""
    if schemas.quick[raw.kind.id].is_valid(raw.value):
        return
    for error in schemas.exact(raw.kind).iter_errors(raw.value):
        for leaf in _leaves(error):
            path = tuple(leaf.absolute_path)
            yield from _explain(leaf, raw, path, named(path))


def _leaves(error: Any) -> Iterator[Any]:
    """The errors that matter: of a choice of shapes, those of the shape the author seems to have meant."""
    if error.validator not in ("oneOf", "anyOf") or not error.context:
        yield error
        return
    branches: dict[int, list[Any]] = {}
    for below in error.context:
        branches.setdefault(below.schema_path[0], []).append(below)
    meant = [
        below for below in branches.values() if not any(e.validator in ("type", "const") and not e.path for e in below)
    ]
    if len(meant) != 1:
        meant = [below for below in meant if all(e.path for e in below)] or meant
    if not meant or (len(meant) > 1 and error.validator == "anyOf"):
        yield error
        return
    for below in min(meant, key=len):
        yield from _leaves(below)


def _explain(error: Any, raw: RawRecord, path: Path, named: str) -> Iterator[tuple[Path, Finding]]:
    explain = _EXPLAIN.get(error.validator, _other)
    for key, code, problem in explain(error, named or message("the-record")):
        place = raw.key_place(*path, key) if key is not None else raw.place(*path)
        below = path if key is None else (*path, key)
        yield below, Finding(raw.file, place, code, *problem)


_Misfit = tuple[str | None, str, tuple[str, str, str]]
"""The key that is wrong, or None where the value itself is; the code; and what was found, expected, and to be done."""


def _required(error: Any, where: str) -> Iterator[_Misfit]:
    for key in error.validator_value:
        if key not in error.instance:
            about = error.schema.get("properties", {}).get(key, {}).get("description") or message("a-value")
            problem = message.finding("missing-key", where=where, quoted=quoted(key), key=key, about=about)
            yield None, "missing-key", problem


def _unknown(error: Any, where: str) -> Iterator[_Misfit]:
    known = error.schema.get("properties", {})
    for key in error.instance:
        if key not in known:
            hint = did_you_mean(key, known)
            problem = message.finding("unknown-key", key=quoted(key), where=where, known=one_of(known), hint=hint)
            yield key, "unknown-key", problem


def _enum(error: Any, where: str) -> Iterator[_Misfit]:
    words, value = [str(word) for word in error.validator_value], quoted(error.instance)
    hint = did_you_mean(str(error.instance), words)
    if error.instance not in words and "propertyNames" in error.absolute_schema_path:
        problem = message.finding("unknown-name", name=value, where=where, known=one_of(words), hint=hint)
        yield str(error.instance), "unknown-key", problem
        return
    problem = message.finding("unknown-word", value=value, where=where, known=one_of(words, 50), hint=hint)
    yield None, "unknown-word", problem


def _type(error: Any, where: str) -> Iterator[_Misfit]:
    types: list[str] = error.validator_value if isinstance(error.validator_value, list) else [error.validator_value]
    about = error.schema.get("description", "")
    values = {
        "value": quoted(error.instance),
        "where": where,
        "expected": f"{listed([_type_named(one) for one in types], 'or')}. {about}".strip(),
    }
    number = isinstance(error.instance, int | float) and not isinstance(error.instance, bool)
    if number and "string" in types:
        problem = message.finding("number-for-text", **values)
    elif "number" in types and isinstance(error.instance, str) and _NUMBER.fullmatch(error.instance):
        problem = message.finding("text-for-number", number=error.instance.replace(",", "."), **values)
    else:
        problem = message.finding("wrong-type", **values)
    yield None, "wrong-type", problem


_NUMBER = re.compile(r"-?[0-9]+(?:[.,][0-9]+)?")
"""A number in quotes, or with a comma for its decimals, which YAML reads as text."""


def _type_named(name: str) -> str:
    """A type of JSON Schema in words; the type itself where there are none."""
    return message(f"type-{name}") if f"type-{name}" in message else name


def _pattern(error: Any, where: str) -> Iterator[_Misfit]:
    value = quoted(error.instance)
    if "propertyNames" in error.absolute_schema_path:
        yield str(error.instance), "wrong-form", message.finding("form-of-a-name", name=value, where=where)
        return
    about = error.schema.get("description") or error.validator_value
    yield None, "wrong-form", message.finding("wrong-form", value=value, where=where, about=about)


def _count(error: Any, where: str) -> Iterator[_Misfit]:
    low, high = error.schema.get("minItems"), error.schema.get("maxItems")
    problem = message.finding(
        "count-between" if low and high else "count-at-least" if low else "count-at-most",
        count=len(error.instance), where=where, low=low or 0, high=high or 0,
    )  # fmt: skip
    yield None, "wrong-count", problem


def _length(error: Any, where: str) -> Iterator[_Misfit]:
    low, high = error.schema.get("minLength", 0), error.schema.get("maxLength")
    problem = message.finding(
        "length-at-least" if high is None else "length-between",
        count=len(error.instance), where=where, low=low, high=high or 0,
    )  # fmt: skip
    yield None, "wrong-length", problem


def _range(error: Any, where: str) -> Iterator[_Misfit]:
    names = ("minimum", "exclusiveMinimum", "maximum")
    limits = [message(f"limit-{name}", figure=str(error.schema[name])) for name in names if name in error.schema]
    problem = message.finding("out-of-range", value=quoted(error.instance), where=where, limits=", ".join(limits))
    yield None, "out-of-range", problem


def _const(error: Any, where: str) -> Iterator[_Misfit]:
    value, expected = quoted(error.instance), quoted(error.validator_value)
    yield None, "wrong-value", message.finding("wrong-value", value=value, where=where, expected=expected)


def _repeated(error: Any, where: str) -> Iterator[_Misfit]:
    yield None, "repeated-entry", message.finding("repeated-entry", where=where)


def _other(error: Any, where: str) -> Iterator[_Misfit]:
    about = error.schema.get("description", "")
    branches = error.validator_value if isinstance(error.validator_value, list) else []
    choices = [choice for branch in branches if isinstance(branch, dict) and (choice := _branch(branch))]
    expected = f"{listed(choices, 'or') if choices else ''}. {about}".strip(". ") + "."
    problem = message.finding("wrong-shape", value=quoted(error.instance), where=where, expected=expected)
    yield None, "wrong-shape", problem


def _branch(branch: dict[str, Any]) -> str:
    """One shape of a choice, in words."""
    if "const" in branch:
        return quoted(branch["const"])
    if "required" in branch:
        return message("with-keys", keys=", ".join(branch["required"]))
    return _type_named(branch["type"]) if "type" in branch else str(branch.get("description", ""))


_EXPLAIN = {
    "required": _required, "additionalProperties": _unknown, "enum": _enum, "type": _type, "pattern": _pattern,
    "minItems": _count, "maxItems": _count, "minLength": _length, "maxLength": _length, "minimum": _range,
    "exclusiveMinimum": _range, "maximum": _range, "const": _const, "uniqueItems": _repeated,
}  # fmt: skip
