"""What a chart is. Every number in its message comes out of the catalogue."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from latchside.drawings.canvas import Drawing
from latchside.figures.catalogue import Figure

Figures = Mapping[str, Figure]
"""The catalogue: every figure by its id."""


@dataclass(frozen=True)
class Chart:
    """One chart. `make` is pure: the same figures give the same drawing.

    `figure` is the figure on whose page it stands, `uses` every figure that it is worked out with.
    """

    id: str
    figure: str
    uses: tuple[str, ...]
    make: Callable[[Figures], Drawing]


def example(of: Figure, **changes: object) -> dict[str, Any]:
    """The inputs of the figure's own first worked example, with some of them changed."""
    return {**of.data["examples"][0]["inputs"], **changes}
