"""Drawings of the twelve kinds of opening, each showing where magnet and sensor go."""

from __future__ import annotations

from collections.abc import Callable

from latchside.drawings import openings_doors as doors
from latchside.drawings import openings_wide as wide
from latchside.drawings import openings_windows as windows
from latchside.drawings.canvas import Drawing

DRAWINGS: dict[str, Callable[[], Drawing]] = {
    "opening-hinged-door": doors.hinged_door,
    "opening-double-door": doors.double_door,
    "opening-casement": windows.casement,
    "opening-double-hung": windows.double_hung,
    "opening-tilt-and-turn": windows.tilt_and_turn,
    "opening-sliding": doors.sliding,
    "opening-lift-and-slide": doors.lift_and_slide,
    "opening-roof-window": windows.roof_window,
    "opening-roller-door": wide.roller_door,
    "opening-up-and-over": wide.up_and_over,
    "opening-hatch": wide.hatch,
    "opening-gate": wide.gate,
}
