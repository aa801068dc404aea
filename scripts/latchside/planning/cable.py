"""Cable and what is fitted with it. Lengths are always rounded up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
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
    habit = _habit(survey, library)
    loops = habit.cores // 2 if habit else 1
    runs: dict[str, list[float]] = {}
    unmeasured, clipped = 0, 0.0
    for part in (one for one in parts if one.new_cable):
        length, count = _length(part, house), ceil(part.zones / loops)
        if not length:
            unmeasured += count
            continue
        runs.setdefault(_cable(part.opening, habit), []).extend([length] * count)
        clipped += length * count
    loaded = (_metres(name, lengths, house, rules) for name, lengths in sorted(runs.items()))
    yield from (one for one in loaded if one.quantity or one.spare)
    if unmeasured:
        yield Item("consumable", message("unmeasured"), unmeasured, 0, "run", message("unmeasured.use"))
    if clipped:
        clips = ceil(ceil(clipped) / house["clip-distance"])
        yield Item("consumable", message("clips"), clips, 0, "piece", message("clips.use"))
    yield from _trunking([one for one in parts if one.new_cable and not one.may_drill])
    if runs or unmeasured:
        yield Item("consumable", message("sealing"), 1, 0, "pack", message("sealing.use"))


def _length(part: AtOpening, house: House) -> float:
    """The metres of one run to an opening; a length of zero was not measured."""
    return house["transmitter-cable"] if part.transmitter else part.opening.cable_length_m or 0.0


def _trunking(stuck: Sequence[AtOpening]) -> Iterator[Item]:
    """A metre of stuck trunking for each frame that may not be drilled.

    Along the wall metal clips hold every run: a cable that only glue holds hangs down into the way out in a fire (BS
    7671, 521.10.202, from memory).
    """
    if stuck:
        to = tuple(part.opening.id for part in stuck)
        yield Item("consumable", message("trunking"), len(stuck), 0, "m", message("trunking.use"), openings=to)


def _metres(name: str, lengths: list[float], house: House, rules: Rules) -> Item:
    """The metres of the runs; the spare is what is added to each run, rounded up to the next step of a drum."""
    step, quantity = house["cable-drum"], ceil(sum(lengths) - 1e-9)
    whole = ceil((sum(lengths) + rules.cable_spare_m * len(lengths)) / step - 1e-9) * step
    return Item("consumable", name, quantity, max(0.0, whole - quantity), "m", message("runs", count=len(lengths)))


@dataclass(frozen=True)
class Habit:
    """The cable that is usual in a region: its name, its cores and the size of one."""

    name: str
    cores: int
    size: str


def _habit(survey: Survey, library: Library) -> Habit | None:
    """The usual cable, where the region is known."""
    habits = library.find("table", "cable-habits")
    if habits is None or survey.site.region is None:
        return None
    american = survey.site.region in NORTH_AMERICA
    id_, column, unit = ("pair", "north-america", "AWG") if american else ("four-core", "europe", "mm2")
    row = next(row["cells"] for row in habits["rows"] if row["id"] == id_)
    return Habit(within(row["cable"]), int(row["cores"]), short(row[column], unit))


def _cable(opening: Opening, habit: Habit | None) -> Message:
    """The name of the cable for an opening, with its size: as the survey says, else as is usual in the region."""
    size = habit.size if habit else ""
    if opening.cable_awg is not None:
        size = short(opening.cable_awg, "AWG")
    elif opening.cable_area_mm2 is not None:
        size = short(opening.cable_area_mm2, "mm2")
    if habit is None:
        return message("cable", size=size) if size else message("cable-usual")
    return message("cable-cores", cores=habit.name, size=size)
