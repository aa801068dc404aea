"""Find, in the data of a record, every mapping of one sort, wherever the schema lets it stand."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

Path = tuple[str | int, ...]
Found = list[tuple[Path, Mapping[str, Any]]]


def mappings_with(keys: frozenset[str], value: Any) -> Found:
    """Every mapping at or below `value` that has all `keys`, with its path."""
    found: Found = []
    _collect(keys, value, (), found)
    return found


def _collect(keys: frozenset[str], value: Any, path: Path, found: Found) -> None:
    """Goes into what holds something and nothing else: most of a record is texts and numbers."""
    if isinstance(value, tuple):
        for index, below in enumerate(value):
            if isinstance(below, MappingProxyType | tuple):
                _collect(keys, below, (*path, index), found)
        return
    if keys <= value.keys():
        found.append((path, value))
    for key, below in value.items():
        if isinstance(below, MappingProxyType | tuple):
            _collect(keys, below, (*path, key), found)
