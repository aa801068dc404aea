"""Drawings of parts, openings and circuits, made by the build. `ALL` maps each drawing's id to its maker."""

from __future__ import annotations

from collections.abc import Callable

from latchside.drawings import circuits, openings, parts, principles
from latchside.drawings.canvas import Drawing

ALL: dict[str, Callable[[], Drawing]] = {
    **openings.DRAWINGS,
    **parts.DRAWINGS,
    **circuits.DRAWINGS,
    **principles.DRAWINGS,
}
