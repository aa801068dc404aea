"""A sound contact that stays: its own label tells its gap and reach, and the trial on site tells where there is none.

Which part it is, nobody said. The limits of another class would call a good contact poor, or a poor one good.
"""

from __future__ import annotations

from collections.abc import Iterator

from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import say
from latchside.planning.names import contacts
from latchside.planning.plan import Line

OF_OPENING = frozenset({"play", "trip"})
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
        yield Line("Contact in place", "by its own label", "test on site", _told(""), "loop-states", {})
        return
    gap, play = context.opening.gap_mm, context.opening.play_mm
    shown = "by its own label" if gap is None else f"{say(gap, 'mm')}, by its own label"
    loose = f" Try it pushed and pulled through its play, {say(play, 'mm')}." if play else ""
    inputs = {"gap_mm": gap, "play_mm": play}
    yield Line("Gap and reach, contact in place", shown, "test on site", _told(loose), "reed-gap", inputs)


def _told(loose: str) -> str:
    return (
        "The contact in place stays, and its label is not known here. Read it, or try it: open and close ten times, "
        f"and the meter shows each.{loose} What it does decides, and no figure of another class."
    )
