"""Records, and the links between them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path as FilePath
from types import MappingProxyType
from typing import Any

from latchside.findings import Finding, Level
from latchside.kinds import KINDS, Kind
from latchside.library.alike import alike
from latchside.library.text import RecordLink, ValueLink, text_parts
from latchside.library.traits import Traits, devices_asked, traits, traits_in
from latchside.read.forms import forms
from latchside.read.svg import Picture
from latchside.read.tree import RawRecord
from latchside.reads import EVERY, EVERYTHING, NOTES, note
from latchside.schemas import Schemas
from latchside.schemas.shape import ReferenceAt, TextAt

Path = tuple[str | int, ...]
TRAITS = tuple(("device", EVERY, name) for name in ("traits", "parts", "inputs"))
"""What is read where devices are asked for by their traits."""
REFERRING = "<"
"""Before a kind: which records of it refer to a record, noted in the place of a field."""
FOR_DEVICES = ("procedure", "checklist", "fault", "caution")
"""Kinds whose records say which devices they, or parts of them, are for."""


@dataclass(frozen=True, eq=False)
class Record:
    """One record that fits its schema. `data` is read-only all the way down; what is asked of it is noted."""

    kind: Kind
    id: str
    _data: Mapping[str, Any] = field(repr=False)
    raw: RawRecord = field(repr=False, compare=False)

    @property
    def data(self) -> Mapping[str, Any]:
        """Every field."""
        if NOTES:
            NOTES[-1].add((self.kind.id, self.id, EVERY))
        return self._data

    @property
    def name(self) -> str:
        """The name a reader sees."""
        return str(self["name"])

    @property
    def key(self) -> tuple[str, str]:
        """Kind id and record id."""
        return self.kind.id, self.id

    @property
    def address(self) -> str:
        """Where its page stands in the site."""
        return self.kind.address.format(id=self.id)

    def __getitem__(self, name: str) -> Any:
        if NOTES:
            NOTES[-1].add((self.kind.id, self.id, name))
        return self._data[name]

    def get(self, name: str, default: Any = None) -> Any:
        """A field, or `default` where the record does not have it."""
        if NOTES:
            NOTES[-1].add((self.kind.id, self.id, name))
        return self._data.get(name, default)

    def listed(self, name: str) -> tuple[Any, ...]:
        """A list field; empty where it is absent or the explicit `none`."""
        value = self.get(name)
        return () if value in (None, "none") else tuple(value)

    def finding(self, code: str, path: Path, found: str, expected: str, action: str, level: Level = "error") -> Finding:
        """A finding about the value at `path` of this record."""
        return Finding(self.raw.file, self.raw.place(*path), code, found, expected, action, level)


@dataclass(frozen=True)
class Link:
    """One reference from a record to something, found by the schema or in a text."""

    source: Record
    path: Path
    kind: str
    id: str
    step: str | None = None

    @property
    def target(self) -> tuple[str, str]:
        """Kind id and record id of what is referred to."""
        return self.kind, self.id


@dataclass(frozen=True, eq=False)
class Library:
    """All sound records, by kind and id, and how they are linked.

    `unsound` names the records that are there but not sound, so that nobody calls them missing; `broken` are those of
    them that could be read, and `mentioned` is what those refer to, and what the hand-written pages show; `unread` says
    that some records could not be read at all. `drawings` are those that stand as files, by id. `root` is where the
    project stands whose records these are, where it is one.
    """

    records: Mapping[str, Mapping[str, Record]] = field(repr=False)
    schemas: Schemas = field(repr=False)
    unsound: frozenset[tuple[str, str]] = frozenset()
    mentioned: frozenset[tuple[str, str]] = field(default=frozenset(), repr=False)
    unread: bool = False
    drawings: Mapping[str, Picture] = field(default_factory=lambda: MappingProxyType({}), repr=False)
    root: FilePath | None = None
    broken: tuple[RawRecord, ...] = field(default=(), repr=False)

    @cached_property
    def pictures(self) -> Mapping[str, Picture]:
        """What the files of `drawings` show, by id: each of their forms is a drawing by itself."""
        return MappingProxyType({form.id: form for one in self.drawings.values() for form in forms(one)})

    def anew(self) -> Library:
        """The same records as other objects, of which nothing has been worked out and remembered yet.

        What is made from these notes all that it reads, however much was remembered of the first ones.
        """
        kinds = {kind: {id_: replace(one) for id_, one in records.items()} for kind, records in self.records.items()}
        return replace(self, records=MappingProxyType({kind: MappingProxyType(one) for kind, one in kinds.items()}))

    def of(self, kind: str) -> tuple[Record, ...]:
        """The records of one kind, in the order of their ids."""
        return tuple(self.records.get(kind, {}).values())

    def find(self, kind: str, id_: str) -> Record | None:
        """A record, or None where there is no sound one."""
        return self.records.get(kind, {}).get(id_)

    def devices(self, asked: Any) -> tuple[Record, ...]:
        """The sound devices that are asked for: by traits, by ids, or `every`."""
        note(*TRAITS)
        return tuple(one for id_ in devices_asked(asked, self._traits) if (one := self.find("device", id_)))

    @cached_property
    def _traits(self) -> dict[str, Traits]:
        return {one.id: traits(one) for one in self.of("device")}

    def __iter__(self) -> Iterator[Record]:
        for kind in self.records.values():
            yield from kind.values()

    def texts(self, record: Record) -> tuple[TextAt, ...]:
        """Every text of a record that a reader sees."""
        note((*record.key, EVERY))
        return self._read[record.key][0]

    @cached_property
    def _read(self) -> dict[tuple[str, str], tuple[tuple[TextAt, ...], tuple[ReferenceAt, ...]]]:
        """The texts and the references of each record."""
        found = {record.key: self.schemas.shapes[record.kind.id].both(record._data) for record in self}
        return {key: (tuple(texts), tuple(references)) for key, (texts, references) in found.items()}

    @property
    def links(self) -> tuple[Link, ...]:
        """Every reference in the library."""
        note(EVERYTHING)
        return self._links

    @cached_property
    def _links(self) -> tuple[Link, ...]:
        return tuple(link for record in self for link in self._links_of(record))

    def _links_of(self, record: Record) -> Iterator[Link]:
        for path, kind, id_, step in _references(*self._read[record.key]):
            if not _asked_by_traits(record, path):
                yield Link(record, path, kind, id_, step)

    @cached_property
    def _leaving(self) -> dict[tuple[str, str], tuple[Link, ...]]:
        return alike(self._links, lambda link: link.source.key)

    @cached_property
    def _arriving(self) -> dict[tuple[str, str], tuple[Link, ...]]:
        return alike(self._links, lambda link: link.target)

    def links_from(self, record: Record) -> tuple[Link, ...]:
        """What a record refers to."""
        note((*record.key, EVERY))
        return self._leaving.get(record.key, ())

    def referring(self, kind: str, id_: str, by: str) -> tuple[Record, ...]:
        """The records of kind `by` that refer to a record, each once, in the order of their ids."""
        note((kind, id_, f"{REFERRING}{by}"))
        sources = {
            link.source.id: link.source for link in self._arriving.get((kind, id_), ()) if link.source.kind.id == by
        }
        return tuple(sources[id_] for id_ in sorted(sources))


def build_library(
    raw: Iterable[RawRecord],
    schemas: Schemas,
    broken: Iterable[RawRecord] = (),
    unread: Iterable[tuple[str, str]] = (),
    drawings: Iterable[Picture] = (),
    on_pages: Iterable[str] = (),
    root: FilePath | None = None,
) -> Library:
    """The library of those raw records that fit their schema (the caller has checked that they do).

    `broken` are the records that do not, `unread` kind and id of the files that could not be read, `drawings` those
    that could, `on_pages` the ids of the drawings that hand-written pages show, `root` where the project stands.
    """
    by_kind: dict[str, dict[str, Record]] = {kind: {} for kind in KINDS}
    raw = sorted(raw, key=lambda one: one.stem)
    devices = {one.stem: traits_in(one.value) for one in raw if one.kind.id == "device"}
    for one in raw:
        value = _frozen(one.value, devices if one.kind.id in FOR_DEVICES else None)
        by_kind[one.kind.id][one.stem] = Record(one.kind, one.stem, value, one)
    broken, unread = list(broken), list(unread)
    return Library(
        MappingProxyType({kind: MappingProxyType(records) for kind, records in by_kind.items()}),
        schemas,
        frozenset([*((one.kind.id, one.stem) for one in broken), *unread]),
        frozenset(
            [
                *(("drawing", id_) for id_ in on_pages),
                *(
                    (kind, id_)
                    for one in broken
                    for _, kind, id_, _ in _references(*schemas.shapes[one.kind.id].both(one.value))
                ),
            ]
        ),
        any(kind in KINDS for kind, _ in unread) or any(one.value is None for one in broken),
        MappingProxyType({one.id: one for one in drawings}),
        root,
        tuple(broken),
    )


def _references(
    texts: Iterable[TextAt], references: Iterable[ReferenceAt]
) -> Iterator[tuple[Path, str, str, str | None]]:
    """Every reference of a record, by its schema and in its texts: path, kind, id, and step where one is."""
    for path, id_, kind in references:
        if kind == "step":
            procedure, _, step = id_.partition("/")
            yield path, "procedure", procedure, step
        else:
            yield path, kind, id_, None
    for path, text, sort in texts:
        for part in text_parts(text) if sort == "prose" else ():
            if isinstance(part, RecordLink):
                yield path, part.kind, part.id, part.step
            elif isinstance(part, ValueLink) and part.owner and part.owner[1]:
                yield path, part.owner[0], part.owner[1], None


def _asked_by_traits(record: Record, path: Path) -> bool:
    """The device at this path is one that fits traits: the record names none."""
    if len(path) < 2 or path[-2] != "only":
        return False
    value = record.raw.value
    for key in path[:-1]:
        value = value[key]
    return isinstance(value, dict)


def _frozen(value: Any, devices: Mapping[str, Traits] | None) -> Any:
    """Data that is read-only all the way down; with `devices`, each `only` is the ids of those that it asks for."""
    if isinstance(value, dict):
        return MappingProxyType({key: _frozen_at(key, below, devices) for key, below in value.items()})
    if isinstance(value, list):
        return tuple(_frozen(below, devices) for below in value)
    return value


def _frozen_at(key: str, value: Any, devices: Mapping[str, Traits] | None) -> Any:
    return devices_asked(value, devices) if key == "only" and devices is not None else _frozen(value, devices)
