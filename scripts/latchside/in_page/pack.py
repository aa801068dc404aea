"""The files of a pack, made in the page: the file of a survey is read as the command reads it."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from functools import cache, cached_property
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from latchside.figures.catalogue import figures_of
from latchside.kinds import DRAWINGS
from latchside.library.model import Library
from latchside.packs.pack import pack
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan
from latchside.planning.unread import with_unread
from latchside.read.svg import Element, Picture, read_svg
from latchside.root import ROOT
from latchside.schemas import Schemas
from latchside.surveys.read import read_survey


def files(survey: str, today: str, library: Library, site: str) -> dict[str, bytes]:
    """Content by name; `site` is the address of the site, empty where no other phone could open it.

    Raises ValueError where no opening of the survey can be read.
    """
    plan = _plan(survey, today, library)
    return pack(plan, replace(library, drawings=_drawings()), site=site)


def _plan(survey: str, today: str, library: Library) -> Plan:
    with TemporaryDirectory() as folder:
        path = Path(folder) / f"{json.loads(survey)['id']}.json"
        path.write_text(survey, "utf-8")
        read, found = read_survey(path, _Checked(library.schemas.documents))
    if read is None:
        raise ValueError("; ".join(one.found for one in found))
    plan = make_plan(read, library, figures_of(library), read.surveyed or date.fromisoformat(today))
    return with_unread(plan, found)


class _Fits:
    """In the place of a validator."""

    def is_valid(self, data: object) -> bool:
        """Yes."""
        return True


class _Checked(Schemas):
    """The schemas where the page has checked already that a survey fits: a page has no validator of Python."""

    @cached_property
    def quick(self) -> dict[str, Any]:
        """What stands for the validator of surveys."""
        return {"job": _Fits()}


@cache
def _drawings() -> dict[str, Picture]:
    """The drawings of the site, which only documents show."""
    found = ((path, read_svg(path.read_text("utf-8"), path.name)) for path in (ROOT / DRAWINGS).glob("*.svg"))
    return {path.stem: Picture(path.name, path.stem, one) for path, one in found if isinstance(one, Element)}
