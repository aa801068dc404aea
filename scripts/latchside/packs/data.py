"""A plan as plain data, by schema/plan.schema.json.

Figures are written to nine digits: one processor's sine differs from another's in the last place, and the same survey
gives the same file wherever it is planned.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from math import isfinite
from typing import Any

from latchside.planning.plan import Plan

DIGITS = 9


def plan_data(plan: Plan) -> dict[str, Any]:
    """The whole plan. A figure that is not finite has no place in JSON and is None."""
    return {"format": "latchside-plan", "version": 1, **_plain(plan)}


def plan_json(plan: Plan) -> str:
    """The whole plan as a JSON text."""
    return json.dumps(plan_data(plan), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def _plain(value: Any) -> Any:
    if is_dataclass(value) and not isinstance(value, type):
        return {one.name: _plain(getattr(value, one.name)) for one in fields(value)}
    if isinstance(value, Mapping):
        return {str(name): _plain(below) for name, below in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(below) for below in value]
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, float):
        return _figure(value) if isfinite(value) else None
    if isinstance(value, str):
        return value.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
    return value if isinstance(value, bool | int) or value is None else str(value)


def _figure(value: float) -> float | int:
    rounded = float(f"{value:.{DIGITS}g}")
    return int(rounded) if rounded.is_integer() and abs(rounded) < 1e15 else rounded
