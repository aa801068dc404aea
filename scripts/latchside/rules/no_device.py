"""A condition on traits is met by some device of the library."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.model import FOR_DEVICES, Path
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "no-device"
_ASKED = ("only", "needed")


def check(library: Library) -> Iterator[Finding]:
    """Each `only` and `needed` that asks for traits finds a device; nothing is said while some device is not sound."""
    if any(kind == "device" for kind, _ in library.unsound):
        return
    for kind in FOR_DEVICES:
        for record in library.of(kind):
            for path, asked in _conditions(record.raw.value, ()):
                if not library.devices(asked):
                    stated = ", ".join(f"{name}: [{', '.join(words)}]" for name, words in asked.items())
                    yield record.finding(CODE, path, *message.finding("met-by-none", traits=stated))


def _conditions(value: Any, path: Path) -> Iterator[tuple[Path, Mapping[str, list[str]]]]:
    if isinstance(value, dict):
        for key, below in value.items():
            if key in _ASKED and isinstance(below, dict):
                yield (*path, key), below
            else:
                yield from _conditions(below, (*path, key))
    elif isinstance(value, list):
        for index, below in enumerate(value):
            yield from _conditions(below, (*path, index))


RULE = Rule(CODE, check)
