"""A plan with its figures in one system of units, that of the region of its site."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from typing import Any

from latchside.figures.one_system import in_system
from latchside.library.regions import REGION_OF
from latchside.planning.plan import Plan
from latchside.surveys.survey import Opening, Survey


def region_of(plan: Plan) -> str | None:
    """The region whose words and units hold at the site; None where the survey names none."""
    return REGION_OF.get(plan.survey.site.region or "")


def is_imperial(plan: Plan) -> bool:
    """Whether the site reads inches and feet; where no region is named, as the survey was measured."""
    region = region_of(plan)
    return plan.survey.units == "imperial" if region is None else region == "north_america"


def in_system_of(plan: Plan) -> Plan:
    """The same plan, each quantity in one system. What the survey itself says stays as it was written."""
    made: Plan = _in_system(plan, imperial=is_imperial(plan))
    return made


def _in_system(value: Any, *, imperial: bool) -> Any:
    if isinstance(value, str):
        return in_system(value, imperial=imperial)
    if isinstance(value, tuple):
        return tuple(_in_system(one, imperial=imperial) for one in value)
    if isinstance(value, Opening | Survey | Mapping) or not is_dataclass(value) or isinstance(value, type):
        return value
    made = {one.name: _in_system(getattr(value, one.name), imperial=imperial) for one in fields(value)}
    return replace(value, **made)
