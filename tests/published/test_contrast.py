"""The colours of drawings against the contrast that the Web Content Accessibility Guidelines ask.

WCAG 2.2 (W3C Recommendation): the definitions of relative luminance and of contrast ratio; success criterion 1.4.3 asks
4.5 : 1 of text, 1.4.11 asks 3 : 1 of the parts of a graphic that are needed to understand it.
"""

from __future__ import annotations

import pytest

from latchside.drawings.plain import COLOURS, DARK, GROUNDS, HATCHING, INKS

TEXT, PART = 4.5, 3.0


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it, of a colour #rrggbb in sRGB."""
    linear = []
    for start in (1, 3, 5):
        share = int(colour[start : start + 2], 16) / 255
        linear.append(share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4)
    red, green, blue = linear
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio as WCAG 2.2 defines it, from 1 to 21."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [("#000000", "#ffffff", 21.0), ("#767676", "#ffffff", 4.54), ("#777777", "#ffffff", 4.48)],
)  # fmt: skip
def test_the_formula_gives_the_ratios_that_are_widely_stated(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize("ground", GROUNDS.values(), ids=GROUNDS)
def test_text_and_lines_on_every_ground(ground: str) -> None:
    for ink in INKS.values():
        assert contrast(ink, ground) >= TEXT


def test_hatching_on_paper_and_dark_parts_on_every_ground() -> None:
    for faded in HATCHING.values():
        assert contrast(faded, GROUNDS["paper"]) >= PART
    for dark in DARK.values():
        assert contrast(dark, GROUNDS["paper"]) >= TEXT  # the mark on a magnet is of the colour of paper
        for ground in GROUNDS.values():
            assert contrast(dark, ground) >= PART


def test_every_colour_has_one_use() -> None:
    assert len(COLOURS) == len(INKS) + len(HATCHING) + len(GROUNDS) + len(DARK)
