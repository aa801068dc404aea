"""The distances of a contact as it is mounted: at the worst end of its tolerance, with its magnet warm or cold.

A latched leaf may rest at the outer end of its play, and it sags, so gap, play and sag together have to stay below
the smallest make distance with a margin. A push may carry it through all its play, so gap and play together have to
stay below the smallest break distance. The largest travel to the trip decides how far the leaf opens unseen.
"""

from __future__ import annotations

from collections.abc import Mapping

from latchside.figures.for_device.mounted import exact, most
from latchside.figures.for_device.trips import SORTS, limit_names
from latchside.figures.for_device.worked import Ratings
from latchside.planning.house import House

SAG_MM, MARGIN_PERCENT = 2.0, 10.0
"""Common practice where the firm has no rule of its own."""
WIDTHS_MM: Mapping[str, float] = {"door": 700.0, "window": 400.0}
"""Width of a leaf that nobody measured, by its sort, where the firm has no rule of its own: on the narrow side."""
DRILLED_MM, SURFACE_MM = 50.0, 20.0
"""How near to the leading edge a contact can be fixed: in a hole, and on the surface."""

CORNERED = frozenset({"hinged-door", "double-door", "casement", "tilt-and-turn"})
"""Kinds whose contact sits beside the leading edge, nearer to the hinge than the edge itself."""


def rest(make_mm: float, house: House | None) -> float:
    """The largest gap with play at which a leaf may rest, in mm: what is sure, less the margin and the sag."""
    return exact(make_mm * (1 - rule(house, "make-margin", MARGIN_PERCENT) / 100) - sag(house))


def sag(house: House | None) -> float:
    """What sag and season may add to the gap, in mm."""
    return rule(house, "sag-allowance", SAG_MM)


def rule(house: House | None, name: str, otherwise: float) -> float:
    """A figure of the firm's, or this where it has none."""
    return house[name] if house is not None and name in house.values else otherwise


def lever(kind: str, from_edge_mm: float, width: float) -> float:
    """How many times farther the leading edge of a leaf so wide, in mm, moves than a contact so far from it.

    A leaf turns as one piece, so the ways of its points go by their distances from the hinge, chord by chord.
    """
    if kind not in CORNERED:
        return 1.0
    return width / (width - from_edge_mm)


MIDDLE = 0.5
"""A contact never sits nearer to the hinge than the middle of the leaf, however narrow."""


def nearest_mm(*, drilled: bool) -> float:
    """How near to the leading edge the contact can be fixed."""
    return DRILLED_MM if drilled else SURFACE_MM


def width_mm(kind: str, house: House | None) -> float:
    """The width of a leaf that nobody measured."""
    sort = SORTS.get(kind, "door")
    return rule(house, f"{sort}-width", WIDTHS_MM.get(sort, WIDTHS_MM["door"]))


def late_kinds(ratings: Ratings, name: str, house: House | None, *, drilled: bool) -> frozenset[str]:
    """Kinds at which the edge has passed every region's limit before a magnet has travelled so far."""
    travel = most(ratings, name)
    return frozenset(
        kind
        for kind in SORTS
        if (limits := trip_limits(kind, house))
        and travel * lever(kind, nearest_mm(drilled=drilled), width_mm(kind, house)) > max(limits)
    )


def trip_limits(kind: str, house: House | None) -> tuple[float, ...]:
    """The limits of all regions for the trip at the leading edge of a kind, in mm."""
    return tuple(house[name] for name in limit_names(kind, house.values)) if house is not None else ()
