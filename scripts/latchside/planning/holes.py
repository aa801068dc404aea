"""Where no hole may be made: on fire-rated and escape openings, where drilling is not allowed, and into glass.

Life safety comes before data. What needs a hole is ruled out there even where its profile forgets to say so: a
device of which a part is drilled, one on a bracket, and any other contact whose set has no pad that could bear it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from latchside.library.model import Record
from latchside.library.traits import traits
from latchside.surveys.survey import Opening

Told = Mapping[str, Any]
"""A sentence as a profile has it: `text`, `reason`, `when` and `rules_out`."""

DEPTH = "hole-depth"


def no_holes(opening: Opening) -> bool | None:
    """Whether no new hole or screw may go into leaf and frame; None where that is not known."""
    told = (opening.fire_rated, opening.escape, None if opening.drill is None else not opening.drill)
    return True if True in told else None if None in told else False


def never(record: Record) -> Iterator[Told]:
    """The sentences that rule a device out where it needs a hole, each only where its own profile has none such."""
    said = [frozenset(test["field"] for test in one["when"]) for one in _ruling_out(record)]
    for told in _BARRED if traits(record).needs_hole else ():
        if frozenset([told["when"][0]["field"]]) not in said:
            yield told
    if traits(record).drilled and not any("rail-depth" in fields for fields in said):
        yield _GLASS if DEPTH in record["values"] else _ANY_GLASS


def _ruling_out(record: Record) -> Sequence[Told]:
    return [one for one in record["avoid"] if "when" in one and one.get("rules_out")]


_BARRED: tuple[Told, ...] = (
    {
        "text": "A fire-rated opening.",
        "reason": "No new hole and no screw goes into it, unless its listing or its maker allows that in writing.",
        "when": [{"field": "fire-rated", "is": ["yes"]}],
        "rules_out": True,
    },
    {
        "text": "An opening on an escape way.",
        "reason": "No new hole and no screw goes into it, unless local code allows that.",
        "when": [{"field": "escape", "is": ["yes"]}],
        "rules_out": True,
    },
    {
        "text": "A place that may not be drilled.",
        "reason": "It needs a hole or screws, and no pad bears it.",
        "when": [{"field": "drill", "is": ["no"]}],
        "rules_out": True,
    },
)
_GLASS: Told = {
    "text": "Glass within the depth of its hole.",
    "reason": "The bit breaks the pane or the seal of the glass unit.",
    "when": [
        {"field": "glazed", "is": ["yes"]},
        {"field": "rail-depth", "below": {"of": DEPTH, "limit": "max"}},
    ],
    "rules_out": True,
}
_ANY_GLASS: Told = {
    "text": "Glass, and a hole of which nobody says how deep it goes.",
    "reason": "The bit breaks the pane or the seal of the glass unit.",
    "when": [{"field": "glazed", "is": ["yes"]}],
    "rules_out": True,
}
