"""What stands against the whole job: access, the owner's consent, and a panel that belongs to somebody else."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.messages import messages
from latchside.planning.plan import Problem, problem
from latchside.surveys.survey import ControlUnit, Site, Survey

message = messages(__name__)
_OTHER_OWNERS = ("other-firm", "leased")


def site_problems(survey: Survey) -> Iterator[Problem]:
    """Every problem of site and panel that the survey itself tells."""
    yield from _of_site(survey.site)
    yield from _of_panel(survey.control_unit)


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
