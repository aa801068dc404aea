"""Loops as they are wired, and what a meter reads on them: the node equations of the circuit, solved as a matrix.

Kirchhoff's current law at each node gives a conductance matrix; one ampere in at one terminal and out at the other
leaves the resistance between them as a voltage. (Nodal analysis, as in any text on circuits.)
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import inf

import numpy as np

Part = tuple[str, str, float]
"""Two nodes, and the ohm between them."""
TOUCH = 1e-5
"""A closed contact, a bridge or a short, in ohm."""
IN, OUT = "in", "out"
"""The two free cores at the receiving end."""


def meter(parts: Iterable[Part]) -> float:
    """What a meter between the two cores reads in ohm; infinite where nothing joins them."""
    wired = [one for one in parts if one[2] != inf]
    reached = {OUT}
    while more := {n for a, b, _ in wired for n in (a, b) if {a, b} & reached} - reached:
        reached |= more
    if IN not in reached:
        return inf
    nodes = sorted(reached - {OUT})
    matrix = np.zeros((len(nodes), len(nodes)))
    for a, b, ohm in wired:
        for here, there in ((a, b), (b, a)):
            if here in nodes:
                matrix[nodes.index(here), nodes.index(here)] += 1 / ohm
                if there in nodes:
                    matrix[nodes.index(here), nodes.index(there)] -= 1 / ohm
    current = np.zeros(len(nodes))
    current[nodes.index(IN)] = 1.0
    return float(np.linalg.solve(matrix, current)[nodes.index(IN)])


def single(layout: str, *, closed: bool, series: float, across: float, core: float, fault: str = "") -> list[Part]:
    """One contact at the end of a pair, each core with half the cable's resistance.

    `fault`: `short` (the pair touches at the contact), `cut` (one core), `lead-off` (the contact hangs by one lead),
    `bridged` (a link across the contact).
    """
    state = inf if fault == "lead-off" or not (closed or fault == "bridged") else TOUCH
    parts: list[Part] = [(IN, "a", inf if fault == "cut" else core), (OUT, "b", core)]
    parts += {
        "none": [("a", "b", state)],
        "series": [("a", "c", series), ("c", "b", state)],
        "across": [("a", "b", series), ("a", "b", state)],
        "double": [("a", "c", series), ("c", "b", across), ("c", "b", state)],
        "double-across": [("a", "c", series), ("c", "b", state), ("a", "b", across)],
    }[layout]
    return [*parts, ("a", "b", TOUCH)] if fault == "short" else parts


def string(
    layout: str, closed: Sequence[bool], *, series: float, across: float, core: float, fault: str = ""
) -> list[Part]:
    """Contacts one after the other, the series resistor at the last.

    `fault`: `short` and `cut` before the first contact, `cut-inside` between the first two, `lead-off` at the second
    contact beside its resistor, `bridged` a link across the second contact.
    """
    parts: list[Part] = [(IN, "0a", inf if fault == "cut" else core), (OUT, "end", core)]
    for number, shut in enumerate(closed):
        near, far = f"{number}a", f"{number}b"
        broken, linked = (fault == what and number == 1 for what in ("lead-off", "bridged"))
        parts.append((near, far, TOUCH if (shut and not broken) or linked else inf))
        parts += [(near, far, across)] if layout == "across-each" else []
    for number, _ in pairwise(range(len(closed))):
        parts.append((f"{number}b", f"{number + 1}a", inf if fault == "cut-inside" and number == 0 else TOUCH))
    last = f"{len(closed) - 1}b"
    parts.append((last, "end", series))
    parts += [("0a", last, across)] if layout == "across-all" else []
    return [*parts, ("0a", "end", TOUCH)] if fault == "short" else parts
