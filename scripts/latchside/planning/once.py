"""A property that is calculated once."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Generic, TypeVar, overload

T = TypeVar("T")


class Once(Generic[T]):
    """As `functools.cached_property`, without its lock, which takes longer than a few sums."""

    def __init__(self, work: Callable[[Any], T]) -> None:
        self._work, self._name = work, work.__name__
        self.__doc__ = work.__doc__

    @overload
    def __get__(self, of: None, kind: type) -> Once[T]: ...
    @overload
    def __get__(self, of: object, kind: type) -> T: ...
    def __get__(self, of: object | None, kind: type) -> Once[T] | T:
        if of is None:
            return self
        found = of.__dict__[self._name] = self._work(of)
        return found
