"""Entries and records of visits for tests: sound ones by hand, and whole histories of several devices by chance."""

from __future__ import annotations

import json
from pathlib import Path
from random import Random
from typing import Any

from latchside.root import ROOT
from latchside.visits.state import View, merge, view

SCHEMA = ROOT / "schema" / "visit.schema.json"
CASES: dict[str, Any] = json.loads((Path(__file__).parent / "cases.json").read_text("utf-8"))

VISIT = "00000000-0000-4000-8000-000000000001"
DOOR = "00000000-0000-4000-8000-0000000000d0"
AT = "2026-11-25T08:00:00.000+00:00"
CALENDAR = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nEND:VCALENDAR\r\n"

Entry = dict[str, Any]


def some_id(number: int) -> str:
    """An id that looks random and is not."""
    return f"{number:08x}-1111-4111-8111-{number * 7919 % 16**12:012x}"


def entry(kind: str, number: int, n: int, **fields: Any) -> Entry:
    """An entry of any kind, with what every kind needs."""
    common = {"kind": kind, "id": some_id(number), "visit": VISIT, "n": n, "at": AT, "by": "Anna", "library": "0.1.0"}
    return {**common, **fields}


def item(number: int, n: int, **fields: Any) -> Entry:
    """The outcome of an item: done, of a list at the door, unless told otherwise."""
    run = {"checklist": "position", "list_name": "Position", "list_version": 1, "opening": DOOR}
    about = {"item": "gap", "words": "Gap \u2014 inside the gap to fit", "outcome": "done", "after": []}
    return entry("item", number, n, **{**run, **about, **fields})


def site(number: int = 1, n: int = 1, **fields: Any) -> Entry:
    """What the visit is called."""
    return entry(
        "visit", number, n, **{"site": "Elm House", "date": "2026-11-25", "who": "Anna", "after": [], **fields}
    )


def record(*entries: Entry, **fields: Any) -> dict[str, Any]:
    """A record that holds entries."""
    frame = {"format": "latchside-visit", "version": 1, "saved": AT, "library": "0.1.0", "visit": VISIT}
    return {**frame, "entries": list(entries), **fields}


def full_record() -> dict[str, Any]:
    """A record with an entry of every kind and every field."""
    expected = {
        "words": "3 to 10\u00a0mm",
        "unit": "mm",
        "ranges": [{"low": 3, "high": 10}],
        "device": "surface-contact",
    }
    return record(
        site(job={"id": "elm-house", "calendar": CALENDAR}),
        entry("opening", 2, 2, opening=DOOR, name="Back door", device="surface-contact", removed=False, after=[],
              job={"opening": "back-door", "zone": "W1"},
              expected={"fit-gap": {"words": "4 to 8\u00a0mm", "unit": "mm", "ranges": [{"low": 4, "high": 8}]}}),
        item(3, 3, reading={"value": 4.5, "unit": "mm"}, expected=expected),
        item(4, 4, item="look", outcome="problem", note="Hinge is loose"),
        item(5, 5, item="latch", outcome="not-applicable", note="No latch here"),
        item(6, 6, item="loop", reading={"over": True, "unit": "M\u03a9"}),
        entry("complete", 7, 7, checklist="position", list_name="Position", list_version=1, opening=DOOR,
              words="Complete: it sits.", after=[]),
        entry("note", 8, 8, opening=None, note="Key with the neighbour"),
        entry("undo", 9, 9, undoes=[some_id(7)], reason="undo"),
        entry("state", 10, 10, state="archived", after=[]),
    )  # fmt: skip


def as_plain(seen: View) -> dict[str, Any]:
    """How things stand, as plain data that the browser's answer can be compared with."""
    return {
        "visit": seen.visit["id"] if seen.visit else None,
        "state": seen.state,
        "openings": [[id_, one["id"]] for id_, one in seen.openings.items()],
        "notes": [note["id"] for note in seen.notes],
        "live": sorted(seen.live),
        "ordered": [one["id"] for one in seen.ordered],
        "runs": {
            key: {
                "items": {
                    name: [run.outcome(name), [one["id"] for one in heads]] for name, heads in sorted(run.items.items())
                },
                "complete": [one["id"] for one in run.complete],
            }
            for key, run in sorted(seen.runs.items())
        },
    }


AS_PLAIN_IN_BROWSER = """seen => ({
  visit: seen.visit?.id ?? null, state: seen.state,
  openings: [...seen.openings].map(([id, one]) => [id, one.id]),
  notes: seen.notes.map(one => one.id), live: [...seen.live].sort(), ordered: seen.ordered.map(one => one.id),
  runs: Object.fromEntries([...seen.runs].map(([key, run]) => [key, {
    items: Object.fromEntries([...run.items].map(([name, {outcome: o, heads}]) => [name, [o, heads.map(h => h.id)]])),
    complete: run.complete.map(one => one.id)}]))})"""


def history(chance: Random, devices: int = 2, changes: int = 40) -> list[list[Entry]]:
    """What each of several devices holds after changes of every kind, now and then exchanged, all clocks wrong."""
    held: list[list[Entry]] = [[site()] for _ in range(devices)]
    made = 100 + chance.randrange(1000) * 1000
    for _ in range(changes):
        at = chance.randrange(devices)
        if chance.random() < 0.1:
            held[at] = [dict(one) for one in merge(held[at], held[chance.randrange(devices)])]
            continue
        made += 1
        clock = f"20{chance.randrange(10, 99)}-0{chance.randrange(1, 9)}-11T0{chance.randrange(9)}:00:00.000+00:00"
        held[at] = [*held[at], {**_change(chance, held[at], made), "at": clock, "by": f"Device {at}"}]
    return held


def _change(chance: Random, held: list[Entry], made: int) -> Entry:
    n = max(one["n"] for one in held) + 1
    seen = view(held)
    opening = chance.choice([DOOR, None])
    key = f"position|{opening or ''}"
    run = seen.runs.get(key)
    kind = chance.choice(["item"] * 8 + ["undo", "undo", "reset", "complete", "note", "state", "opening"])
    if kind == "undo" or kind == "reset":
        mine = [one["id"] for one in held if one["id"] in seen.live and one["kind"] != "visit"]
        if mine:
            return entry("undo", made, n, undoes=mine[-5:] if kind == "reset" else [chance.choice(mine)], reason=kind)
    if kind == "complete":
        return entry("complete", made, n, checklist="position", list_name="Position", list_version=1, opening=opening,
                     words="Complete.", after=[one["id"] for one in run.complete] if run else [])  # fmt: skip
    if kind == "note":
        return entry("note", made, n, opening=None, note="A note")
    if kind == "state":
        return entry("state", made, n, state=chance.choice(["open", "archived"]), after=[])
    if kind == "opening":
        before = seen.openings.get(DOOR)
        return entry("opening", made, n, opening=DOOR, name="Back door", device=None, removed=chance.random() < 0.3,
                     after=[before["id"]] if before else [])  # fmt: skip
    name = chance.choice(["gap", "offset", "depth"])
    after = [one["id"] for one in run.items.get(name, [])] if run else []
    outcome = chance.choice(["done", "done", "problem", "not-applicable"])
    return item(made, n, item=name, outcome=outcome, note="Because", opening=opening, after=after)
