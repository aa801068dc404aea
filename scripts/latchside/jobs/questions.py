"""What has to be asked before the job: only what was not told, and only where the answer matters."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from latchside.jobs import question_words
from latchside.jobs.choose import decided
from latchside.jobs.plan import Question
from latchside.jobs.standing import Standing, contenders, standings
from latchside.jobs.survey import Opening, Site, Survey
from latchside.library.model import Library, Record

_LEAVES = {"double-door": "passive_leaf", "double-hung": "upper_sash"}
_ALWAYS = ("fire_rated", "escape", "gap", "play", "use", "height")
"""Life safety, the two ends of the proof, the response of the zone, and the ladder."""
_RADIO = ("distance", "walls", "floors", "outer_wall", "openings_a_day")


@dataclass(frozen=True)
class _Seen:
    """An opening with how each class stands there, the class chosen, and by what it may report: wired, radio."""

    opening: Opening
    found: tuple[Standing, ...]
    device: Record | None
    links: frozenset[str]


def questions(survey: Survey, library: Library) -> tuple[Question, ...]:
    """The questions in the order of the walk: site, control unit, then each opening."""
    seen = [_see(one, library) for one in survey.openings]
    links = frozenset(link for one in seen for link in one.links)
    return (
        *_ask("site", question_words.SITE, _of_site(survey.site)),
        *_ask("control-unit", question_words.UNIT, _of_unit(survey, links)),
        *(question for one in seen for question in _ask(one.opening.id, question_words.OPENING, _of_opening(one))),
    )


def _see(opening: Opening, library: Library) -> _Seen:
    """Where no class is chosen, every one that is still possible may yet be."""
    found = standings(opening, library)
    chosen = decided(opening, found)
    ids = [chosen] if chosen else [one.profile.id for one in found if one.possible]
    devices = [device for id_ in ids if (device := library.find("device", id_))]
    return _Seen(
        opening, found, devices[0] if chosen and devices else None, frozenset(str(one["link"]) for one in devices)
    )


def _ask(about: str, words: Mapping[str, tuple[str, str]], wanted: Iterable[str]) -> Iterator[Question]:
    """The wanted fields, in the order in which they are listed."""
    fields = set(wanted)
    yield from (Question(about, field, text, why) for field, (text, why) in words.items() if field in fields)


def _of_site(site: Site) -> Iterator[str]:
    yield from (field for field in question_words.SITE if getattr(site, field) is None)


def _of_unit(survey: Survey, links: frozenset[str]) -> Iterator[str]:
    unit = survey.control_unit
    told = {
        "radio_positions": unit.radio_positions, "frequency": unit.frequency_mhz, "sensitivity": unit.sensitivity_dbm,
        "wired_positions": unit.wired_positions, "layout": unit.layout, "end_of_line": unit.end_of_line_ohm,
        "pull_up": unit.pull_up_ohm, "supply": unit.supply_v, "standby_current": unit.standby_ma,
        "alarm_current": unit.alarm_ma, "chime": unit.chime,
    }  # fmt: skip
    yield from (field for field in _wanted_of_unit(survey, links) if told[field] is None)


def _wanted_of_unit(survey: Survey, links: frozenset[str]) -> Iterator[str]:
    if "radio" in links:
        yield from ("radio_positions", "frequency", "sensitivity")
    if "wired" in links:
        yield from ("wired_positions", "layout")
        if survey.control_unit.layout != "none":
            yield from ("end_of_line", "pull_up", "supply")
    yield from ("standby_current", "alarm_current")
    if any(one.use == "entry-route" for one in survey.openings):
        yield "chime"


def _of_opening(seen: _Seen) -> Iterator[str]:
    opening = seen.opening
    wanted = [*_ALWAYS, *_could_turn(seen)]
    if opening.kind in _LEAVES:
        wanted.append(_LEAVES[opening.kind])
    if "radio" in seen.links:
        wanted.extend(_RADIO)
    if "wired" in seen.links:
        wanted.append("cable_length")
        if opening.cable and opening.cable_awg is None:
            wanted.append("cable_area")
    if seen.device is not None and "spacer" in seen.device["values"]:
        wanted.append("step")
    yield from (field for field in wanted if not _told(opening, field))


def _could_turn(seen: _Seen) -> Iterator[str]:
    """Fields that could still turn the choice, or that speak against what was chosen."""
    rivals = () if seen.opening.override else contenders(seen.found)
    for one in seen.found:
        rival = one in rivals and len(rivals) > 1
        if rival or (seen.device is not None and one.profile.id == seen.device.id):
            yield from (field for _, missing in one.open_avoid for field in missing)
        if rival:
            yield from (field for _, missing in one.open_suits for field in missing)


def _told(opening: Opening, field: str) -> bool:
    names = {
        "gap": "gap_mm", "play": "play_mm", "step": "step_mm", "height": "height_m", "distance": "distance_m",
        "cable_length": "cable_length_m", "cable_area": "cable_area_mm2",
    }  # fmt: skip
    return getattr(opening, names.get(field, field)) not in (None, "unknown")
