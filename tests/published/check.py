"""What a check against the outside is: our answers beside another's, the source, and how far they may differ."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from latchside.figures.catalogue import Figure, catalogue

Pairs = Iterable[tuple[float, float]]
"""Our value and the other's, for each point compared."""


@dataclass(frozen=True)
class Check:
    """One output of a figure against one source.

    `kind` says what the source is: values published elsewhere, a general-purpose library, or a law of nature worked
    out by other means. A difference is a share of the other's value, or absolute where `unit` names one.
    """

    figure: str
    output: str
    source: str
    kind: Literal["published", "library", "law"]
    pairs: Callable[[], Pairs]
    allowed: float
    unit: str = ""

    def measured(self) -> tuple[float, int]:
        """The largest difference, and how many points were compared."""
        found = [abs(ours - other) / (1 if self.unit else abs(other)) for ours, other in self.pairs()]
        return max(found), len(found)


@cache
def figures() -> Mapping[str, Figure]:
    """The figures of the project."""
    return catalogue()


def ask(figure: str, **inputs: Any) -> dict[str, Any]:
    """The outputs of a figure."""
    return figures()[figure].answer(inputs).outputs
