"""The radio of a device: its check-ins within the supervision window, and its margin through common walls."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from latchside.figures.catalogue import InputError
from latchside.figures.for_device.check_ins import FIGURE, GRADES, asked_by, time
from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked
from latchside.figures.rounding import joined, rounded, say
from latchside.figures.units import figure as shown
from latchside.figures.units import stated, with_unit

LOSSES = (0.1, 0.3, 0.5)
"""Shares of check-ins that are lost."""
RARE = 1e9
"""A chance rarer than one in this is only called rarer."""
SENSITIVITY_DBM = -105.0
MOUNTING_DB = 10.0
"""What a small aerial in a body on a frame gives away, below the power that its label or its limit states."""
WALL = ("brick", 100.0)
"""The inner wall: its material and its thickness in mm."""


@dataclass(frozen=True)
class Way:
    """A path of the signal: distance in m, inner walls, floors, and the outer wall it crosses."""

    words: str
    distance: float
    walls: int = 0
    floors: int = 0
    outer: str = "no"


WAYS = (
    Way("Same room", 5),
    Way("Two brick walls inside", 10, walls=2),
    Way("One floor and one brick wall", 15, walls=1, floors=1),
    Way("Through the wall of an older building", 20, outer="traditional"),
    Way("Through foil and coated glass", 20, outer="efficient"),
)


def supervision(ratings: Ratings, figures: Figures) -> Iterator[Worked]:
    """Tries within one window, the chance that all are lost, and what one that is missed means."""
    if "missed-check-in" not in figures:
        raise Missing("missed-check-in")
    check_in, window = ratings.most("check-in", "min"), ratings.least("missed-window", "h")
    inputs: dict[str, object] = {"check_in_min": check_in, "window_h": window, "devices": 1}
    answers = [figures["missed-check-in"].answer({**inputs, "loss_probability": loss}).outputs for loss in LOSSES]
    rows = tuple(
        (
            f"{say(100 * loss, '%')} of check-ins lost", shown(answer["tries_per_window"]),
            _chance(answer["chance_per_window"]), _yearly(answer["false_troubles_per_year"]),
        )
        for loss, answer in zip(LOSSES, answers, strict=True)
    )  # fmt: skip
    tries = int(answers[0]["tries_per_window"])
    meaning = (
        f"One missed check-in shows nothing: trouble shows when all {tries} in a row are lost, and a device that has "
        f"died goes unnoticed for up to {say(window, 'h')}. Improve a path that loses many; do not widen its window: "
        "[[procedure/try-radio-margin]]."
    )
    notes = [
        Note(
            "Each loss is taken by itself. Real losses come together, behind a metal door that stands closed.",
            "computed",
        )
    ]
    slow = ratings.limit("check-in", "min")
    fewest = figures["missed-check-in"].answer({**inputs, "check_in_min": slow, "loss_probability": 0}).outputs
    if fewest["tries_per_window"] < tries:
        few = shown(fewest["tries_per_window"])
        notes.append(
            Note(f"At the slow end of the tolerance of the check-in, {few} fall within the window.", "computed")
        )
    notes.append(_graded(figures, slow))
    columns = ("Path", "Check-ins in one window", "Chance that all are lost", "False trouble, one device")
    yield Worked(
        "supervision", "Check-ins and the supervision window", "missed-check-in", {**inputs, "loss_probability": 0.1},
        columns, rows, meaning, tuple(notes),
    )  # fmt: skip


def _graded(figures: Figures, slow: float) -> Note:
    """How often a grade makes a device check in, and which grade this one keeps, checking in every `slow` minutes."""
    first, second = (asked_by(figures[FIGURE].data["values"], grade) for grade in GRADES[:2])
    one_way, polled = (
        f"{time(first.longest(polled=polled))} or less at grade 1, {time(second.longest(polled=polled))} at grade 2"
        for polled in (False, True)
    )
    kept = next((one.words for one in (second, first) if slow <= one.longest(polled=False)), "no grade")
    return Note(
        f"The window is that of a site without a grade. Under EN 50131-1 a device that only sends checks in every "
        f"{one_way}; one that is polled when the system is set, every {polled}. By itself this one keeps {kept}.",
        "from memory",
    )


def _chance(chance: float) -> str:
    """A chance as one in so many."""
    if chance * RARE < 1:
        return f"rarer than 1 in {shown(RARE)}"
    return f"1 in {shown(rounded(1 / chance, 2))}"


def _yearly(times: float) -> str:
    """How often something happens, as a count a year or once in so many years."""
    if times >= 1:
        return f"{shown(rounded(times, 2))} a year"
    years = 1 / times if times else RARE
    return f"once in {shown(rounded(years, 2))} years" if years <= 1000 else f"rarer than once in {shown(1000)} years"


def margin(ratings: Ratings, figures: Figures) -> Iterator[Worked]:
    """The margin over the weakest signal that is read, by path and band: in a bad, a middling and a good spot."""
    if not {"radio-margin", "field-limit", "slab-loss"} <= figures.keys():
        raise Missing("radio-margin")
    bands = ratings.all("frequency", "MHz")
    table = {
        (way, band): figures["radio-margin"].answer(_path(ratings, figures, way, band)).outputs
        for way in WAYS
        for band in bands
    }
    rows = tuple(
        (f"{way.words}, {say(way.distance, 'm')}", *(_three(table[way, band]) for band in bands)) for way in WAYS
    )
    columns = ("Way of the signal", *(f"At {_bands([band])}" for band in bands))
    link = _path(ratings, figures, WAYS[2], bands[len(bands) // 2])
    yield Worked(
        "margin", "Radio margin through common walls", "radio-margin", link, columns, rows,
        _accepted(ratings, table), tuple(_radio_notes(ratings, figures)), ("field-limit", "slab-loss"),
    )  # fmt: skip


def _path(ratings: Ratings, figures: Figures, way: Way, band: float) -> dict[str, Any]:
    return {
        "eirp_dbm": eirp_dbm(ratings, figures, band),
        "frequency_mhz": band,
        "distance_m": way.distance,
        "floors": way.floors,
        "obstacles": [_wall_db(figures, band)] * way.walls,
        "crosses_outer_wall": way.outer,
        "mounting_loss_db": MOUNTING_DB,
        "sensitivity_dbm": SENSITIVITY_DBM,
    }


def _wall_db(figures: Figures, band: float) -> float:
    inputs = {"material": WALL[0], "thickness_mm": WALL[1], "frequency_mhz": band}
    return float(figures["slab-loss"].answer(inputs).outputs["loss_db"])


def eirp_dbm(ratings: Ratings, figures: Figures, band: float) -> float:
    """Power beside an isotropic aerial: the label's, or the limit of the band's own region where it is less."""
    dipole = float(figures["field-limit"].data["values"]["to-isotropic"]["value"])
    label = ratings.most("radiated-power", "dBm") + dipole
    limits = [limit for region in ("europe", "united-states") if (limit := _limit(figures, band, region)) is not None]
    return min(label, limits[0]) if limits else label


def _limit(figures: Figures, band: float, region: str) -> float | None:
    try:
        return float(figures["field-limit"].answer({"region": region, "frequency_mhz": band}).outputs["eirp_dbm"])
    except InputError:
        return None


def _three(answer: Mapping[str, Any]) -> str:
    figures = [shown(round(answer[name])) for name in ("low_margin_db", "margin_db", "high_margin_db")]
    return f"{' / '.join(figures)}\u00a0dB"


def _accepted(ratings: Ratings, table: Mapping[tuple[Way, float], Mapping[str, Any]]) -> str:
    """Which paths fall below the margin to accept in a bad spot."""
    first = "Each cell is a bad, a middling and a good spot."
    if "radio-margin" not in ratings:
        return f"{first} The proof is [[procedure/try-radio-margin]] with the part taped where it will stay."
    least = ratings.least("radio-margin", "dB")
    weak: dict[Way, list[float]] = {}
    for (way, band), answer in table.items():
        if answer["low_margin_db"] < least:
            weak.setdefault(way, []).append(band)
    said = [f"{way.words.lower()} ({_bands(bands)})" for way, bands in weak.items()]
    return (
        f"{first} Below the {say(least, 'dB')} to accept, in a bad spot: {joined(said) if said else 'none'}. The proof "
        "is [[procedure/try-radio-margin]] with the part taped where it will stay."
    )


def _bands(bands: Sequence[float]) -> str:
    return with_unit(joined([stated(band) for band in bands]), "MHz")


def _radio_notes(ratings: Ratings, figures: Figures) -> Iterator[Note]:
    bands = ratings.all("frequency", "MHz")
    powers = {band: eirp_dbm(ratings, figures, band) for band in bands}
    each = joined([f"{say(power, 'dBm', 4)} at {_bands([band])}" for band, power in powers.items()])
    yield Note(
        f"Radiated: what the label allows, or the limit of the band where it is less, {each}. A limit is not the "
        f"output of a real part, so {say(MOUNTING_DB, 'dB')} are taken off for a small aerial and its mounting.",
        "typical",
    )  # fmt: skip
    yield Note(f"A receiver that reads signals down to {say(SENSITIVITY_DBM, 'dBm')}.", "typical")
    yield Note(
        "A floor as in a home. One of concrete, in flats or offices, takes two or three times as much.", "standard"
    )
    yield Note(f"Spread of {say(_spread(figures), 'dB')} either way, from one spot to the next.", "common practice")
    yield Note(
        f"A dry brick wall of {say(WALL[1], 'mm')}, drawn out beyond the table of the standard. An outer wall is the "
        "middle of many.", "computed",
    )  # fmt: skip
    main = figures["field-limit"].data["values"]["main-band"]
    for band in bands:
        there = _limit(figures, band, "united-states")
        if there is not None and main["min"] <= band <= main["max"] and there < powers[band]:
            less = say(powers[band] - there, "dB")
            yield Note(
                f"In the United States the limit at {_bands([band])} is {less} lower, and so is each margin there.",
                "computed",
            )


def _spread(figures: Figures) -> float:
    return float(next(one.default for one in figures["radio-margin"].inputs if one.name == "spread_db"))
