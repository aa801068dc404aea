"""Magnet and reed at one opening: the gap at rest against the make distance, the pushed gap against the break
distance, the latch, and the spacers for the step between the surfaces.

Both distances are taken as mounted: over steel or off it, at the worst end of the tolerance, the magnet warm. A latched
leaf may rest at the outer end of its play, so the whole play counts in both. What the edge has opened at the trip is
in `trip.py`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from latchside.figures.for_device.mounted import sure
from latchside.figures.for_device.worked import Missing
from latchside.messages import Message, messages
from latchside.planning import bounds
from latchside.planning.facts import words
from latchside.planning.figures_for.context import Context, Device
from latchside.planning.figures_for.shown import down, mm, up_to
from latchside.planning.plan import Expected, Line, Verdict

message = messages(__name__)
HALF = 0.5
"""Share of the make distance that the gap itself is fitted to."""
LEVEL_MM = 2.0
"""Offset in height that is accepted, common practice: position-surface-contact, step level."""
LOOSE_MM = 3.0
"""A hinged leaf that moves more than this on its latch has a loose latch, common practice: prove-opening."""
GAUGE_MM = 0.5
"""Slips of a gap gauge are told apart so finely, common practice: no gap to fit to is named more finely."""
READ_MM = 0.5
"""No rule is read finer against a moving edge: an eighth of an inch is 3 mm."""
_OFF_STEEL = ("spacer", "bracket")
"""Roles of parts that hold both halves off the steel and win some of the reach back."""
_HINGED = ("hinged-door", "double-door", "casement", "hatch")
_LATCHED = ("hinged-door", "double-door", "casement")
"""Those that a latch holds closed; the lid of a hatch may lie loose."""


@dataclass(frozen=True)
class Reach:
    """The distances of a device as mounted, in mm.

    `make` and `breaks` are the least that closing and opening distance are sure to be; `rest` is the largest gap with
    play at which a leaf may rest; the gap itself is fitted from `fit_from` to `fit_to`, less where the play takes more.
    """

    make: float
    breaks: float
    rest: float
    fit_from: float
    fit_to: float

    @property
    def read_to(self) -> float:
        """The widest gap to fit to, as a gauge tells it."""
        return max(self.fit_from, down(self.fit_to, GAUGE_MM))


def steel_at(context: Context) -> bool | None:
    """Whether steel lies near magnet or reed: always where leaf or frame is steel; None where that is not known."""
    possible = words(context.opening, "steel").possible
    return None if possible is None else possible != frozenset(["none"])


def left(context: Context, *, steel: bool) -> Reach:
    """The distances of the device there. Raises Missing where it states none."""
    ratings = context.device.ratings
    air = ratings.most("reach", "mm")
    share, make = 1.0, sure(ratings, "reach")
    if steel:
        share = _on_steel(context, air) / air
        make = sure(ratings, "reach-on-steel") if "reach-on-steel" in ratings else make * share
    breaks = sure(ratings, "release") * (make / sure(ratings, "reach"))
    rest, fit_from = bounds.rest(make, context.house), ratings.least("fit-gap", "mm")
    fit_to = min(ratings.most("fit-gap", "mm"), HALF * air * share, rest - (context.opening.play_mm or 0.0))
    return Reach(make, breaks, rest, fit_from, max(fit_from, fit_to))


def _on_steel(context: Context, air: float) -> float:
    """The label's own reach on steel, or that of the magnet over an endless plate where the label has none."""
    ratings = context.device.ratings
    if "reach-on-steel" in ratings:
        return ratings.most("reach-on-steel", "mm")
    diameter = ratings.most("magnet-diameter", "mm")
    inputs = {
        "remanence_t": ratings.most("magnet-remanence", "T"),
        "diameter_mm": diameter,
        "length_mm": ratings.most("magnet-length", "mm"),
        "mount": "end-on" if context.device.drilled else "parallel",
        "label_gap_mm": air,
        "steel_mm": max(ratings.most("magnet-height", "mm") / 2 if "magnet-height" in ratings else 0, diameter / 2),
    }
    answer = context.answer("reed-gap", inputs)
    if answer is None:
        raise Missing("reach-on-steel")
    return float(answer["operate_mm"])


def _best(context: Context, steel: bool | None) -> Reach:
    """The best that may be hoped for: off the steel where that is possible or not known to lie there."""
    lifted = context.device.traits.has(*_OFF_STEEL)
    return left(context, steel=steel is True and not lifted)


