"""Magnet and reed at one opening: the gap at rest against the make distance, the pushed gap against the break
distance, the latch, and the spacers for the step between the surfaces.

Both distances are taken as mounted: over steel or off it, at the worst end of the tolerance, the magnet warm. A latched
leaf may rest at the outer end of its play, so the whole play counts in both. What the edge has opened at the trip is
in `trip.py`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from latchside.figures.for_device.mounted import sure
from latchside.figures.for_device.worked import Missing
from latchside.planning import bounds
from latchside.planning.figures_for.context import Context, Device
from latchside.planning.figures_for.shown import down, mm, up_to
from latchside.planning.plan import Expected, Line, Verdict

HALF = 0.5
"""Share of the make distance that the gap itself is fitted to."""
LEVEL_MM = 2.0
"""Offset in height that is accepted, common practice: position-surface-contact, step level."""
LOOSE_MM = 3.0
"""A hinged leaf that moves more than this on its latch has a loose latch, common practice: prove-opening."""
_OFF_STEEL = ("spacer", "bracket")
"""Roles of parts that hold both halves off the steel and win some of the reach back."""
_HINGED = ("hinged-door", "double-door", "casement", "hatch")


@dataclass(frozen=True)
class Reach:
    """The distances of a device as mounted, in mm.

    `make` and `breaks` are the least that closing and opening distance are sure to be; `rest` is the largest gap with
    play at which a leaf may rest; the gap itself is fitted from `fit_from` to `fit_to`.
    """

    make: float
    breaks: float
    rest: float
    fit_from: float
    fit_to: float


def steel_at(context: Context) -> bool | None:
    """Whether steel lies near magnet or reed. A leaf or frame of steel is steel, whatever else is said of it."""
    opening = context.opening
    if "steel" in (opening.leaf_material, opening.frame_material):
        return True
    return None if opening.steel in (None, "unknown") else opening.steel != "none"


def left(context: Context, *, steel: bool) -> Reach:
    """The distances of the device there. Raises Missing where it states none."""
    ratings = context.device.ratings
    air = ratings.most("reach", "mm")
    share, make = 1.0, sure(ratings, "reach")
    if steel:
        share = _on_steel(context, air) / air
        make = sure(ratings, "reach-on-steel") if "reach-on-steel" in ratings else make * share
    breaks = sure(ratings, "release") * (make / sure(ratings, "reach"))
    fit_to = min(ratings.most("fit-gap", "mm"), HALF * air * share)
    return Reach(make, breaks, bounds.rest(make, context.house), ratings.least("fit-gap", "mm"), fit_to)


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
    for line in (_push(context), _latch(context), _spacer(context)):
        if line is not None:
            yield line


def _contact_of_transmitter() -> Line:
    meaning = (
        "The transmitter reports a loop. Gap and reach are those of the wired contact on it: gap, play and sag stay "
        "below the make distance on its label with a margin, and gap and play below its break distance."
    )
    return Line("Gap and reach", "by the label of the wired contact", "none", meaning, "reed-gap", {})


def _gap(context: Context) -> Line:
    """The leaf at rest at the outer end of its play, sagged: does the reed still close?"""
    opening, steel = context.opening, steel_at(context)
    best, worst = _best(context, steel), left(context, steel=steel is not False)
    assumed = []
    if steel is None:
        assumed.append("Whether steel lies near is not known: the limit shown is that on steel.")
    if opening.play_mm is None:
        assumed.append("The play is not known and counts as none.")
    sag = bounds.sag(context.house)
    assumed.append(f"{mm(sag)} are added for sag and season.")
    inputs = {
        "gap_mm": opening.gap_mm, "play_mm": opening.play_mm, "sag_mm": sag, "steel": steel, "make_mm": worst.make,
        "make_off_steel_mm": best.make, "rest_to_mm": worst.rest, "fit_from_mm": worst.fit_from,
        "fit_to_mm": worst.fit_to,
    }  # fmt: skip
    limit = f"fit to {up_to(worst.fit_from, down(worst.fit_to, 0.1), 'mm')}"
    if opening.gap_mm is None:
        meaning = "The gap was not measured. It is measured before a device is packed, leaf shut and latched."
        return Line("Gap and reach", limit, "test on site", meaning, "reed-gap", inputs, tuple(assumed))
    verdict, meaning = _judged(opening.gap_mm, opening.play_mm or 0.0, sag, best, worst, context.device)
    kept = context.device.wired and opening.old_contact
    if kept:
        assumed.append("The contact in place counts as one of this class, and its own label may say less.")
    if (opening.play_mm is None or kept) and verdict == "good":
        verdict = "test on site"
    if steel and verdict == "test on site" and best != worst:
        meaning = f"{meaning} Spacers, a bracket or packing under both halves win some of the reach back."
    shown = f"{mm(opening.gap_mm)}, {limit}"
    return Line("Gap and reach", shown, verdict, meaning, "reed-gap", inputs, tuple(assumed))


def _judged(gap: float, play: float, sag: float, best: Reach, worst: Reach, device: Device) -> tuple[Verdict, str]:
    both = gap + play
    resting = f"{'Gap, play and sag' if play else 'Gap and sag'} together, {mm(both + sag)},"
    if both + sag > best.make:
        return "poor", (
            f"{resting} are more than the make distance that is sure, {mm(down(best.make, 0.1))}. The zone may stay "
            "open with the leaf shut. Choose a contact of wider reach, or bring the halves nearer to each other."
        )
    if gap < worst.fit_from:
        apart = "Let the flanges in deeper." if device.drilled else "Set the halves apart."
        return "test on site", f"Less than the least gap to fit to, {mm(worst.fit_from)}: they would touch. {apart}"
    if both > worst.rest:
        where = "the make distance" if best == worst else "the make distance that steel would leave"
        return "test on site", (
            f"{resting} leave too little of {where}, {mm(down(worst.make, 0.1))}. Tape the halves nearer to each "
            "other, or choose a contact of wider reach."
        )
    if gap > worst.fit_to:
        return "test on site", f"Wider than the gap to fit to, {mm(down(worst.fit_to, 0.1))}. Tape the halves nearer."
    spare = mm(down(worst.make - both - sag, 0.1))
    return "good", f"{resting} stay below the make distance that is sure, with {spare} to spare."


def _push(context: Context) -> Line | None:
    """The leaf pushed and pulled through all its play: does the reed stay closed?"""
    gap, play, steel = context.opening.gap_mm, context.opening.play_mm, steel_at(context)
    if gap is None or play is None:
        return None
    best, worst = _best(context, steel), left(context, steel=steel is not False)
    across = _across(context)
    least = context.device.ratings.most("least-gap", "mm") if "least-gap" in context.device.ratings else None
    assumed = ("Whether steel lies near is not known: the limit shown is that on steel.",) if steel is None else ()
    inputs = {
        "gap_mm": gap, "play_mm": play, "break_mm": worst.breaks, "break_off_steel_mm": best.breaks,
        "play_across_mm": across, "least_gap_mm": least,
    }  # fmt: skip
    shown = f"{mm(gap + play)} pushed, opens at {mm(down(worst.breaks, 0.1))} or more"
    verdict: Verdict
    verdict, meaning = "good", "Pushed and pulled through all its play, the latched leaf does not open the reed."
    if gap + play >= best.breaks:
        verdict, meaning = "poor", f"A push or a gust alone opens the zone. {_MEND}"
    elif least is not None and gap - play < least:
        verdict, meaning = "poor", f"Pushed in, the gap is less than a balanced contact takes, {mm(least)}. {_MEND}"
    elif gap + play >= worst.breaks:
        verdict, meaning = "test on site", f"Flush on steel a push or a gust opens the zone. {_MEND}"
    elif across is not None and play > across:
        verdict = "test on site"
        meaning = f"A hinged leaf plays across the barrels, and only {mm(across)} is allowed there. {_MEND}"
    return Line("Push and break distance", shown, verdict, meaning, "reed-gap", inputs, assumed)


def _across(context: Context) -> float | None:
    """The offset that two barrels in line allow, in mm, where the leaf plays across them; else None."""
    if not context.device.drilled or context.opening.kind not in _HINGED:
        return None
    return context.device.ratings.most("side-offset", "mm")


def _latch(context: Context) -> Line | None:
    play = context.opening.play_mm
    if play is None or play <= LOOSE_MM or context.opening.kind not in _HINGED:
        return None
    meaning = (
        f"A loose latch: the shut leaf moves more than {mm(LOOSE_MM)}. Whether it harms the contact is said beside "
        "the push. Tell the customer, and have hinge, latch or keep adjusted."
    )
    inputs = {"play_mm": play, "loose_mm": LOOSE_MM}
    return Line("Latch", f"{mm(play)} of play", "test on site", meaning, "reed-gap", inputs)


_MEND = "Have hinge, latch or keep adjusted first, and move no magnet to make up for it."


def _spacer(context: Context) -> Line | None:
    ratings, count = context.device.ratings, context.device.traits.count("spacer")
    if not count:
        return None
    step, piece = context.opening.step_mm, ratings.most("spacer", "mm")
    inputs = {
        "sensor_mm": ratings.most("sensor-height", "mm"),
        "magnet_mm": ratings.most("magnet-height", "mm"),
        "step_mm": step or 0.0,
        "spacers_mm": [piece] * count,
    }
    answer = context.answer("spacer", inputs)
    assumed = ("Reed and magnet lie equally deep below the tops of their bodies.",)
    if answer is None:
        meaning = "No spacer makes up such a step. Another place or another device is chosen."
        return Line("Spacer", "beyond any spacer", "poor", meaning, "spacer", inputs, assumed)
    offset = abs(answer["left_mm"])
    shown, level = _pieces(len(answer["pieces_mm"]), piece, answer["under"]), offset <= LEVEL_MM
    rest = f"{mm(offset)} of offset in height is left" if offset else "The two are then level"
    if step is None:
        shown = f"if the surfaces are level: {shown}; if they are stepped: by the step, measured first"
        level_then = f"{rest[:1].lower()}{rest[1:]}"
        meaning = (
            f"The step decides, and nobody measured it: measure it before spacers are chosen. With none, {level_then}."
        )
        return Line("Spacer", shown, "test on site", meaning, "spacer", {**inputs, "step_mm": None}, assumed)
    if not level:
        meaning = f"{rest}, more than {mm(LEVEL_MM)}. Where the spacers run out, another device is chosen."
    else:
        meaning = f"{rest}, within {mm(LEVEL_MM)}." if offset else f"{rest}."
    return Line("Spacer", shown, "good" if level else "poor", meaning, "spacer", inputs, assumed)


NO_SPACER = "no spacer"
"""Said where the two are level without one."""


def _pieces(count: int, piece: float, under: str) -> str:
    if not count:
        return NO_SPACER
    number = {1: "one spacer", 2: "two spacers"}.get(count, f"{count} spacers")
    return f"{number} of {mm(piece)} under the {under}"


def expected(context: Context) -> Iterator[Expected]:
    """The gap, and the play of a leaf with a sound latch."""
    context = context.sensing
    if context.device.traits.magnetic:
        reach = left(context, steel=steel_at(context) is not False)
        high = down(reach.fit_to, 0.1)
        shown = up_to(reach.fit_from, high, "mm")
        yield Expected("fit-gap", "Gap, leaf shut and latched", "mm", reach.fit_from, high, shown)
    if context.opening.kind in _HINGED:
        label = "Play of the latched leaf, with no trip"
        yield Expected("play", label, "mm", None, LOOSE_MM, up_to(None, LOOSE_MM, "mm"))
