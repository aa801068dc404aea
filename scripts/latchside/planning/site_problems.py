"""What stands against the whole job: the way in, the leave of the owner, and the panel of somebody else."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.planning.plan import Problem
from latchside.surveys.survey import ControlUnit, Survey

_OWNERS = {"other-firm": "another firm", "leased": "whoever leases it out"}


def site_problems(survey: Survey) -> Iterator[Problem]:
    """Every problem of site and panel that the survey itself tells."""
    yield from _site(survey)
    yield from _panel(survey)


def taken_over(unit: ControlUnit) -> bool:
    """The system is taken over before it is changed: it is another firm's, or nobody here has its code."""
    return unit.owner in _OWNERS or (unit.installer_access is False and unit.owner != "our-firm")


def _site(survey: Survey) -> Iterator[Problem]:
    site = survey.site
    if site.keyholder_arranged is False:
        yield Problem(
            "site", "no-keyholder", "Nobody with a key is arranged for the day.",
            "Agree with the customer who opens every room and panel cupboard, and from when. Set no day before that.",
        )  # fmt: skip
    if site.consent == "not-given":
        yield Problem(
            "site", "no-consent", "The owner of the building has not agreed to the work.",
            "Get the owner's yes in writing, with what is drilled and what is stuck, before parts are ordered.",
        )  # fmt: skip
    if site.listed:
        yield Problem(
            "site", "listed-building", "The building is listed: holes, screws and even pads may need consent.",
            "Ask the authority that lists it, through the owner, what may be fixed to doors, windows and frames. Order "
            "nothing and drill nothing before the written answer.",
        )  # fmt: skip


def _panel(survey: Survey) -> Iterator[Problem]:
    unit = survey.control_unit
    if unit.owner in _OWNERS:
        yield Problem(
            "control-unit", "panel-of-another", f"The panel belongs to {_OWNERS[unit.owner]}.",
            "Get written leave to open and program it, and ask who runs account, communicator and contract. Else plan "
            "a panel of the customer's own.",
        )  # fmt: skip
    if unit.installer_access is False:
        yield Problem(
            "control-unit", "no-installer-access", "We do not have the installer code of the panel, or may not use it.",
            "Ask the firm that fitted it to hand the panel over, or to reset it to its default. Without that no zone "
            "is set up. Write no code down.",
        )  # fmt: skip
    elif unit.installer_access is None and unit.owner != "our-firm":
        yield Problem(
            "control-unit", "installer-access-unknown", "Nobody said whether we have and may use its installer code.",
            "Ask the customer and the firm that fitted it, and try it at the survey. Write no code down.",
        )  # fmt: skip
