"""Drawings: those that stand as files are written out afresh, those that are worked out are drawn here.

`COMPUTED` maps the id of each drawing that is worked out to its maker. All others are files of `content/drawings/`.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from latchside.drawings import circuits, principles
from latchside.drawings.canvas import Drawing

COMPUTED: dict[str, Callable[[], Drawing]] = {
    id_: cache(maker)  # the same drawing stands on many pages
    for group in (circuits, principles)
    for id_, maker in group.DRAWINGS.items()
}
