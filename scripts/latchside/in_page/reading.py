"""The plan of the file of a survey, which is read in the page as the command reads it."""

from __future__ import annotations

import json
from datetime import date
from functools import cached_property
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from latchside.figures.catalogue import figures_of
from latchside.library.model import Library
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan
from latchside.planning.unread import with_unread
from latchside.schemas import Schemas
from latchside.surveys.read import read_survey


def plan_of(survey: str, today: str, library: Library) -> Plan:
    """The plan of the text of a file. Raises ValueError where no opening of the survey can be read."""
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
