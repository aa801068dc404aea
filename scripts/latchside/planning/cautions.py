"""The cautions of a job, each with the openings it concerns and why it applies."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from latchside.figures.words import in_words
from latchside.library.alike import alike
from latchside.library.model import Library
from latchside.messages import Message, messages
from latchside.planning.access import overhead
from latchside.planning.at_opening import AtOpening
from latchside.planning.facts import DOORS, WINDOWS
from latchside.planning.holes import in_doubt
from latchside.planning.house import House, rules_of
from latchside.planning.plan import Caution, Reason
from latchside.surveys.survey import Opening, Survey

message = messages(__name__)
OLD = "old-buildings"
LEVELS = ("danger", "warning", "caution", "notice")
_NEVER_PAINTED = {"plastic", "aluminium", "glass", "composite"}
_SPRUNG = {"hatch", "roller-door", "up-and-over", "gate", "roof-window", "double-hung", "lift-and-slide"}
_POWERED = {"roller-door", "up-and-over", "gate"}
_MAY_HOLD_GLASS = {*DOORS, "up-and-over", "hatch"}
_MERCURY = {"roller-door", "up-and-over", "roof-window", "hatch"}
_BITES = (
    "life-safety", "mains-wiring", "asbestos", "sprung-and-powered-doors", "lead-paint", "ladders", "mercury-switches",
    "never-drill-here", "hidden-services", "glass", "dust-and-eyes", "swallowed-cells",
)  # fmt: skip
"""Cautions of an opening by what they can do there."""
_FEW = 3
"""So many commands are read at an opening; more are passed over."""

Why = Callable[[AtOpening], Message | None]
"""Why a caution applies at an opening; None where it does not."""


def cautions(survey: Survey, parts: Sequence[AtOpening], library: Library, house: House) -> tuple[Caution, ...]:
    """The cautions of a job that the library has, the gravest first."""
    alone = rules_of(survey.rules, house).technicians == 1
    of_job = (*_of_site(survey, parts, alone), *_of_openings(survey, parts, library, house))
    known = [(library.find("caution", caution.caution), caution) for caution in of_job]
    ranked = [(LEVELS.index(record["level"]), caution) for record, caution in known if record is not None]
    return tuple(caution for _, caution in sorted(ranked, key=lambda pair: (pair[0], pair[1].caution)))


def _of_site(survey: Survey, parts: Sequence[AtOpening], alone: bool) -> Iterator[Caution]:
    site = survey.site
    if site.monitored is not False:
        yield _at_site("monitored-site", message("monitored" if site.monitored else "monitored-unknown"))
    if site.occupied is not False:
        yield _at_site("occupied-premises", message("occupied" if site.occupied else "occupied-unknown"))
        yield _at_site("dogs-and-angry-people", message("dogs" if site.occupied else "dogs-unknown"))
    fitted = [part for part in parts if part.fitted]
    if fitted:
        if alone:
            yield _at_site("lone-working", message("alone"))
        yield _at_site("confidential-records", message("confidential"))
    magnets = [part.magnet for part in fitted]
    if any(magnets):
        yield _at_site("magnets-and-pacemakers", message("magnet-in-every" if all(magnets) else "magnet-in-some"))
    yield _at_site("local-code", message("local-code"))
    if survey.control_unit.zones_in_use or any(part.opening.old_contact for part in parts):
        yield _at_site("opening-unprotected", message("unprotected"))


def _at_site(caution: str, why: Message) -> Caution:
    return Caution(caution, ("site",), why)


def _of_openings(survey: Survey, parts: Sequence[AtOpening], library: Library, house: House) -> Iterator[Caution]:
    year, old = survey.site.year_built, _last_years(survey, library)
    first = min(("ladder-height", "ladder-most"), key=lambda rule: house[rule])  # a firm may have set them across
    limit, limit_shown = house[first], in_words(house.quantity(first))

    def age(caution: str, touched: bool) -> Message | None:
        if not touched or (year is not None and year > old[caution]):
            return None
        return message("no-year") if year is None else message("year", year=str(year), last=str(old[caution]))

    applies: dict[str, Why] = {
        "ladders": lambda part: _high(part.opening, limit, house["ladder-most"], limit_shown),
        "glass": _pane,
        "mains-wiring": _mains,
        "lithium-cells": lambda part: message("lithium-cell") if part.cells else None,
        "swallowed-cells": lambda part: message("small-cell") if part.cells else None,
        "sprung-and-powered-doors": lambda part: _sprung_or_powered(part.opening),
        "mercury-switches": lambda part: _mercury(part.opening),
        "life-safety": _life_safety,
        "never-drill-here": _never_drill,
        "hidden-services": _holes,
        "dust-and-eyes": _holes,
        "lead-paint": lambda part: age("lead-paint", part.fitted and _painted(part.opening)),
        "asbestos": lambda part: age("asbestos", part.drilled or part.new_cable),
    }
    for caution, why in applies.items():
        yield from _gathered(caution, parts, why, year)


def _gathered(caution: str, parts: Iterable[AtOpening], why: Why, year: int | None) -> Iterator[Caution]:
    reasons = {part.opening.id: reason for part in parts if (reason := why(part))}
    if reasons:
        told = tuple(
            Reason(reason, tuple(ids), _command(caution, reasons[ids[0]], year))
            for reason, ids in alike(reasons, reasons.__getitem__).items()
        )
        yield Caution(caution, tuple(reasons), " ".join(one.why for one in told), told)


def _command(caution: str, reason: Message, year: int | None) -> str:
    """What to do where a caution applies for a reason: one of that reason, or of the caution; empty without one."""
    _, _, why = reason.id.partition("#")
    ids = (f"do-{caution}-{why}", f"do-{caution}")
    return next((message(id_, year=str(year or "")) for id_ in ids if id_ in message), "")


def bites(found: Iterable[Caution], opening: str) -> tuple[str, ...]:
    """The few commands that matter most at an opening, the gravest first."""
    known = sorted((one for one in found if one.caution in _BITES), key=lambda one: _BITES.index(one.caution))
    commands = (reason.command for one in known for reason in one.reasons if opening in reason.about)
    return tuple(dict.fromkeys(filter(None, commands)))[:_FEW]


def _last_years(survey: Survey, library: Library) -> Mapping[str, int]:
    """The last year of building that counts as old, by caution, for the region of the site."""
    table = library.find("table", OLD)
    if table is None:
        raise LookupError(f"table/{OLD} is missing or not sound")
    last = {row["id"]: int(row["cells"]["last"]) for row in table["rows"]}
    hazards = ("lead-paint", "asbestos")
    return {one: last.get(f"{one}-{survey.site.region}", last[f"{one}-elsewhere"]) for one in hazards}


def _high(opening: Opening, limit: float, most: float, limit_shown: str) -> Message | None:
    if opening.height_m is None:
        return message("height-unknown")
    if opening.height_m > most:
        return message("too-high", limit=limit_shown)
    reason = "overhead" if overhead(opening) else "high"
    return message(reason, limit=limit_shown) if opening.height_m > limit else None


def _pane(part: AtOpening) -> Message | None:
    """A pane in the moving part or the frame; where nobody said, a door may have one for a screw to break."""
    if _glazed(part.opening):
        return message("pane")
    unknown = part.opening.glazed is None and part.opening.kind in DOORS
    return message("pane-not-known") if unknown and part.drilled else None


def _glazed(opening: Opening) -> bool:
    """A window always has a pane here, whatever was told of it."""
    of_glass = "glass" in (opening.leaf_material, opening.frame_material)
    return opening.kind in WINDOWS or of_glass or (opening.glazed is True and opening.kind in _MAY_HOLD_GLASS)


def _sprung_or_powered(opening: Opening) -> Message | None:
    if opening.kind in _SPRUNG:
        return message(f"sprung-{opening.kind}")
    return message("powered") if opening.powered else None


def _mains(part: AtOpening) -> Message | None:
    """Mains is near where a leaf has a drive, and where a loop ends in the control unit."""
    if part.opening.powered:
        return message("drive-and-panel" if part.wired else "drive")
    if part.opening.kind in _POWERED and part.opening.powered is None:
        return message("drive-possible-and-panel" if part.wired else "drive-possible")
    return message("loop-in-panel") if part.wired else None


def _mercury(opening: Opening) -> Message | None:
    if opening.old_contact:
        return message("old-contact")
    return message("old-switch-possible") if opening.kind in _MERCURY and opening.old_contact is None else None


def _life_safety(part: AtOpening) -> Message | None:
    if part.life_safety is None:
        return message(f"unknown-{in_doubt(part.opening)}")
    return message("life-safety") if part.life_safety else None


def _never_drill(part: AtOpening) -> Message | None:
    if part.fitted and (reason := _life_safety(part)):
        return reason
    materials = {part.opening.leaf_material, part.opening.frame_material}
    if part.drilled and materials & {"plastic", "aluminium"}:
        return message("hollow-frame")
    return message("glass-edge") if part.drilled and _glazed(part.opening) else None


def _holes(part: AtOpening) -> Message | None:
    if part.new_cable:
        return message("cable-through-walls")
    return message("hole") if part.drilled else None


def _painted(opening: Opening) -> bool:
    return not {opening.leaf_material, opening.frame_material} <= _NEVER_PAINTED
