"""Data that fits the schema becomes a survey: lengths in mm and m, answers in True, False and None."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from typing import Any, NamedTuple

from latchside.figures.lengths import LengthError, Unit, read_length
from latchside.messages import messages
from latchside.surveys.survey import ControlUnit, JobRules, Opening, Override, Site, Survey, Wall

message = messages(__name__)
Path = tuple[str | int, ...]

_UNKNOWN = "unknown"
_ANSWERS = {"yes": True, "no": False}
_LENGTHS: Mapping[str, tuple[Unit, float]] = {
    "play": ("mm", 1000), "gap": ("mm", 1000), "step": ("mm", 1000), "height": ("m", 100), "distance": ("m", 5000),
    "cable_length": ("m", 5000), "cable_spare": ("m", 1000), "thickness": ("mm", 10_000),
    "rail_depth": ("mm", 2000), "width": ("m", 50),
}  # fmt: skip
"""The fields that hold a length, the unit a survey has it in, and the most that can be meant."""
_UNITS = {
    "frequency": "frequency_mhz", "sensitivity": "sensitivity_dbm", "supply": "supply_v", "pull_up": "pull_up_ohm",
    "end_of_line": "end_of_line_ohm", "second_resistor": "second_resistor_ohm", "standby_current": "standby_ma",
    "alarm_current": "alarm_ma", "cable_area": "cable_area_mm2",
}  # fmt: skip
"""The fields whose name in a survey says the unit too."""
_ASKED = (
    "listed", "occupied", "monitored", "keyholder_arranged", "installer_access", "two_way", "chime", "passive_leaf",
    "upper_sash", "loose_lid", "fire_rated", "escape", "powered", "glazed", "cable", "old_contact", "outdoors", "drill",
)  # fmt: skip


class Misread(NamedTuple):
    """What the schema lets through and cannot be read all the same, and its place in the data."""

    path: Path
    code: str
    found: str
    expected: str
    action: str


def attribute(field: str) -> str:
    """The name that a field of a survey has in the one that is read: with its unit, where it holds a figure."""
    if field in _LENGTHS:
        return f"{field}_{_LENGTHS[field][0]}"
    return _UNITS.get(field, field)


def survey_of(data: Mapping[str, Any]) -> Survey:
    """The survey that data states which fits the schema. Raises ValueError where a length or a day cannot be read."""
    survey, misread = build(data)
    if misread:
        first = misread[0]
        raise ValueError(f"{'.'.join(map(str, first.path))}: {first.found}. Expected: {first.expected}.")
    return survey


def build(data: Mapping[str, Any]) -> tuple[Survey, tuple[Misread, ...]]:
    """The survey, and what cannot be read: an opening with such a field is left out, any other such field is empty."""
    reader = _Reader(data.get("units") == "imperial")
    survey = Survey(
        id=data["id"],
        name=_line(data["name"]),
        openings=(),
        invented=bool(data.get("invented", False)),
        summary=_line(data.get("summary", "")),
        surveyed=reader.day(data.get("surveyed"), ("surveyed",)),
        units=data.get("units", "metric"),
        site=Site(**reader.group(data.get("site", {}), ("site",))),
        control_unit=ControlUnit(**reader.group(data.get("control_unit", {}), ("control_unit",))),
        rules=JobRules(**reader.group(data.get("rules", {}), ("rules",))),
    )
    return replace(survey, openings=tuple(reader.openings(data["openings"]))), tuple(reader.misread)


def misread_lengths(opening: object, path: Path, imperial: bool) -> tuple[Misread, ...]:
    """The lengths of an opening that cannot be read, whatever else is wrong with it."""
    reader = _Reader(imperial)
    data = opening if isinstance(opening, Mapping) else {}
    walls = data.get("walls")
    for key, value in data.items():
        if key in _LENGTHS:
            reader.length(key, value, (*path, key))
    for index, one in enumerate(walls if isinstance(walls, list) else ()):
        if isinstance(one, Mapping):
            reader.wall({"material": None, **one}, (*path, "walls", index))
    return tuple(reader.misread)


class _Reader:
    def __init__(self, imperial: bool) -> None:
        self._imperial = imperial
        self.misread: list[Misread] = []

    def openings(self, listed: Any) -> Iterator[Opening]:
        first: dict[str, int] = {}
        for index, one in enumerate(listed):
            before = len(self.misread)
            made = Opening(**self.group(one, ("openings", index)))
            if first.setdefault(made.id, index) != index:
                words = message.finding("repeated-opening", id=made.id, number=first[made.id] + 1)
                self.misread.append(Misread(("openings", index, "id"), "repeated-opening", *words))
            if len(self.misread) == before:
                yield made

    def group(self, data: Mapping[str, Any], path: Path) -> dict[str, Any]:
        """The fields of a class, from the fields of a survey."""
        made: dict[str, Any] = {}
        for key, value in data.items():
            if key == "no_codes":
                continue  # only says of other fields that they are read
            if key in _LENGTHS:
                made[attribute(key)] = self.length(key, value, (*path, key))
            elif key in _ASKED:
                made[key] = _ANSWERS.get(value)
            elif key == "walls":
                made[key] = tuple(self.wall(one, (*path, key, index)) for index, one in enumerate(value))
            elif key == "device":
                made["override"] = Override(value["class"], _line(value["reason"]))
            elif key in ("zones_in_use", "hardware"):
                made[key] = tuple(map(_line, value))
            elif value == _UNKNOWN and key not in ("id", "place", "side", "spoken", "notes"):
                made[key] = None
            else:
                made[attribute(key)] = _line(value) if isinstance(value, str) else value
        return made

    def wall(self, data: Mapping[str, Any], path: Path) -> Wall:
        thickness = data.get("thickness")
        if thickness is None:
            return Wall(data["material"])
        return Wall(data["material"], self.length("thickness", thickness, (*path, "thickness")))

    def length(self, key: str, value: object, path: Path) -> float | None:
        unit, most = _LENGTHS[key]
        try:
            read = read_length(value, unit, imperial=self._imperial, signed=key == "step")
        except LengthError as error:
            action = message("correct-length")
            self.misread.append(Misread(path, "not-a-length", str(error), error.expected, action))
            return None
        if abs(read) > most:
            length, limit = f"{read:g} {unit}", f"{most:g} {unit}"
            words = message.finding("out-of-range", value=str(value), length=length, most=limit)
            self.misread.append(Misread(path, "out-of-range", *words))
        return read

    def day(self, text: str | None, path: Path) -> date | None:
        try:
            return None if text is None else date.fromisoformat(text)
        except ValueError:
            self.misread.append(Misread(path, "not-a-day", *message.finding("not-a-day", text=str(text))))
            return None


def _line(text: str) -> str:
    """A text as one line: cells and folded blocks may hold line ends, and a reader sees none of them."""
    return " ".join(text.split())
