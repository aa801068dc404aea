"""What the limits for the trip call each kind of opening, and which limits a kind has."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

SORTS: Mapping[str, str] = {
    "hinged-door": "door", "double-door": "door", "sliding": "door", "lift-and-slide": "door", "hatch": "door",
    "casement": "window", "double-hung": "window", "tilt-and-turn": "window", "roof-window": "window",
    "roller-door": "heavy", "up-and-over": "heavy", "gate": "heavy",
}  # fmt: skip
"""By the kind of opening."""


def limit_names(kind: str, names: Iterable[str]) -> tuple[str, ...]:
    """Those of the names of figures that are a limit for this kind, of every region."""
    start = f"trip-{SORTS[kind]}" if kind in SORTS else None
    return tuple(name for name in names if start and (name == start or name.startswith(f"{start}-")))
