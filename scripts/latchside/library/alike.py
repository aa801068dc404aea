"""Things that are alike, together."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable
from typing import TypeVar

Thing = TypeVar("Thing")
Key = TypeVar("Key", bound=Hashable)


def alike(things: Iterable[Thing], key: Callable[[Thing], Key]) -> dict[Key, tuple[Thing, ...]]:
    """The things with the same key, by that key; keys and things in the order in which they came."""
    groups: dict[Key, list[Thing]] = {}
    for thing in things:
        groups.setdefault(key(thing), []).append(thing)
    return {name: tuple(group) for name, group in groups.items()}
