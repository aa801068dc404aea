"""What a supervised loop reads in each of its states, over all tolerances.

Circuit: the control unit feeds the pair through a pull-up resistor and reads the voltage across the pair::

    reading = supply * R / (R + pull-up),  R = loop in parallel with the leakage

The loop is the cable in series with what stands at its far end, by layout and state (E the end-of-line resistor, C
the second one: across the contact alone in the layout `double`, across contact and E together in `double-across`):

    layout          leaf shut          leaf open
    none            nothing            open
    series          E                  open
    parallel        E                  nothing      (a contact that is open while the leaf is shut; see `contact_shut`)
    double          E                  E + C
    double-across   E C / (E + C)      C

Several contacts in a row under one resistor across them all read as one contact. Where each has its own resistor
across it, C is the sum over the contacts that are open.

A short is nothing across the pair, anywhere along the cable. In the states `cut` and `tamper` the pair is open: a
core is cut, or the tamper switch in line with it has opened. Leakage stands across the pair at the terminals.

Corner cases: each resistor and the pull-up at both ends of the tolerance, the cable at both ends of the same
tolerance (for a short from none of it), the leakage as stated (wet) and none (dry). The reading rises or falls
steadily with each of them, so the lowest and the highest corner bound every case between. The typical reading has
every resistor at its value and the leakage as stated. Supply in V, resistance in ohm, tolerance 0 to 20 per cent.
Source: Ohm's law and the circuit of each layout; no error but that of the stated values. The supply is exact: an
input that compares with its own supply sees only the ratio.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise, product
from math import inf
from typing import Literal

STATES = ("shut", "open", "short", "cut", "tamper")
LAYOUTS = ("none", "series", "parallel", "double", "double-across")
ContactShut = Literal["closed", "open"]
"""How the contact stands while the leaf is shut."""


@dataclass(frozen=True)
class Loop:
    """One loop as it is wired; resistances in ohm, `leakage` infinite for a dry pair."""

    supply: float
    pull_up: float
    layout: str
    end: float
    contact: float
    cable: float
    leakage: float
    contact_shut: ContactShut


@dataclass(frozen=True)
class Window:
    """The readings of one state: lowest, typical and highest in V, and the typical loop in ohm (infinite for open)."""

    low: float
    typical: float
    high: float
    ohm: float


def compute(
    *,
    supply_v: float,
    pull_up_ohm: float,
    layout: str,
    end_ohm: float,
    contact_ohm: float,
    tolerance_percent: float,
    cable_ohm: float,
    leakage_ohm: float | None = None,
    contact_shut: ContactShut | None = None,
) -> dict[str, object]:
    """Readings by state, the states that cannot be told apart, and the smallest gap between the others' windows."""
    usual: ContactShut = "open" if layout == "parallel" else "closed"
    loop = Loop(
        float(supply_v), pull_up_ohm, layout, end_ohm, contact_ohm, cable_ohm,
        inf if leakage_ohm is None else leakage_ohm, contact_shut or usual,
    )  # fmt: skip
    windows = {state: window(loop, state, tolerance_percent / 100) for state in STATES}
    groups = told_apart(windows)
    return {
        "states": {
            state: {
                "low_v": found.low,
                "typical_v": found.typical,
                "high_v": found.high,
                "ohm": None if found.ohm == inf else found.ohm,
            }
            for state, found in windows.items()
        },
        "same_reading": [group for group in groups if len(group) > 1],
        "smallest_gap_v": smallest_gap(windows, groups),
    }


def window(loop: Loop, state: str, tolerance: float) -> Window:
    """The readings of one state with every resistance within `tolerance`, a fraction."""
    readings = [reading(corner, state, share) for corner, share in _corners(loop, state, tolerance)]
    return Window(min(readings), reading(loop, state), max(readings), resistance(loop, state))


def reading(loop: Loop, state: str, cable_share: float = 1.0) -> float:
    """Voltage across the pair in V; a short may leave only a share of the cable in the loop."""
    ohm = resistance(loop, state, cable_share)
    return loop.supply if ohm == inf else loop.supply * ohm / (ohm + loop.pull_up)


def resistance(loop: Loop, state: str, cable_share: float = 1.0) -> float:
    """What a meter across the disconnected pair shows in ohm, leakage included; infinite for open."""
    far = _far_end(loop, state)
    ohm = inf if far == inf else far + loop.cable * cable_share
    if loop.leakage == inf:
        return ohm
    return loop.leakage if ohm == inf else ohm * loop.leakage / (ohm + loop.leakage)


def _far_end(loop: Loop, state: str) -> float:
    if state == "short":
        return 0.0
    if state in ("cut", "tamper"):
        return inf
    closed = (loop.contact_shut == "closed") == (state == "shut")
    return {
        "none": 0.0 if closed else inf,
        "series": loop.end if closed else inf,
        "parallel": 0.0 if closed else loop.end,
        "double": loop.end if closed else loop.end + loop.contact,
        "double-across": loop.end * loop.contact / (loop.end + loop.contact) if closed else loop.contact,
    }[loop.layout]


def _corners(loop: Loop, state: str, tolerance: float) -> list[tuple[Loop, float]]:
    """Every corner case: a loop at the ends of its tolerances, and the share of the cable that is in it."""
    ends = (1 - tolerance, 1 + tolerance)
    shares = (0.0, 1.0) if state == "short" else (1.0,)
    wet = (loop.leakage, inf)
    return [
        (
            Loop(
                loop.supply, loop.pull_up * pull_up, loop.layout, loop.end * end, loop.contact * contact,
                loop.cable * cable, leakage, loop.contact_shut,
            ),
            share,
        )
        for pull_up, end, contact, cable, leakage, share in product(ends, ends, ends, ends, wet, shares)
    ]  # fmt: skip


def told_apart(windows: Mapping[str, Window]) -> list[list[str]]:
    """The states in groups from the lowest reading up: windows that meet fall into one group."""
    groups: list[list[str]] = []
    highest = -inf
    for state in sorted(windows, key=lambda name: (windows[name].low, windows[name].high)):
        if groups and windows[state].low <= highest:
            groups[-1].append(state)
        else:
            groups.append([state])
        highest = max(highest, windows[state].high)
    return [[state for state in STATES if state in group] for group in groups]


def smallest_gap(windows: Mapping[str, Window], groups: list[list[str]]) -> float:
    """The smallest distance in V between two groups of windows; 0 where there is only one group."""
    gaps = [
        min(windows[state].low for state in above) - max(windows[state].high for state in below)
        for below, above in pairwise(groups)
    ]
    return min(gaps, default=0.0)
