"""The gap at which a magnet closes a reed, and the gap at which it has let go.

The magnet is a uniformly magnetised cylinder or bar. The reed is a point at which the part of the field along the
reed counts: it closes where that part, of either direction, reaches the operate field, and opens where it falls below
the release field. It is not averaged along the reed, and the blades' own pull on the field is not in the model.

- `end-on`: magnet and reed lie on one line; the point is the end of the reed that faces the magnet. `offset_mm`
  moves the reed sideways, along the leaf.
- `parallel`: magnet and reed lie side by side, both axes along the leaf; the point is the middle of the reed.
  `offset_mm` moves the reed along its axis.

The gap runs from the face of the magnet to that point (face to face, in mm). `operate_mm` is the largest gap at which
the field reaches the operate field in the magnet's main direction without a break down to `least_mm`, which is
nothing as a rule: the reed then works from touching. Only a magnet set far to one side has a break near its end face.
Ranges of the other direction, or behind a break, are side lobes: they are listed and never counted as reach.
`release_mm` is the far end of the same range for the release field.

Steel is an endless soft plate beneath both parts, `steel_mm` below the two axes. It acts as an image of the magnet
as far beneath its surface, magnetised the other way. A real plate is finite, so this is the pessimistic bound. (End on,
steel far beneath even helps, by less than one per cent: the image's field beside it runs the magnet's way.)

Field: in closed form (`latchside.figures.magnetics`). Range: remanence 0.05 to 1.5 T, gaps to 2 m. Source:
handbooks of magnets and reeds; the image method is textbook magnetostatics. Error: the field of the ideal magnet is
exact to rounding and the gap to 1e-6 mm, but remanence and reed vary by ten per cent or more from part to part,
which moves the gap by some five per cent. The label of the part wins.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from math import copysign, hypot

from latchside.figures.magnetics import bar_mt, cylinder_mt
from latchside.messages import messages

message = messages(__name__)

LEAST_MM, MOST_MM = 0.01, 2000.0
"""The gaps that are looked at."""
RELEASE_SHARE = 0.6
"""Release field as a share of the operate field where none is stated: the middle of the usual range."""
_STEPS = 2500
_GAPS = tuple(LEAST_MM * (MOST_MM / LEAST_MM) ** (step / (_STEPS - 1)) for step in range(_STEPS))
_HALVINGS = 30
"""Of one step between two gaps, 10 mm at most: less than 1e-7 mm is left."""


@dataclass(frozen=True)
class Magnet:
    """A magnet: remanence in T, length along its axis in mm, and either a diameter or width (across the gap when
    parallel) and height (off the surface) in mm."""

    remanence: float
    length: float
    width: float
    height: float
    round: bool


@dataclass(frozen=True)
class Range:
    """A range of gaps in mm at which the reed is closed; `main` where the field runs as it does right at the magnet."""

    near: float
    far: float
    main: bool


@dataclass(frozen=True)
class Setting:
    """How the reed stands to the magnet: mount, height of both axes above steel or None, offset along the leaf."""

    mount: str
    steel: float | None
    offset: float


def compute(
    *,
    shape: str,
    remanence_t: float,
    length_mm: float,
    mount: str,
    diameter_mm: float | None = None,
    width_mm: float | None = None,
    height_mm: float | None = None,
    operate_mt: float | None = None,
    release_mt: float | None = None,
    label_gap_mm: float | None = None,
    steel_mm: float | None = None,
    offset_mm: float | None = None,
) -> dict[str, object]:
    """Operate and release gap in mm, the share of the label's gap, and the side lobes."""
    magnet = _magnet(shape, remanence_t, length_mm, diameter_mm, width_mm, height_mm)
    setting = Setting(mount, steel_mm, offset_mm or 0.0)
    if steel_mm is not None and steel_mm < magnet.height / 2:
        raise ValueError(message("low-steel", least=f"{magnet.height / 2:.6g}"))
    operate, release = _thresholds(magnet, mount, operate_mt, release_mt, label_gap_mm)
    label = label_gap_mm or _meant(closed_gaps(magnet, Setting(mount, None, 0.0), operate)).far
    if not label:
        raise ValueError(message("never-closes"))
    ranges = closed_gaps(magnet, setting, operate)
    works = _meant(ranges)
    lobes = [{"from_mm": lobe.near, "to_mm": lobe.far} for lobe in ranges if lobe is not works]
    answer: dict[str, object] = {
        "operate_mm": works.far,
        "release_mm": _meant(closed_gaps(magnet, setting, release)).far if works.far else 0.0,
        "of_label_percent": 100 * works.far / label,
        "least_mm": works.near,
        "threshold_mt": operate,
        "lobes": lobes,
    }
    warnings = _warnings(works, bool(lobes), release_mt is None)
    return {**answer, "warnings": warnings} if warnings else answer


