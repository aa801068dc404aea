"""Where sensor and magnet go on each kind of opening, and what is never drilled there, as the card of places says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from latchside.messages import messages
from latchside.surveys.survey import Opening

message = messages(__name__)
CORNER_MM = 150.0
"""How far from the latch-side corner a contact is fixed at most: the procedures of position."""
LOOSE, LIFTING = "loose-hatch", "lifting-hatch"
"""A hatch whose lid has no hinge, and one whose lid lifts: outdoors, in a pavement or a roof."""
LOWER = "lower-sash"
"""A double-hung window whose upper sash is fixed."""
_KINDS = (
    "hinged-door", "double-door", "casement", "double-hung", "tilt-and-turn", "sliding", "lift-and-slide",
    "roof-window", "roller-door", "up-and-over", "hatch", LOOSE, LIFTING, LOWER, "gate",
)  # fmt: skip


@dataclass(frozen=True)
class Place:
    """Where the halves go, as phrases of a sentence, and what is never drilled.

    `sensor` is on the fixed part and `magnet` on the moving part; `drilled_reed` and `drilled_magnet` are the same of a
    contact in holes.
    """

    sensor: str
    magnet: str
    drilled_reed: str
    drilled_magnet: str
    never: str


def _place(kind: str) -> Place:
    return Place(
        message("sensor", kind=kind),
        message("magnet", kind=kind),
        message("drilled-reed", kind=kind),
        message("drilled-magnet", kind=kind),
        message("never", kind=kind),
    )


PLACES: Mapping[str, Place] = {kind: _place(kind) for kind in _KINDS}
"""By the sort of opening."""


def sort_of(opening: Opening) -> str:
    """The kind of an opening, with the sorts of hatch told apart."""
    if opening.kind != "hatch":
        return opening.kind
    return LOOSE if opening.loose_lid else LIFTING if opening.outdoors else opening.kind


def place_at(opening: Opening) -> Place | None:
    """Where the halves go on an opening; None for a kind that has no place."""
    lower = opening.kind == "double-hung" and opening.upper_sash is False
    return PLACES.get(LOWER if lower else sort_of(opening))
