"""Cable and what goes on with it. A length is always rounded up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil

from latchside.figures.rounding import short
from latchside.library.model import Library
from latchside.planning.at_opening import AtOpening
from latchside.planning.house import House, Rules
from latchside.planning.plan import Item
from latchside.surveys.survey import Opening, Survey

_NORTH_AMERICA = ("united-states", "canada")


def cable(survey: Survey, parts: Sequence[AtOpening], library: Library, house: House, rules: Rules) -> Iterator[Item]:
    """Cable by size, with the spare of each run, then what holds it."""
    runs: dict[str, list[float]] = {}
    unmeasured = 0
    for part in parts:
        if not part.new_cable:
            continue
        length = house["transmitter-cable"] if part.transmitter else part.opening.cable_length_m
        if not length:  # a run of no length was not measured
            unmeasured += part.zones
        else:
            runs.setdefault(_size(part.opening, survey, library), []).extend([length] * part.zones)
    loaded = (_metres(name, lengths, house, rules) for name, lengths in sorted(runs.items()))
    yield from (one for one in loaded if one.quantity or one.spare)
    if unmeasured:
        used_for = "Runs that nobody measured. Their metres are not in this list."
        yield Item("consumable", "Alarm cable, length not known", unmeasured, 0, "run", used_for)
    metres = sum(ceil(sum(lengths)) for lengths in runs.values())
    if metres:
        clips = ceil(metres / house["clip-distance"])
        yield Item("consumable", "Cable clips or ties", clips, 0, "piece", "Where the run is on the surface.")
    if runs or unmeasured:
        yield Item("consumable", "Sealing material", 1, 0, "pack", "For each wall crossed, of the kind it asks.")


def _metres(name: str, lengths: list[float], house: House, rules: Rules) -> Item:
    """The metres of the runs, and as spare what is added to each run and up to the next step of a drum."""
    step, quantity = house["cable-drum"], ceil(sum(lengths) - 1e-9)
    whole = ceil((sum(lengths) + rules.cable_spare_m * len(lengths)) / step - 1e-9) * step
    used_for = f"{len(lengths)} {'run' if len(lengths) == 1 else 'runs'}, with spare for routing and ends."
    return Item("consumable", name, quantity, max(0.0, whole - quantity), "m", used_for)


def _size(opening: Opening, survey: Survey, library: Library) -> str:
    if opening.cable_awg is not None:
        return f"Alarm cable, {short(opening.cable_awg, 'AWG')}"
    if opening.cable_area_mm2 is not None:
        return f"Alarm cable, {short(opening.cable_area_mm2, 'mm2')}"
    habits = library.find("table", "cable-habits")
    if habits is None or survey.site.region is None:
        return "Alarm cable, of the size and cores that are usual there"
    american = survey.site.region in _NORTH_AMERICA
    wanted, column, unit = ("pair", "north-america", "AWG") if american else ("four-core", "europe", "mm2")
    row = next(row["cells"] for row in habits["rows"] if row["id"] == wanted)
    return f"Alarm cable, {row['cable'].lower()}, {short(row[column], unit)}"
