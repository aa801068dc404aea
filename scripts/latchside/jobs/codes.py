"""No pack holds a code: what looks like one is taken out of notes, and refused in names."""

from __future__ import annotations

from dataclasses import replace

from latchside.findings import START, Finding
from latchside.jobs.survey import Opening, Survey
from latchside.library.codes import looks_like_code

_EXPECTED = "a survey without codes"


def without_codes(survey: Survey, file: str) -> tuple[Survey, tuple[Finding, ...]]:
    """The survey with no note that looks as if it held a code, and a finding for each text that does."""
    found: list[Finding] = []

    def note(where: str, text: str) -> str:
        if not looks_like_code(text):
            return text
        action = "It was left out of the pack. Tell codes by word of mouth, and take this one out of use."
        said = f"a note of {where} that looks as if it held a code"
        found.append(Finding(file, START, "code-in-note", said, _EXPECTED, action, "warning"))
        return ""

    openings = tuple(replace(one, notes=note(one.id, one.notes)) for one in survey.openings)
    site = replace(survey.site, notes=note("the site", survey.site.notes))
    for where, text in _names(survey):
        if looks_like_code(text):
            said = f"a text of {where} that looks as if it held a code"
            found.append(Finding(file, START, "code-in-name", said, _EXPECTED, "Say it without the figure."))
    return replace(survey, openings=openings, site=site), tuple(found)


def _names(survey: Survey) -> list[tuple[str, str]]:
    site = [("the site", survey.name), ("the site", survey.summary)]
    zones = [("the control unit", name) for name in survey.control_unit.zones_in_use]
    return [*site, *zones, *((one.id, text) for one in survey.openings for text in _texts(one))]


def _texts(one: Opening) -> tuple[str, ...]:
    return one.place, one.side, one.spoken, one.override.reason if one.override else ""
