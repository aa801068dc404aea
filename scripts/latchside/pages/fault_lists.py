"""The pages across all faults: finding the fault by what is seen, and what the plans suggest to the maintainer."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from latchside.kinds import KINDS
from latchside.library import Library, Record
from latchside.library.alike import alike
from latchside.messages import messages
from latchside.pages.fault_influence import Firmness, Prevented, Settling, firmness, prevented, settling
from latchside.pages.page import Page

message = messages(__name__)

FIND = "faults/find/"
MAINTAIN = "maintain/faults/"


@dataclass(frozen=True)
class Find:
    """Faults by what is seen, causes by device, and the checks that settle most."""

    groups: tuple[tuple[str, list[Record]], ...]
    columns: tuple[tuple[Record, ...], ...]
    faults: tuple[Record, ...]
    settling: tuple[Settling, ...]

    @staticmethod
    def label(alike: tuple[Record, ...]) -> str:
        """What a column is called where there is little room."""
        others = len(alike) - 1
        return message("alike", device=alike[0].name, others=others) if others else alike[0].name

    @staticmethod
    def word(cause: Mapping[str, Any], fault: Record, device: Record) -> str:
        """How often a cause is behind a fault on a device; a dash where it does not occur there."""
        if fault.id not in device.listed("faults") or device.id not in cause.get("only", (device.id,)):
            return "–"
        return str(cause.get("by_device", {}).get(device.id, cause["frequency"]))


@dataclass(frozen=True)
class Suggested:
    """What the plans suggest to the maintainer."""

    prevented: tuple[Prevented, ...]
    firmness: tuple[Firmness, ...]

    @property
    def moving(self) -> int:
        """How many plans begin otherwise after some change of one guess."""
        return sum(one.first > 0 for one in self.firmness)


def _columns(library: Library) -> tuple[tuple[Record, ...], ...]:
    """Devices on which every cause is behind its fault as often."""
    causes = [(cause, fault) for fault in library.of("fault") for cause in fault["causes"]]
    words = alike(library.of("device"), lambda device: tuple(Find.word(*one, device) for one in causes))
    return tuple(words.values())


def pages(library: Library) -> Iterator[tuple[str, str, Find | Suggested]]:
    """Address, template and content of each page."""
    faults = library.of("fault")
    groups = Page(library, FIND).grouped(KINDS["fault"], faults)
    yield FIND, "fault_find.jinja", Find(tuple(groups), _columns(library), faults, tuple(settling(library)))
    yield MAINTAIN, "fault_firmness.jinja", Suggested(tuple(prevented(library)), firmness(library))
