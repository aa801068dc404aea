"""What a device is, as its record says it: how it senses, reports and is fixed, and what each of its parts is for.

Everything that depends on the sort of a device asks here, and nothing asks a part, a value or an input by its id.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Any, Literal

from latchside.reads import note

if TYPE_CHECKING:
    from latchside.library.model import Record

MAGNET, LOOP = "reed-and-magnet", "loop"
"""Ways of sensing that other ways depend on: by its own reed, and by the loop of a contact that has one."""
OWN_LOOP, RADIO, LOOP_BY_RADIO = "loop", "radio", "loop-by-radio"
"""Ways of reporting."""
DRILLED, BRACKET = "drilled", "bracket"
"""Ways of fixing, beside the surface."""
BODY = frozenset({"sensor", "reed", "magnet", "transmitter", "base", "cover"})
"""Roles of parts that are the device itself."""


@dataclass(frozen=True)
class Part:
    """A part of a set: so many of it, its role, how it comes, and how it is fixed."""

    name: str
    role: str
    quantity: int
    supplied: str
    mounts: str

    @property
    def apart(self) -> bool:
        """It is bought apart from the set."""
        return self.supplied == "apart"


@dataclass(frozen=True)
class Traits:
    """What a device is. The words are those of the vocabulary."""

    senses: str
    reports: str
    mounts: str
    parts: tuple[Part, ...]
    inputs: tuple[str, ...]

    @cached_property
    def magnetic(self) -> bool:
        """A magnet of its own works a reed of its own."""
        return self.senses == MAGNET

    @cached_property
    def by_magnet(self) -> bool:
        """A magnet goes in with it: its own, or that of the contact on its loop."""
        return self.senses in (MAGNET, LOOP)

    @cached_property
    def wired(self) -> bool:
        """Its zone has a cable to the panel."""
        return self.reports == OWN_LOOP

    @cached_property
    def link(self) -> Literal["wired", "radio"]:
        """What a position of the panel hears it by: `wired` or `radio`."""
        return "wired" if self.wired else "radio"

    @cached_property
    def takes_loop(self) -> bool:
        """It is a transmitter for the loop of a wired contact, which has a profile of its own."""
        return self.reports == LOOP_BY_RADIO

    @cached_property
    def on_loop(self) -> bool:
        """A wired contact is on a loop with it."""
        return self.wired or self.takes_loop

    @cached_property
    def has_terminals(self) -> bool:
        """A loop is metered at it: its own, or that of a wired contact at its terminals."""
        return self.on_loop or "wired-contact" in self.inputs

    @cached_property
    def drilled(self) -> bool:
        """It, or a part of it, sits in a hole."""
        return DRILLED in self.fixed

    @cached_property
    def bracketed(self) -> bool:
        """A part of it is brought to its place by a bracket with slots, and a heavy housing by anchors."""
        return self.mounts == BRACKET

    @cached_property
    def needs_hole(self) -> bool:
        """A hole or screws go into door or frame: no pad of its set could bear it.

        A transmitter for a loop is screwed to the wall beside the opening, and needs none there.
        """
        return not self.takes_loop and (self.drilled or self.bracketed or not self.has("pad"))

    @cached_property
    def fixed(self) -> frozenset[str]:
        """The ways in which it and its parts are fixed."""
        return frozenset({self.mounts, *(one.mounts for one in self.parts)})

    @cached_property
    def roles(self) -> frozenset[str]:
        """The roles of its parts."""
        return frozenset(one.role for one in self.parts)

    def has(self, *roles: str) -> bool:
        """A part has one of these roles."""
        return not self.roles.isdisjoint(roles)

    def count(self, role: str) -> int:
        """How many parts of a role a set holds."""
        return sum(one.quantity for one in self.parts if one.role == role)

    def fit(self, asked: Mapping[str, Iterable[str]]) -> bool:
        """It has one of the words asked for under each name: `{"reports": ["radio"], "mounts": ["surface"]}`."""
        return all(not self._words[name].isdisjoint(words) for name, words in asked.items())

    @cached_property
    def _words(self) -> Mapping[str, frozenset[str]]:
        own = {"senses": frozenset([self.senses]), "reports": frozenset([self.reports])}
        return {**own, "mounts": self.fixed, "parts": self.roles, "inputs": frozenset(self.inputs)}


def traits(record: Record) -> Traits:
    """The traits of a device record."""
    note(*((record.kind.id, record.id, name) for name in ("traits", "parts", "inputs")))
    return _traits(record)


@lru_cache(maxsize=1024)
def _traits(record: Record) -> Traits:
    return traits_in(record)


def place_on(record: Record, kind: str) -> str | None:
    """Where its record says that a device is fixed on a kind of opening; None where it does not say."""
    return next((str(one["text"]) for one in record.listed("place") if kind in one["on"]), None)


def traits_in(data: Mapping[str, Any] | Record) -> Traits:
    """The traits that the data of a device record states."""
    stated = data["traits"]
    return Traits(
        senses=stated["senses"],
        reports=stated["reports"],
        mounts=stated["mounts"],
        parts=tuple(
            Part(one["name"], one["role"], one["quantity"], one["supplied"], one.get("mounts", stated["mounts"]))
            for one in data["parts"]
        ),
        inputs=tuple(one["kind"] for one in data["inputs"]),
    )


def devices_asked(asked: Any, known: Mapping[str, Traits]) -> tuple[str, ...]:
    """The ids of the devices that are asked for, by their traits; a list of ids is what it is, `every` is all."""
    if isinstance(asked, Mapping):
        return tuple(id_ for id_, one in known.items() if one.fit(asked))
    return tuple(known) if asked == "every" else tuple(asked)
