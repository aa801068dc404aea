"""The cautions of this job, each with the openings it concerns and why it stands."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from latchside.figures.words import in_words
from latchside.library.model import Library
from latchside.planning.at_opening import AtOpening
from latchside.planning.house import House, rules_of
from latchside.planning.plan import Caution
from latchside.surveys.survey import Opening, Survey

OLD = "old-buildings"
LEVELS = ("danger", "warning", "caution", "notice")
_NEVER_PAINTED = {"plastic", "aluminium", "glass", "composite"}
_SPRUNG = {
    "roller-door": "A roller door.", "up-and-over": "An up-and-over door.", "gate": "A gate.",
    "roof-window": "A sprung roof window.", "double-hung": "Balanced sashes.", "lift-and-slide": "A heavy leaf.",
}  # fmt: skip
_POWERED = {"roller-door", "up-and-over", "gate"}
_GLAZED = {"casement", "double-hung", "tilt-and-turn", "sliding", "lift-and-slide", "roof-window"}
_NO_YEAR = "The year of building is not known."
_MERCURY = {"roller-door", "up-and-over", "roof-window", "hatch"}


Why = Callable[[AtOpening], str]
"""Why a caution stands at an opening; empty where it does not."""


def cautions(survey: Survey, parts: Sequence[AtOpening], library: Library, house: House) -> tuple[Caution, ...]:
    """The cautions of a job that the library knows, the gravest first."""
    alone = rules_of(survey.rules, house).technicians == 1
    found = (*_of_site(survey, parts, alone), *_of_openings(survey, parts, library, house))
    known = [(library.find("caution", one.caution), one) for one in found]
    kept = [(LEVELS.index(record["level"]), one) for record, one in known if record is not None]
    return tuple(one for _, one in sorted(kept, key=lambda pair: (pair[0], pair[1].caution)))


def _of_site(survey: Survey, parts: Sequence[AtOpening], alone: bool) -> Iterator[Caution]:
    site = survey.site
    if site.monitored is not False:
        known = "The site is monitored" if site.monitored else "Whether the site is monitored is not known"
        yield Caution("monitored-site", ("site",), f"{known}: it goes on test before the first leaf is opened.")
    if site.occupied is not False:
        known = "People live or work there" if site.occupied else "Whether people live or work there is not known"
        yield Caution("occupied-premises", ("site",), f"{known} during the job.")
        yield Caution("dogs-and-angry-people", ("site",), f"{known}: ask about dogs when the visit is agreed.")
    if any(part.fitted for part in parts):
        if alone:
            yield Caution("lone-working", ("site",), "The job is planned for one technician.")
        yield Caution("confidential-records", ("site",), "This pack shows how the site is watched.")
    magnets = [part.magnet for part in parts if part.fitted]
    if any(magnets):
        told = "Every contact of this job has a magnet." if all(magnets) else "Contacts of this job have a magnet."
        yield Caution("magnets-and-pacemakers", ("site",), told)
    yield Caution("local-code", ("site",), "Local code and licence come before this plan.")
    if survey.control_unit.zones_in_use or any(part.opening.old_contact for part in parts):
        yield Caution("opening-unprotected", ("site",), "Openings that are watched today are not while work goes on.")


def _of_openings(survey: Survey, parts: Sequence[AtOpening], library: Library, house: House) -> Iterator[Caution]:
    high, year, old = house["ladder-height"], survey.site.year_built, _last_years(survey, library)
    ladder = f"Work above {in_words(house.quantity('ladder-height'))}."

    def age(caution: str, touched: bool) -> str:
        if not touched or (year is not None and year > old[caution]):
            return ""
        return _NO_YEAR if year is None else f"Built in {year}. Up to {old[caution]} counts as old here."

    asked: dict[str, Why] = {
        "ladders": lambda one: _high(one.opening.height_m, high, ladder),
        "glass": lambda one: "A pane in the leaf." if _glazed(one.opening) else "",
        "mains-wiring": _mains,
        "lithium-cells": lambda one: "A lithium cell goes in." if one.cells else "",
        "swallowed-cells": lambda one: "A small cell goes in." if one.cells else "",
        "sprung-and-powered-doors": lambda one: _SPRUNG.get(one.opening.kind, "") or _moved(one.opening),
        "mercury-switches": lambda one: _mercury(one.opening),
        "life-safety": lambda one: _life_safety(one),
        "never-drill-here": _never_drill,
        "hidden-services": _holes,
        "dust-and-eyes": _holes,
        "lead-paint": lambda one: age("lead-paint", one.fitted and _painted(one.opening)),
        "asbestos": lambda one: age("asbestos", one.drilled or one.new_cable),
    }
    for caution, why in asked.items():
        yield from _gathered(caution, parts, why)


def _gathered(caution: str, parts: Iterable[AtOpening], why: Why) -> Iterator[Caution]:
    about, reasons = [], dict[str, None]()
    for part in parts:
        reason = why(part)
        if reason:
            about.append(part.opening.id)
            reasons[reason] = None
    if about:
        yield Caution(caution, tuple(about), " ".join(reasons))


def _last_years(survey: Survey, library: Library) -> Mapping[str, int]:
    """The last year of building that counts as old, by caution, for the region of the site."""
    table = library.find("table", OLD)
    if table is None:
        raise LookupError(f"table/{OLD} is missing or not sound")
    last = {row["id"]: int(row["cells"]["last"]) for row in table["rows"]}
    hazards = ("lead-paint", "asbestos")
    return {one: last.get(f"{one}-{survey.site.region}", last[f"{one}-elsewhere"]) for one in hazards}


def _high(height: float | None, limit: float, ladder: str) -> str:
    if height is None:
        return "The height of the work is not known."
    return ladder if height > limit else ""


def _glazed(opening: Opening) -> bool:
    return opening.kind in _GLAZED or "glass" in (opening.leaf_material, opening.frame_material)


def _moved(opening: Opening) -> str:
    return "A motor moves it." if opening.powered else ""


def _mains(part: AtOpening) -> str:
    """Mains is near where a leaf has a drive, and where a loop is landed in the control unit."""
    if part.opening.powered:
        return "A motor moves it: its drive is isolated and locked off first."
    if part.opening.kind in _POWERED and part.opening.powered is None:
        return "It may have a drive on mains."
    return "Its loop is landed in the control unit, which may hold mains." if part.wired else ""


def _mercury(opening: Opening) -> str:
    if opening.old_contact:
        return "An old contact is in place."
    return "An old tilt switch may be in place." if opening.kind in _MERCURY and opening.old_contact is None else ""


def _life_safety(part: AtOpening) -> str:
    if part.life_safety is None:
        return "Whether it is fire-rated or an escape way is not known."
    return "Fire-rated, or an escape way." if part.life_safety else ""


def _never_drill(part: AtOpening) -> str:
    if part.fitted and _life_safety(part):
        return _life_safety(part)
    materials = {part.opening.leaf_material, part.opening.frame_material}
    if part.drilled and materials & {"plastic", "aluminium"}:
        return "Hollow frames hold drain ways, thermal breaks and steel."
    return "A sealed glass edge lies near." if part.drilled and _glazed(part.opening) else ""


def _holes(part: AtOpening) -> str:
    if part.new_cable:
        return "Cable is run through walls."
    return "A hole or a screw goes in." if part.drilled else ""


def _painted(opening: Opening) -> bool:
    return not {opening.leaf_material, opening.frame_material} <= _NEVER_PAINTED
