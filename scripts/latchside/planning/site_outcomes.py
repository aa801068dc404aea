"""What a reader would notice of the plan of the whole site: its figures, its cautions, and what stands against it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from copy import copy
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from latchside.planning.cautions import cautions
from latchside.planning.decides import Effect, effect, of_lines, together
from latchside.planning.looked_at import Key, looked, told
from latchside.planning.names import names
from latchside.planning.outcomes import Chosen, Outcomes
from latchside.planning.plan import Line, Problem
from latchside.planning.short_names import limit_of
from latchside.planning.site_figures import site_figures
from latchside.planning.site_problems import site_problems
from latchside.planning.zone_problems import position_problems
from latchside.planning.zones import ALWAYS_ON, zones
from latchside.surveys.survey import Survey


@dataclass(frozen=True)
class Named:
    """The name of each zone as it is spoken, and whether it keeps to the limit of the keypad."""

    spoken: tuple[tuple[str, bool], ...]


class SiteOutcomes:
    """The outcomes of one site, with the choices of its openings as they stand."""

    def __init__(
        self, survey: Survey, chosen: Sequence[Chosen], lines: Sequence[tuple[Line, ...]], outcomes: Outcomes
    ) -> None:
        self._survey, self._outcomes = survey, outcomes
        self._plans = [
            outcomes.plan(opening, choice, found)
            for opening, choice, found in zip(survey.openings, chosen, lines, strict=True)
        ]
        self._works: tuple[Callable[..., Any], ...] = self._all()

    def _all(self) -> tuple[Callable[..., Any], ...]:
        return self._problems, self._figures, self._names, self._cautions

    @property
    def parts(self) -> tuple[Any, ...]:
        """Site and control unit, each at its place among the facts."""
        return None, self._survey.site, self._survey.control_unit

    def beside(self, place: int, part: Any) -> SiteOutcomes:
        """The same openings with another site or control unit."""
        made = copy(self)
        for name in ("_base", "_zones", "_taken"):
            made.__dict__.pop(name, None)
        made._survey = replace(self._survey, **{("", "site", "control_unit")[place]: part})
        made._works = made._all()
        return made

    def effect(self, key: Key, answers: Sequence[Any]) -> Effect | None:
        """What the answers of a field of the site or of the control unit decide."""
        place, name = key
        for work, (before, looks) in zip(self._works, self._base, strict=True):
            if (place - 1, name) not in looks:
                continue
            met: list[Effect] = []
            for number, value in enumerate((*answers, *self._beside(name))):
                if met and number > 1:
                    break
                parts = [told(one, name, value) if at == place else one for at, one in enumerate(self.parts)]
                met += _differences(before, work(*parts[1:]))
            if met:
                return together(met)
        return None

    def _beside(self, name: str) -> tuple[int, ...]:
        """Numbers of positions beside the number of zones of this site."""
        taken = self._taken.get(name.removesuffix("_positions"), 0)
        return (max(0, taken - 1), taken) if name.endswith("_positions") else ()

    @cached_property
    def _base(self) -> list[tuple[Any, Any]]:
        return [looked(work, self._survey.site, self._survey.control_unit) for work in self._works]

    @cached_property
    def _zones(self) -> list[Any]:
        return [one for one in zones(self._survey, self._plans, self._outcomes.library) if one.response != ALWAYS_ON]

    @cached_property
    def _taken(self) -> dict[str, int]:
        return {link: sum(zone.link == link for zone in self._zones) for link in ("wired", "radio")}

    def _with(self, site: Any, unit: Any) -> Survey:
        return replace(self._survey, openings=(), site=site, control_unit=unit)

    def _problems(self, site: Any, unit: Any) -> tuple[Problem, ...]:
        told = site_problems(self._with(site, unit))
        return (*position_problems(unit, self._zones), *told)

    def _figures(self, site: Any, unit: Any) -> tuple[tuple[str, str], ...]:
        found = site_figures(self._with(site, unit), self._plans, self._outcomes.figures, self._outcomes.house)
        return tuple((line.name, line.verdict) for line in found)

    def _names(self, site: Any, unit: Any) -> Named:
        limit = limit_of(unit, self._outcomes.house)
        named = names(self._survey.openings, limit, unit.zones_in_use)
        return Named(tuple((one.spoken, limit.fits(one.spoken)) for one in named))

    def _cautions(self, site: Any, unit: Any) -> frozenset[str]:
        found = cautions(self._with(site, unit), (), self._outcomes.library, self._outcomes.house)
        return frozenset(one.caution for one in found if "site" in one.about)


def _differences(before: Any, after: Any) -> list[Effect]:
    if before == after:
        return []
    if isinstance(before, Named):
        return [effect("zone", "names")]
    if isinstance(before, frozenset):
        return [effect("caution", one) for one in sorted(before ^ after)]
    if (before and isinstance(before[0], Problem)) or (after and isinstance(after[0], Problem)):
        codes = [{one.code: one.found for one in side} for side in (before, after)]
        gone = codes[0].keys() ^ codes[1].keys()
        return [effect("problem", codes[0].get(one) or codes[1][one]) for one in sorted(gone)]
    return list(of_lines(before, after))
