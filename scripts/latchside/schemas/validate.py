"""Does a record fit its schema? Every misfit becomes one finding in plain words.

A fast validator passes what is right; only a record that fails is looked at again by the reference validator,
whose errors say enough to explain.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from latchside.findings import Finding, did_you_mean, one_of, shown
from latchside.read.tree import RawRecord
from latchside.schemas.load import Schemas
from latchside.schemas.shape import Path

_TYPES = {
    "object": "a group of keys", "array": "a list (lines that start with -)", "string": "text",
    "number": "a number", "integer": "a whole number", "boolean": "true or false", "null": "nothing",
}  # fmt: skip


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
    where = named or "the record"
    explain = _EXPLAIN.get(error.validator, _other)
    for key, code, found, expected, action in explain(error, where):
        place = raw.key_place(*path, key) if key is not None else raw.place(*path)
        below = path if key is None else (*path, key)
        yield below, Finding(raw.file, place, code, found, expected, action)


_Row = tuple[str | None, str, str, str, str]


def _required(error: Any, where: str) -> Iterator[_Row]:
    missing = [key for key in error.validator_value if key not in error.instance]
    for key in missing:
        about = error.schema.get("properties", {}).get(key, {}).get("description", "")
        yield (
            None,
            "missing-key",
            f"{where} without {shown(key)}",
            f"{key}: {about or 'a value'}",
            f"Add {key}.",
        )


def _unknown(error: Any, where: str) -> Iterator[_Row]:
    known = error.schema.get("properties", {})
    for key in error.instance:
        if key not in known:
            yield (
                key, "unknown-key", f"{shown(key)} in {where}", one_of(known) + "." + did_you_mean(key, known),
                "Correct the key, or delete it.",
            )  # fmt: skip


def _enum(error: Any, where: str) -> Iterator[_Row]:
    words = [str(word) for word in error.validator_value]
    if error.instance not in words and "propertyNames" in error.absolute_schema_path:
        yield (
            str(error.instance), "unknown-key", f"{shown(error.instance)} in {where}",
            one_of(words) + "." + did_you_mean(str(error.instance), words), "Use one of the known names.",
        )  # fmt: skip
        return
    hint = did_you_mean(str(error.instance), words)
    yield (
        None,
        "unknown-word",
        f"{shown(error.instance)} for {where}",
        one_of(words, 50) + "." + hint,
        "Use a listed word.",
    )


def _type(error: Any, where: str) -> Iterator[_Row]:
    wanted: list[str] = error.validator_value if isinstance(error.validator_value, list) else [error.validator_value]
    expected = " or ".join(_TYPES.get(word, word) for word in wanted)
    about = error.schema.get("description", "")
    action = (
        "Quote it to make it text."
        if "string" in wanted and isinstance(error.instance, int | float) and not isinstance(error.instance, bool)
        else "Correct the value."
    )
    yield None, "wrong-type", f"{shown(error.instance)} for {where}", f"{expected}. {about}".strip(), action


def _pattern(error: Any, where: str) -> Iterator[_Row]:
    if "propertyNames" in error.absolute_schema_path:
        expected = "a name of lower-case words joined by hyphens"
        yield str(error.instance), "wrong-form", f"{shown(error.instance)} in {where}", expected, "Correct the name."
        return
    about = error.schema.get("description", "")
    yield (
        None,
        "wrong-form",
        f"{shown(error.instance)} for {where}",
        about or error.validator_value,
        "Correct the form.",
    )


def _count(error: Any, where: str) -> Iterator[_Row]:
    low, high = error.schema.get("minItems"), error.schema.get("maxItems")
    expected = f"{low} to {high}" if low and high else f"at least {low}" if low else f"at most {high}"
    yield None, "wrong-count", f"{len(error.instance)} in {where}", expected, "Add, split or remove entries."


def _length(error: Any, where: str) -> Iterator[_Row]:
    low, high = error.schema.get("minLength", 0), error.schema.get("maxLength")
    yield (
        None, "wrong-length", f"{len(error.instance)} characters in {where}", f"{low} to {high} characters",
        "Shorten it, or split it.",
    )  # fmt: skip


def _range(error: Any, where: str) -> Iterator[_Row]:
    limits = {k: error.schema[k] for k in ("minimum", "exclusiveMinimum", "maximum") if k in error.schema}
    words = {"minimum": "at least", "exclusiveMinimum": "more than", "maximum": "at most"}
    expected = ", ".join(f"{words[key]} {limit}" for key, limit in limits.items())
    yield None, "out-of-range", f"{shown(error.instance)} for {where}", expected, "Correct the number."


def _const(error: Any, where: str) -> Iterator[_Row]:
    yield (
        None,
        "wrong-value",
        f"{shown(error.instance)} for {where}",
        shown(error.validator_value),
        "Correct the value.",
    )


def _repeated(error: Any, where: str) -> Iterator[_Row]:
    yield None, "repeated-entry", f"an entry twice in {where}", "each entry once", "Delete the second."


def _other(error: Any, where: str) -> Iterator[_Row]:
    about = error.schema.get("description", "")
    listed = error.validator_value if isinstance(error.validator_value, list) else []
    choices = [_branch(branch) for branch in listed if isinstance(branch, dict)]
    expected = f"{' or '.join(choice for choice in choices if choice)}. {about}".strip(". ") + "."
    yield (
        None,
        "wrong-shape",
        f"{shown(error.instance)} for {where}",
        expected,
        "See the schema for the shape.",
    )


def _branch(branch: dict[str, Any]) -> str:
    if "const" in branch:
        return shown(branch["const"])
    if "required" in branch:
        return "with " + ", ".join(branch["required"])
    return _TYPES.get(branch.get("type", ""), str(branch.get("description", "")))


_EXPLAIN = {
    "required": _required, "additionalProperties": _unknown, "enum": _enum, "type": _type, "pattern": _pattern,
    "minItems": _count, "maxItems": _count, "minLength": _length, "maxLength": _length, "minimum": _range,
    "exclusiveMinimum": _range, "maximum": _range, "const": _const, "uniqueItems": _repeated,
}  # fmt: skip
