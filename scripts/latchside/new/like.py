"""A new device as a copy of another, in which all that has to be judged anew is a blank with the old value beside it.

The text of the other record is changed where its values stand, so that its comments and the order of its keys stay.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

import yaml

from latchside.blanks import BLANK

_UNREVIEWED = "{by: not yet, on: not yet, trial: not yet}"


@dataclass(frozen=True)
class Own:
    """What only the other device lists, by key of its record: ids that the new one needs its own of."""

    procedures: frozenset[str] = frozenset()
    drawings: frozenset[str] = frozenset()
    checklists: frozenset[str] = frozenset()
    faults: frozenset[str] = frozenset()


@dataclass(frozen=True)
class Change:
    """What stands from `start` to `end` of a text, and what takes its place; with `was` it is told beside it."""

    start: int
    end: int
    text: str
    was: bool = True


def copied(text: str, old: str, new: str, own: Own) -> str:
    """The text of a new device `new`, copied from `text`, the record of `old`."""
    root = yaml.compose(text, Loader=yaml.SafeLoader)
    changes = list(_changes(root, old, new, own))
    first, _, rest = _changed(text, changes, list(_scalars(root))).partition("\n")
    lines = [first, *_header(old, new, own), rest] if first.startswith("#") else [*_header(old, new, own), first, rest]
    return "\n".join(lines)


def renamed(id_: str, old: str, new: str) -> str:
    """The id of what the new device has in the place of `id_`."""
    return id_.replace(old, new) if old in id_ else f"{id_}-{new}"


def _header(old: str, new: str, own: Own) -> Iterator[str]:
    yield f"# A copy of {old}. Each {BLANK} is to be judged anew; what stood there follows after `was`. In this order:"
    steps = ["Say under traits, parts and inputs what it is, where it is not the same. All else follows from these."]
    for kind, ids in (("drawing", own.drawings), ("procedure", own.procedures), ("checklist", own.checklists)):
        steps += [f"latchside new {kind} {renamed(id_, old, new)} --for {new}" for id_ in sorted(ids)]
    steps.append("latchside check, which lists every blank of this file and of those at once.")
    steps.append("Fill in or delete each. A kind of opening needs a drawing of its own, opening-KIND.")
    yield from (f"# {number}. {step}" for number, step in enumerate(steps, 1))


def _changes(root: Any, old: str, new: str, own: Own) -> Iterator[Change]:
    for key, value in root.value:
        start, end = value.start_mark.index, end_of(value)
        match key.value:
            case "id":
                yield Change(start, end, new, was=False)
            case "version":
                yield Change(start, end, "1", was=False)
            case "review":
                yield Change(start, end, _UNREVIEWED, was=False)
            case "aliases" | "safety_correction":
                yield Change(key.start_mark.index, end, "")
            case "also_called" | "openings":
                yield Change(start, end, f"[{BLANK}]")
            case "name" | "summary":
                yield Change(start, end, BLANK)
            case "values":
                yield from (Change(one.start_mark.index, end_of(one), BLANK) for _, one in value.value)
            case "procedures" | "drawings" | "checklists" | "faults":
                yield from _lists(value, getattr(own, key.value), old, new)
            case _:
                yield from (Change(one.start_mark.index, end_of(one), text) for one, text in _texts(key.value, value))


_JUDGED = {
    "suits": ("text",), "avoid": ("text",), "place": ("on", "text"), "inputs": ("choose_when", "if_wrong"),
}  # fmt: skip
"""Lists of which each entry is judged anew, and by which of its keys."""
_PROSE = ("how_it_works", "power", "tamper", "radio", "maintenance", "disposal")


def _texts(key: str, value: Any) -> Iterator[tuple[Any, str]]:
    """The values of a list that become blanks, and what each becomes."""
    if not isinstance(value, yaml.SequenceNode):
        return
    for item in value.value:
        if key in _PROSE and isinstance(item, yaml.ScalarNode):
            yield item, BLANK
        elif key in _JUDGED:
            for name, below in item.value:
                if name.value in _JUDGED[key]:
                    yield below, BLANK if isinstance(below, yaml.ScalarNode) else f"[{BLANK}]"


def _lists(value: Any, own: frozenset[str], old: str, new: str) -> Iterator[Change]:
    """Each id that is another's own becomes a blank that proposes one; each reason for `none` a blank."""
    if isinstance(value, yaml.MappingNode):
        for key, below in value.value:
            if key.value == "none":
                yield Change(below.start_mark.index, end_of(below), BLANK)
            else:
                yield from _lists(below, own, old, new)
    elif isinstance(value, yaml.SequenceNode):
        for one in value.value:
            if one.value in own:
                yield Change(one.start_mark.index, end_of(one), f"{BLANK} {renamed(one.value, old, new)}")


def _scalars(node: Any) -> Iterator[tuple[int, int]]:
    """Where each scalar begins and ends."""
    if isinstance(node, yaml.ScalarNode):
        yield node.start_mark.index, end_of(node)
    elif isinstance(node, yaml.MappingNode):
        for pair in node.value:
            for one in pair:
                yield from _scalars(one)
    else:
        for one in node.value:
            yield from _scalars(one)


def end_of(node: Any) -> int:
    """Where a value ends: that of a block at its last line, without the comments and empty lines that follow it."""
    if isinstance(node, yaml.ScalarNode):
        if node.style not in ("|", ">"):
            return int(node.end_mark.index)
        buffer = node.end_mark.buffer
        return len(buffer[: node.end_mark.index].rstrip()) if buffer else int(node.end_mark.index)
    if node.flow_style or not node.value:
        return int(node.end_mark.index)
    last = node.value[-1]
    return end_of(last[1] if isinstance(last, tuple) else last)


def _changed(text: str, changes: Iterable[Change], scalars: list[tuple[int, int]]) -> str:
    """The text with the changes made, and what stood there told at the end of the line, or above it."""
    out, done = [], 0
    lines: dict[int, list[Change]] = {}
    for change in sorted(changes, key=lambda one: one.start):
        lines.setdefault(text.rfind("\n", 0, change.start) + 1, []).append(change)
    for start, row in lines.items():
        last = row[-1].end
        stop = text.find("\n", last)
        stop = len(text) if stop < 0 else stop
        told = [text[one.start : one.end] for one in row if one.was]
        inside = any(begin < stop < end for begin, end in scalars) or any("\n" in one for one in told)
        out.append(text[done:start])
        if inside:
            pad = " " * (len(text[start:]) - len(text[start:].lstrip(" ")))
            words = "\n".join(told).splitlines()
            out += [f"{pad}# {'was: ' if not number else ''}{line.strip()}\n" for number, line in enumerate(words)]
        at = start
        for one in row:
            out += [text[at : one.start], one.text]
            at = one.end
        out.append(text[at:stop].rstrip())
        if told and not inside:
            out.append(f"  # was: {'; '.join(told)}")
        done = stop
    return "".join([*out, text[done:]])
