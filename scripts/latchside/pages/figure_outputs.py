"""What a figure gives, as a reader sees it: a number in the reader's units, words, or rows of figures.

`content/assets/js/figure/outputs.js` writes the same in the page.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from markupsafe import Markup

from latchside.escape import safe
from latchside.figures.units import figure, other_system, symbol, with_unit
from latchside.figures.words import Both
from latchside.messages import messages
from latchside.pages import regional

message = messages(__name__)

_TABLE = Markup(
    '<div class="ls-table" role="region" aria-label="{}" tabindex="0"><table class="ls-out-rows">'
    "<thead><tr>{}</tr></thead><tbody>{}</tbody></table></div>"
)
_CORNER = Markup("<td></td>")
_HEAD = Markup('<th scope="col">{}</th>')
_NAME = Markup('<th scope="row">{}</th>')
_CELL = Markup("<td>{}</td>")
_ROW = Markup("<tr>{}</tr>")


def output(entry: Mapping[str, Any], value: Any) -> Markup:
    """The value of an output that a record states as `entry`."""
    if value is None:
        return safe(entry.get("empty") or message("none"))
    if isinstance(value, bool):
        return safe(yes_no(value))
    if isinstance(value, str):
        return safe(entry.get("words", {}).get(value, value))
    if "columns" in entry:
        return _rows(entry, value)
    if isinstance(value, list | tuple):
        return _several(entry, value)
    return number(float(value), entry.get("unit", ""))


def number(value: float, unit: str) -> Markup:
    """A number in both systems of units, the reader's alone in view."""
    other = other_system(value, unit)
    own = with_unit(figure(value), unit)
    return regional.figure(Both(own, with_unit(figure(other[0]), other[1]) if other else None, imperial=False))


def yes_no(value: bool) -> str:
    """True or false in words."""
    return message("yes") if value else message("no")


def _several(entry: Mapping[str, Any], values: Sequence[Any]) -> Markup:
    if not values:
        return safe(message("none"))
    within = "; " if isinstance(values[0], list | tuple) else ", "
    return Markup(within).join(output(entry, one) for one in values)


def _rows(entry: Mapping[str, Any], value: Mapping[str, Any] | Sequence[Any]) -> Markup:
    """A table; its rows have names where they are given by name."""
    if not value:
        return safe(message("none"))
    named = isinstance(value, Mapping)
    pairs: Iterable[tuple[str, Any]] = value.items() if isinstance(value, Mapping) else (("", row) for row in value)
    heads = [*([_CORNER] if named else []), *(_HEAD.format(safe(_head(column))) for column in entry["columns"])]
    rows = (_row(entry, entry.get("words", {}).get(name, name) if named else "", row) for name, row in pairs)
    return _TABLE.format(safe(entry["label"]), _together(heads), _together(rows))


def _row(entry: Mapping[str, Any], name: str, row: Mapping[str, Any]) -> Markup:
    cells = (_CELL.format(_cell(column, row[column["name"]])) for column in entry["columns"])
    return _ROW.format(_together([*([_NAME.format(safe(name))] if name else []), *cells]))


def _head(column: Mapping[str, Any]) -> str:
    """The name of a column, with its unit where both systems have the same."""
    sign = "" if _differs(column) else symbol(column.get("unit", ""))
    return f"{column['label']} {sign}".strip()


def _cell(column: Mapping[str, Any], value: Any) -> Markup:
    bare = isinstance(value, int | float) and not isinstance(value, bool) and not _differs(column)
    return safe(figure(float(value))) if bare else output(column, value)


def _differs(column: Mapping[str, Any]) -> bool:
    return other_system(1.0, column.get("unit", "")) is not None


def _together(parts: Iterable[Markup]) -> Markup:
    return Markup("").join(parts)
