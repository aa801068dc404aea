"""How far the leading edge has opened when the contact trips, against the limit of region and kind of opening.

A leaf turns as one piece: at one angle the ways of its points, chord by chord, go by their distances from the hinge.
So the edge of a hinged leaf moves the contact's way times the width over the contact's distance from the hinge. A
sliding leaf, and one whose contact sits at the leading edge itself, moves as far as its contact.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from latchside.figures.for_device.mounted import most as farthest
from latchside.figures.for_device.trips import SORTS
from latchside.figures.for_device.worked import Missing
from latchside.messages import messages
from latchside.planning import bounds
from latchside.planning.figures_for.context import NORTH_AMERICA, Context
from latchside.planning.figures_for.places import CORNER_MM
from latchside.planning.figures_for.shown import down, mm, up, up_to
from latchside.planning.plan import Expected, Line, Verdict

message = messages(__name__)
HAND = "trip-hand"


def limit(context: Context) -> float | None:
    """The limit for the trip at the leading edge, in mm; None where the library has none for such an opening."""
    if context.house is None or context.opening.kind not in SORTS:
        return None
    start = f"trip-{SORTS[context.opening.kind]}"
    names = [f"{start}-north-america"] if context.region in NORTH_AMERICA else []
    return next((context.house[name] for name in (*names, start) if name in context.house.values), None)


@dataclass(frozen=True)
class Place:
    """How far from the latch-side corner a contact may go, in mm, so that it trips in time.

    `held` says that it trips too late at the usual distance, and is held nearer than that.
    """

    nearest: float
    farthest: float
    held: bool


def place(context: Context) -> Place | None:
    """The place along the edge; None where the contact sits at the leading edge itself, whatever its distance."""
    kind, ratings = context.opening.kind, context.device.ratings
    if kind not in bounds.CORNERED:
        return None
    width, most = _width(context)[0], limit(context)
    nearest, usual = (
        min(one, bounds.MIDDLE * width) for one in (bounds.nearest_mm(drilled=context.device.drilled), CORNER_MM)
    )
    if most is None or "break-travel" not in ratings:
        return Place(nearest, usual, held=False)
    inside = down(width * (1 - farthest(ratings, "break-travel") / most), 1)
    held = nearest <= inside < usual
    return Place(nearest, inside if held else usual, held)


def trip(context: Context) -> Iterator[Line]:
    """The opening at the leading edge when the zone shows open, at the worst end of tolerance and temperature."""
    context = context.sensing
    if not context.device.traits.magnetic:
        return
    most = limit(context)
    if most is None:
        return
    travel, kind, at = farthest(context.device.ratings, "break-travel"), context.opening.kind, place(context)
    width, measured = _width(context)
    near, far = (
        _shown(travel * bounds.lever(kind, one, width), most) for one in ((at.nearest, at.farthest) if at else (0, 0))
    )
    inputs = {
        "travel_mm": travel, "trip_mm": far, "nearest_trip_mm": near, "limit_mm": most, "width_mm": width,
        "from_edge_mm": at.farthest if at else 0.0, "hand_mm": bounds.rule(context.house, HAND, 0.0),
    }  # fmt: skip
    verdict, meaning = _judged(context, travel, at, (near, far), most)
    shown = message("shown", opened=mm(far), limit=mm(most))
    assumed = tuple(_assumed(context, at, width, measured=measured))
    yield Line(message("name"), shown, verdict, meaning, "reed-gap", inputs, assumed)


def _shown(opened: float, most: float) -> float:
    """Rounded up, but not past a limit that it keeps."""
    return min(up(opened, 0.1), most) if opened <= most else up(opened, 0.1)


def _assumed(context: Context, at: Place | None, width: float, *, measured: bool) -> Iterator[str]:
    if at is not None:
        yield message("corner", distance=mm(at.farthest))
        if not measured:
            yield message("width", width=mm(width))
    if context.region is None:
        yield message("region")


def _judged(
    context: Context, travel: float, at: Place | None, ends: tuple[float, float], most: float
) -> tuple[Verdict, str]:
    near, _ = ends
    kept = context.device.wired and bool(context.opening.old_contact)
    if near > most:
        return "poor", message("too-late")
    if at is not None and at.held:
        return "test on site", message("held", distance=mm(at.farthest))
    verdict: Verdict = "test on site" if kept or context.region is None else "good"
    return verdict, f"{message('inside')} {_of_hand(context, travel, ends)}"


def _of_hand(context: Context, travel: float, ends: tuple[float, float]) -> str:
    near, far = ends
    hand = bounds.rule(context.house, HAND, 0.0)
    if not hand:
        return ""
    if far <= hand:
        return message("no-hand", hand=mm(hand))
    if near > hand:
        return message("hand", hand=mm(hand))
    within = down(_width(context)[0] * (1 - travel / hand), 1)
    return message("hand-within", distance=mm(within), hand=mm(hand))


def _width(context: Context) -> tuple[float, bool]:
    """The width of the leaf in mm, and whether it was measured."""
    told = context.opening.width_m
    return (told * 1000, True) if told else (bounds.width_mm(context.opening.kind, context.house), False)


def expected(context: Context) -> Iterator[Expected]:
    """Both ends of the proof: no trip in all the play, whose size is written down, then the limit for the trip.

    One that opens another way too is read each way.
    """
    yield Expected("play", message("play"), "mm", 0.0, None, message("no-trip"))
    most, kind = limit(context), context.opening.kind
    if most is None:
        raise Missing("trip")
    shown = up_to(None, most, "mm")
    yield Expected("trip", message("label", kind=kind), "mm", None, most, shown)
    if kind == "tilt-and-turn":
        yield Expected("trip-tilted", message("label-tilted"), "mm", None, most, shown)
    elif kind == "lift-and-slide":
        yield Expected("shows-lifted", message("label-lifted"), "", None, None, message("lifted"))
