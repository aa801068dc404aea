"""Find, in the data of a record, every mapping of one sort, wherever the schema lets it stand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

Path = tuple[str | int, ...]


def mappings_with(keys: frozenset[str], value: Any, path: Path = ()) -> Iterator[tuple[Path, Mapping[str, Any]]]:
    """Every mapping at or below `value` that has all `keys`, with its path."""
    if isinstance(value, Mapping):
        if keys <= value.keys():
            yield path, value
        for key, below in value.items():
            yield from mappings_with(keys, below, (*path, key))
    elif isinstance(value, tuple):
        for index, below in enumerate(value):
            yield from mappings_with(keys, below, (*path, index))
