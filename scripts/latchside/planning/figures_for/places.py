"""Where sensor and magnet go on each kind of opening, and what is never drilled there, as the card of places says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

CORNER_MM = 150.0
"""How far from the latch-side corner a contact is fixed at most: the procedures of position."""


@dataclass(frozen=True)
class Place:
    """The fixed part that the sensor goes on, the moving part that the magnet goes on, and what is never drilled."""

    sensor: str
    magnet: str
    never: str


PLACES: Mapping[str, Place] = {
    "hinged-door": Place(
        "on the frame at the latch side, near the top corner", "on the leaf at the latch side, near the top corner",
        "lock, keep and rods",
    ),
    "double-door": Place(
        "on the head of the frame, one for each leaf that opens, at its latch side",
        "on top of each leaf that opens, at its latch side", "lock, and the bolts of the passive leaf",
    ),
    "casement": Place(
        "on the frame at the latch side, high up; hung at the top: at the edge across from the hinges",
        "on the leaf at the same edge, clear of the handle", "gear of the handle, glass and bead, a bottom that drains",
    ),
    "double-hung": Place(
        "at the sill for the lower sash, at the head for the upper one; never at the meeting rails, which both move",
        "on the bottom rail of the lower sash, on the top rail of the upper one",
        "jambs with weights and cords, glass, a sill that drains",
    ),
    "tilt-and-turn": Place(
        "on the frame at the top of the handle side", "on the leaf at the top of the handle side",
        "gear round the edge, seals, drain chambers, thermal break, glass",
    ),
    "sliding": Place(
        "on the jamb that the leading edge meets", "on the leading edge of the leaf",
        "lock, a bottom track that drains, edge of the glass",
    ),
    "lift-and-slide": Place(
        "on the jamb that the leading edge meets, lined up with the handle home and the leaf down",
        "on the leading edge of the leaf", "lift gear in the latch edge, threshold and bottom track, glass",
    ),
    "roof-window": Place(
        "on the frame at the lower edge, its cable in a loop below it", "on the leaf at the lower edge, face to face",
        "seal, flashing, edge of the glass",
    ),
    "roller-door": Place(
        "on the wall beside the guide, or on the floor where no wheels cross", "on the bottom rail of the curtain",
        "slats, guides, roll and spring, a floor whose pipes and cables are not known",
    ),
    "up-and-over": Place(
        "on the frame low at the side", "on the leaf low at the side, in sections on the lowest one",
        "springs and arms, lock and rods",
    ),
    "hatch": Place(
        "on the frame at the room side, across from the hinges", "on the lid at the room side, across from the hinges",
        "where cables cross above, ladder and spring",
    ),
    "gate": Place(
        "on the latch post, at the protected side", "on the gate at the latch edge, at the protected side",
        "latch and lock, the foot of the post",
    ),
}  # fmt: skip
"""By the kind of opening."""

RECESSED: Mapping[str, tuple[str, str]] = {
    "hinged-door": ("in the head of the frame above the latch side", "in the top edge of the leaf"),
    "double-door": ("in the head of the frame, one above each leaf that opens", "in the top edge of each leaf"),
    "casement": ("in the frame at the latch side, high up", "in the edge of the leaf opposite"),
    "double-hung": (
        "in a wooden head for the upper sash, in a sill that does not drain for the lower one",
        "in the top rail of the upper sash, in the bottom rail of the lower one",
    ),
    "sliding": ("in the jamb that the leading edge meets", "in the leading edge of the leaf"),
    "hatch": ("in the frame across from the hinges", "in the edge of the lid opposite"),
}
"""Where reed and magnet of a drilled contact go, end to end across the gap."""
