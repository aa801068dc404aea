"""The record of a visit as tables for a terminal or a pipe. Its texts are shown as they stand, never as markup."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from latchside.messages import Message, messages
from latchside.visits.state import Entry, Run, View, judge

message = messages(__name__)


def as_table(seen: View) -> RenderableType:
    """The whole visit: its name, its openings, each list that was run, its notes, and how many entries it has."""
    return Group(*_parts(seen))


def _parts(seen: View) -> Iterator[RenderableType]:
    visit = seen.visit
    title = message("visit", site=visit["site"], day=visit["date"]) if visit else message("no-visit")
    yield Text(title, style="bold")
    if visit and visit["who"]:
        yield Text(message("who", who=visit["who"]))
    if seen.state != "open":
        yield Text(message("archived"))
    openings = [opening for opening in seen.openings.values() if not opening["removed"]]
    if openings:
        yield Text("")
        named = [(str(one["name"]), str(one["device"] or message("not-chosen"))) for one in openings]
        yield _grid(message("openings"), (message("opening"), message("device")), named)
    for run in seen.runs.values():
        yield Text("")
        yield from _run(seen, run)
    if seen.notes:
        yield Text("")
        rows = [(_opening(seen, note), str(note["note"]), _when(note)) for note in seen.notes]
        yield _grid(message("notes"), (message("opening"), message("note"), message("when")), rows)
    yield Text("")
    yield Text(_summary(seen))


def _run(seen: View, run: Run) -> Iterator[RenderableType]:
    entries = [entry for heads in run.items.values() for entry in heads]
    first = (entries or run.complete)[0]
    named = {"name": str(first["list_name"]), "version": str(first["list_version"])}
    where = _opening(seen, first)
    title = message("list-at", **named, opening=where) if where else message("list", **named)
    columns = message("item"), message("outcome"), message("reading"), message("when")
    rows = [
        (
            str(heads[0]["words"]),
            message(f"outcome-{run.outcome(item)}"),
            " / ".join(filter(None, map(_reading, heads))),
            " / ".join(map(_when, heads)),
        )
        for item, heads in run.items.items()
    ]
    yield _grid(title, columns, rows)
    if run.complete:
        yield Text(message("complete", when=" / ".join(map(_when, run.complete))))


def _reading(entry: Entry) -> str:
    """What was read, how it was judged, and what was noted."""
    parts = []
    if reading := entry.get("reading"):
        over = reading.get("over")
        figure = message("over-range") if over else f"{reading['value']:.10g}\u00a0{reading['unit']}".strip()
        verdict = judge(reading, entry.get("expected"))
        if verdict:
            figure = message(f"reading-{verdict}", figure=figure, expected=entry["expected"]["words"])
        parts.append(figure)
    if note := entry.get("note"):
        parts.append(note)
    return "; ".join(parts)


def _opening(seen: View, entry: Entry) -> str:
    opening = seen.openings.get(entry.get("opening") or "")
    if opening:
        return str(opening["name"])
    return message("some-opening") if entry.get("opening") else ""


def _when(entry: Entry) -> str:
    return f"{entry['at'][:10]} {entry['at'][11:16]}{' ' + entry['by'] if entry['by'] else ''}"


def _grid(title: str, columns: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> Table:
    table = Table(title=Text(title, style="bold"), title_justify="left", show_lines=True)
    for column in columns:
        table.add_column(column, overflow="fold")
    for row in rows:
        table.add_row(*(Text(cell) for cell in row))
    return table


def _summary(seen: View) -> Message:
    outcomes = [run.outcome(item) for run in seen.runs.values() for item in run.items]
    people = ", ".join(sorted({entry["by"] for entry in seen.ordered if entry["by"]}))
    counts = {
        "entries": len(seen.ordered), "taken_back": len(seen.ordered) - len(seen.live), "items": len(outcomes),
        "problems": outcomes.count("problem"), "differing": outcomes.count("differs"),
    }  # fmt: skip
    return message("summary-by", people=people, **counts) if people else message("summary", **counts)