def magnet(context: Context) -> Iterator[Line]:
    """The lines of the magnet, where there is one.

    Those of a transmitter are of the wired contact on its loop, where that is named.
    """
    context = context.sensing
    if context.device.transmitter:
        yield _contact_of_transmitter()
    if not context.device.traits.magnetic:
        return
    yield _gap(context)
    for line in (_push(context), _latch(context), _spacer(context), _clearance(context)):
        if line is not None:
            yield line


def _contact_of_transmitter() -> Line:
    return Line(message("gap"), message("by-label"), "none", message("of-contact"), "reed-gap", {})


def _gap(context: Context) -> Line:
    """The leaf at rest at the outer end of its play, sagged: does the reed still close?"""
    opening, steel = context.opening, steel_at(context)
    best, worst = _best(context, steel), left(context, steel=steel is not False)
    assumed = []
    if steel is None:
        assumed.append(message("steel-not-known"))
    if opening.play_mm is None:
        assumed.append(message("play-not-known"))
    sag = bounds.sag(context.house)
    assumed.append(message("sag", sag=mm(sag)))
    inputs = {
        "gap_mm": opening.gap_mm, "play_mm": opening.play_mm, "sag_mm": sag, "steel": steel, "make_mm": worst.make,
        "make_off_steel_mm": best.make, "rest_to_mm": worst.rest, "fit_from_mm": worst.fit_from,
        "fit_to_mm": worst.fit_to,
    }  # fmt: skip
    fit = up_to(worst.fit_from, worst.read_to, "mm")
    if opening.gap_mm is None:
        meaning: str = message("not-measured")
        limit = message("fit-to", range=fit)
        return Line(message("gap"), limit, "test on site", meaning, "reed-gap", inputs, tuple(assumed))
    verdict, meaning = _judged(opening.gap_mm, opening.play_mm or 0.0, sag, best, worst, context.device)
    kept = context.device.wired and opening.old_contact
    if kept:
        assumed.append(message("in-place"))
    if (opening.play_mm is None or kept) and verdict == "good":
        verdict = "test on site"
    if steel and verdict == "test on site" and best != worst:
        meaning = f"{meaning} {message('win-back')}"
    shown = message("gap-fit-to", gap=mm(opening.gap_mm), range=fit)
    return Line(message("gap"), shown, verdict, meaning, "reed-gap", inputs, tuple(assumed))


def _judged(gap: float, play: float, sag: float, best: Reach, worst: Reach, device: Device) -> tuple[Verdict, str]:
    both = gap + play
    together = {"play": "yes" if play else "no", "sum": mm(both + sag)}
    if both + sag > best.make:
        return "poor", message("too-wide", make=mm(down(best.make, 0.1)), **together)
    if gap < worst.fit_from:
        near = "too-near-drilled" if device.drilled else "too-near"
        return "test on site", message(near, least=mm(worst.fit_from))
    if both > worst.rest:
        left_over = "little-left" if best == worst else "little-left-on-steel"
        return "test on site", message(left_over, make=mm(down(worst.make, 0.1)), **together)
    if gap > worst.fit_to:
        return "test on site", message("wide", most=mm(down(worst.fit_to, 0.1)))
    return "good", message("good", spare=mm(down(worst.make - both - sag, 0.1)), **together)


def _push(context: Context) -> Line | None:
    """The leaf pushed and pulled through all its play: does the reed stay closed?"""
    gap, play, steel = context.opening.gap_mm, context.opening.play_mm, steel_at(context)
    if gap is None or play is None:
        return None
    best, worst = _best(context, steel), left(context, steel=steel is not False)
    across = _across(context)
    least = context.device.ratings.most("least-gap", "mm") if "least-gap" in context.device.ratings else None
    assumed = (message("steel-not-known"),) if steel is None else ()
    inputs = {
        "gap_mm": gap, "play_mm": play, "break_mm": worst.breaks, "break_off_steel_mm": best.breaks,
        "play_across_mm": across, "least_gap_mm": least,
    }  # fmt: skip
    shown = message("pushed", pushed=mm(gap + play), opens=mm(down(worst.breaks, 0.1)))
    verdict: Verdict
    verdict, meaning = "good", message("push-good")
    if gap + play >= best.breaks:
        verdict, meaning = "poor", message("push-opens")
    elif least is not None and gap - play < least:
        verdict, meaning = "poor", message("push-too-near", least=mm(least))
    elif gap + play >= worst.breaks:
        verdict, meaning = "test on site", message("push-opens-on-steel")
    elif across is not None and play > across:
        verdict, meaning = "test on site", message("push-across", across=mm(across))
    return Line(message("push"), shown, verdict, meaning, "reed-gap", inputs, assumed)


