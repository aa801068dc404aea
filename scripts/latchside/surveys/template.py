"""A survey to fill in, as YAML, CSV or XLSX: every field with what it is for, and an invented opening as example."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import yaml

from latchside.messages import messages
from latchside.schemas import Schemas
from latchside.surveys.cells import guarded
from latchside.surveys.columns import Column, Columns, columns
from latchside.surveys.sheet import REMARK, rows_of

message = messages(__name__)
Rows = list[list[str | int | float | None]]

EXAMPLE: Mapping[str, Any] = {
    "id": "example-front-door", "place": "Hall", "side": "front", "kind": "hinged-door", "fire_rated": "no",
    "escape": "unknown", "powered": "no", "hardware": ["closer"], "width": "0.9 m", "glazed": "no",
    "play": "1.5 mm", "leaf_material": "wood", "frame_material": "wood", "steel": "none",
    "gap": "3 mm", "step": "2 mm", "use": "entry-route", "height": "2.1 m", "distance": "6 m",
    "walls": [{"material": "brick", "thickness": "115 mm"}, {"material": "plasterboard"}], "floors": 0,
    "outer_wall": "no", "cable": "yes", "cable_length": "9.5 m", "cable_area": 0.22, "old_contact": "no",
    "outdoors": "no", "drill": "yes", "wish": "hidden", "openings_a_day": 20,
}  # fmt: skip
"""An opening of a house that is not."""


def example() -> dict[str, Any]:
    """The same with a note that says so."""
    return {**EXAMPLE, "notes": str(message("invented"))}


def write_template(path: Path, schemas: Schemas) -> None:
    """Write a survey to fill in; the ending of its name decides the form.

    Raises ValueError for another ending or a name that is no id, and FileExistsError where the file is there.
    """
    make = _FORMS.get(path.suffix)
    if make is None:
        raise ValueError(message("no-form", name=path.name, endings=", ".join(_FORMS)))
    if not schemas.quick["job"].is_valid({"id": path.stem, "name": "aa", "openings": [EXAMPLE]}):
        raise ValueError(message("no-id", name=path.stem))
    content = make(path.stem, columns(schemas))
    with path.open("xb") as file:
        file.write(content)


def heading(id_: str, ending: str) -> list[str]:
    """The words above a template."""
    return [message("how"), message("blank"), message("plan", name=id_ + ending)]


def note(column: Column, *, in_sheet: bool = True) -> str:
    """What a field is for, and what it may hold."""
    needed = message("needed") if column.required else ""
    about = f"{column.about.rstrip('.')}." if column.about else ""
    return " ".join(filter(None, (needed, about, _may_hold(column, "in-sheet" if in_sheet else "in-yaml"))))


def _may_hold(column: Column, form: str) -> str:
    words = ", ".join(column.words)
    match column.sort:
        case "answer" | "word":
            return message("one-of", words=words)
        case "true":
            return message(f"yes-{form}")
        case "words":
            return message(f"words-{form}", words=words) if words else message(f"texts-{form}")
        case "walls":
            return message(f"walls-{form}", words=words)
        case _:
            return ""


def above_rows(id_: str, known: Columns) -> Rows:
    """The fields of the site, each with what it is for."""
    start: dict[str, Any] = {"id": id_}
    return [[name, start.get(name), note(column)] for name, column in known.above.items()]


def example_rows(known: Columns) -> tuple[Rows, Rows]:
    """The names of the columns with what each is for, as remarks, and the example, as a remark too."""
    header, shown = rows_of({"openings": [example()]}, known)[-2:]
    notes: Rows = [[f"{REMARK} {name}", note(column)] for name, column in known.opening.items()]
    return notes, [header, [f"{REMARK} {shown[0]}", *shown[1:]]]


def csv_bytes(rows: Rows) -> bytes:
    """Rows as CSV in UTF-8 with its mark, which spreadsheets want; no cell starts like a formula."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    for row in rows:
        writer.writerow(["" if cell is None else guarded(cell) if isinstance(cell, str) else cell for cell in row])
    return b"\xef\xbb\xbf" + text.getvalue().encode("utf-8")


def _csv(id_: str, known: Columns) -> bytes:
    notes, openings = example_rows(known)
    head: Rows = [[f"{REMARK} {line}"] for line in heading(id_, ".csv")]
    remark: Rows = [[f"{REMARK} {message('columns')}"]]
    return csv_bytes([*head, *above_rows(id_, known), *remark, *notes, *openings])


def _xlsx(id_: str, known: Columns) -> bytes:
    from latchside.surveys.xlsx_template import template  # openpyxl is slow to import, and only needed here

    return template(id_, known)


def _yaml(id_: str, known: Columns) -> bytes:
    lines = [f"# {line}" for line in heading(id_, ".yaml")]
    group = ""
    for column in known.above.values():
        first, *rest = column.path
        if rest and first != group:
            lines += ["", f"{first}:"]
        elif not rest:
            lines.append("")
        group = first if rest else ""
        pad = "  " if rest else ""
        lines.append(f"{pad}# {note(column, in_sheet=False)}")
        lines.append(f"{pad}{column.path[-1]}:{f' {id_}' if column.name == 'id' else ''}")
    lines += ["", f"# {message('fields')}"]
    lines += [f"#   {name}: {note(column, in_sheet=False)}" for name, column in known.opening.items()]
    lines += ["", f"# {message('example')}", "openings:"]
    shown = yaml.safe_dump([example()], sort_keys=False, default_flow_style=None, width=1000, allow_unicode=True)
    lines += [f"# {line}" for line in shown.replace("'no'", "no").replace("'yes'", "yes").splitlines()]
    return ("\n".join(lines) + "\n").encode("utf-8")


_FORMS: Mapping[str, Callable[[str, Columns], bytes]] = {".yaml": _yaml, ".csv": _csv, ".xlsx": _xlsx}
