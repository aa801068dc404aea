"""What is read while something is made, so that it is made again only when that has changed.

A record notes each field that is asked of it, by `(kind, id, field)`. `*` stands for every field, every record or every
kind. What is remembered from one page to the next notes what it rests on by itself: see `noted_instead`.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

Read = tuple[str, str, str]
EVERY = "*"
EVERYTHING: Read = (EVERY, EVERY, EVERY)

NOTES: list[set[Read]] = []
"""The notes being taken, the innermost last. None are taken while records are checked."""


def note(*reads: Read) -> None:
    """Note what is read, where notes are taken."""
    if NOTES:
        NOTES[-1].update(reads)


@contextmanager
def noted() -> Iterator[set[Read]]:
    """What is read within; it counts as read by whatever is around it too."""
    notes: set[Read] = set()
    NOTES.append(notes)
    try:
        yield notes
    finally:
        NOTES.pop()
        note(*notes)


@contextmanager
def noted_instead(*reads: Read) -> Iterator[None]:
    """These count as read, in place of whatever is read within."""
    NOTES.append(set())
    try:
        yield
    finally:
        NOTES.pop()
        note(*reads)
