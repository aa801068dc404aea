"""Whether this is the long run, `make proof`: what is tried by chance is tried far more often."""

from __future__ import annotations

import os
from itertools import groupby

LONG = bool(os.environ.get("LATCHSIDE_LONG"))


def tries(usual: int, long: int) -> int:
    """How many examples are drawn."""
    return long if LONG else usual


def some_pages(sizes: dict[str, int]) -> list[str]:
    """Which pages are looked at, of all by their size: in the long run all; else of each kind the longest and a fifth.

    A kind is what differs by the name of its record alone, as `devices/surface-contact/wire/` does.
    """

    def kind(address: str) -> tuple[str, ...]:
        folder, *names = address.strip("/").split("/")
        return (folder, "name" if names else "", *names[1:])

    longest_first = sorted(sizes, key=lambda one: (kind(one), -sizes[one], one))
    return sorted(sizes) if LONG else [one for _, pages in groupby(longest_first, kind) for one in list(pages)[::5]]
