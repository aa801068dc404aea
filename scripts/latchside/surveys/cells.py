"""One cell of a sheet and the value of a survey: text as typed becomes what the schema wants, and the other way."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from latchside.figures.typed import TypedError, read_number
from latchside.findings import did_you_mean, one_of, quoted
from latchside.messages import messages
from latchside.surveys.columns import Column
from latchside.surveys.text import without_empty

message = messages(__name__)
NONE = "none"
_RUNS = ("=", "+", "-", "@", "\t", "\r")
"""A cell that starts with one of these is a formula to a spreadsheet."""
_WALL = re.compile(r"([^\d.,]*?)\s*([\d.,\u00bc-\u00be\u215b-\u215e].*)?\Z", re.DOTALL)
_ANSWERS = {"true": "yes", "false": "no"}  # what a spreadsheet makes of a box that is ticked or not


@dataclass(frozen=True)
class Strange:
    """A cell that holds no text and no number: a day, a fault, a formula without a value. Its words say what."""

    code: str
    found: str
    action: str
    text: str = ""


class CellError(ValueError):
    """A cell that does not read: code, what was found, what is expected, what to do."""

    def __init__(self, code: str, found: str, expected: str, action: str) -> None:
        super().__init__(code, found, expected, action)
        self.words = (code, found, expected, action)


def value_of(cell: object, column: Column) -> Any:
    """The value of a survey in a cell that is not blank. Raises CellError."""
    if isinstance(cell, Strange):
        if cell.code == "date-cell" and cell.text and column.sort == "day":
            return cell.text
        raise CellError(cell.code, cell.found, _expected(column), cell.action)
    if isinstance(cell, int | float) and not isinstance(cell, bool) and column.sort in ("number", "length"):
        return _whole(cell) if column.whole else cell
    text = unguarded(_text(cell))
    match column.sort:
        case "number":
            return _number(text, column)
        case "answer":
            return _word(_ANSWERS.get(text.casefold(), text), column)
        case "word":
            return _word(text, column)
        case "true":
            return _true(text, column)
        case "words":
            parts = [] if text.casefold() == NONE else [part.strip() for part in text.split(";") if part.strip()]
            return [_word(part, column) for part in parts] if column.words else parts
        case "walls":
            return [] if text.casefold() == NONE else [_wall(part.strip(), column) for part in _parts(text)]
        case _:
            return text


def cell_of(value: Any, column: Column) -> str | int | float:
    """The cell for a value: a number, or text that reads back as the same."""
    if column.sort == "true":
        return "yes"
    if column.sort == "walls":
        return "; ".join(_shown_wall(wall) for wall in value) or NONE
    if column.sort == "words":
        return "; ".join(value) or NONE
    return value if isinstance(value, int | float) else str(value)


def guarded(text: str) -> str:
    """Text that no spreadsheet runs: one that starts like a formula gets an apostrophe before it."""
    return f"'{text}" if text.lstrip("'").startswith(_RUNS) else text


def unguarded(text: str) -> str:
    """Text without the apostrophe that `guarded` sets."""
    return text[1:] if text.startswith("'") and text.lstrip("'").startswith(_RUNS) else text


def _text(cell: object) -> str:
    if isinstance(cell, float) and cell.is_integer() and abs(cell) < 1e15:
        return str(int(cell))
    return without_empty(str(cell)).strip()


def _whole(number: float) -> int | float:
    return int(number) if float(number).is_integer() else number


def _parts(text: str) -> list[str]:
    return [part for part in re.split(r"[;\n]", text) if part.strip()]


def _number(text: str, column: Column) -> Any:
    if text.casefold() in column.words:
        return text.casefold()
    try:
        number = read_number(text, column.unit)
    except TypedError as error:
        found = message("no-number", found=error.found)
        raise CellError("not-a-number", found, _expected(column), message("correct-number")) from None
    if column.whole and number % 1:
        found = message("no-whole-number", text=quoted(text))
        raise CellError("not-a-number", found, _expected(column), message("correct-number"))
    return _whole(number)


def _word(text: str, column: Column) -> str:
    plain = re.sub(r"[\s_-]+", "-", text.casefold())
    if plain in column.words:
        return plain
    expected = message("unknown-word", words=one_of(column.words, 50), hint=did_you_mean(plain, column.words))
    raise CellError("unknown-word", quoted(text), expected, message("listed-word"))


def _true(text: str, column: Column) -> bool | None:
    answer = _ANSWERS.get(text.casefold(), text.casefold())
    if answer not in ("yes", "no"):
        raise CellError("unknown-word", quoted(text), message("yes"), message("word-or-blank"))
    return True if answer == "yes" else None


def _wall(text: str, column: Column) -> dict[str, Any]:
    """`brick 100 mm` as material and thickness."""
    match = _WALL.match(text)
    material = match[1] if match else text
    plain = re.sub(r"[\s_-]+", "-", material.strip().casefold())
    if plain not in column.words:
        hint = did_you_mean(plain, column.words)
        expected = message("unknown-material", words=", ".join(column.words), hint=hint)
        raise CellError("unknown-word", quoted(text), expected, message("separate-walls"))
    return {"material": plain} | ({"thickness": match[2]} if match and match[2] else {})


def _shown_wall(wall: Mapping[str, Any]) -> str:
    return " ".join(str(wall[key]) for key in ("material", "thickness") if key in wall)


def _expected(column: Column) -> str:
    """What a cell of this column is expected to hold."""
    match column.sort:
        case "number":
            whole = "yes" if column.whole else "no"
            number = (
                message("number-in", whole=whole, unit=column.unit) if column.unit else message("number", whole=whole)
            )
            return message("number-or", number=number, word=column.words[0]) if column.words else number
        case "answer":
            return one_of(column.words)
        case "word":
            return one_of(column.words, 50)
        case "true":
            return message("yes")
        case "words":
            return message("names")
        case "length" | "day" | "walls":
            return message(column.sort)
        case _:
            return message("text")
