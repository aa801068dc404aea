"""Which facts a function reads, and a cache of its results by those facts alone.

A function of the planner reads a few fields of an opening, its site and the control unit. To learn which, it is called
with stand-ins that record each field that is read. A field that was not read cannot have changed the result; where all
fields that were read have the same values, the result is the same, whatever else differs.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields
from functools import lru_cache
from operator import attrgetter
from typing import Any, Generic, TypeVar

T = TypeVar("T")
Key = tuple[int, str]
"""A fact: its place among the facts that were handed over, and the name of its field."""
_MOST = 2_000


def looked(work: Callable[..., T], *facts: Any) -> tuple[T, frozenset[Key]]:
    """The result of a function, and the fields that it read.

    Facts are frozen dataclasses without methods. The function depends on nothing else that changes.
    """
    read = set[Key]()
    known: Any = _watched  # classes are hashable
    return work(*(known(type(one))(one, place, read) for place, one in enumerate(facts))), frozenset(read)


def told(fact: T, field: str, value: object) -> T:
    """A frozen dataclass with another value of one field, as `replace` makes it, in a fraction of the time."""
    made = object.__new__(type(fact))
    made.__dict__.update(fact.__dict__)
    made.__dict__.pop("_hash", None)
    made.__dict__[field] = value
    return made


class Kept(Generic[T]):
    """A function with a bounded cache of its results, by all fields that it ever read."""

    def __init__(self, work: Callable[..., T]) -> None:
        self._work = work
        self.looks: frozenset[Key] = frozenset()
        """The fields that it has read so far."""
        self._read: Callable[..., Any] = _reader((), 0)
        self._known: dict[Any, tuple[T, frozenset[Key]]] = {}

    def __call__(self, *facts: Any) -> T:
        """The result for these facts, from the cache where it is there."""
        return (self._known.get(self._read(*facts)) or self._worked(facts))[0]

    def looks_at(self, *facts: Any) -> frozenset[Key]:
        """The fields that it reads with these facts."""
        return (self._known.get(self._read(*facts)) or self._worked(facts))[1]

    def _worked(self, facts: tuple[Any, ...]) -> tuple[T, frozenset[Key]]:
        found, looks = looked(self._work, *facts)
        if not looks <= self.looks:
            self.looks |= looks
            self._read = _reader(tuple(sorted(self.looks)), len(facts))
            self._known = {}
        elif len(self._known) >= _MOST:
            self._known = {}
        self._known[self._read(*facts)] = found, looks
        return found, looks


def _reader(keys: tuple[Key, ...], count: int) -> Callable[..., Any]:
    """A function that reads the values of these fields from `count` facts, as a key of the cache."""
    if not keys:
        return lambda *facts: ()
    names = {place: [name for at, name in keys if at == place] for place, _ in keys}
    readers = [(place, attrgetter(*listed)) for place, listed in names.items()]
    if len(readers) == 1:
        ((place, read),) = readers
        if count == 1:
            return read
        return lambda *facts: read(facts[place])
    return lambda *facts: tuple([read(facts[place]) for place, read in readers])


@lru_cache(maxsize=64)
def _watched(kind: Any) -> Callable[[Any, int, set[Key]], Any]:
    """A stand-in for a dataclass that records each field that is read."""
    known = frozenset(one.name for one in fields(kind))

    class Watched:
        __slots__ = ("_of", "_place", "_read")
        __dataclass_fields__ = kind.__dataclass_fields__
        __class__ = property(lambda self: kind)

        def __init__(self, of: Any, place: int, read: set[Key]) -> None:
            self._of, self._place, self._read = of, place, read

        def __getattr__(self, name: str) -> Any:
            if name not in known:
                raise AttributeError(f"{kind.__name__} has no field {name}")
            self._read.add((self._place, name))
            return getattr(self._of, name)

    return Watched
