"""The colours of drawings and pages against the contrast that the Web Content Accessibility Guidelines ask.

WCAG 2.2 (W3C Recommendation): the definitions of relative luminance and of contrast ratio; success criterion 1.4.3 asks
4.5 : 1 of text, 1.4.6 asks 7 : 1, and 1.4.11 asks 3 : 1 of the edges of controls and of the parts of a graphic that are
needed to understand it. Pages are read in the sun: all their text keeps 7 : 1.
"""

from __future__ import annotations

import re

import pytest

from latchside.drawings.plain import COLOURS, DARK, GROUNDS, HATCHING, INKS, NIGHT
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


def pairs_in_use() -> set[tuple[str, str]]:
    """Every ink that a rule of the sheets sets on a ground of its own."""
    found = set()
    for path in (ROOT / "content" / "assets").glob("*.css"):
        sheet = re.sub(r"/\*.*?\*/", "", path.read_text("utf-8"), flags=re.DOTALL)
        for rule in re.findall(r"\{([^{}]*)\}", sheet):
            ground = re.search(r"(?<![-\w])background(?:-color)?:[^;]*var\(--ls-([a-z-]+)\)", rule)
            ink = re.search(r"(?<![-\w])color: var\(--ls-([a-z-]+)\)", rule)
            if ground and ink:
                found.add((ink[1], ground[1]))
    return found


@pytest.mark.parametrize("mode", ["day", "night"])
def test_every_pair_that_the_sheets_use_keeps_its_contrast(mode: str) -> None:
    colours, pairs = tokens()[mode], pairs_in_use()
    assert len(pairs) >= 10
    low = {pair: round(contrast(colours[pair[0]], colours[pair[1]]), 2) for pair in pairs}
    assert not {pair: ratio for pair, ratio in low.items() if ratio < IN_SUN}


def test_every_colour_is_tried() -> None:
    """A hairline only parts what space parts already, and is no edge that has to be seen."""
    tried = {*SURFACES, *ON_SURFACES, *NOTES, *(f"on-{note}" for note in NOTES), "edge", "focus"}
    tried |= {f"drawn-{role}" for role in COLOURS.values()}
    assert set(tokens()["day"]) - tried == {"rule"}


@pytest.mark.parametrize("mode", ["day", "night"])
def test_edges_of_controls_and_the_focus_are_seen_on_every_surface(mode: str) -> None:
    colours = tokens()[mode]
    for surface in SURFACES:
        for line in ("edge", "focus"):
            assert contrast(colours[line], colours[surface]) >= PART, (line, surface)


def drawn(mode: str, role: str) -> str:
    """The colour of a role of drawings in a mode; ink is the page's own."""
    return tokens()[mode]["ink" if role == "ink" else f"drawn-{role}"]


@pytest.mark.parametrize("mode", ["day", "night"])
@pytest.mark.parametrize("ground", [*GROUNDS, *SURFACES])
def test_labels_and_lines_of_drawings_on_every_ground(mode: str, ground: str) -> None:
    """A drawing has no ground of its own: what stands beside a part stands on whatever surface holds the drawing."""
    under = drawn(mode, ground) if ground in GROUNDS else tokens()[mode][ground]
    for ink in INKS:
        assert contrast(drawn(mode, ink), under) >= IN_SUN
    for line in DARK:  # as a line it is the field and the reed
        assert contrast(drawn(mode, line), under) >= PART


@pytest.mark.parametrize("mode", ["day", "night"])
def test_hatching_and_the_mark_on_a_magnet(mode: str) -> None:
    for hatching in HATCHING:
        assert contrast(drawn(mode, hatching), drawn(mode, "paper")) >= PART
    for dark in DARK:
        assert contrast(drawn(mode, "paper"), drawn(mode, dark)) >= TEXT  # the mark is of the colour of paper


def test_a_drawing_in_its_file_has_the_colours_of_the_page() -> None:
    for colour, role in COLOURS.items():
        assert role == "ink" or drawn("day", role) == colour
    for role, colour in NIGHT.items():  # of a file that follows the mode by itself
        assert drawn("night", role) == colour


def test_paper_is_lit_by_day() -> None:
    """Night is for screens: in print no token is dark."""
    sheet = (ROOT / "content" / "assets" / "tokens.css").read_text("utf-8")
    assert re.findall(r"@media ([^{]*prefers-color-scheme[^{]*) \{", sheet) == [
        "screen and (prefers-color-scheme: dark)"
    ]
    print_ = sheet[sheet.index("@media print") :]
    assert "#" not in print_


def test_night_changes_every_colour_of_the_day() -> None:
    modes = tokens()
    assert not [name for name, colour in modes["day"].items() if modes["night"][name] == colour]
