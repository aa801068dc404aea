"""The colours of drawings and pages against the contrast that the Web Content Accessibility Guidelines ask.

WCAG 2.2 (W3C Recommendation): the definitions of relative luminance and of contrast ratio; success criterion 1.4.3 asks
4.5 : 1 of text, 1.4.6 asks 7 : 1, and 1.4.11 asks 3 : 1 of the edges of controls and of the parts of a graphic that are
needed to understand it. Pages are read in the sun: all their text keeps 7 : 1.
"""

from __future__ import annotations

import re

import pytest

from latchside.drawings.plain import COLOURS, DARK, GROUNDS, HATCHING, INKS
from latchside.root import ROOT

TEXT, PART, IN_SUN = 4.5, 3.0, 7.0


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


SURFACES = ("page", "raised", "sunken", "soft")
ON_SURFACES = ("ink", "quiet", "link")
NOTES = ("danger", "warning", "care", "notice", "good", "action")


def tokens() -> dict[str, dict[str, str]]:
    """The colours of the pages by mode: the first block of the sheet is the day's, and the second changes it."""
    sheet = (ROOT / "content" / "assets" / "tokens.css").read_text("utf-8")
    day, night = (dict(re.findall(r"--ls-([a-z-]+): (#[0-9a-f]{3,6});", part)) for part in sheet.split("@media", 1))
    modes = {"day": day, "night": {**day, **night}}
    return {
        mode: {name: colour if len(colour) == 7 else "#" + "".join(2 * sign for sign in colour[1:])
               for name, colour in found.items()}
        for mode, found in modes.items()
    }  # fmt: skip


@pytest.mark.parametrize("mode", ["day", "night"])
def test_all_text_of_pages_keeps_its_contrast_in_the_sun(mode: str) -> None:
    colours = tokens()[mode]
    pairs = [(ink, surface) for surface in SURFACES for ink in ON_SURFACES]
    pairs += [(f"on-{note}", note) for note in NOTES]
    low = {pair: contrast(colours[pair[0]], colours[pair[1]]) for pair in pairs}
    assert not {pair: round(ratio, 2) for pair, ratio in low.items() if ratio < IN_SUN}


@pytest.mark.parametrize("mode", ["day", "night"])
def test_edges_of_controls_and_the_focus_are_seen_on_every_surface(mode: str) -> None:
    colours = tokens()[mode]
    for surface in SURFACES:
        for line in ("edge", "focus"):
            assert contrast(colours[line], colours[surface]) >= PART, (line, surface)


def test_night_changes_every_colour_of_the_day() -> None:
    modes = tokens()
    assert not [name for name, colour in modes["day"].items() if modes["night"][name] == colour]
