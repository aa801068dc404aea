"""What openings took on finished visits, counted from records by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from latchside.cli import main
from latchside.visits.minutes import BROKEN, NO_START, TOO_LONG, Minutes, minutes, paces
from latchside.visits.state import view

from ..visits.make import Entry, entry, item, record, site, some_id
from .test_visit_file import saved

DEVICES = ["surface-contact", "recessed-contact"]


def door(number: int) -> str:
    return some_id(9000 + number)


class Day:
    """A day of one technician, written down tick by tick."""

    def __init__(self, by: str = "Anna") -> None:
        self.entries: list[Entry] = [site()]
        self._by = by

    def opening(self, number: int, device: str = "surface-contact") -> None:
        fields = {"opening": door(number), "name": f"Window {number}", "device": device, "removed": False, "after": []}
        self._add("opening", "08:00", **fields)

    def tick(self, at: str, number: int | None, checklist: str = "position") -> None:
        n = len(self.entries) + 1
        made = item(n, n, opening=door(number) if number else None, checklist=checklist, item=f"item-{n}")
        self.entries.append({**made, "at": f"2026-03-09T{at}:00.000+00:00", "by": self._by})

    def proved(self, at: str, number: int) -> None:
        words = {"list_name": "Proof", "list_version": 1, "words": "Proved.", "after": []}
        self._add("complete", at, checklist="proving-each-opening", opening=door(number), **words)

    def _add(self, kind: str, at: str, **fields: object) -> None:
        n = len(self.entries) + 1
        self.entries.append(entry(kind, n, n, **{**fields, "at": f"2026-03-09T{at}:00.000+00:00", "by": self._by}))


def counted(day: Day) -> Minutes:
    return minutes([view(day.entries)], DEVICES)


def test_an_opening_runs_from_the_last_tick_elsewhere_to_its_proof() -> None:
    day = Day()
    for number in (1, 2):
        day.opening(number)
    day.tick("08:30", None, "arrival-on-test")
    day.tick("08:41", 1)
    day.proved("08:58", 1)
    day.tick("09:07", 2)
    day.proved("09:20", 2)
    assert counted(day).of == {"surface-contact": [28.0, 22.0]}


def test_what_cannot_be_told_is_left_out_with_its_reason() -> None:
    day = Day()
    for number in (1, 2, 3, 4):
        day.opening(number)
    day.tick("08:05", 1)
    day.proved("08:20", 1)  # nothing was ticked before it
    day.tick("08:30", 2)
    day.tick("08:35", 3)
    day.proved("08:40", 2)  # the third opening was worked at in between
    day.tick("09:00", 4)
    day.proved("13:30", 4)
    assert dict(counted(day).left_out) == {NO_START: 1, BROKEN: 1, TOO_LONG: 1}
    assert counted(day).of == {}


def test_an_opening_that_was_not_proved_is_not_counted() -> None:
    day = Day()
    day.opening(1)
    day.tick("08:30", None, "arrival-on-test")
    day.tick("08:41", 1)
    assert counted(day) == Minutes()


def test_two_phones_with_clocks_of_their_own_are_not_mixed() -> None:
    day, other = Day(), Day("Ben")
    day.opening(1)
    day.tick("08:30", None, "arrival-on-test")
    day.tick("08:41", 1)
    day.proved("08:58", 1)
    other.tick("03:00", 1, "fixing")
    mixed = [*day.entries, *({**one, "id": some_id(500 + n), "n": 50 + n} for n, one in enumerate(other.entries[1:]))]
    assert dict(minutes([view(mixed)], DEVICES).left_out) == {BROKEN: 1}


def test_a_pace_needs_five_openings() -> None:
    assert paces(Minutes({"surface-contact": [20.0] * 4})) == {}
    pace = paces(Minutes({"surface-contact": [18.0, 20.0, 22.0, 24.0, 60.0]}))["surface-contact"]
    assert (pace.openings, pace.usual) == (5, 22.0)
    assert 18 <= pace.low < 20 < 24 < pace.high <= 60


@pytest.mark.parametrize("count", [3, 6])
def test_the_command_names_the_pace_to_plan_with(tmp_path: Path, count: int) -> None:
    day = Day()
    for number in range(1, count + 1):
        day.opening(number)
    day.tick("08:00", None, "arrival-on-test")
    for number in range(1, count + 1):
        day.tick(f"{8 + number // 2:02}:{30 * (number % 2):02}", number)
        day.proved(f"{8 + number // 2:02}:{30 * (number % 2) + 5:02}", number)
    result = CliRunner().invoke(main, ["times", str(saved(tmp_path, record(*day.entries)))])
    assert result.exit_code == 0, result.output
    assert ("pace-surface-contact: {value:" in result.output) == (count >= 5)
    assert ("too few" in result.output) == (count < 5)
