"""What a list of entries means. Pure; `content/assets/js/visit/entries.js` says the same in the browser.

Entries are ordered by counter, then id; their times order nothing. From the last to the first: an entry is taken back
where a later undo that stands names it; it is replaced where a later entry about the same thing that stands, or was
itself replaced, names it. What is left is how things stand, whatever the order in which the entries came together.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

Entry = Mapping[str, Any]


def order(entry: Entry) -> tuple[int, str]:
    """The key that puts entries in order."""
    return int(entry["n"]), str(entry["id"])


def canonical(value: Any) -> str:
    """One text for one content, whatever the order of its keys."""
    return json.dumps(_plain(value), sort_keys=True, ensure_ascii=False, separators=(",", ":"))


def _plain(value: Any) -> Any:
    if isinstance(value, float) and value.is_integer():
        return int(value)
    if isinstance(value, Mapping):
        return {key: _plain(below) for key, below in value.items()}
    return [_plain(below) for below in value] if isinstance(value, list | tuple) else value


def merge(*lists: Iterable[Entry]) -> list[Entry]:
    """The union of lists of entries, in order; of two entries with one id, the same one whichever came first."""
    found: dict[str, Entry] = {}
    for entries in lists:
        for entry in entries:
            known = found.get(entry["id"])
            if known is None or canonical(entry) < canonical(known):
                found[entry["id"]] = entry
    return sorted(found.values(), key=order)


def run_key(entry: Entry) -> str:
    """The list and opening that an entry belongs to."""
    return f"{entry['checklist']}|{entry.get('opening') or ''}"


def _slot(entry: Entry) -> str:
    """What an entry is about: only entries about the same thing replace each other."""
    kind = entry["kind"]
    if kind == "item":
        return f"item|{run_key(entry)}|{entry['item']}"
    if kind == "complete":
        return f"complete|{run_key(entry)}"
    return f"opening|{entry['opening']}" if kind == "opening" else str(kind)


@dataclass
class Run:
    """A list at one opening or at the site: the entries that stand for each item, and those that say it is complete."""

    items: dict[str, list[Entry]] = field(default_factory=dict)
    complete: list[Entry] = field(default_factory=list)

    def outcome(self, item: str) -> str:
        """The outcome of an item; `differs` where entries that did not know of each other disagree."""
        outcomes = {entry["outcome"] for entry in self.items[item]}
        return outcomes.pop() if len(outcomes) == 1 else "differs"


@dataclass
class View:
    """How things stand in a visit."""

    ordered: list[Entry]
    live: set[str] = field(default_factory=set)
    visit: Entry | None = None
    state: str = "open"
    openings: dict[str, Entry] = field(default_factory=dict)
    notes: list[Entry] = field(default_factory=list)
    runs: dict[str, Run] = field(default_factory=dict)


def _settle(ordered: list[Entry]) -> tuple[set[str], list[Entry]]:
    """The ids of entries that are not taken back, and those entries that are not replaced either, in order."""
    undone: set[str] = set()
    replaced: set[tuple[str, str]] = set()
    live: set[str] = set()
    heads: list[Entry] = []
    for entry in reversed(ordered):
        slot, id_ = _slot(entry), entry["id"]
        covered, stands = (slot, id_) in replaced, id_ not in undone
        if stands:
            live.add(id_)
            if entry["kind"] == "undo":
                undone.update(entry["undoes"])
        if stands or covered:
            replaced.update((slot, before) for before in entry.get("after", ()))
        if stands and not covered:
            heads.append(entry)
    return live, heads[::-1]


def view(entries: Iterable[Entry]) -> View:
    """How things stand after these entries."""
    ordered = merge(entries)
    live, heads = _settle(ordered)
    seen = View(ordered, live)
    for entry in heads:
        kind = entry["kind"]
        if kind == "visit":
            seen.visit = entry
        elif kind == "state":
            seen.state = entry["state"]
        elif kind == "opening":
            seen.openings[entry["opening"]] = entry
        elif kind == "note":
            seen.notes.append(entry)
        elif kind in ("item", "complete"):
            run = seen.runs.setdefault(run_key(entry), Run())
            (run.complete if kind == "complete" else run.items.setdefault(entry["item"], [])).append(entry)
    first = {entry["opening"]: order(entry) for entry in reversed(ordered) if entry["kind"] == "opening"}
    seen.openings = {id_: seen.openings[id_] for id_ in sorted(seen.openings, key=first.__getitem__)}
    return seen


def judge(reading: Mapping[str, Any], expected: Mapping[str, Any] | None) -> str | None:
    """`inside`, `outside`, or None where nothing was expected."""
    if expected is None:
        return None
    return "inside" if any(_holds(limits, reading) for limits in expected["ranges"]) else "outside"


def _holds(limits: Mapping[str, Any], reading: Mapping[str, Any]) -> bool:
    if reading.get("over"):
        return "high" not in limits
    value = reading["value"]
    return bool(limits.get("low", value) <= value <= limits.get("high", value))
