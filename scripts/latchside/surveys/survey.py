"""A survey in figures: lengths in the unit of their names, and None for all that was not seen or is not known."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date


@dataclass(frozen=True)
class Wall:
    """One wall or other obstacle on the way of the radio; `thickness_mm` is None where nobody measured it."""

    material: str
    thickness_mm: float | None = None


@dataclass(frozen=True)
class Site:
    """The site. A word is from the vocabulary of its field; yes, no and not known are True, False and None."""

    region: str | None = None
    year_built: int | None = None
    occupied: bool | None = None
    monitored: bool | None = None
    keyholder_arranged: bool | None = None
    notes: str = ""
    building: str | None = None
    listed: bool | None = None
    consent: str | None = None
    grade: str | None = None
    insurer: str | None = None


@dataclass(frozen=True)
class ControlUnit:
    """The control unit and its radio; `installer_access` says whether the code may be used, never the code."""

    frequency_mhz: float | None = None
    sensitivity_dbm: float | None = None
    wired_positions: int | None = None
    radio_positions: int | None = None
    zones_in_use: tuple[str, ...] = ()
    supply_v: float | None = None
    pull_up_ohm: float | None = None
    layout: str | None = None
    end_of_line_ohm: float | None = None
    standby_ma: float | None = None
    alarm_ma: float | None = None
    chime: bool | None = None
    owner: str | None = None
    installer_access: bool | None = None
    two_way: bool | None = None
    name_length: int | None = None
    second_resistor_ohm: float | None = None


@dataclass(frozen=True)
class JobRules:
    """House rules that differ for this job; None where the firm's own rule holds."""

    spare_percent: float | None = None
    day_minutes: int | None = None
    technicians: int | None = None
    cable_spare_m: float | None = None
    service_months: int | None = None


@dataclass(frozen=True)
class Override:
    """A device chosen by the lead, and why."""

    device: str
    reason: str


@dataclass(frozen=True)
class Opening:
    """One opening. `step_mm` is how far the frame stands proud of the leaf, negative where the leaf stands proud.

    `hardware` and `walls` are empty where there is none, and None where nobody looked. `rail_depth_mm` is what is solid
    between the edge of the moving part and its glass; `width_m` goes from the hinge to the edge that opens first.
    `free` is when people can do without it: at any hour, in the morning, in the afternoon, or after closing.
    """

    id: str
    place: str
    kind: str
    side: str = ""
    spoken: str = ""
    passive_leaf: bool | None = None
    upper_sash: bool | None = None
    loose_lid: bool | None = None
    fire_rated: bool | None = None
    escape: bool | None = None
    powered: bool | None = None
    hardware: tuple[str, ...] | None = None
    width_m: float | None = None
    play_mm: float | None = None
    leaf_material: str | None = None
    frame_material: str | None = None
    glazed: bool | None = None
    rail_depth_mm: float | None = None
    steel: str | None = None
    gap_mm: float | None = None
    step_mm: float | None = None
    use: str | None = None
    height_m: float | None = None
    distance_m: float | None = None
    walls: tuple[Wall, ...] | None = None
    floors: int | None = None
    outer_wall: str | None = None
    cable: bool | None = None
    cable_length_m: float | None = None
    cable_awg: int | None = None
    cable_area_mm2: float | None = None
    old_contact: bool | None = None
    outdoors: bool | None = None
    drill: bool | None = None
    wish: str | None = None
    openings_a_day: float | None = None
    free: str | None = None
    override: Override | None = None
    notes: str = ""

    def __hash__(self) -> int:
        """Worked once: an opening is looked up many times."""
        found = self.__dict__.get("_hash")
        if found is None:
            found = self.__dict__["_hash"] = hash(tuple(self.__dict__.values()))
        return int(found)


@dataclass(frozen=True)
class Survey:
    """A survey of one site, with at least one opening; ids of openings differ."""

    id: str
    name: str
    openings: tuple[Opening, ...]
    invented: bool = False
    summary: str = ""
    surveyed: date | None = None
    units: str = "metric"
    site: Site = field(default_factory=Site)
    control_unit: ControlUnit = field(default_factory=ControlUnit)
    rules: JobRules = field(default_factory=JobRules)
