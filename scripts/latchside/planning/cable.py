"""Cable and what is fitted with it. Lengths are always rounded up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil

from latchside.figures.rounding import short
from latchside.library.model import Library
from latchside.messages import Message, messages, within
from latchside.planning.at_opening import AtOpening
from latchside.planning.figures_for.context import NORTH_AMERICA
from latchside.planning.house import House, Rules
from latchside.planning.plan import Item
from latchside.surveys.survey import Opening, Survey

message = messages(__name__)


def cable(survey: Survey, parts: Sequence[AtOpening], library: Library, house: House, rules: Rules) -> Iterator[Item]:
    """Cable by size, with a spare for each run, then what holds it."""
    runs: dict[str, list[float]] = {}
    unmeasured, stuck = 0, 0
    for part in parts:
        if not part.new_cable:
            continue
        length = house["transmitter-cable"] if part.transmitter else part.opening.cable_length_m
        if not length:  # a length of zero was not measured
            unmeasured += part.zones
        else:
            runs.setdefault(_cable(part.opening, survey, library), []).extend([length] * part.zones)
            stuck += 0 if part.may_drill else ceil(length * part.zones)  # in trunking, which takes no clip
    loaded = (_metres(name, lengths, house, rules) for name, lengths in sorted(runs.items()))
    yield from (one for one in loaded if one.quantity or one.spare)
    if unmeasured:
        yield Item("consumable", message("unmeasured"), unmeasured, 0, "run", message("unmeasured.use"))
    clipped = sum(ceil(sum(lengths)) for lengths in runs.values()) - stuck
    if clipped > 0:
        clips = ceil(clipped / house["clip-distance"])
        yield Item("consumable", message("clips"), clips, 0, "piece", message("clips.use"))
    if runs or unmeasured:
        yield Item("consumable", message("sealing"), 1, 0, "pack", message("sealing.use"))


def _metres(name: str, lengths: list[float], house: House, rules: Rules) -> Item:
    """The metres of the runs; the spare is what is added to each run, rounded up to the next step of a drum."""
    step, quantity = house["cable-drum"], ceil(sum(lengths) - 1e-9)
    whole = ceil((sum(lengths) + rules.cable_spare_m * len(lengths)) / step - 1e-9) * step
    return Item("consumable", name, quantity, max(0.0, whole - quantity), "m", message("runs", count=len(lengths)))


def _cable(opening: Opening, survey: Survey, library: Library) -> Message:
    """The name of the cable for an opening, with its size: as the survey says, else as is usual in the region."""
    if opening.cable_awg is not None:
        return message("cable", size=short(opening.cable_awg, "AWG"))
    if opening.cable_area_mm2 is not None:
        return message("cable", size=short(opening.cable_area_mm2, "mm2"))
    habits = library.find("table", "cable-habits")
    if habits is None or survey.site.region is None:
        return message("cable-usual")
    american = survey.site.region in NORTH_AMERICA
    id_, column, unit = ("pair", "north-america", "AWG") if american else ("four-core", "europe", "mm2")
    row = next(row["cells"] for row in habits["rows"] if row["id"] == id_)
    return message("cable-cores", cores=within(row["cable"]), size=short(row[column], unit))
