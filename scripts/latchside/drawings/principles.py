"""Drawings of principles: proving, naming, and what metal takes away."""

from __future__ import annotations

from collections.abc import Callable

from latchside.drawings import principles_fields, principles_proof
from latchside.drawings.canvas import Drawing

DRAWINGS: dict[str, Callable[[], Drawing]] = {
    "two-ends-of-proof": principles_proof.two_ends,
    "reed-and-leaf": principles_proof.reed_and_leaf,
    "steel-steals-the-magnet": principles_fields.magnet,
    "metal-steals-the-radio": principles_fields.radio,
}
