"""The radio of one opening: its margin from a bad to a good spot, and its check-ins.

Good: even in a bad spot it keeps the margin to accept. Poor: not even in a good spot. Else it is tried on site.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import floor
from typing import Any

from latchside.figures.for_device.radio import SENSITIVITY_DBM
from latchside.figures.units import figure, stated, with_unit
from latchside.messages import Message, listed, messages
from latchside.planning.figures_for import check_ins
from latchside.planning.figures_for.context import EUROPE, Context
from latchside.planning.figures_for.shown import say, up_to
from latchside.planning.figures_for.walls import SHUT_OFF_DB
from latchside.planning.figures_for.way import way
from latchside.planning.plan import Expected, Line, Verdict

message = messages(__name__)
SAME_BAND = 0.006
"""Frequencies that differ by less than this share may be one band, loosely named: 433 and 433.92, 868 and 868.3."""
SAME = 0.0001
"""Frequencies that differ by less than this share are the same."""
_REGIONS = {"united-states": "united-states", "canada": "canada", **dict.fromkeys(EUROPE, "europe")}
_MAIN_BANDS = {"united-states": "main-band", "canada": "canada-band"}


@dataclass(frozen=True)
class Band:
    """A frequency in MHz with the least and the most power beside an isotropic aerial, in dBm."""

    mhz: float
    least: float
    most: float


@dataclass(frozen=True)
class Bands:
    """The bands that the device may use here; none, with why, where it cannot be heard."""

    bands: tuple[Band, ...]
    why_not: str = ""
    assumed: tuple[str, ...] = ()
    unsure: bool = False


def radio(context: Context) -> Iterator[Line]:
    """The lines of the radio."""
    if context.device.wired:
        return
    yield _margin(context, bands_of(context))
    yield from check_ins.check_ins(context)


def bands_of(context: Context) -> Bands:
    """The frequencies of the label that the receiver and the region take."""
    made_for = context.device.ratings.all("frequency", "MHz")
    receiver = context.unit.frequency_mhz
    allowed = [band for one in made_for if (band := _band(context, one)) is not None]
    made = with_unit(listed([stated(one) for one in made_for], "or"), "MHz")
    if receiver is None:
        if not allowed:
            return Bands((), message("no-band", frequency=made))
        return Bands(tuple(allowed), "", (message("receiver-not-known"), *_assumed(context)), unsure=True)
    near = min(made_for, key=lambda one: abs(one - receiver))
    heard, nearest = (with_unit(stated(one), "MHz") for one in (receiver, near))
    if abs(near - receiver) > SAME_BAND * near:
        return Bands((), message("other-frequency", heard=heard, made=made))
    kept = [one for one in allowed if one.mhz == near]
    if not kept:
        return Bands((), message("no-band", frequency=nearest))
    if abs(near - receiver) <= SAME * near:
        return Bands(tuple(kept), "", _assumed(context), unsure=context.region not in _REGIONS)
    return Bands(tuple(kept), "", (message("taken-for", heard=heard, made=nearest), *_assumed(context)), unsure=True)


def _band(context: Context, mhz: float) -> Band | None:
    """Power by the label, or by the limit of the region where that is less; None where the region has no such band."""
    label = _label(context)
    region = _REGIONS.get(context.region or "")
    regions = (region,) if region else ("united-states", "canada", "europe")
    found = [limit for one in regions if (limit := _limit(context, one, mhz)) is not None]
    if not found:
        return None
    return Band(mhz, min(label, *found), min(label, max(found)))


def _label(context: Context) -> float:
    dipole = float(context.constant("field-limit", "to-isotropic")["value"])
    return context.device.ratings.most("radiated-power", "dBm") + dipole


def _limit(context: Context, region: str, mhz: float) -> float | None:
    if region in _MAIN_BANDS:
        main = context.constant("field-limit", _MAIN_BANDS[region])
        if not main["min"] <= mhz <= main["max"]:
            return None
    answer = context.answer("field-limit", {"region": region, "frequency_mhz": mhz})
    return None if answer is None else float(answer["eirp_dbm"])


def _assumed(context: Context) -> tuple[Message, ...]:
    """What is assumed of power and bands."""
    if context.region in ("canada", "united-kingdom"):
        return message("power"), message(context.region)
    if context.region not in _REGIONS:
        return message("power"), message("region-not-known")
    return (message("power"),)


def _margin(context: Context, bands: Bands) -> Line:
    accept = context.device.ratings.least("radio-margin", "dB")
    inputs: dict[str, Any] = {"accept_db": accept}
    if not bands.bands:
        meaning = f"{bands.why_not} {message('order-other-band')}"
        return Line(message("name"), message("not-heard"), "poor", meaning, "radio-margin", inputs)
    found = [_at(context, band) for band in bands.bands]
    worked = [one for one in found if one is not None]
    if len(worked) < len(found):
        why = message("no-distance" if context.opening.distance_m is None else "outside")
        meaning, shown = f"{why} {message('proof')}", message("not-worked")
        return Line(message("name"), shown, "test on site", meaning, "radio-margin", inputs, bands.assumed)
    low, bad = min(((one.low, one.bad) for one in worked), key=lambda pair: pair[0])
    high = max(one.high for one in worked)
    assumed, unsure = [*bands.assumed, *worked[0].assumed], bands.unsure or any(one.unsure for one in worked)
    if context.unit.sensitivity_dbm is None:
        unsure = True
        assumed.append(message("sensitivity", dbm=say(SENSITIVITY_DBM, "dBm")))
    verdict, meaning = _verdict(low, high, accept, unsure=unsure)
    inputs |= {**bad, "low_margin_db": low, "high_margin_db": high}
    least = "nothing" if SHUT_OFF_DB in bad["obstacles"] else figure(floor(low))
    shown = message("range", least=least, most=with_unit(figure(floor(high)), "dB"))
    return Line(message("name"), shown, verdict, meaning, "radio-margin", inputs, tuple(assumed))


@dataclass(frozen=True)
class _Margin:
    low: float
    high: float
    bad: dict[str, Any]
    assumed: tuple[str, ...]
    unsure: bool


def _at(context: Context, band: Band) -> _Margin | None:
    found = way(context, band.mhz)
    if found is None:
        return None
    sensitivity = context.unit.sensitivity_dbm
    receiver = {"sensitivity_dbm": SENSITIVITY_DBM if sensitivity is None else sensitivity}
    bad = {**found.bad, **receiver, "eirp_dbm": band.least}
    good = {**found.good, **receiver, "eirp_dbm": band.most}
    low, high = context.answer("radio-margin", bad), context.answer("radio-margin", good)
    if low is None or high is None:
        return None
    lowest, highest = float(low["low_margin_db"]), float(high["high_margin_db"])
    return _Margin(lowest, highest, bad, tuple(found.assumed), found.unsure)


def _verdict(low: float, high: float, accept: float, *, unsure: bool) -> tuple[Verdict, str]:
    least = say(accept, "dB")
    if high < 0:
        return "poor", f"{message('unheard')} {message('order-nearer')}"
    if high < accept:
        return "poor", f"{message('too-low', least=least)} {message('order-nearer')}"
    if low >= accept and not unsure:
        return "good", f"{message('good', least=least)} {message('proof')}"
    found = message("good-if" if low >= accept else "falls-below", least=least)
    return "test on site", f"{found} {message('proof')}"


def expected(context: Context) -> Iterator[Expected]:
    """The margin to accept and the times of the check-ins."""
    ratings = context.device.ratings
    if context.device.wired:
        return
    if "radio-margin" in ratings:
        least = ratings.least("radio-margin", "dB")
        yield Expected("radio-margin", message("name"), "dB", least, None, up_to(least, None, "dB"))
    yield from check_ins.expected(context)
