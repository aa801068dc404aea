"""Drawings of parts, openings and circuits, made by the build. `ALL` maps each drawing's id to its maker."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from latchside.drawings import circuits, openings, parts, principles
from latchside.drawings.canvas import Drawing

ALL: dict[str, Callable[[], Drawing]] = {
    id_: cache(maker)  # the same drawing stands on many pages
    for group in (openings, parts, circuits, principles)
    for id_, maker in group.DRAWINGS.items()
}
