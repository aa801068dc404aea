"""Drawings of principles that are worked out: proving, and what steel takes from a magnet."""

from __future__ import annotations

from collections.abc import Callable

from latchside.drawings import principles_fields, principles_proof
from latchside.drawings.canvas import Drawing

DRAWINGS: dict[str, Callable[[], Drawing]] = {
    "two-ends-of-proof": principles_proof.two_ends,
    "steel-steals-the-magnet": principles_fields.magnet,
}
