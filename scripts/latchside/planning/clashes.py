"""Wishes, limits and answers of an opening that exclude each other: somebody decides, never the program in silence."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from latchside.library.model import Library, Record
from latchside.library.traits import traits
from latchside.messages import Message, messages, within
from latchside.planning.at_opening import AtOpening
from latchside.planning.facts import steel_told_against
from latchside.planning.holes import no_holes
from latchside.planning.plan import Choice, Problem, problem
from latchside.planning.standing import Standing, on_loop, second_is_new
from latchside.surveys.survey import Opening

message = messages(__name__)


def clashes(opening: Opening, choice: Choice, found: Sequence[Standing], library: Library) -> Iterator[Problem]:
    """What cannot be had together at an opening, or cannot both be true of it."""
    unmet = steel_told_against(opening)
    if unmet is not None:
        yield problem(message, opening.id, "steel-not-found", part=unmet)
    device = library.find("device", choice.device) if choice.device else None
    if device is None:
        return
    at = AtOpening(opening, device, "")
    contact = library.find("device", choice.contact) if choice.contact else None
    new = contact if at.transmitter else device
    if second_is_new(opening) and new is not None and traits(new).needs_hole and no_holes(opening):
        yield problem(message, opening.id, "second-needs-hole")
    if opening.wish == "hidden":
        yield from _in_sight(at, new, found, library)
    if second_is_new(opening) and at.kept and on_loop(opening, library) is None:
        yield problem(message, opening.id, "second-contact")


def _in_sight(at: AtOpening, new: Record | None, found: Sequence[Standing], library: Library) -> Iterator[Problem]:
    """Nothing may be in sight, and what can be fitted is; `new` is that contact, where its class is known."""
    opening = at.opening
    if (at.kept and not second_is_new(opening)) or (new is not None and traits(new).drilled):
        return
    name = within(new.name) if new is not None else message("any-contact")
    yield problem(message, opening.id, "wish-cannot-be-met", device=name, reason=_against_concealed(found, library))


def _against_concealed(found: Sequence[Standing], library: Library) -> Message:
    concealed = [one for one in found if one.listed and _concealed(one, library)]
    if not concealed:
        return message("none-made")
    ruled_out = [cause for one in concealed for cause in one.ruling_out]
    against = ruled_out or [cause for one in concealed for cause in one.avoid]
    reasons = dict.fromkeys(cause.sentences for cause in against)
    return message("against-concealed", reasons=" ".join(reasons)) if reasons else message("more-speaks")


def _concealed(one: Standing, library: Library) -> bool:
    record = library.find("device", one.profile.id)
    return record is not None and traits(record).drilled
