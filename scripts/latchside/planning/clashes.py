"""Wishes and limits of an opening that exclude each other: put to the customer, never settled in silence."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from latchside.library.model import Library, Record
from latchside.library.traits import traits
from latchside.planning.at_opening import AtOpening
from latchside.planning.plan import Choice, Problem
from latchside.planning.standing import Standing, on_loop, second_is_new
from latchside.surveys.survey import Opening


def clashes(
    opening: Opening, choice: Choice, chosen: Standing | None, found: Sequence[Standing], library: Library
) -> Iterator[Problem]:
    """What cannot be had together at an opening that has a device."""
    device = library.find("device", choice.device) if choice.device else None
    if device is None:
        return
    if opening.wish == "hidden":
        yield from _in_sight(opening, choice, device, found, library)
    if second_is_new(opening) and AtOpening(opening, device, "").kept and on_loop(opening, library) is None:
        yield Problem(
            opening.id, "second-contact",
            "One contact is in place and stays. For the second leaf or sash no wired contact can be named.",
            "Meter whether the second one has a contact too. Else ask for leave to fix one, or choose a radio contact "
            "for it by hand.",
        )  # fmt: skip


def _in_sight(
    opening: Opening, choice: Choice, device: Record, found: Sequence[Standing], library: Library
) -> Iterator[Problem]:
    """Nothing in sight is wished for, and what can be fitted stands in sight."""
    at = AtOpening(opening, device, "")
    contact = library.find("device", choice.contact) if choice.contact else None
    new = contact if at.transmitter else device
    if (at.kept and not second_is_new(opening)) or (new is not None and traits(new).drilled):
        return
    what = new.name.lower() if new is not None else "wired contact on its loop"
    yield Problem(
        opening.id, "wish-cannot-be-met",
        f"Nothing in sight is wished for, and the {what} stands in sight. {_why(found, library)}",
        "Put it to the customer before the day, and write the answer down: a body in sight, or what stands against a "
        "concealed contact is changed.",
    )  # fmt: skip


def _why(found: Sequence[Standing], library: Library) -> str:
    """What stands against the concealed classes."""
    concealed = [one for one in found if one.listed and _concealed(one, library)]
    if not concealed:
        return "No concealed contact is made for this kind of opening."
    ruled_out = [cause for one in concealed for cause in one.ruling_out]
    against = ruled_out or [cause for one in concealed for cause in one.avoid]
    said = dict.fromkeys(f"{cause.text} {cause.reason}" for cause in against)
    return f"Against a concealed one: {' '.join(said)}" if said else "More speaks for it than for a concealed one."


def _concealed(one: Standing, library: Library) -> bool:
    record = library.find("device", one.profile.id)
    return record is not None and traits(record).drilled
