"""Surveys of every sort, drawn for the laws that hold for all of them."""

from __future__ import annotations

from typing import Any

from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st

from latchside.surveys.survey import ControlUnit, JobRules, Opening, Override, Site, Survey, Wall

from ..long import LONG, tries
from .support import schemas


def draws(count: int) -> settings:
    """So many surveys made by chance, each of which is planned; in the usual run a quarter of them."""
    return settings(
        max_examples=tries(max(8, count // 4), count),
        phases=list(Phase) if LONG else [Phase.explicit, Phase.generate],  # to make a find smaller takes minutes
        deadline=None,
        suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
    )


DEVICES = ("recessed-contact", "surface-contact", "wired-input-transmitter")


def _word(vocabulary: str) -> st.SearchStrategy[str | None]:
    return st.none() | st.sampled_from([word for word in schemas().words(vocabulary) if word != "unknown"])


def _figure(low: float, high: float) -> st.SearchStrategy[float | None]:
    return st.none() | st.floats(low, high).map(lambda value: round(value, 1))


ANSWER = st.sampled_from([True, False, None])
WALL = st.builds(
    Wall, material=st.sampled_from(list(schemas().words("wall-material"))), thickness_mm=_figure(1, 400)
)  # fmt: skip
FACTS: dict[str, st.SearchStrategy[Any]] = {
    "passive_leaf": ANSWER, "upper_sash": ANSWER, "loose_lid": ANSWER, "fire_rated": ANSWER, "escape": ANSWER,
    "cable": ANSWER, "old_contact": ANSWER, "outdoors": ANSWER, "drill": ANSWER, "powered": ANSWER, "glazed": ANSWER,
    "leaf_material": _word("leaf-material"), "frame_material": _word("leaf-material"), "steel": _word("steel"),
    "use": _word("use"), "wish": _word("wish"), "outer_wall": _word("outer-wall"),
    "play_mm": _figure(0, 30), "gap_mm": _figure(0, 60), "step_mm": _figure(-40, 40), "height_m": _figure(0, 6),
    "distance_m": _figure(0, 80), "floors": st.none() | st.integers(0, 4),
    "walls": st.none() | st.lists(WALL, max_size=4).map(tuple), "cable_length_m": _figure(0, 120),
    "cable_awg": st.none() | st.sampled_from([18, 22, 24]), "cable_area_mm2": st.none() | st.sampled_from([0.22, 0.5]),
    "openings_a_day": _figure(0, 500), "rail_depth_mm": _figure(5, 200), "width_m": _figure(0.3, 4),
    "hardware": st.none() | st.lists(st.sampled_from(list(schemas().words("door-hardware"))), unique=True).map(tuple),
}  # fmt: skip
"""The facts of an opening, each by its name in a read survey."""
_OPENING: dict[str, st.SearchStrategy[Any]] = {
    **FACTS,
    "place": st.sampled_from(["Hall", "Kitchen", "Flat 2", "Bed room", "bedroom"]),
    "side": st.sampled_from(["", "front", "rear", "yard"]),
    "kind": st.sampled_from(list(schemas().words("opening"))),
    "spoken": st.sampled_from(["", "", "", "Back door", "back  door", "K. window"]),
    "override": st.none() | st.builds(Override, st.sampled_from(DEVICES), st.just("The lead says so")),
}  # fmt: skip


def openings(id_: str) -> st.SearchStrategy[Opening]:
    """Openings with this id."""
    return st.builds(Opening, id=st.just(id_), **_OPENING)


SITE_FACTS: dict[str, st.SearchStrategy[Any]] = {
    "region": _word("region"), "year_built": st.none() | st.integers(1800, 2026), "occupied": ANSWER,
    "monitored": ANSWER, "keyholder_arranged": ANSWER, "building": _word("building"), "listed": ANSWER,
    "consent": _word("consent"), "grade": _word("grade"),
}  # fmt: skip
UNIT_FACTS: dict[str, st.SearchStrategy[Any]] = {
    "frequency_mhz": st.sampled_from([None, 315.0, 433.92, 868.3, 915.0]), "sensitivity_dbm": _figure(-120, -80),
    "wired_positions": st.none() | st.integers(0, 8), "radio_positions": st.none() | st.integers(0, 8),
    "supply_v": st.sampled_from([None, 5.0, 12.0]), "pull_up_ohm": st.sampled_from([None, 2200.0, 4700.0]),
    "layout": st.sampled_from([None, "none", "series", "double"]),
    "end_of_line_ohm": st.sampled_from([None, 2200.0, 4700.0]), "standby_ma": _figure(1, 500),
    "alarm_ma": _figure(1, 2000), "chime": ANSWER, "owner": _word("panel-owner"), "installer_access": ANSWER,
    "two_way": ANSWER, "name_length": st.none() | st.integers(8, 64),
}  # fmt: skip
_SITE = st.builds(Site, insurer=st.sampled_from([None, "Every outer door, by grade 2"]), **SITE_FACTS)
_UNIT = st.builds(ControlUnit, zones_in_use=st.sampled_from([(), ("Back door", "Safe")]), **UNIT_FACTS)
_RULES = st.builds(
    JobRules, spare_percent=_figure(0, 50), day_minutes=st.none() | st.integers(60, 600),
    technicians=st.none() | st.integers(1, 4), cable_spare_m=_figure(0, 5),
    service_months=st.none() | st.integers(1, 24),
)  # fmt: skip


@st.composite
def surveys(draw: st.DrawFn, most: int = 6) -> Survey:
    """Surveys of one to `most` openings."""
    row = tuple(draw(openings(f"o{number}")) for number in range(draw(st.integers(1, most))))
    return Survey("t", "T", row, site=draw(_SITE), control_unit=draw(_UNIT), rules=draw(_RULES))
