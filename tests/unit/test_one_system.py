"""A text that names quantities in both systems of units, read in one of them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.one_system import amount_in, in_system
from latchside.figures.tape import on_a_tape
from latchside.figures.words import in_both, in_words
from latchside.library.quantity import Quantity

UNITS = ("mm", "cm", "m", "in", "ft", "kg", "degC", "degF", "N")
SIZES = st.floats(0.5, 5000).map(lambda value: float(f"{value:.3g}"))


@given(unit=st.sampled_from(UNITS), sizes=st.lists(SIZES, min_size=1, max_size=3, unique=True))
def test_each_quantity_reads_as_it_does_in_its_system(unit: str, sizes: list[float]) -> None:
    ends = sorted(sizes)
    quantities = [Quantity(unit, "computed", ends[0]), Quantity(unit, "computed", high=ends[-1])]
    if len(ends) > 1:
        quantities += [Quantity(unit, "computed", low=ends[0], high=ends[-1])]
        quantities += [Quantity(unit, "computed", one_of=tuple(ends))]
    for quantity in quantities:
        own, other, imperial = in_both(quantity)
        text = f"Fixed within {in_words(quantity)} of the edge, at most."
        assert in_system(text, imperial=imperial) == f"Fixed within {own} of the edge, at most."
        assert in_system(text, imperial=not imperial) == f"Fixed within {on_a_tape(other or '')} of the edge, at most."


@pytest.mark.parametrize("text", ["2.2\u00a0kΩ (series)", "Day 2 (3 of 4)", "at most 20\u00a0min", "4\u00a0mm"])
def test_all_else_stays_as_it_was(text: str) -> None:
    assert in_system(text, imperial=True) == in_system(text, imperial=False) == text


def test_a_figure_before_another_is_not_taken_for_the_first_of_a_range() -> None:
    text = "2 spacers of 5\u00a0mm (0.2\u00a0in)"
    assert in_system(text, imperial=True) == "2 spacers of 0.2\u00a0in"
    assert in_system(text, imperial=False) == "2 spacers of 5\u00a0mm"


def test_a_length_in_the_units_of_a_region() -> None:
    assert amount_in(4, "mm", imperial=False) == "4\u00a0mm"
    assert amount_in(4, "mm", imperial=True) == "0.16\u00a0in"
