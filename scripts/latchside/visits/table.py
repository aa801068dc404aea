"""The record of a visit as tables for a terminal or a pipe. Its texts are shown as they stand, never as markup."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from latchside.visits.state import Entry, Run, View, judge

OUTCOMES = {"done": "done", "not-applicable": "not applicable", "problem": "PROBLEM", "differs": "ENTRIES DIFFER"}


def as_table(seen: View) -> RenderableType:
    """The whole visit: its name, its openings, each list that was run, its notes, and how many entries it has."""
    return Group(*_parts(seen))


def _parts(seen: View) -> Iterator[RenderableType]:
    visit = seen.visit
    yield Text(f"{visit['site']}, {visit['date']}" if visit else "Lists run without a visit", style="bold")
    if visit and visit["who"]:
        yield Text(f"Who: {visit['who']}")
    if seen.state != "open":
        yield Text("Archived.")
    openings = [opening for opening in seen.openings.values() if not opening["removed"]]
    if openings:
        yield Text("")
        named = [(str(one["name"]), str(one["device"] or "not chosen")) for one in openings]
        yield _grid("Openings", ("Opening", "Device class"), named)
    for run in seen.runs.values():
        yield Text("")
        yield from _run(seen, run)
    if seen.notes:
        yield Text("")
        rows = [(_opening(seen, note), str(note["note"]), _when(note)) for note in seen.notes]
        yield _grid("Notes", ("Opening", "Note", "When, by"), rows)
    yield Text("")
    yield Text(_summary(seen))


def _run(seen: View, run: Run) -> Iterator[RenderableType]:
    entries = [entry for heads in run.items.values() for entry in heads]
    first = (entries or run.complete)[0]
    where = _opening(seen, first)
    title = f"{first['list_name']}{f': {where}' if where else ''} (version {first['list_version']})"
    rows = [
        (
            str(heads[0]["words"]),
            OUTCOMES[run.outcome(item)],
            " / ".join(filter(None, map(said, heads))),
            " / ".join(map(_when, heads)),
        )
        for item, heads in run.items.items()
    ]
    yield _grid(title, ("Item", "Outcome", "Reading, note", "When, by"), rows)
    if run.complete:
        yield Text(f"Declared complete: {' / '.join(map(_when, run.complete))}")


def said(entry: Entry) -> str:
    """What was read, how it was judged, and what was noted."""
    parts = []
    if reading := entry.get("reading"):
        figure = "over range" if reading.get("over") else f"{reading['value']:.10g}\u00a0{reading['unit']}".strip()
        verdict = judge(reading, entry.get("expected"))
        parts.append(f"{figure}, {verdict}: expected {entry['expected']['words']}" if verdict else figure)
    if note := entry.get("note"):
        parts.append(note)
    return "; ".join(parts)


def _opening(seen: View, entry: Entry) -> str:
    opening = seen.openings.get(entry.get("opening") or "")
    return str(opening["name"]) if opening else "an opening" if entry.get("opening") else ""


def _when(entry: Entry) -> str:
    return f"{entry['at'][:10]} {entry['at'][11:16]}{' ' + entry['by'] if entry['by'] else ''}"


def _grid(title: str, columns: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> Table:
    table = Table(title=Text(title, style="bold"), title_justify="left", show_lines=True)
    for column in columns:
        table.add_column(column, overflow="fold")
    for row in rows:
        table.add_row(*(Text(cell) for cell in row))
    return table


def _summary(seen: View) -> str:
    outcomes = [run.outcome(item) for run in seen.runs.values() for item in run.items]
    people = ", ".join(sorted({entry["by"] for entry in seen.ordered if entry["by"]}))
    taken_back = len(seen.ordered) - len(seen.live)
    return (
        f"{len(seen.ordered)} entries{f' by {people}' if people else ''}, {taken_back} taken back; "
        f"{len(outcomes)} items answered, {outcomes.count('problem')} problems, "
        f"{outcomes.count('differs')} where entries differ."
    )
