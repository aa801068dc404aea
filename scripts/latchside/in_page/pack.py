"""The files of a pack, made in the page."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from latchside.in_page.reading import plan_of
from latchside.kinds import DRAWINGS
from latchside.library.model import Library
from latchside.packs.pack import pack
from latchside.read.svg import Element, Picture, read_svg
from latchside.root import ROOT


def files(survey: str, today: str, library: Library, site: str) -> dict[str, bytes]:
    """Content by name; `site` is the address of the site, empty where no other phone could open it.

    Raises ValueError where no opening of the survey can be read.
    """
    plan = plan_of(survey, today, library)
    return pack(plan, replace(library, drawings=_drawings()), site=site)


@cache
def _drawings() -> dict[str, Picture]:
    """The drawings of the site, which only documents show."""
    found = ((path, read_svg(path.read_text("utf-8"), path.name)) for path in (ROOT / DRAWINGS).glob("*.svg"))
    return {path.stem: Picture(path.name, path.stem, one) for path, one in found if isinstance(one, Element)}
