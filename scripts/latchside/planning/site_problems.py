"""What stands against the whole job: access, the owner's consent, and a panel that belongs to somebody else."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from latchside.messages import messages
from latchside.planning.at_opening import AtOpening
from latchside.planning.figures_for.context import NORTH_AMERICA
from latchside.planning.plan import Caution, Problem, problem
from latchside.surveys.survey import ControlUnit, Site, Survey

message = messages(__name__)
_OTHER_OWNERS = ("other-firm", "leased")
_TWICE = ("grade-2", "grade-3", "grade-4")
"""Grades at which a monitored system is usually visited twice a year; from memory."""
_FOREIGN = ("grade-3", "grade-4")
"""Grades at which a contact has to see a magnet held against it; from memory."""


def site_problems(survey: Survey) -> Iterator[Problem]:
    """Every problem of site and panel that the survey itself tells."""
    yield from _of_site(survey.site)
    yield from _of_panel(survey.control_unit)


def agreed_first(survey: Survey, warnings: Iterable[Caution]) -> Iterator[Problem]:
    """What is asked of the owner because of how the job came out: the asbestos register, and visits a year."""
    drilled = next((one for one in warnings if one.caution == "asbestos"), None)
    if drilled is not None:
        year = survey.site.year_built
        id_ = "asbestos-register"
        found = message(f"{id_}.found", year="" if year is None else str(year), known="no" if year is None else "yes")
        yield Problem("site", id_, found, message(f"{id_}.action"))
    site = survey.site
    graded = site.grade is None or site.grade in _TWICE
    if site.monitored and graded and site.region not in NORTH_AMERICA and survey.rules.service_months is None:
        yield problem(message, "site", "visits-a-year", grade="unknown" if site.grade is None else "known")


def foreign_magnet(survey: Survey, parts: Sequence[AtOpening]) -> Iterator[Problem]:
    """From grade 3 a contact sees a foreign magnet, which a single reed does not: EN 50131-2-6, from memory."""
    plain = tuple(part.opening.id for part in parts if part.magnet)
    if survey.site.grade in _FOREIGN and plain:
        found = message("foreign-magnet.found", contacts=len(plain))
        yield Problem("site", "foreign-magnet", found, message("foreign-magnet.action"), plain)


def taken_over(unit: ControlUnit) -> bool:
    """The system is taken over before it is changed: it is another firm's, or nobody here has its code."""
    return unit.owner in _OTHER_OWNERS or (unit.installer_access is False and unit.owner != "our-firm")


def _of_site(site: Site) -> Iterator[Problem]:
    if site.keyholder_arranged is False:
        yield problem(message, "site", "no-keyholder")
    if site.consent == "not-given":
        yield problem(message, "site", "no-consent")
    if site.listed:
        yield problem(message, "site", "listed-building")


def _of_panel(unit: ControlUnit) -> Iterator[Problem]:
    if unit.owner in _OTHER_OWNERS:
        yield problem(message, "control-unit", "panel-of-another", owner=unit.owner)
    if unit.installer_access is False:
        yield problem(message, "control-unit", "no-installer-access")
    elif unit.installer_access is None and unit.owner != "our-firm":
        yield problem(message, "control-unit", "installer-access-unknown")
