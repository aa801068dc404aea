"""The page for who designs: each part of pages once, filled from records of the library."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import islice
from typing import Any

from markupsafe import Markup

from latchside.library import Library, Record
from latchside.library.compiled import groups
from latchside.library.quantity import quantity
from latchside.packs.view import JobView
from latchside.pages.calculators import is_calculator
from latchside.pages.page import Page
from latchside.pages.readings import expectations

ADDRESS = "maintain/components/"
VERDICTS = ("good", "test-on-site", "poor", "problem", "no-device-yet")
KEYS = ("measure", "drawing", "why", "cautions")
"""What a step may have beside its command."""
ROWS = STEPS = ITEMS = TERMS = 3


@dataclass(frozen=True)
class Components:
    """What fills the parts; what a small library lacks is left out."""

    rows: tuple[Record, ...]
    device: Record | None
    drawing: str
    procedure: Record | None
    steps: tuple[Mapping[str, Any], ...]
    checklist: Record | None
    items: tuple[Mapping[str, Any], ...]
    formula: Record | None
    cautions: tuple[Record, ...]
    terms: tuple[Record, ...]
    verdicts: tuple[str, ...] = VERDICTS
    view: type[JobView] = JobView


def components(page: Page) -> Components:
    """The first records that show a part in all its states."""
    library = page.library
    device = next((one for one in library.of("device") if one.listed("drawings")), None)
    procedure, steps = _steps(library)
    checklist, items = _items(library)
    formula = next((one for one in library.of("formula") if is_calculator(one)), None)
    if device:
        for name in list(device["values"])[:ROWS]:
            page.note_value(device, name, quantity(device["values"][name]))
    levels = {one["level"]: one for one in reversed(library.of("caution"))}
    order = library.schemas.words("level")
    return Components(
        rows=tuple(islice(library.of("device"), ROWS)),
        device=device,
        drawing=device.listed("drawings")[0] if device else "",
        procedure=procedure,
        steps=steps,
        checklist=checklist,
        items=items,
        formula=formula,
        cautions=tuple(levels[level] for level in order if level in levels),
        terms=tuple(islice(library.of("term"), TERMS)),
    )


def _steps(library: Library) -> tuple[Record | None, tuple[Mapping[str, Any], ...]]:
    """Steps of one procedure, one after another, with a reading and a drawing among them where there are such."""
    best: tuple[int, Record | None, tuple[Mapping[str, Any], ...]] = (0, None, ())
    for procedure in library.of("procedure"):
        for group in groups(library, procedure):
            for start in range(max(1, len(group.steps) - STEPS + 1)):
                some = tuple(group.steps[start : start + STEPS])
                kinds = len(
                    {key for step in some for key in ("measure", "drawing", "why", "cautions") if step.get(key)}
                )
                if kinds > best[0]:
                    best = (kinds, group.owner, some)
    return best[1], best[2]


def _one_figure(library: Library, checklist: Record, item: Mapping[str, Any]) -> bool:
    """Whether a reading is judged by one figure alone, so that a verdict shows as soon as it is typed."""
    measure = item["measure"]
    if measure == "step":
        return False
    return len(json.loads(Markup(expectations(library, measure, checklist, item.get("only"))).unescape())) == 1


def _items(library: Library) -> tuple[Record | None, tuple[Mapping[str, Any], ...]]:
    """Items of the checklist that has most readings: five without, one for each state, then two with."""

    def read(item: Mapping[str, Any]) -> bool:
        return bool(item.get("measure"))

    def all_of(checklist: Record) -> Iterator[Mapping[str, Any]]:
        return (item for point in checklist["points"] for item in point["items"])

    lists = sorted(library.of("checklist"), key=lambda one: -sum(map(read, all_of(one))))
    for checklist in lists[:1]:
        plain = [item for item in all_of(checklist) if not read(item)]
        reading = [item for item in all_of(checklist) if read(item) and _one_figure(library, checklist, item)]
        return checklist, (*plain[:5], *reading[:2])
    return None, ()
