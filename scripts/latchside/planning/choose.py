"""The device class for an opening, from what the device profiles say of themselves.

A class whose profile does not list the kind of opening, or of which a condition that rules it out holds, is never
chosen. A sound contact in place stays. Among the others the weights decide; how a tie is broken stands in
`standing.py`. What the free positions of the panel change afterwards stands in `positions.py`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from latchside.library.model import Library
from latchside.planning.at_opening import AtOpening
from latchside.planning.clashes import clashes
from latchside.planning.conditions import Condition
from latchside.planning.plan import Choice, PassedOver, Problem
from latchside.planning.standing import Standing, on_loop, says_too_little, standings
from latchside.surveys.survey import ControlUnit, Opening, Site

TOO_LITTLE = "The survey says too little to choose between the classes that are left. Its questions come first."

NONE_LEFT = "no-class-fits"
_GAP = {"gap", "gap-and-play"}
_LEFT = "It is the one class that is left for this opening."
_STAYS = "The sound contact in place stays, with its hole and its own label: a new one would do no more."


def choose(opening: Opening, site: Site, unit: ControlUnit, library: Library) -> Choice:
    """The choice for one opening, by its own facts alone.

    Neither the site nor the control unit changes it: too few positions are a problem to solve, and a device that does
    not suit its opening solves none.
    """
    found = standings(opening, library)
    device = decided(opening, found)
    chosen = next((one for one in found if one.profile.id == device), None)
    if device is None and found and found[0].possible:
        return Choice(None, (TOO_LITTLE,), (), _passed(found, None, opening, library))
    return _choice(device, chosen, found, opening, library, _contact(device, opening, library))


def decided(opening: Opening, found: Sequence[Standing]) -> str | None:
    """The device of an opening from how each class stands there, or None."""
    if opening.override is not None:
        return opening.override.device
    if not found or not found[0].possible or says_too_little(found):
        return None
    return found[0].profile.id


def instead(opening: Opening, choice: Choice, device: str, why: str, library: Library) -> Choice:
    """The choice with another class in the place of the one chosen, and why.

    On the loop of a transmitter goes the wired contact that would be fitted anyway, or the one that is in place.
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
    """What stands against a choice so far that the lead has to act before anything is fitted."""
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
    reasons = [_said(one) for one in _by_weight(chosen.suits)] if chosen else []
    if chosen and chosen.keeps:
        reasons.insert(0, _STAYS)
    if chosen and not reasons and not opening.override:
        alone = sum(one.possible for one in found) == 1
        reasons = [_LEFT if alone else "Nothing speaks for any class here, and least against this one."]
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
    """It is a transmitter, and a new wired contact goes on its loop."""
    record = library.find("device", device) if device else None
    return AtOpening(opening, record, "").on_loop > 0


def _of_contact(contact: Standing) -> tuple[list[str], list[str]]:
    """What is said of the wired contact on the loop: why it is that one, and what speaks against it."""
    own = contact.profile.name
    why = [_said(one) for one in _by_weight(contact.suits)[:1]] or ["It is the one wired class for such an opening."]
    return [f"On its loop: {own}. {why[0]}"], [f"{own} on its loop. {_said(one)}" for one in _by_weight(contact.avoid)]


def _against(chosen: Standing, names: dict[str, str]) -> Iterator[str]:
    yield from (_said(one) for one in _by_weight(chosen.avoid))
    for one, missing in chosen.open_avoid:
        if one.rules_out:
            fields = ", ".join(_named(field, names) for field in missing)
            yield f"Not known: {fields}. This would rule it out: {_said(one)}"


def _named(field: str, names: dict[str, str]) -> str:
    return names["way" if field == "walls" else field.replace("_", "-")]


def _by_weight(conditions: Sequence[Condition]) -> list[Condition]:
    return sorted(conditions, key=lambda one: (not one.rules_out, -one.weight))


def _said(one: Condition) -> str:
    return f"{one.text} {one.reason}"


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
        yield f"It is not made for this kind of opening: {kind.lower()}."
        yield from (_said(cause) for cause in one.ruling_out if "trip-room" in cause.fields)
        return
    if one.ruling_out:
        yield from (f"Ruled out. {_said(cause)}" for cause in one.ruling_out)
        return
    yield from (_said(cause) for cause in _by_weight(one.avoid))
    if opening.override:
        yield "The lead has chosen another class."
    elif chosen is not None and chosen.keeps and not one.keeps:
        yield "The sound contact in place stays. For this one it would be thrown away."
    elif chosen is None:
        yield "It stays possible until the questions are answered."
    elif one.score < chosen.score:
        yield f"Less speaks for it than for the class chosen: {one.score} points to {chosen.score}, by its profile."
    elif one.could_fall > chosen.could_fall:
        yield "As much speaks for it, and more that is not known could still rule it out."
    else:
        yield "As much speaks for it. Between equals a wired class comes first: it has no cell and no radio path."


def _problems(opening: Opening, choice: Choice, library: Library) -> Iterator[Problem]:
    found = standings(opening, library)
    chosen = next((one for one in found if one.profile.id == choice.device), None)
    if opening.override and chosen and not chosen.possible:
        kind = library.schemas.words("opening")[opening.kind]
        yield Problem(
            opening.id, "override-ruled-out",
            f"{chosen.profile.name}, chosen by the lead. {' '.join(_why(chosen, None, opening, kind))}",
            "Choose another class, or have the cause removed and write it in the survey.",
        )  # fmt: skip
    if not any(one.possible for one in found) and choice.device is None:
        yield _none_left(opening, found)
    beyond = [one for one in found if one.listed and _too_wide(one)]
    named = choice.contact is not None or opening.old_contact  # its own label tells its gap
    if chosen and beyond and not named and chosen.profile.transmits:
        names = " and ".join(sorted(one.profile.name.lower() for one in beyond))
        yield Problem(
            opening.id, "wider-reach", f"The gap, with its play, is too wide for {names}.",
            f"Order a contact of wider reach for the {chosen.profile.name.lower()}, or have the leaf repaired first.",
        )  # fmt: skip
    if opening.fire_rated or opening.escape:
        yield Problem(
            opening.id, "life-safety", _life_safety(opening),
            "Nothing is drilled here. Ask who answers for the certificate and for local code, in writing, before any "
            "body or cable is fixed to it.",
        )  # fmt: skip
    yield from clashes(opening, choice, chosen, found, library)


def _too_wide(one: Standing) -> bool:
    """The gap speaks against a class that has a reach of its own."""
    return one.profile.magnetic and any(_GAP & cause.fields for cause in one.avoid)


def _life_safety(opening: Opening) -> str:
    both = opening.fire_rated and opening.escape
    what = "Fire-rated and an escape way" if both else "Fire-rated" if opening.fire_rated else "An escape way"
    return f"{what}: what may be fitted is for its certificate and local code to say."


def _none_left(opening: Opening, found: Sequence[Standing]) -> Problem:
    causes = dict.fromkeys(_said(cause) for one in found if one.listed for cause in one.ruling_out)
    listed = any(one.listed for one in found)
    return Problem(
        opening.id, NONE_LEFT,
        " ".join(["Every class is ruled out.", *causes]) if listed else "No class is made for this kind of opening.",
        "Have hinge, keep or seal repaired first where the gap is the cause. Otherwise ask the lead for a contact of "
        "wider reach or one made for the weather, or for another kind of detection behind the opening.",
    )  # fmt: skip
