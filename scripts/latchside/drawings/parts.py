"""Drawings of parts: the contacts of every class, the wired-input transmitter and its cell."""

from __future__ import annotations

from collections.abc import Callable

from latchside.drawings import (
    parts_recessed,
    parts_steel_door,
    parts_surface,
    parts_transmitter,
    parts_wide_reach,
    parts_wired_surface,
)
from latchside.drawings.canvas import Drawing

DRAWINGS: dict[str, Callable[[], Drawing]] = {
    "surface-contact-front": parts_surface.front,
    "surface-contact-side": parts_surface.side,
    "surface-contact-terminals": parts_surface.terminals,
    "surface-contact-spacer": parts_surface.spacer,
    "recessed-contact-section": parts_recessed.section,
    "recessed-contact-resistor": parts_recessed.with_resistor,
    "steel-door-section": parts_steel_door.section,
    "steel-door-sleeve": parts_steel_door.sleeve,
    "steel-door-top-edge": parts_steel_door.top_edge,
    "wired-surface-front": parts_wired_surface.front,
    "wired-surface-inside": parts_wired_surface.inside,
    "wired-surface-steel": parts_wired_surface.steel,
    "wide-reach-parts": parts_wide_reach.parts,
    "wide-reach-floor": parts_wide_reach.floor,
    "wide-reach-bracket": parts_wide_reach.bracket,
    "wide-reach-tail": parts_wide_reach.tail,
    "transmitter-parts": parts_transmitter.inside,
    "transmitter-terminals": parts_transmitter.terminals,
    "cell-polarity": parts_transmitter.polarity,
}
