"""Magnet and reed at one opening: gap and play against what is left of the reach, play against the lost motion,
and the spacers for the step between the surfaces.

The rules are those of the trade: gap and play together stay within half of what is left of the reach, and a play
near the lost motion of the reed is mended at hinge or keep before a magnet is moved.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from latchside.figures.for_device.worked import Missing
from latchside.jobs.figures_for.context import Context, Device
from latchside.jobs.figures_for.shown import down, mm, up_to
from latchside.jobs.plan import Expected, Line, Verdict

HALF = 0.5
"""Share of what is left of the reach within which gap and play together stay."""
NEAR = 0.8
"""A play of this share of the lost motion is near it."""
LEVEL_MM = 2.0
"""Offset in height that is accepted, common practice: position-surface-contact, step level."""
PLAY_MM, TRIP_MM = 3.0, 40.0
"""The two ends of the proof, common practice: prove-opening."""
_SWAYING = ("roller-door", "up-and-over", "gate")
_HINGED = ("hinged-door", "double-door", "casement", "hatch")
_SASHES = (*_HINGED, "tilt-and-turn", "double-hung", "roof-window")


@dataclass(frozen=True)
class Reach:
    """What is left of a reach in mm: the least that the label allows, the most to fit to, and the lost motion."""

    least: float
    fit_from: float
    fit_to: float
    lost: float


def steel_at(context: Context) -> bool | None:
    """Whether steel lies near magnet or reed. A leaf or frame of steel is steel, whatever else is said of it."""
    opening = context.opening
    if "steel" in (opening.leaf_material, opening.frame_material):
        return True
    return None if opening.steel in (None, "unknown") else opening.steel != "none"


def left(context: Context, *, steel: bool) -> Reach:
    """What is left of the device's reach. Raises Missing where the device states none."""
    ratings = context.device.ratings
    air, release = ratings.most("reach", "mm"), ratings.most("release", "mm")
    share = _on_steel(context, air) / air if steel else 1.0
    least = ratings.floor("reach-on-steel" if steel and "reach-on-steel" in ratings else "reach", "mm")
    if steel and "reach-on-steel" not in ratings:
        least *= share
    fit_to = min(ratings.most("fit-gap", "mm"), HALF * air * share)
    return Reach(least, ratings.least("fit-gap", "mm"), fit_to, (release - air) * share)


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


def magnet(context: Context) -> Iterator[Line]:
    """The lines of the magnet. Those of a transmitter are of the wired contact on its loop, where that is named."""
    if context.device.transmitter:
        if context.contact is None:
            yield _contact_of_transmitter()
            return
        context = replace(context, device=context.contact, contact=None)
    yield _gap(context)
    play = _play(context)
    if play is not None:
        yield play
    step = _spacer(context)
    if step is not None:
        yield step


def _contact_of_transmitter() -> Line:
    meaning = (
        "The transmitter reports a loop. Gap and reach are those of the wired contact on it: gap and play together "
        "stay within half of the reach on its label."
    )
    return Line("Gap and reach", "by the label of the wired contact", "none", meaning, "reed-gap", {})


def _gap(context: Context) -> Line:
    opening, steel = context.opening, steel_at(context)
    best, worst = left(context, steel=steel is True), left(context, steel=steel is not False)
    assumed = []
    if steel is None:
        assumed.append("Whether steel lies near is not known: the limit shown is that on steel.")
    if opening.play_mm is None:
        assumed.append("The play is not known and counts as none.")
    inputs = {
        "gap_mm": opening.gap_mm, "play_mm": opening.play_mm, "steel": steel, "least_reach_mm": worst.least,
        "fit_to_mm": worst.fit_to,
    }  # fmt: skip
    limit = f"fit to {up_to(worst.fit_from, down(worst.fit_to, 0.1), 'mm')}"
    if opening.gap_mm is None:
        meaning = "The gap was not measured. It is measured before a device is packed, leaf shut and latched."
        return Line("Gap and reach", limit, "test on site", meaning, "reed-gap", inputs, tuple(assumed))
    verdict, meaning = _judged(opening.gap_mm, opening.play_mm or 0.0, best, worst, context.device)
    kept = context.device.wired and opening.old_contact
    if kept:
        assumed.append("The contact in place counts as one of this class, and its own label may say less.")
    if (opening.play_mm is None or kept) and verdict == "good":
        verdict = "test on site"
    if steel and verdict != "good" and context.device.parts.get("spacer"):
        meaning = f"{meaning} Spacers under both halves, off the steel, win some of the reach back."
    shown = f"{mm(opening.gap_mm)}, {limit}"
    return Line("Gap and reach", shown, verdict, meaning, "reed-gap", inputs, tuple(assumed))


def _judged(gap: float, play: float, best: Reach, worst: Reach, device: Device) -> tuple[Verdict, str]:
    both = gap + play
    pushed = "Gap and play together" if play else "The gap"
    if both > best.least:
        why = "is more than the label is sure to reach" if not play else "are more than the label is sure to reach"
        return "poor", (
            f"{pushed}, {mm(both)}, {why}, {mm(down(best.least, 0.1))}. A contact of wider reach is chosen, or the "
            "halves are brought nearer to each other."
        )
    if gap < worst.fit_from:
        apart = "The flanges are let in deeper." if device.drilled else "The halves are set apart."
        return "test on site", f"Less than the least gap to fit to, {mm(worst.fit_from)}: they would touch. {apart}"
    if both > worst.fit_to:
        what = "half of what is left of the reach" if best == worst else "half of what steel would leave of the reach"
        return "test on site", (
            f"{pushed}, {mm(both)}, {'pass' if play else 'passes'} {what}, {mm(down(worst.fit_to, 0.1))}. The halves "
            "are taped nearer to each other, or a contact of wider reach is chosen."
        )
    spare = down(worst.fit_to - both, 0.1)
    return "good", f"Within half of what is left of the reach, with {mm(spare)} to spare for sag and season."


