"""Where no hole may be made: on fire-rated and escape openings, where drilling is not allowed, and into glass.

Life safety comes before data. A device that needs a hole is ruled out there even where its profile forgets to say so:
one with a drilled part, one on a bracket, and any other contact without a pad that could bear it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from latchside.library.model import Record
from latchside.library.traits import Traits, traits
from latchside.messages import messages
from latchside.surveys.survey import Opening

message = messages(__name__)
Sentence = Mapping[str, Any]
"""A sentence as a profile has it: `text`, `reason`, `when` and `rules_out`."""

DEPTH = "hole-depth"
STUCK = frozenset({"glass", "plastic"})
"""Materials that take pads where a class has them: screws split one and end the guarantee of the other."""
NO_HOLE = {"fire-rated": "yes", "escape": "yes", "drill": "no"}
"""Facts of an opening, each with the answer that allows no hole."""


def no_holes(opening: Opening) -> bool | None:
    """Whether no new hole or screw may go into leaf and frame; None where that is not known."""
    answers = (opening.fire_rated, opening.escape, None if opening.drill is None else not opening.drill)
    return True if True in answers else None if None in answers else False


def in_doubt(opening: Opening) -> str:
    """What is not known of these two where neither is known to hold: `fire`, `escape` or `both`; else empty."""
    answers = {"fire": opening.fire_rated, "escape": opening.escape}
    unknown = [name for name, answer in answers.items() if answer is None]
    if True in answers.values() or not unknown:
        return ""
    return "both" if len(unknown) > 1 else unknown[0]


def pads_alone(opening: Opening, device: Traits) -> bool:
    """Whether pads hold a device there whatever may be drilled: one that has pads, on plastic or glass."""
    by_pads = device.has("pad") and not (device.drilled or device.bracketed or device.takes_loop)
    return by_pads and not STUCK.isdisjoint((opening.leaf_material, opening.frame_material))


def never(record: Record) -> Iterator[Sentence]:
    """The sentences that rule out a device that needs a hole, each only where its own profile has none for that."""
    own = [frozenset(test["field"] for test in one["when"]) for one in _ruling_out(record)]
    for fact, answer in NO_HOLE.items() if traits(record).needs_hole else ():
        if frozenset([fact]) not in own:
            yield _sentence(fact, {"field": fact, "is": [answer]})
    if traits(record).drilled and not any("rail-depth" in fields for fields in own):
        glazed = {"field": "glazed", "is": ["yes"]}
        if DEPTH in record["values"]:
            yield _sentence("glass", glazed, {"field": "rail-depth", "below": {"of": DEPTH, "limit": "max"}})
        else:
            yield _sentence("glass-any-depth", glazed)


def _ruling_out(record: Record) -> Sequence[Sentence]:
    return [one for one in record["avoid"] if "when" in one and one.get("rules_out")]


def _sentence(id: str, *when: Mapping[str, Any]) -> Sentence:
    return {"text": message(f"no-{id}.text"), "reason": message(f"no-{id}.reason"), "when": when, "rules_out": True}
