"""The radio of a device: its check-ins within the supervision window, and its margin through common walls."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from latchside.figures.catalogue import InputError
from latchside.figures.for_device.check_ins import FIGURE, GRADES, asked_by, time
from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked
from latchside.figures.rounding import rounded, say
from latchside.figures.units import figure as shown
from latchside.figures.units import stated, with_unit
from latchside.messages import listed, messages

message = messages(__name__)

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
    """A path of the signal: its message, distance in m, inner walls, floors, and the outer wall it crosses."""

    id: str
    distance: float
    walls: int = 0
    floors: int = 0
    outer: str = "no"


WAYS = (
    Way("room", 5),
    Way("walls", 10, walls=2),
    Way("floor", 15, walls=1, floors=1),
    Way("older", 20, outer="traditional"),
    Way("foil", 20, outer="efficient"),
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
            message("lost", share=say(100 * loss, "%")), shown(answer["tries_per_window"]),
            _chance(answer["chance_per_window"]), _yearly(answer["false_troubles_per_year"]),
        )
        for loss, answer in zip(LOSSES, answers, strict=True)
    )  # fmt: skip
    tries = int(answers[0]["tries_per_window"])
    meaning = message("one-missed", tries=tries, window=say(window, "h"))
    notes = [Note(message("by-itself"), "computed")]
    slow = ratings.limit("check-in", "min")
    fewest = figures["missed-check-in"].answer({**inputs, "check_in_min": slow, "loss_probability": 0}).outputs
    if fewest["tries_per_window"] < tries:
        notes.append(Note(message("slow", tries=shown(fewest["tries_per_window"])), "computed"))
    notes.append(_graded(figures, slow))
    columns = (message("path"), message("tries"), message("chance"), message("false-trouble"))
    yield Worked(
        "supervision", message("supervision-title"), "missed-check-in", {**inputs, "loss_probability": 0.1}, columns,
        rows, meaning, tuple(notes),
    )  # fmt: skip


def _graded(figures: Figures, slow: float) -> Note:
    """How often a grade makes a device check in, and which grade this one keeps, checking in every `slow` minutes."""
    first, second = (asked_by(figures[FIGURE].data["values"], grade) for grade in GRADES[:2])
    times = {
        f"{way}-{grade}": time(asked.longest(polled=way == "polled"))
        for way in ("sends", "polled")
        for grade, asked in (("first", first), ("second", second))
    }
    kept = next((one.words for one in (second, first) if slow <= one.longest(polled=False)), message("no-grade"))
    return Note(message("grades", kept=kept, **times), "from memory")


def _chance(chance: float) -> str:
    """A chance as one in so many."""
    if chance * RARE < 1:
        return message("rarer", number=shown(RARE))
    return message("one-in", number=shown(rounded(1 / chance, 2)))


def _yearly(times: float) -> str:
    """How often something happens, as a count a year or once in so many years."""
    if times >= 1:
        return message("a-year", times=shown(rounded(times, 2)))
    years = 1 / times if times else RARE
    if years > 1000:
        return message("rarer-than-once", years=shown(1000))
    return message("once-in", years=shown(rounded(years, 2)))


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
        (
            message("way-at", way=message(f"way-{way.id}"), distance=say(way.distance, "m")),
            *(_three(table[way, band]) for band in bands),
        )
        for way in WAYS
    )
    columns = (message("way"), *(message("at-band", band=_bands([band])) for band in bands))
    link = _path(ratings, figures, WAYS[2], bands[len(bands) // 2])
    yield Worked(
        "margin", message("margin-title"), "radio-margin", link, columns, rows,
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
    if "radio-margin" not in ratings:
        return message("spots")
    least = ratings.least("radio-margin", "dB")
    weak: dict[Way, list[float]] = {}
    for (way, band), answer in table.items():
        if answer["low_margin_db"] < least:
            weak.setdefault(way, []).append(band)
    ways = [
        message("weak-way", way=message(f"way-{way.id}.inside"), bands=_bands(bands)) for way, bands in weak.items()
    ]
    return message("weak-spots", least=say(least, "dB"), ways=listed(ways) if ways else message("none"))


def _bands(bands: Sequence[float]) -> str:
    return with_unit(listed([stated(band) for band in bands]), "MHz")


def _radio_notes(ratings: Ratings, figures: Figures) -> Iterator[Note]:
    bands = ratings.all("frequency", "MHz")
    powers = {band: eirp_dbm(ratings, figures, band) for band in bands}
    each = [message("power-at", power=say(power, "dBm", 4), band=_bands([band])) for band, power in powers.items()]
    yield Note(message("radiated", powers=listed(each), mounting=say(MOUNTING_DB, "dB")), "typical")
    yield Note(message("receiver", sensitivity=say(SENSITIVITY_DBM, "dBm")), "typical")
    yield Note(message("floor"), "standard")
    yield Note(message("spread", spread=say(_spread(figures), "dB")), "common practice")
    yield Note(message("brick", thickness=say(WALL[1], "mm")), "computed")
    main = figures["field-limit"].data["values"]["main-band"]
    for band in bands:
        there = _limit(figures, band, "united-states")
        if there is not None and main["min"] <= band <= main["max"] and there < powers[band]:
            less = say(powers[band] - there, "dB")
            yield Note(message("lower-limit", band=_bands([band]), less=less), "computed")


def _spread(figures: Figures) -> float:
    return float(next(one.default for one in figures["radio-margin"].inputs if one.name == "spread_db"))
