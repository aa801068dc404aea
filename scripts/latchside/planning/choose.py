"""The device class for an opening, by the conditions of the device profiles.

A class whose profile does not list the kind of opening, or that a condition rules out, is never chosen. A sound
contact in place stays. Among the others the weights decide; `standing.py` breaks ties. What the free positions of the
panel change afterwards is in `positions.py`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from latchside.figures.units import signed
from latchside.library.model import Library
from latchside.messages import listed, messages, within
from latchside.planning.at_opening import AtOpening
from latchside.planning.clashes import clashes
from latchside.planning.conditions import Condition
from latchside.planning.plan import Choice, PassedOver, Problem, problem
from latchside.planning.standing import Standing, for_loop, on_loop, says_too_little, standings
from latchside.surveys.survey import ControlUnit, Opening, Site

message = messages(__name__)
NONE_LEFT = "no-class-fits"
_GAP = {"gap", "gap-and-play"}


def choose(opening: Opening, site: Site, unit: ControlUnit, library: Library) -> Choice:
    """The choice for one opening, by its own facts alone.

    Neither the site nor the control unit changes it: a device that does not suit its opening is no answer to too few
    positions.
    """
    found = standings(opening, library)
    device = decided(opening, found)
    chosen = next((one for one in found if one.profile.id == device), None)
    if device is None and found and found[0].possible:
        return Choice(None, (message("too-little"),), (), _passed(found, None, opening, library))
    return _choice(device, chosen, found, opening, library, _contact(device, opening, library))


def decided(opening: Opening, found: Sequence[Standing]) -> str | None:
    """The device of an opening by the standing of each class there, or None."""
    if opening.override is not None:
        return opening.override.device
    if not found or not found[0].possible or says_too_little(found):
        return None
    return found[0].profile.id


def instead(opening: Opening, choice: Choice, device: str, why: str, library: Library) -> Choice:
    """The choice with another class instead of the one chosen, and why.

    The contact on the loop of a transmitter is the one that would be fitted anyway, or the one in place.
    """
    found = standings(opening, library)
    chosen = next(one for one in found if one.profile.id == device)
    contact = _contact(device, opening, library)
    if contact is None and _wants_contact(device, opening, library):
        contact = next((one for one in found if one.profile.id == choice.device and one.profile.wired), None)
    made = _choice(device, chosen, found, opening, library, contact)
    passed = (replace(one, why=(why,)) if one.device == choice.device else one for one in made.passed_over)
    return replace(made, reasons=(why, *made.reasons), passed_over=tuple(passed), moved=why)


def classes(opening: Opening, library: Library) -> tuple[str | None, str | None]:
    """The choice for one opening in short: the device class, and that of the wired contact on its loop."""
    device = decided(opening, standings(opening, library))
    contact = _contact(device, opening, library)
    return device, contact.profile.id if contact else None


def choice_problems(opening: Opening, choice: Choice, library: Library) -> tuple[Problem, ...]:
    """What stands against a choice and the lead has to settle before anything is fitted."""
    return tuple(_problems(opening, choice, library))


def _choice(
    device: str | None,
    chosen: Standing | None,
    found: Sequence[Standing],
    opening: Opening,
    library: Library,
    contact: Standing | None,
) -> Choice:
    names = library.schemas.words("opening-field")
    reasons = [one.sentences for one in _by_weight(chosen.suits)] if chosen else []
    if chosen and chosen.keeps:
        reasons.insert(0, message("contact-stays"))
    if chosen and not reasons and not opening.override:
        alone = sum(one.possible for one in found) == 1
        reasons = [message("one-left" if alone else "least-against")]
    for_contact, against_contact = _of_contact(contact) if contact else ([], [])
    return Choice(
        device=device,
        reasons=(*reasons, *for_contact),
        against=(*_against(chosen, names), *against_contact) if chosen else (),
        passed_over=_passed(found, chosen, opening, library),
        overridden=opening.override.reason if opening.override else None,
        contact=contact.profile.id if contact else None,
    )


def _contact(device: str | None, opening: Opening, library: Library) -> Standing | None:
    """The class of the wired contacts to be fitted on the loop of a transmitter."""
    return on_loop(opening, library) if _wants_contact(device, opening, library) else None


def _wants_contact(device: str | None, opening: Opening, library: Library) -> bool:
    """Whether it is a transmitter with a new wired contact on its loop."""
    record = library.find("device", device) if device else None
    return AtOpening(opening, record, "").on_loop > 0


def _of_contact(contact: Standing) -> tuple[list[str], list[str]]:
    """What speaks for the wired contact on the loop, and what against it."""
    name, best = contact.profile.name, next(iter(_by_weight(contact.suits)), None)
    reason = best.sentences if best else message("one-wired")
    against: list[str] = []
    for one in _by_weight(contact.avoid):
        against.append(message("on-loop-against", contact=name, reason=one.sentences))
    return [message("on-loop", contact=name, reason=reason)], against


def _against(chosen: Standing, names: dict[str, str]) -> Iterator[str]:
    yield from (one.sentences for one in _by_weight(chosen.avoid))
    for one, missing in chosen.open_avoid:
        if one.rules_out:
            fields = listed([_named(field, names) for field in missing], "unit")
            yield message("not-known", fields=fields, reason=one.sentences)


def _named(field: str, names: dict[str, str]) -> str:
    return names["way" if field == "walls" else field.replace("_", "-")]


def _by_weight(conditions: Sequence[Condition]) -> list[Condition]:
    return sorted(conditions, key=lambda one: (not one.rules_out, -one.weight))


def _passed(
    found: Sequence[Standing], chosen: Standing | None, opening: Opening, library: Library
) -> tuple[PassedOver, ...]:
    kind = library.schemas.words("opening")[opening.kind]
    return tuple(
        PassedOver(one.profile.id, tuple(_why(one, chosen, opening, kind)), ruled_out=not one.possible)
        for one in found
        if one is not chosen
    )


def _why(one: Standing, chosen: Standing | None, opening: Opening, kind: str) -> Iterator[str]:
    if not one.listed:
        yield message("not-made", kind=within(kind))
        yield from (cause.sentences for cause in one.ruling_out if "trip-room" in cause.fields)
        return
    if one.ruling_out:
        yield from (message("ruled-out", reason=cause.sentences) for cause in one.ruling_out)
        return
    yield from (cause.sentences for cause in _by_weight(one.avoid))
    if opening.override:
        yield message("lead-chose")
    elif chosen is not None and chosen.keeps and not one.keeps:
        yield message("thrown-away")
    elif chosen is None:
        yield message("still-possible")
    elif one.score < chosen.score:
        yield message("fewer-points", points=signed(one.score), chosen=signed(chosen.score))
    elif one.could_fall > chosen.could_fall:
        yield message("could-fall")
    else:
        yield message("wired-first")


def _problems(opening: Opening, choice: Choice, library: Library) -> Iterator[Problem]:
    found = standings(opening, library)
    chosen = next((one for one in found if one.profile.id == choice.device), None)
    if opening.override and chosen and not chosen.possible:
        kind = library.schemas.words("opening")[opening.kind]
        reasons = " ".join(_why(chosen, None, opening, kind))
        name = chosen.profile.name
        yield problem(message, opening.id, "override-ruled-out", device=name, reasons=reasons)
    if not any(one.possible for one in found) and choice.device is None:
        yield _none_left(opening, found)
    made = [one for one in for_loop(opening, library) if one.listed]
    beyond = [one for one in made if _too_wide(one)]
    named = choice.contact is not None or opening.old_contact  # its own label tells its gap
    reached = any(one.possible and not _too_wide(one) for one in made)
    if chosen and beyond and not reached and not named and chosen.profile.transmits:
        narrow = listed(sorted(within(one.profile.name) for one in beyond))
        yield problem(message, opening.id, "wider-reach", narrow=narrow, device=within(chosen.profile.name))
    if opening.fire_rated or opening.escape:
        both = opening.fire_rated and opening.escape
        barred = "both" if both else "fire-rated" if opening.fire_rated else "escape"
        yield problem(message, opening.id, "life-safety", barred=barred)
    yield from clashes(opening, choice, found, library)


def _too_wide(one: Standing) -> bool:
    """Whether the gap speaks against a class with its own magnet."""
    return one.profile.magnetic and any(_GAP & cause.fields for cause in one.avoid)


def _none_left(opening: Opening, found: Sequence[Standing]) -> Problem:
    causes = dict.fromkeys(cause.sentences for one in found if one.listed for cause in one.ruling_out)
    made = any(one.listed for one in found)
    reason = message("all-ruled-out", causes=" ".join(causes)) if made else message("none-made")
    leave = any("drill" in cause.fields for one in found if one.listed for cause in one.ruling_out)
    return Problem(opening.id, NONE_LEFT, reason, message("change-leave" if leave else "change-cause"))