def _meant(ranges: Sequence[Range]) -> Range:
    """The range of gaps at which the reed is meant to work; empty where there is none."""
    main = [found for found in ranges if found.main]
    return max(main, key=lambda found: found.far, default=Range(0.0, 0.0, main=True))


def _magnet(
    shape: str, remanence: float, length: float, diameter: float | None, width: float | None, height: float | None
) -> Magnet:
    if shape == "cylinder":
        if diameter is None:
            raise ValueError(message("no-diameter"))
        return Magnet(remanence, length, diameter, diameter, round=True)
    if width is None or height is None:
        raise ValueError(message("no-width"))
    return Magnet(remanence, length, width, height, round=False)


def _thresholds(
    magnet: Magnet, mount: str, operate: float | None, release: float | None, label: float | None
) -> tuple[float, float]:
    """Operate and release field in mT; the first is worked back from the label's gap in air where it is not stated."""
    if operate is None:
        if label is None:
            raise ValueError(message("no-operate"))
        operate = abs(along_reed(magnet, Setting(mount, None, 0.0), label))
    release = RELEASE_SHARE * operate if release is None else release
    if release > operate:
        raise ValueError(message("large-release", operate=f"{operate:.3g}"))
    return operate, release


def _warnings(works: Range, lobes: bool, assumed: bool) -> list[str]:
    warnings: list[str] = []
    if assumed:
        warnings.append(message("release-assumed"))
    if not works.far:
        warnings.append(message("out-of-reach"))
    elif works.near:
        warnings.append(message("open-touching"))
    elif lobes:
        warnings.append(message("side-lobe"))
    return warnings


def along_reed(magnet: Magnet, setting: Setting, gap_mm: float) -> float:
    """Field along the reed in mT at a gap; negative where it runs against the magnet's own direction."""
    if setting.mount == "end-on":
        return field_along(magnet, setting.offset, magnet.length / 2 + gap_mm, setting.steel)
    return field_along(magnet, magnet.width / 2 + gap_mm, setting.offset, setting.steel)


def field_along(magnet: Magnet, side_mm: float, ahead_mm: float, steel_mm: float | None = None) -> float:
    """Field in mT along the magnet's axis at a point level with it: so far to the side, so far ahead of its middle.

    This is what the maps of where a reed closes are drawn from.
    """
    field = _field_above(magnet, side_mm, 0.0, ahead_mm)
    return field if steel_mm is None else field - _field_above(magnet, side_mm, 2 * steel_mm, ahead_mm)


def _field_above(magnet: Magnet, side: float, up: float, ahead: float) -> float:
    """The same for the magnet alone, at a point `up` above the level of its axis."""
    if magnet.round:
        return cylinder_mt(magnet.remanence, magnet.width, magnet.length, hypot(side, up), ahead)
    return bar_mt(magnet.remanence, magnet.width, magnet.height, magnet.length, side, up, ahead)


@lru_cache(maxsize=64)
def _looked_at(magnet: Magnet, setting: Setting) -> tuple[float, ...]:
    """Field along the reed in mT at every gap that is looked at, positive as it runs right at the magnet.

    It is kept, because the operate and the release field are both looked for in it.
    """
    main = _main(setting)
    return tuple(main * along_reed(magnet, setting, gap) for gap in _GAPS)


def _main(setting: Setting) -> float:
    return 1.0 if setting.mount == "end-on" else -1.0


@lru_cache(maxsize=512)
def closed_gaps(magnet: Magnet, setting: Setting, threshold_mt: float) -> tuple[Range, ...]:
    """The ranges of gap in which the field along the reed is at or above the threshold, from touching outwards.

    A change of direction always parts two ranges, because the field passes through nothing between them. The answer
    is kept: the same set stands on many pages and at many openings.
    """
    states = [copysign(1.0, field) if abs(field) >= threshold_mt else 0.0 for field in _looked_at(magnet, setting)]

    def crossing(low: float, high: float, direction: float) -> float:
        """The gap, between two, at which the field in this direction passes the threshold."""
        towards = direction * _main(setting)
        return bisect(lambda gap: towards * along_reed(magnet, setting, gap) - threshold_mt, low, high)

    ranges: list[Range] = []
    start = 0.0
    for (low, high), (before, after) in zip(pairwise(_GAPS), pairwise(states), strict=True):
        if before == after:
            continue
        if before:
            ranges.append(Range(start, crossing(low, high, before), before > 0))
        if after:
            start = crossing(low, high, after)
    if states[-1]:
        ranges.append(Range(start, MOST_MM, states[-1] > 0))
    return tuple(ranges)


def bisect(excess: Callable[[float], float], low: float, high: float) -> float:
    """Where `excess` changes sign between two gaps in mm."""
    at_low = excess(low) >= 0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if (excess(middle) >= 0) == at_low:
            low = middle
        else:
            high = middle
    return (low + high) / 2
