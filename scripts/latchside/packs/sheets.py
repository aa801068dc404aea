"""The sheet of an opening, and what is the same at every opening of one class and told once before them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import TypeVar

from markupsafe import Markup

from latchside.escape import safe
from latchside.figures.one_system import amount_in
from latchside.figures.units import readable, with_unit
from latchside.library import Record
from latchside.library.alike import alike
from latchside.library.compiled import applies
from latchside.library.traits import traits
from latchside.messages import Message, messages
from latchside.packs.contacts import Spot, spots
from latchside.packs.paper import Paper
from latchside.packs.words import Reading, minutes, own_reading, proofs
from latchside.planning.on_site import LAND
from latchside.planning.plan import Expected, Line, OpeningPlan, Plan

message = messages(__name__)
Shared = TypeVar("Shared")
AT_PANEL = frozenset({"check-in", "window-at-grade", "age-at-setting"})
"""Readings that are set or read at the panel, and the same for every radio contact of a class."""
_OF_CLASS = frozenset({"loop-states", "missed-check-in"})
"""Figures that the panel and the class decide, and no opening."""
_RUN, _LOOP = "cable-resistance", "loop-states"
_PROOF = "proving-each-opening"
_TRY = ("test on site", "poor")


@dataclass(frozen=True)
class SameFor:
    """A class of device with its openings, and what is the same at all of them: lines of a name and what it is."""

    device: str
    openings: tuple[OpeningPlan, ...]
    lines: tuple[tuple[str, Markup], ...]


class Sheets:
    """What the sheets of a plan show; its figures are in one system of units."""

    def __init__(self, plan: Plan, page: Paper, *, imperial: bool) -> None:
        self.plan, self.page, self.imperial = plan, page, imperial

    @cached_property
    def numbers(self) -> dict[str, int]:
        """The number of each opening along the walk."""
        return {one.opening.id: number for number, one in enumerate(self.plan.openings, 1)}

    def row(self, openings: Sequence[OpeningPlan]) -> str:
        """Openings by their numbers, for a heading, which holds no links."""
        return ", ".join(str(self.numbers[one.opening.id]) for one in openings)

    @cached_property
    def _classes(self) -> tuple[SameFor, ...]:
        fitted = [one for one in self.plan.openings if one.choice.device]
        return tuple(
            SameFor(device, openings, tuple(self._lines(openings)))
            for device, openings in alike(fitted, lambda one: one.choice.device or "").items()
        )

    @cached_property
    def several(self) -> tuple[tuple[tuple[str, Markup], tuple[str, ...]], ...]:
        """What is the same for several classes: each line with the ids of its openings."""
        told = [(line, one.openings) for one in self._classes for line in one.lines]
        return tuple(
            (line, tuple(one.opening.id for _, openings in found for one in openings))
            for line, found in alike(told, lambda one: one[0]).items()
            if len(found) > 1
        )

    @cached_property
    def classes(self) -> tuple[SameFor, ...]:
        """The classes of this job in the order of the walk, with what is the same for each of them alone."""
        told = {line for line, _ in self.several}
        return tuple(replace(one, lines=tuple(line for line in one.lines if line not in told)) for one in self._classes)

    def _lines(self, openings: Sequence[OpeningPlan]) -> Iterator[tuple[str, Markup]]:
        """What is the same at all of some openings: figures, readings at the panel, and what stops the work."""
        for line in _shared([one.figures for one in openings], _line):
            if line.figure in _OF_CLASS:
                yield line.name, safe(message("line", shown=line.shown, meaning=line.meaning))
        for value in _shared([one.expected for one in openings], _value):
            if value.measure in AT_PANEL:
                yield value.label, safe(value.shown)
        yield from _shared([list(dict.fromkeys(self._stops(one))) for one in openings], lambda one: one)

    def tries(self, one: OpeningPlan) -> list[Line]:
        """The figures that are settled in place; those of its class are told once."""
        same = [found.openings for found in self._classes if one in found.openings]
        told = {_line(line) for line in _shared([other.figures for other in same[0]], _line)} if same else set()
        return [
            line
            for line in one.figures
            if line.verdict in _TRY and not (line.figure in _OF_CLASS and _line(line) in told)
            if line.figure != _RUN or not any(value.measure == "cable-ohm" for value in one.expected)
        ]

    def stops(self, one: OpeningPlan) -> list[Markup]:
        """What stops the work at an opening, with what to do then where that is not told for its class."""
        told = {line for same in self._classes if one in same.openings for line in same.lines}
        stops = dict.fromkeys(self._stops(one))
        return [when if (when, do) in told else when + Markup(" ") + do for when, do in stops]

    def stages(self, one: OpeningPlan) -> list[tuple[str, str, str]]:
        """The work at an opening, in order: stage, time and its words."""
        return [
            (self.page.vocabulary("stage", stage.stage), minutes(stage.minutes), self.page.named(stage.words))
            for stage in one.stages
        ]

    @staticmethod
    def minutes(one: OpeningPlan) -> str:
        """The time of the work at an opening."""
        return minutes(sum(stage.minutes for stage in one.stages))

    def cable(self, one: OpeningPlan) -> Message | None:
        """The cable of an opening: there or new, its size and its run; None where it has no loop."""
        line = next((line for line in one.figures if line.figure == _RUN), None)
        if line is None:
            return None
        there = line.inputs.get("existing", one.opening.cable)
        loops = one.zones if there and self._wired(one) else 1
        if there and one.opening.cable_awg is None and one.opening.cable_area_mm2 is None:
            return message("cable-unknown", run=line.shown, loops=loops, cores=2 * loops)
        size = "awg" in line.inputs and with_unit(f"{line.inputs['awg']:g}", "AWG")
        area = "area_mm2" in line.inputs and with_unit(f"{line.inputs['area_mm2']:g}", "mm2")
        told = {"there": "yes" if there else "no", "size": size or area or "–", "run": line.shown}
        return message("cable", **told, loops=loops, cores=2 * loops)

    def resistor(self, one: OpeningPlan) -> Message | None:
        """The resistor of the loop and where it sits; None where there is no loop."""
        line = next((line for line in one.figures if line.figure == _LOOP), None)
        if line is None:
            return None
        if "end_ohm" not in line.inputs:
            return message("resistor-of-label", ohm=line.shown)
        unit = self.plan.survey.control_unit
        if unit.layout is None or (unit.layout != "none" and unit.end_of_line_ohm is None):
            return message("resistor-unknown")
        layout = str(line.inputs["layout"])
        end, second = (self._ohm(line.inputs.get(name) or line.inputs["end_ohm"]) for name in ("end_ohm", "second_ohm"))
        return message("resistor", layout=layout, end=end, second=second)

    def readings(self, one: OpeningPlan) -> list[Reading]:
        """What is read at an opening, in place and at the proof; two contacts are read each by itself."""
        here = (value for value in one.expected if value.measure not in AT_PANEL)
        own = [own_reading(value, imperial=self.imperial) for value in here]
        found: dict[str, Reading] = {}
        for spot in self.contacts(one):
            for reading in proofs(self.page, one, spot.shown, imperial=self.imperial):
                known = found.setdefault(reading.measure, reading)
                if known.expected != reading.expected:
                    both = message("either", one=known.expected, other=reading.expected)
                    found[reading.measure] = replace(known, expected=both)
        gap = [found.pop("fit-gap")] if "fit-gap" in found else []
        after = next((at for at, one in enumerate(own) if one.measure.startswith("input-")), len(own))
        # its loop is on the terminals before the input is read
        landed = [found.pop("landed")] if "landed" in found else []
        return [*gap, *own[:after], *landed, *own[after:], *found.values()]

    def _wired(self, one: OpeningPlan) -> bool:
        return any(traits(device).wired for device in self.page.records("device", [one.choice.device]))

    def codes(self, one: OpeningPlan) -> list[tuple[Message, Markup]]:
        """What opens on a phone from the paper: the work at the class, its list of the proof, and its faults."""
        device = one.choice.device
        pages = {
            "code-install": f"devices/{device}/install/",
            "code-prove": f"checklists/{_PROOF}/",
            "code-fault": f"devices/{device}/find-faults/",
        }
        made = ((id_, self.page.code(address)) for id_, address in pages.items() if device)
        return [(message(id_), code) for id_, code in made if code]

    def contacts(self, one: OpeningPlan) -> list[Spot]:
        """The contacts of an opening."""
        return [spot for spot in spots(self.plan) if spot.plan is one]

    def _stops(self, one: OpeningPlan) -> Iterator[tuple[Markup, Markup]]:
        """What stops the work, by the procedures of an opening and the landing of its loop, and what to do then.

        Mains is behind the cover of the panel, and none behind that of a transmitter.
        """
        ids = [id_ for stage in one.stages for id_ in stage.procedures if id_ != LAND]
        landing = [LAND] if self._wired(one) and one.zones else []
        for procedure in self.page.records("procedure", list(dict.fromkeys([*ids, *landing]))):
            for entry in procedure.get("if_it_fails", ()):
                if entry.get("stop") and applies(entry, one.choice.device):
                    yield self._words(entry["when"], procedure), self._words(entry["do"], procedure)

    def _words(self, text: str, record: Record) -> Markup:
        return self.page.words(text, record)

    def _ohm(self, value: float) -> str:
        (ohm,), sign = readable((float(value),), "ohm")
        return amount_in(ohm, sign, imperial=self.imperial)


def _shared(lists: Sequence[Sequence[Shared]], key: Callable[[Shared], object]) -> Iterator[Shared]:
    """What stands alike in every list."""
    others = [{key(one) for one in some} for some in lists[1:]]
    yield from (one for one in lists[0] if all(key(one) in some for some in others))


def _line(line: Line) -> tuple[str, str, str]:
    return line.name, line.shown, line.meaning


def _value(value: Expected) -> tuple[str, str]:
    return value.measure, value.shown
