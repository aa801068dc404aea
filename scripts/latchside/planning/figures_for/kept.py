"""A sound contact that stays: its own label states its gap and reach; without a label, the trial on site decides.

Its class is not known. The limits of another class would call a good contact poor, or a poor one good.
"""

from __future__ import annotations

from collections.abc import Iterator

from latchside.messages import messages
from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import say
from latchside.planning.names import contacts
from latchside.planning.plan import Line

message = messages(__name__)
OF_OPENING = frozenset({"play", "trip", "trip-tilted", "shows-lifted"})
"""Readings that the opening sets and no label: how far it plays, and how far it may be open unseen."""


def stays(context: Context) -> bool:
    """A sound contact stays in use: on its own cable, or at the terminals of a transmitter."""
    device = context.device
    return bool(context.opening.old_contact) and (device.wired or device.transmitter)


def second(context: Context) -> bool:
    """Beside it a new one goes on the second leaf or sash."""
    return contacts(context.opening) > 1


def kept(context: Context) -> Iterator[Line]:
    """The gap of the contact in place, judged by nobody before its label is read or it is tried."""
    if context.device.wired and not context.device.traits.magnetic:
        yield Line(message("name"), message("by-label"), "test on site", message("meaning"), "loop-states", {})
        return
    gap, play = context.opening.gap_mm, context.opening.play_mm
    shown = message("by-label") if gap is None else message("gap", gap=say(gap, "mm"))
    meaning = message("meaning-loose", play=say(play, "mm")) if play else message("meaning")
    inputs = {"gap_mm": gap, "play_mm": play}
    yield Line(message("name-magnetic"), shown, "test on site", meaning, "reed-gap", inputs)
