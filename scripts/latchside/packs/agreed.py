"""The times that are agreed with the customer, and what the standard of the region holds them to."""

from __future__ import annotations

from latchside.figures.units import with_unit
from latchside.library import Library
from latchside.messages import Message, messages

message = messages(__name__)

_TABLE = "entry-and-exit-times"
_EUROPE = {"entry": ("entry-europe", "most")}
_ROWS = {
    "north_america": {"entry": ("entry-least", "least"), "exit": ("exit-least", "least")},
    "united_kingdom": _EUROPE,
    "continent": _EUROPE,
}
"""The row and the column with the limit of each time, by region; the rest is for the way to decide."""


def limit(time: str, region: str | None, library: Library) -> Message:
    """What the `entry` or `exit` time is held to; that the instructions decide where the region is not known."""
    if region not in _ROWS:
        return message("not-known")
    table = library.find("table", _TABLE)
    row, side = _ROWS[region].get(time, ("", ""))
    cells = next((one["cells"] for one in table["rows"] if one["id"] == row), None) if table else None
    return message(side, time=with_unit(f"{cells[side]:g}", "s")) if cells else message("as-walked")
