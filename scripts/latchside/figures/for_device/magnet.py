"""Magnet and reed of a device: its reach against steel, and the spacer to choose."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.for_device.mounted import sure
from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked
from latchside.figures.rounding import say
from latchside.figures.words import in_words
from latchside.library.traits import Traits

BESIDE_MM = {"Steel alongside, further off": 10.0, "Steel alongside, well clear": 20.0}
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
            words, say(height, "mm") if height else "no steel", say(answer["operate_mm"], "mm"),
            say(answer["release_mm"], "mm"), say(answer["of_label_percent"], "%", 2),
        )
        for (words, height), answer in zip(heights, answers, strict=True)
    )  # fmt: skip
    columns = (
        "Where it sits",
        "Height of both axes above the steel",
        "Closes at",
        "Has opened at",
        "Of the reach in air",
    )
    worst, best = answers[1], answers[-1]
    meaning = (
        f"Steel close by leaves {say(worst['of_label_percent'], '%', 2)} of the reach, and "
        f"{_winner(traits)} wins it back up to "
        f"{say(best['of_label_percent'], '%', 2)}. The gap to fit to is at most half of what is left: "
        "[[procedure/try-gap]]."
    )
    notes = tuple(_reach_notes(ratings, drilled=drilled))
    yield Worked("reach", "Reach, and what steel takes", "reed-gap", label, columns, rows, meaning, notes)


def _winner(traits: Traits) -> str:
    if traits.drilled:
        return "distance"
    return "a spacer under both halves" if traits.has("spacer") else "a bracket that holds both halves off"


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
        held = [(f"Both halves held {say(away, 'mm')} off by bracket or packing", flush + away) for away in OFF_MM]
        return [("In air", None), ("Flush on steel", flush), *held]
    spacer = ratings.most("spacer", "mm")
    return [
        ("In air", None),
        ("Flush on steel", flush),
        (f"One spacer of {say(spacer, 'mm')} under both halves", flush + spacer),
        ("Two spacers under both halves", flush + 2 * spacer),
    ]


def _beside(ratings: Ratings) -> list[tuple[str, float | None]]:
    """Two barrels in air, and with steel alongside."""
    touching = max(ratings.most("body-width", "mm"), ratings.most("magnet-diameter", "mm")) / 2
    away: list[tuple[str, float | None]] = [(words, height) for words, height in BESIDE_MM.items() if height > touching]
    return [("In air", None), ("Both barrels against steel at one side", touching), *away]


def _reach_notes(ratings: Ratings, *, drilled: bool) -> Iterator[Note]:
    yield Note(
        "The field at which the reed closes, and that at which it lets go, are worked back from the label.", "computed"
    )
    lie = "on one line, end to end" if drilled else "side by side, the magnet at the mark"
    yield Note(f"Magnet and reed lie {lie}, and the steel is an endless plate: the worst case.", "computed")
    if "release" in ratings:
        closes, holds = (say(sure(ratings, name), "mm") for name in ("reach", "release"))
        yield Note(
            f"Off steel, at the low end of the tolerance and warm, it is sure to close at {closes} and to stay closed "
            f"up to {holds}. Gap, play and sag stay below the first with a margin, gap and play below the second.",
            "computed",
        )
    if "reach-on-steel" in ratings:
        stated = ratings.stated("reach-on-steel")
        where = "Steel all round a barrel takes more than steel at one side. " if drilled else ""
        yield Note(f"{where}The label's own reach on steel, {in_words(stated)}, wins.", stated.status)


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
    columns = ("Step between the surfaces", "Without a spacer", "Spacer to use", "With it")
    level = answers[STEPS_MM.index(0.0)]
    meaning = (
        f"Between level surfaces it takes {_pieces(level, piece)}. At any step, what counts is that the two tops end "
        "up level."
    )
    notes = (
        Note("Reed and magnet lie equally deep below the tops of their bodies.", "typical"),
        Note(f"Two spacers of {say(piece, 'mm')} are at hand.", "typical"),
    )
    yield Worked("spacer", "Spacer to choose", "spacer", {**inputs, "step_mm": 0}, columns, rows, meaning, notes)


def _step(step: float) -> str:
    if not step:
        return "Surfaces level"
    return f"Sensor {say(abs(step), 'mm')} {'proud' if step > 0 else 'deeper'}"


def _low(offset: float) -> str:
    return "in line" if not offset else f"{'magnet' if offset > 0 else 'sensor'} {say(abs(offset), 'mm')} too low"


def _pieces(answer: Mapping[str, Any], piece: float) -> str:
    count = len(answer["pieces_mm"])
    if not count:
        return "no spacer"
    number = "one spacer" if count == 1 else "two spacers"
    return f"{number} of {say(piece, 'mm')} under the {answer['under']}"
