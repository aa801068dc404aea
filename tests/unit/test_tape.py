"""Lengths at the marks of a tape, and the words of the region, as a technician of each continent reads them."""

from __future__ import annotations

import pytest

from latchside.figures.one_system import in_system


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("100\u00a0mm (3.94\u00a0in)", "4\u00a0in"),
        ("300\u00a0mm (11.81\u00a0in)", "12\u00a0in"),
        ("50 to 150\u00a0mm (1.97 to 5.91\u00a0in)", "2 to 6\u00a0in"),
        ("35\u00a0mm (1.38\u00a0in)", "1\u00a03/8\u00a0in"),
        ("19\u00a0mm (0.75\u00a0in)", "3/4\u00a0in"),
        ("2.03\u00a0m (6.7\u00a0ft)", "6\u00a0ft 8\u00a0in"),
        ("10\u00a0m (32.8\u00a0ft)", "33\u00a0ft"),
        ("3 to 9\u00a0mm (0.12 to 0.35\u00a0in)", "0.12 to 0.35\u00a0in"),  # read with a gauge, not with a tape
        (
            "1, 2 or 3\u00a0m (3.3, 6.6 or 9.8\u00a0ft)",
            "3\u00a0ft 4\u00a0in, 6\u00a0ft 7\u00a0in or 9\u00a0ft 10\u00a0in",
        ),
        ("2 to 4\u00a0m (6.6 to 13.1\u00a0ft)", "6\u00a0ft 7\u00a0in to 13\u00a0ft"),
        ("5\u00a0mm (0.2\u00a0in)", "0.2\u00a0in"),
    ],
)
def test_inches_and_feet_are_those_of_a_tape(text: str, shown: str) -> None:
    assert in_system(text, imperial=True) == shown


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("6\u00a0in (152\u00a0mm)", "150\u00a0mm"),
        ("3\u00a0ft (0.91\u00a0m)", "0.9\u00a0m"),
        ("2\u00a0in (50.8\u00a0mm)", "50\u00a0mm"),
    ],
)
def test_millimetres_are_those_that_a_person_sets(text: str, shown: str) -> None:
    assert in_system(text, imperial=False) == shown


def test_what_was_stated_in_a_system_stays_in_it() -> None:
    assert in_system("134\u00a0mm (5.28\u00a0in)", imperial=False) == "134\u00a0mm"
    assert in_system("0.19\u00a0in (5\u00a0mm)", imperial=True) == "0.19\u00a0in"


def test_a_figure_with_its_tolerance_keeps_its_digits() -> None:
    assert in_system("100\u00a0mm (3.94\u00a0in) ±5\u00a0%", imperial=True) == "3.94\u00a0in ±5\u00a0%"
