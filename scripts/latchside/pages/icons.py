"""Signs beside words, from the set that the theme ships; each stands in the page itself, as no network is needed."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from markupsafe import Markup

_OPEN, _OURS = '<svg xmlns="http://www.w3.org/2000/svg"', '<svg class="ls-icon" aria-hidden="true"'


@cache
def icon(name: str) -> Markup:
    """An icon of the theme's set by its name; 24 px, and silent, since a word stands beside it."""
    svg = (files("material") / "templates" / ".icons" / "material" / f"{name}.svg").read_text("utf-8").strip()
    if not svg.startswith(_OPEN):
        raise ValueError(f"{name} is not an icon of the form that the theme ships")
    return Markup(_OURS + svg.removeprefix(_OPEN))
