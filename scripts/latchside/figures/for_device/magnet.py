"""Magnet and reed of a device: its reach against steel, and the spacer to choose."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.for_device.mounted import sure
from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked
from latchside.figures.rounding import say
from latchside.figures.words import in_words
from latchside.library.traits import Traits
from latchside.messages import Message, messages

message = messages(__name__)

BESIDE_MM = {"further": 10.0, "clear": 20.0}
"""Steel beside two barrels: how far from their axes, in mm."""
OFF_MM = (10.0, 25.0)
"""Bracket or packing under both halves of a set without spacers, in mm."""
STEPS_MM = (-10.0, -5.0, 0.0, 5.0, 10.0)
"""How far the sensor's surface stands proud of the magnet's, in mm."""


def reach(ratings: Ratings, figures: Figures, traits: Traits) -> Iterator[Worked]:
    """Gaps at which the reed closes and lets go, in air and over steel, with the threshold from the label's reach."""
    reed_gap = _needed(figures, "reed-gap")
    drilled = traits.drilled
    inputs = _magnet(ratings, "end-on" if drilled else "parallel")
    label = {**inputs, "label_gap_mm": ratings.most("reach", "mm")}
    if "release" in ratings:
        held = reed_gap.answer({**inputs, "label_gap_mm": ratings.most("release", "mm")})
        label["release_mt"] = held.outputs["threshold_mt"]
    heights = _beside(ratings) if drilled else _spaced(ratings, traits)
    answers = [reed_gap.answer({**label, "steel_mm": height}).outputs for _, height in heights]
    rows = tuple(
        (
            place, say(height, "mm") if height else message("no-steel"), say(answer["operate_mm"], "mm"),
            say(answer["release_mm"], "mm"), say(answer["of_label_percent"], "%", 2),
        )
        for (place, height), answer in zip(heights, answers, strict=True)
    )  # fmt: skip
    columns = (message("place"), message("height"), message("closes"), message("opened"), message("share"))
    left, won_back = (say(answer["of_label_percent"], "%", 2) for answer in (answers[1], answers[-1]))
    meaning = message(f"steel-takes-{_remedy(traits)}", left=left, best=won_back)
    notes = tuple(_reach_notes(ratings, drilled=drilled))
    yield Worked("reach", message("reach-title"), "reed-gap", label, columns, rows, meaning, notes)


def _remedy(traits: Traits) -> str:
    """What wins back the reach that steel takes."""
    if traits.drilled:
        return "distance"
    return "spacer" if traits.has("spacer") else "bracket"


def _needed(figures: Figures, id_: str) -> Any:
    if id_ not in figures:
        raise Missing(id_)
    return figures[id_]


def _magnet(ratings: Ratings, mount: str) -> dict[str, object]:
    return {
        "shape": "cylinder",
        "remanence_t": ratings.most("magnet-remanence", "T"),
        "diameter_mm": ratings.most("magnet-diameter", "mm"),
        "length_mm": ratings.most("magnet-length", "mm"),
        "mount": mount,
    }


def _spaced(ratings: Ratings, traits: Traits) -> list[tuple[str, float | None]]:
    """A surface set in air, flush on steel, and on one and two spacers; the magnet in the middle of its body."""
    flush = max(ratings.most("magnet-height", "mm"), ratings.most("magnet-diameter", "mm")) / 2
    if not traits.has("spacer"):
        held = [(message("held-off", distance=say(away, "mm")), flush + away) for away in OFF_MM]
        return [(message("in-air"), None), (message("flush"), flush), *held]
    spacer = ratings.most("spacer", "mm")
    return [
        (message("in-air"), None),
        (message("flush"), flush),
        (message("one-spacer", size=say(spacer, "mm")), flush + spacer),
        (message("two-spacers"), flush + 2 * spacer),
    ]


def _beside(ratings: Ratings) -> list[tuple[str, float | None]]:
    """Two barrels in air, and with steel alongside."""
    touching = max(ratings.most("body-width", "mm"), ratings.most("magnet-diameter", "mm")) / 2
    away = [(message(f"beside-{place}"), height) for place, height in BESIDE_MM.items() if height > touching]
    return [(message("in-air"), None), (message("touching"), touching), *away]


def _reach_notes(ratings: Ratings, *, drilled: bool) -> Iterator[Note]:
    yield Note(message("from-label"), "computed")
    yield Note(message("lie-end-on" if drilled else "lie-parallel"), "computed")
    if "release" in ratings:
        closes, holds = (say(sure(ratings, name), "mm") for name in ("reach", "release"))
        yield Note(message("sure", closes=closes, holds=holds), "computed")
    if "reach-on-steel" in ratings:
        stated = ratings.stated("reach-on-steel")
        id_ = "barrel-label-wins" if drilled else "label-wins"
        yield Note(message(id_, reach=in_words(stated)), stated.status)


def spacer(ratings: Ratings, figures: Figures) -> Iterator[Worked]:
    """Spacers for common steps between the surfaces of leaf and frame."""
    choose = _needed(figures, "spacer")
    piece = ratings.most("spacer", "mm")
    inputs: dict[str, object] = {
        "sensor_mm": ratings.most("sensor-height", "mm"),
        "magnet_mm": ratings.most("magnet-height", "mm"),
        "spacers_mm": [piece, piece],
    }
    answers = [choose.answer({**inputs, "step_mm": step}).outputs for step in STEPS_MM]
    rows = tuple(
        (_step(step), _low(answer["offset_mm"]), _pieces(answer, piece), _low(answer["left_mm"]))
        for step, answer in zip(STEPS_MM, answers, strict=True)
    )
    columns = (message("step"), message("without"), message("to-use"), message("with"))
    level = answers[STEPS_MM.index(0.0)]
    meaning = message("between-level", spacers=_pieces(level, piece))
    notes = (
        Note(message("equally-deep"), "typical"),
        Note(message("at-hand", size=say(piece, "mm")), "typical"),
    )
    title = message("spacer-title")
    yield Worked("spacer", title, "spacer", {**inputs, "step_mm": 0}, columns, rows, meaning, notes)


def _step(step: float) -> Message:
    if not step:
        return message("level")
    return message("proud" if step > 0 else "deeper", step=say(abs(step), "mm"))


def _low(offset: float) -> Message:
    if not offset:
        return message("in-line")
    return message("magnet-low" if offset > 0 else "sensor-low", offset=say(abs(offset), "mm"))


def _pieces(answer: Mapping[str, Any], piece: float) -> Message:
    count = len(answer["pieces_mm"])
    if not count:
        return message("no-spacer")
    return message(f"under-{answer['under']}", count=count, size=say(piece, "mm"))
