"""Drawings of parts: the surface contact, the recessed contact, the wired-input transmitter and its cell."""

from __future__ import annotations

from collections.abc import Callable

from latchside.drawings import parts_recessed, parts_surface, parts_transmitter
from latchside.drawings.canvas import Drawing

DRAWINGS: dict[str, Callable[[], Drawing]] = {
    "surface-contact-front": parts_surface.front,
    "surface-contact-side": parts_surface.side,
    "surface-contact-terminals": parts_surface.terminals,
    "surface-contact-spacer": parts_surface.spacer,
    "recessed-contact-section": parts_recessed.section,
    "recessed-contact-resistor": parts_recessed.with_resistor,
    "transmitter-parts": parts_transmitter.inside,
    "transmitter-terminals": parts_transmitter.terminals,
    "cell-polarity": parts_transmitter.polarity,
}
