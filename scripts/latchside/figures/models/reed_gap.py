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

Field: analytical, from magpylib (its cylinder and bar). Range: remanence 0.05 to 1.5 T, gaps to 2 m. Source:
handbooks of magnets and reeds; the image method is textbook magnetostatics. Error: the field of the ideal magnet is
exact to rounding and the gap to 1e-6 mm, but remanence and reed vary by ten per cent or more from part to part,
which moves the gap by some five per cent. The label of the part wins.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

LEAST_MM, MOST_MM = 0.01, 2000.0
"""The gaps that are looked at."""
RELEASE_SHARE = 0.6
"""Release field as a share of the operate field where none is stated: the middle of the usual range."""
_STEPS = 2500


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
        raise ValueError(
            f"steel_mm must be at least {magnet.height / 2:g}, half the magnet's height: it runs up to the axis."
        )
    operate, release = _thresholds(magnet, mount, operate_mt, release_mt, label_gap_mm)
    label = label_gap_mm or _meant(closed_gaps(magnet, Setting(mount, None, 0.0), operate)).far
    ranges = closed_gaps(magnet, setting, operate)
    works = _meant(ranges)
    lobes = [{"from_mm": lobe.near, "to_mm": lobe.far} for lobe in ranges if lobe != works]
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
            raise ValueError("diameter_mm is needed for a cylinder.")
        return Magnet(remanence, length, diameter, diameter, round=True)
    if width is None or height is None:
        raise ValueError("width_mm and height_mm are needed for a bar.")
    return Magnet(remanence, length, width, height, round=False)


def _thresholds(
    magnet: Magnet, mount: str, operate: float | None, release: float | None, label: float | None
) -> tuple[float, float]:
    """Operate and release field in mT; the first is worked back from the label's gap in air where it is not stated."""
    if operate is None:
        if label is None:
            raise ValueError("operate_mt or label_gap_mm is needed.")
        operate = abs(float(along_reed(magnet, Setting(mount, None, 0.0), label)))
    release = RELEASE_SHARE * operate if release is None else release
    if release > operate:
        raise ValueError(f"release_mt must be at most the operate field, here {operate:.3g}.")
    return operate, release


def _warnings(works: Range, lobes: bool, assumed: bool) -> list[str]:
    warnings = []
    if assumed:
        warnings.append("No release field is stated, so six tenths of the operate field are taken. Parts differ.")
    if not works.far:
        warnings.append("The reed is out of reach of the magnet here. A side lobe is no place to fit it.")
    elif works.near:
        warnings.append("The magnet is so far to one side that the reed is open while the parts touch.")
    elif lobes:
        warnings.append("The reed also closes in a side lobe. It is not counted as reach.")
    return warnings


def along_reed(magnet: Magnet, setting: Setting, gaps_mm: Any) -> Floats:
    """Field along the reed in mT at each gap; negative where it runs against the magnet's own direction."""
    import numpy as np

    gaps = np.asarray(gaps_mm, dtype=np.float64)
    side, ahead = (
        (np.full_like(gaps, setting.offset), magnet.length / 2 + gaps)
        if setting.mount == "end-on"
        else (magnet.width / 2 + gaps, np.full_like(gaps, setting.offset))
    )
    return field_along(magnet, side, ahead, setting.steel)


def field_along(magnet: Magnet, side_mm: Any, ahead_mm: Any, steel_mm: float | None = None) -> Floats:
    """Field in mT along the magnet's axis at points level with it: so far to the side, so far ahead of its middle.

    This is what the maps of where a reed closes are drawn from.
    """
    import numpy as np
    from magpylib.magnet import Cuboid, Cylinder

    side, ahead = np.broadcast_arrays(np.asarray(side_mm, dtype=np.float64), np.asarray(ahead_mm, dtype=np.float64))
    points = np.stack([side, np.zeros_like(side), ahead], axis=-1)

    def part(remanence: float, below: float) -> Floats:
        pole, place = (0.0, 0.0, remanence), (0.0, -below, 0.0)
        body: Any = (
            Cylinder(polarization=pole, dimension=(magnet.width, magnet.length), position=place)
            if magnet.round
            else Cuboid(polarization=pole, dimension=(magnet.width, magnet.height, magnet.length), position=place)
        )
        field: Floats = np.asarray(body.getB(points), dtype=np.float64).reshape(*side.shape, 3)[..., 2]
        return 1000 * field

    field = part(magnet.remanence, 0.0)
    return field if steel_mm is None else field + part(-magnet.remanence, 2 * steel_mm)


@lru_cache(maxsize=512)
def closed_gaps(magnet: Magnet, setting: Setting, threshold_mt: float) -> tuple[Range, ...]:
    """The ranges of gap in which the field along the reed is at or above the threshold, from touching outwards.

    A change of direction always parts two ranges, because the field passes through nothing between them. The answer
    is kept: the same set stands on many pages and at many openings.
    """
    import numpy as np

    main = 1.0 if setting.mount == "end-on" else -1.0
    gaps = np.geomspace(LEAST_MM, MOST_MM, _STEPS)
    field = main * along_reed(magnet, setting, gaps)
    state = np.where(np.abs(field) >= threshold_mt, np.sign(field), 0.0)

    def crossing(index: int, direction: float) -> float:
        """The gap, in the step after `index`, at which the field in this direction passes the threshold."""
        return bisect(
            lambda g: direction * main * along_reed(magnet, setting, g) - threshold_mt,
            float(gaps[index]), float(gaps[index + 1]),
        )  # fmt: skip

    ranges: list[Range] = []
    start = 0.0
    for index in np.flatnonzero(np.diff(state)).tolist():
        before, after = float(state[index]), float(state[index + 1])
        if before:
            ranges.append(Range(start, crossing(index, before), before > 0))
        if after:
            start = crossing(index, after)
    if state[-1]:
        ranges.append(Range(start, MOST_MM, bool(state[-1] > 0)))
    return tuple(ranges)


def bisect(excess: Callable[[Floats], Floats], low: float, high: float) -> float:
    """Where `excess` changes sign between two gaps: each round keeps the one of 32 parts that holds the change."""
    import numpy as np

    for _ in range(6):
        gaps = np.linspace(low, high, 33)
        above = excess(gaps) >= 0
        index = int(np.flatnonzero(above != above[0])[0])
        low, high = float(gaps[index - 1]), float(gaps[index])
    return (low + high) / 2
