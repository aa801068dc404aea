"""Whether this is the long run, `make proof`: what is tried by chance is tried far more often."""

from __future__ import annotations

import os

LONG = bool(os.environ.get("LATCHSIDE_LONG"))


def tries(usual: int, long: int) -> int:
    """How many examples are drawn."""
    return long if LONG else usual
