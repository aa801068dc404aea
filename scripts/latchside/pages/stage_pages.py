"""The pages of a device's stages, and the path through them that is its installation."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from latchside.escape import safe
from latchside.figures.brief import Brief
from latchside.library import Record
from latchside.library.compiled import Group, for_device, groups
from latchside.pages.expected import briefly
from latchside.pages.leading import label, order
from latchside.pages.page import Page

INSTALL = ("prepare", "position", "wire", "power", "enrol", "set-up", "try", "fix", "prove", "hand-over")
"""The stages of an installation: from the van to the handover."""

Chapter = tuple[str, Record, tuple[Group, ...]]
"""A stage, a procedure of it, and the groups of its steps for the device at hand."""


@dataclass(frozen=True)
class Turn:
    """The place of a stage among those that have work for the device, and its neighbours: none or one each."""

    number: int
    of: int
    before: tuple[str, ...]
    after: tuple[str, ...]


@dataclass(frozen=True)
class Hit:
    """A figure to hit at a stage, what is measured in a few words, and whether the layout of the loop changes it."""

    figure: Brief
    words: Markup
    by_layout: bool


@dataclass(frozen=True)
class Leg:
    """A stage of an installation. `anchors`: by which its steps were reached when they stood on that page."""

    stage: str
    procedures: tuple[Record, ...]
    minutes: int
    hits: tuple[Hit, ...]
    anchors: tuple[str, ...]


def chapters(page: Page, device: Record, stage: str) -> list[Chapter]:
    """The procedures of a stage, compiled for the device."""
    listed = page.records("procedure", device["procedures"][stage])
    return [(stage, procedure, groups(page.library, procedure, device.id)) for procedure in listed]


def turn(done: list[str], stage: str) -> Turn:
    """Where a stage stands among those that have work."""
    at = done.index(stage)
    return Turn(at + 1, len(done), tuple(done[max(0, at - 1) : at]), tuple(done[at + 1 : at + 2]))


def path(page: Page, device: Record, done: list[str]) -> list[Leg]:
    """The stages of an installation that have work for the device."""
    return [_leg(page, device, stage) for stage in INSTALL if stage in done]


def safety(listed: Iterable[Chapter]) -> tuple[str, ...]:
    """The cautions for the whole of some procedures, each once."""
    return tuple(dict.fromkeys(id_ for _, procedure, _ in listed for id_ in procedure.listed("safety")))


def at_steps(listed: Iterable[Chapter], device: str | None = None) -> frozenset[str]:
    """The cautions that steps of some procedures name."""
    named = (step.get("cautions", ()) for chapter in listed for _, step in _steps(chapter, device))
    return frozenset(id_ for ids in named for id_ in ids)


def _steps(chapter: Chapter, device: str | None) -> Iterator[tuple[Record, Mapping[str, Any]]]:
    """Every step of a procedure with the procedure that wrote it, in the order it is done."""
    _, procedure, listed = chapter
    for group in listed:
        yield from ((group.owner, step) for step in group.steps)
    for section in ("prove", "close_up"):
        yield from ((procedure, step) for step in for_device(procedure.listed(section), device))


def _leg(page: Page, device: Record, stage: str) -> Leg:
    listed = chapters(page, device, stage)
    procedures = tuple(procedure for _, procedure, _ in listed)
    hits = dict.fromkeys(hit for chapter in listed for hit in _hit(page, device, chapter))
    anchors = tuple(anchor for chapter in listed for anchor in _anchors(chapter, device))
    return Leg(stage, procedures, sum(one["minutes"] for one in procedures), tuple(hits)[:2], anchors)


def _hit(page: Page, device: Record, chapter: Chapter) -> list[Hit]:
    """The reading of a procedure that the device is known by, else its last; none where nothing is read."""
    readings = [(owner, step["measure"]) for owner, step in _steps(chapter, device.id) if step.get("measure")]
    known = {name: at for at, name in enumerate(order(device))}
    readings.sort(key=lambda reading: known.get(reading[1]["expect"].get("device_value"), len(known)))
    if not readings:
        return []
    best = readings[0][1]["expect"].get("device_value") in known
    owner, measure = readings[0 if best else -1]
    figures = briefly(page, measure)
    words = safe(label(measure["expect"].get("device_value", ""))) or page.plain(measure["what"], owner)
    return [Hit(figures[0], words, len(figures) > 1)]


def _anchors(chapter: Chapter, device: Record) -> Iterator[str]:
    own = chapter[1].id
    yield own
    for owner, step in _steps(chapter, device.id):
        drawn = "" if owner.id == own else f"{owner.id}-"
        yield f"{own}-{drawn}step-{step['id']}"