def _play(context: Context) -> Line | None:
    play, steel = context.opening.play_mm, steel_at(context)
    if play is None:
        return None
    lost = left(context, steel=steel is not False).lost
    most = left(context, steel=steel is True).lost
    assumed = ("Whether steel lies near is not known: the lost motion is that on steel.",) if steel is None else ()
    inputs = {"play_mm": play, "lost_motion_mm": lost}
    shown = f"{mm(play)} of play, {mm(down(lost, 0.1))} of lost motion"
    if context.opening.kind in _SWAYING and context.opening.gap_mm is not None:
        return Line("Play against lost motion", shown, *_swaying(context, play), "reed-gap", inputs, assumed)
    if play >= NEAR * most:
        verdict: Verdict = "poor"
        meaning = "The play is near the lost motion of the reed or beyond it: wind alone would trip it. " + _MEND
    elif play > HALF * lost or (play > PLAY_MM and context.opening.kind in _HINGED):
        verdict = "test on site"
        meaning = f"More than half of the lost motion, or more than {mm(PLAY_MM)} at a hinged leaf. {_MEND}"
    else:
        verdict, meaning = "good", "The latched leaf cannot move far enough to open the reed."
    return Line("Play against lost motion", shown, verdict, meaning, "reed-gap", inputs, assumed)


def _swaying(context: Context, play: float) -> tuple[Verdict, str]:
    """A curtain, a swinging door or a gate plays by nature: what counts is that it never leaves the reach."""
    both = (context.opening.gap_mm or 0.0) + play
    reach = left(context, steel=steel_at(context) is not False)
    if both > reach.least:
        sure = mm(down(reach.least, 0.1))
        return "poor", f"With its gap the leaf plays beyond the reach that is sure, {sure}. {_GUIDE}"
    if both > reach.fit_to:
        return "test on site", f"Such a leaf plays. It stays within the reach: both ends of the proof decide. {_GUIDE}"
    return "good", "Such a leaf plays, and pulled out as far as it goes it is still within half of the reach."


_GUIDE = "Guide, lock or hinge is mended first, and the place that moves least is chosen."
_MEND = "Hinge or keep is mended first, and no magnet is moved to make up for it."


def _spacer(context: Context) -> Line | None:
    ratings, step = context.device.ratings, context.opening.step_mm
    if not {"spacer", "sensor-height", "magnet-height"} <= context.device.record["values"].keys():
        return None
    piece = ratings.most("spacer", "mm")
    inputs = {
        "sensor_mm": ratings.most("sensor-height", "mm"),
        "magnet_mm": ratings.most("magnet-height", "mm"),
        "step_mm": step or 0.0,
        "spacers_mm": [piece] * max(1, context.device.parts.get("spacer", 1)),
    }
    answer = context.answer("spacer", inputs)
    assumed = ["Reed and magnet lie equally deep below the tops of their bodies."]
    if step is None:
        assumed.append("The step between the surfaces is not known: they count as level.")
    if answer is None:
        meaning = "No spacer makes up such a step. Another place or another device is chosen."
        return Line("Spacer", "beyond any spacer", "poor", meaning, "spacer", inputs, tuple(assumed))
    offset, pieces = abs(answer["left_mm"]), len(answer["pieces_mm"])
    shown = _pieces(pieces, piece, answer["under"])
    level = offset <= LEVEL_MM
    rest = f"{mm(offset)} of offset in height is left" if offset else "The two are then level"
    if level:
        meaning = f"{rest}, within {mm(LEVEL_MM)}." if offset else f"{rest}."
    else:
        meaning = f"{rest}, more than {mm(LEVEL_MM)}. Where the spacers run out, another device is chosen."
    verdict: Verdict = "poor" if not level else "test on site" if step is None else "good"
    if step is None and not level:
        verdict = "test on site"
    return Line("Spacer", shown, verdict, meaning, "spacer", inputs, tuple(assumed))


def _pieces(count: int, piece: float, under: str) -> str:
    if not count:
        return "no spacer"
    number = {1: "one spacer", 2: "two spacers"}.get(count, f"{count} spacers")
    return f"{number} of {mm(piece)} under the {under}"


def expected(context: Context) -> Iterator[Expected]:
    """Gap, and the two ends of the proof."""
    if context.device.transmitter and context.contact is not None:
        context = replace(context, device=context.contact, contact=None)
    if not context.device.transmitter:
        reach = left(context, steel=steel_at(context) is not False)
        high = down(reach.fit_to, 0.1)
        shown = up_to(reach.fit_from, high, "mm")
        yield Expected("fit-gap", "Gap, leaf shut and latched", "mm", reach.fit_from, high, shown)
    if context.opening.kind in _HINGED:
        label = "Play of the latched leaf, with no trip"
        yield Expected("play", label, "mm", None, PLAY_MM, up_to(None, PLAY_MM, "mm"))
    if context.opening.kind in _SASHES:
        label = "Opening at the edge that moves farthest when the zone shows open"
        yield Expected("trip", label, "mm", None, TRIP_MM, up_to(None, TRIP_MM, "mm"))
