"""How long openings took on finished visits, by class of device, from the times of their ticks.

A phone's clock may be wrong, so only times of one phone on one day are held against each other. The work at an opening
runs from the last tick elsewhere to the last tick at the opening, and it counts where its proof was declared complete
and nothing was ticked elsewhere in between. What cannot be counted is named, and never guessed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from statistics import median, quantiles

from latchside.messages import Message, messages
from latchside.visits.state import Entry, View

message = messages(__name__)

PROOF = "proving-each-opening"
ENOUGH = 5
"""Openings from which a class of device says something about the pace of a firm."""
LONGEST_MIN = 240.0
"""A longer stay holds a break, or another job."""

NO_START, BROKEN, TOO_LONG = "no-start", "work-elsewhere", "break"
"""Why the minutes of an opening cannot be counted; `reason` says it in words."""


@dataclass
class Minutes:
    """Minutes of openings by device, and how many could not be counted, by the reason."""

    of: dict[str, list[float]] = field(default_factory=dict)
    left_out: Counter[str] = field(default_factory=Counter)


@dataclass(frozen=True)
class Pace:
    """What a class of device took: openings counted, and minutes of the quick tenth, the middle and the slow tenth."""

    openings: int
    low: float
    usual: float
    high: float


def reason(why: str) -> Message:
    """Why an opening is left out, in words."""
    return message(f"left-out-{why}")


def minutes(visits: Iterable[View], devices: Collection[str]) -> Minutes:
    """The minutes of all openings of these visits that can be counted, for devices of the library."""
    made = Minutes()
    for seen in visits:
        ticks = _ticks(seen)
        for opening, entry in seen.openings.items():
            device = str(entry["device"] or "")
            run = seen.runs.get(f"{PROOF}|{opening}")
            if device not in devices or run is None or not run.complete:
                continue
            took = _at(opening, ticks)
            if isinstance(took, str):
                made.left_out[took] += 1
            else:
                made.of.setdefault(device, []).append(took)
    return made


def paces(made: Minutes) -> dict[str, Pace]:
    """What the classes took of which enough openings are counted."""
    found = {}
    for device, took in sorted(made.of.items()):
        if len(took) >= ENOUGH:
            tenths = quantiles(took, n=10, method="inclusive")
            found[device] = Pace(len(took), tenths[0], median(took), tenths[-1])
    return found


_Tick = tuple[datetime, str]


def _ticks(seen: View) -> dict[tuple[str, str], list[_Tick]]:
    """The ticks of each phone on each day, in the order of its clock, each with the opening it was made at."""
    found: dict[tuple[str, str], list[_Tick]] = {}
    for run in seen.runs.values():
        entries: list[Entry] = [*run.complete, *(one for heads in run.items.values() for one in heads)]
        for one in entries:
            at = datetime.fromisoformat(one["at"])
            found.setdefault((one["by"], one["at"][:10]), []).append((at, one.get("opening") or ""))
    return {key: sorted(ticks) for key, ticks in found.items()}


def _at(opening: str, by_phone: Mapping[tuple[str, str], list[_Tick]]) -> float | str:
    """Minutes at an opening, or why they cannot be told."""
    phones = [ticks for ticks in by_phone.values() if any(where == opening for _, where in ticks)]
    if len(phones) != 1:
        return BROKEN
    (ticks,) = phones
    here = [index for index, (_, where) in enumerate(ticks) if where == opening]
    first, last = here[0], here[-1]
    if last - first + 1 != len(here):
        return BROKEN
    if not first:
        return NO_START
    took = (ticks[last][0] - ticks[first - 1][0]).total_seconds() / 60
    return took if took <= LONGEST_MIN else TOO_LONG
