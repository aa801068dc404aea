"""The form of a survey, described from its schema: what is asked, in which words, and what an answer may be.

The page of surveys draws its form from this description and holds files against it, so a property that is added to
the schema is asked, checked, printed and saved without a change of the script. Marks of the schema that are read here:
`title` (the label), `x-unit` (the unit of a number without one), `x-most` (the longest length meant, in that
unit), `x-part` (a new part of the form begins), `x-extra` (no fact, and asked only by who wants to tell it), `x-kept`
(never asked: the form fills it in itself), `x-or` (the field that says the same in another way: one of the two is
told) and `x-ref` (the id of a record). Which facts are asked, and at which kinds of opening, is what some plan could
ask: it is found by the code that finds the questions of a plan.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict
from typing import Any

from markupsafe import Markup

from latchside.figures.units import symbol
from latchside.library import Library
from latchside.messages import listed, messages
from latchside.planning.answers import fields as facts
from latchside.planning.askable import Askable, askable
from latchside.planning.house import TABLE
from latchside.planning.own_rules import rules
from latchside.version import library_version

message = messages(__name__)

SCHEMA = "job.schema.json"
UNITS: dict[str, tuple[str, ...]] = {"mm": ("mm", "in"), "m": ("m", "ft")}
"""The units a length may be typed in, by the unit that the schema names for it."""
ANY_LENGTH = ("mm", "m", "in", "ft")
_LENGTH = "#/$defs/length"
_DAY = "^20[0-9]{2}-(0[1-9]|1[0-2])-"
_AREA = 160
"""A text that may be longer than this gets a box of several lines."""

Field = dict[str, Any]
Node = Mapping[str, Any]


def survey_form(library: Library) -> Markup:
    """The description as a block of data for the page."""
    data = {"library": library_version(), "fields": fields(library), "house": _house(library)}
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"))
    text = text.replace('":[[', '":[ [').replace("[[", "\\u005b[")  # a mark of a template looks like this
    return Markup(text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029"))


def _house(library: Library) -> list[dict[str, Any]]:
    """The house rules, which a firm may have figures of its own for, in the order of their record."""
    table = library.find("table", TABLE)
    about = {row["id"]: row["cells"].get("about", "") for row in table["rows"]} if table else {}
    return [
        {**asdict(rule), "sign": symbol(rule.unit), "about": about.get(name, "")}
        for name, rule in rules(library).items()
    ]


def fields(library: Library) -> list[Field]:
    """Every field of a survey, in the order of the schema."""
    described = _Reader(library).group(library.schemas.documents[SCHEMA], SCHEMA)
    found, known = askable(library), facts(library)
    for one in described:
        if one["name"] == "site":
            _ask(one["fields"], {field.name for field in known.site}, found.site)
        elif one["name"] == "control_unit":
            _ask(one["fields"], {field.name for field in known.unit}, found.unit)
        elif one["name"] == "openings":
            _ask_by_kind(one["item"]["fields"], {field.name for field in known.opening}, found)
    return described


def _ask(listed: list[Field], known: set[str], asked: frozenset[str]) -> None:
    """A fact that no plan could ask is left to who wants to tell it."""
    for one in listed:
        if one["name"] in known and one["name"] not in asked:
            one["extra"] = True


def _ask_by_kind(listed: list[Field], known: set[str], found: Askable) -> None:
    for one in listed:
        kinds = found.kinds(one["name"])
        if one["name"] in known and not kinds:
            one["extra"] = True
        elif one["name"] in known and len(kinds) < len(found.opening):
            one["kinds"] = list(kinds)


class _Reader:
    """Reads fields off the schema; references to other schemas are followed."""

    def __init__(self, library: Library) -> None:
        self.library = library
        self.documents = library.schemas.documents

    def group(self, node: Node, file: str) -> list[Field]:
        required = node.get("required", ())
        return [self.field(name, below, file, name in required) for name, below in node["properties"].items()]

    def field(self, name: str, node: Node, file: str, required: bool) -> Field:
        whole, file = self.followed(node, file)
        made: Field = {
            "name": name,
            "label": whole.get("title") or name.replace("_", " ").capitalize(),
            "help": whole.get("description", ""),
            **self.answer(whole, file),
        }
        if required:
            made["required"] = True
        made |= {mark: whole[f"x-{mark}"] for mark in ("part", "extra", "kept", "or") if f"x-{mark}" in whole}
        return made

    def followed(self, node: Node, file: str) -> tuple[dict[str, Any], str]:
        """A part of the schema with its reference followed; what stands beside the reference wins."""
        whole = dict(node)
        while "$ref" in whole:
            reference = whole.pop("$ref")
            if reference == _LENGTH:
                whole["x-length"] = True
            name, _, pointer = reference.partition("#")
            file = name or file
            target: Any = self.documents[file]
            for part in pointer.strip("/").split("/"):
                target = target[part] if part else target
            whole = {**target, **whole}
        return whole, file

    def answer(self, node: Node, file: str) -> Field:
        """How a field is asked, and what its answer may be."""
        sort = node.get("type")
        if "const" in node:
            return {"ask": "fixed", "value": node["const"]}
        if "enum" in node:
            words = node.get("x-words", {})
            choices = [[word, words.get(word, word)] for word in node["enum"]]
            return {"ask": "answer" if node["enum"] == ["yes", "no", "unknown"] else "choice", "choices": choices}
        if "oneOf" in node:
            return self.number_or_words(node)
        if sort == "object":
            return {"ask": "group", "fields": self.group(node, file)}
        if sort == "array":
            return self.list_of(node, file)
        if isinstance(sort, list):
            return _length(node)
        return _number(node) if sort in ("number", "integer") else self.text(node)

    def number_or_words(self, node: Node) -> Field:
        """A number, or one of a few words in its place."""
        made: Field = {"ask": "number"}
        for branch in node["oneOf"]:
            if "const" in branch:
                known = self.library.schemas.words("answer")
                made.setdefault("choices", []).append([branch["const"], known.get(branch["const"], branch["const"])])
            else:
                made |= _number(branch)
        return made

    def list_of(self, node: Node, file: str) -> Field:
        item = self.field("item", node["items"], file, True)
        most = {"most": node["maxItems"]} if "maxItems" in node else {}
        once = {"once": True} if node.get("uniqueItems") else {}
        return {"ask": "list", "item": item, "least": node.get("minItems", 0), **most, **once}

    def text(self, node: Node) -> Field:
        kind = node.get("x-ref")
        if kind:
            return {"ask": "choice", "choices": [[record.id, record.name] for record in self.library.of(kind)]}
        made: Field = {"ask": "text", "low": node.get("minLength", 0)}
        if "maxLength" in node:
            made |= {"high": node["maxLength"], **({"area": True} if node["maxLength"] > _AREA else {})}
        if "pattern" in node:
            made["pattern"] = node["pattern"]
            made["ask"] = "day" if node["pattern"].startswith(_DAY) else "text"
        return made


def _number(node: Node) -> Field:
    names = {"minimum": "min", "maximum": "max", "exclusiveMinimum": "above", "exclusiveMaximum": "below"}
    made: Field = {"ask": "number", **{short: node[name] for name, short in names.items() if name in node}}
    if node["type"] == "integer":
        made["whole"] = True
    if "x-unit" in node:
        made["unit"] = symbol(node["x-unit"])
    return made


def _length(node: Node) -> Field:
    """A length; one without a lower limit may be negative."""
    signed = {} if "minimum" in node else {"signed": True}
    units = UNITS.get(node.get("x-unit", ""), ANY_LENGTH)
    far = {"far": node["x-most"]} if "x-most" in node else {}
    return {"ask": "length", "units": list(units), "high": node["maxLength"], **far, **signed}


# -- the sheet to fill in by hand ---------------------------------------------------------------------------------


def sheet_rows(described: list[Field]) -> Iterator[tuple[str, Field, str]]:
    """The rows of a printed sheet: the heading that a row begins, if any; the field; and what it may be answered."""
    for one in described:
        if one["ask"] == "fixed" or one["name"] == "openings" or "kept" in one:
            continue
        if one["ask"] == "group":
            for index, (_, below, choices) in enumerate(sheet_rows(one["fields"])):
                yield "" if index else one["label"], below, choices
        else:
            yield one.get("part", ""), one, _choices(one)


def _choices(field: Field) -> str:
    """What may be answered, for somebody with a pen."""
    if field["ask"] == "list":
        inner = field["item"].get("fields", [field["item"]])
        return "; ".join(filter(None, map(_choices, inner)))
    if field["ask"] == "length":
        return listed(field["units"], "or")
    labels = [words for _, words in field.get("choices", ())]
    return ", ".join([*([field["unit"]] if "unit" in field else []), *labels])