def _across(context: Context) -> float | None:
    """The offset that two barrels in line allow, in mm, where the leaf plays across them; else None."""
    if not context.device.drilled or context.opening.kind not in _HINGED:
        return None
    return context.device.ratings.most("side-offset", "mm")


def _latch(context: Context) -> Line | None:
    play = context.opening.play_mm
    if play is None or play < LOOSE_MM + READ_MM or context.opening.kind not in _LATCHED:
        return None
    meaning, shown = message("latch-loose", loose=mm(LOOSE_MM)), message("latch-play", play=mm(play))
    inputs = {"play_mm": play, "loose_mm": LOOSE_MM}
    return Line(message("latch"), shown, "test on site", meaning, "reed-gap", inputs)


def _spacer(context: Context) -> Line | None:
    ratings, count = context.device.ratings, context.device.traits.count("spacer")
    if not count:
        return None
    step, piece = context.opening.step_mm, ratings.most("spacer", "mm")
    inputs = _step_inputs(context, step or 0.0, count, piece)
    answer = context.answer("spacer", inputs)
    name, assumed = message("spacer"), (message("equally-deep"),)
    if answer is None:
        shown = message("spacers", measured="beyond", count=0, size="", under="neither")
        return Line(name, shown, "poor", message("no-spacer-does"), "spacer", inputs, assumed)
    pieces = {"count": len(answer["pieces_mm"]), "size": mm(piece), "under": answer["under"]}
    offset, left_mm = mm(abs(answer["left_mm"])), abs(answer["left_mm"])
    if step is None:
        shown = message("spacers", measured="no", **pieces)
        meaning = message("step-decides-offset", offset=offset) if left_mm else message("step-decides")
        return Line(name, shown, "test on site", meaning, "spacer", {**inputs, "step_mm": None}, assumed)
    shown = message("spacers", measured="yes", **pieces)
    if left_mm > LEVEL_MM:
        meaning = message("offset-left", offset=offset, most=mm(LEVEL_MM))
        return Line(name, shown, "poor", meaning, "spacer", inputs, assumed)
    meaning = message("level-within", offset=offset, most=mm(LEVEL_MM)) if left_mm else message("level")
    return Line(name, shown, "good", meaning, "spacer", inputs, assumed)


def _clearance(context: Context) -> Line | None:
    """What stands proud on the upper sash of a window, which the lower one passes when it is raised fully."""
    opening, device = context.opening, context.device
    if opening.kind != "double-hung" or not opening.upper_sash or device.drilled:
        return None
    proud = device.ratings.most("magnet-height", "mm")
    if device.traits.count("spacer"):
        count, piece = device.traits.count("spacer"), device.ratings.most("spacer", "mm")
        answer = context.answer("spacer", _step_inputs(context, opening.step_mm or 0.0, count, piece))
        if answer is not None and answer["under"] == "magnet":
            proud += piece * len(answer["pieces_mm"])
    shown = message("proud", proud=mm(proud))
    return Line(message("clearance"), shown, "test on site", message("passes"), "reed-gap", {"proud_mm": proud})


def _step_inputs(context: Context, step: float, count: int, piece: float) -> dict[str, Any]:
    ratings = context.device.ratings
    return {
        "sensor_mm": ratings.most("sensor-height", "mm"),
        "magnet_mm": ratings.most("magnet-height", "mm"),
        "step_mm": step,
        "spacers_mm": [piece] * count,
    }


NO_SPACER = message("spacers", measured="yes", count=0, size="", under="neither")
"""Shown where the two are level without one."""


def level(lines: Iterable[Line]) -> bool:
    """Whether these lines find reed and magnet level without a spacer, on a step that was measured."""
    return any(one.figure == "spacer" and one.verdict == "good" and one.shown == NO_SPACER for one in lines)


def spacers_first(line: Line) -> str:
    """The spacers that a line shows, as the start of a sentence."""
    return message("spacers-first", **line.shown.values) if isinstance(line.shown, Message) else line.shown


def expected(context: Context) -> Iterator[Expected]:
    """The gap."""
    context = context.sensing
    if context.device.traits.magnetic:
        reach = left(context, steel=steel_at(context) is not False)
        high = reach.read_to
        shown = up_to(reach.fit_from, high, "mm")
        free = left(context, steel=False).read_to
        if steel_at(context) is None and free > high:
            shown = message("fit-gap-steel", free=up_to(reach.fit_from, free, "mm"), steel=mm(high))
        yield Expected("fit-gap", message("fit-gap"), "mm", reach.fit_from, high, shown)
