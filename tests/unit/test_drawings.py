"""Drawings are files: what stands in one comes onto the page, and nothing else does."""

from __future__ import annotations

import re
from pathlib import Path

import lxml.etree
import lxml.html
import pytest
from lxml.etree import _Element

from latchside import charts
from latchside.drawings.file import finished
from latchside.drawings.inline import inlined
from latchside.drawings.plain import COLOURS
from latchside.figures.words import in_words
from latchside.findings import Finding
from latchside.library import Library
from latchside.library.quantity import quantity
from latchside.messages import messages
from latchside.pages.drawn import drawn, files
from latchside.pages.page import Page
from latchside.pages.render import Writer
from latchside.read.svg import Picture, read_svg

from .support import RECORDS, base_library, change, lay

SVG = "{http://www.w3.org/2000/svg}"
XLINK = "{http://www.w3.org/1999/xlink}href"


def tree(svg: str) -> _Element:
    return lxml.etree.fromstring(svg.encode("utf-8"))


def labels(svg: str) -> list[str]:
    """The words of every label, its lines joined."""
    return [" ".join(str(line) for line in text.itertext()) for text in tree(svg).iter(f"{SVG}text")]


def labels_of(page: str) -> list[str]:
    """The words of every label of the drawings in a piece of a page."""
    found = lxml.html.fragment_fromstring(page, create_parent=True).iter("text")
    return [" ".join(str(line) for line in text.itertext()) for text in found]


def picture(inside: str, *, title: str = "A gate", about: str = "") -> Picture:
    read = read_svg(
        f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" {about} viewBox="0 0 9 9">'
        f"<title>{title}</title><desc>Where the sensor and the magnet go.</desc>{inside}</svg>",
        "gate.svg",
    )
    assert not isinstance(read, Finding), read
    return Picture("gate.svg", "gate", read)


# -- what is shipped -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("id_", "shown"),
    [
        ("surface-contact-front", {"sensor", "magnet", "screw hole", "reed on the magnet side"}),
        ("surface-contact-terminals", {"cover tamper", "cable entry", "terminals", "battery"}),
        ("recessed-contact-section", {"space behind", "hole depth", "axis", "cable"}),
        ("steel-door-sleeve", {"burr cuts the lead", "by thumb"}),
        ("opening-double-door-sleeved-two", {"Reeds up in the head", "second leaf: own contact", "sleeve"}),
        ("opening-hatch-bare", {"Hinge side", "Do not drill: ladder and spring"}),
        ("opening-casement", {"Hinge side", "Do not drill: gear of the handle", "Magnet on the sash"}),
        ("opening-roller-door", {"Sensor on the floor", "Do not drill: slats, guides"}),
        ("reed-and-leaf", {"normally open", "normally closed"}),
        ("metal-steals-the-radio", {"panel: may not hear it"}),
    ],
)
def test_the_labels_of_a_drawing(library: Library, id_: str, shown: set[str]) -> None:
    found = drawn(library, id_)
    assert found
    assert shown <= set(labels(found.drawing.svg))


def test_every_drawing_says_what_it_is(library: Library) -> None:
    titles = []
    for path, svg in files(library).items():
        root = tree(svg)
        titles.append((root.findtext(f"{SVG}title"), path.count("/")))
        assert len((root.findtext(f"{SVG}desc") or "").split()) >= 8, path
        named = str(root.get("aria-labelledby")).split()
        assert [one.get("id") for one in list(root)[:2]] == named, path
    general = [title for title, depth in titles if depth == 2]
    assert len(general) == len(set(general)) >= 40


def test_all_drawings_may_stand_in_one_document(library: Library) -> None:
    """No two ids are the same, and every reference stays inside its own drawing."""
    ids: list[str] = []
    for path, svg in files(library).items():
        if path.count("/") > 2:
            continue  # the same drawing with the values of a device
        own = re.findall(r' id="([^"]+)"', svg)
        assert set(re.findall(r"url\(#([^)]+)\)", svg)) <= set(own), path
        ids += own
    assert len(ids) == len(set(ids))


def test_a_page_shows_a_drawing_in_its_own_colours(library: Library) -> None:
    """By day, by night and on paper: whatever has a role takes its colour from the page, and says what it is."""
    for path, svg in files(library).items():
        id_ = Path(path).stem
        found = drawn(library, id_)
        assert found
        shown = str(inlined(found.drawing))
        assert not re.findall(r"#[0-9a-f]{6}\b", shown), id_
        assert set(re.findall(r"var\(--ls-drawn-([a-z]+)\)", shown)) <= set(COLOURS.values()) - {"ink"}
        assert f'aria-label="{found.drawing.title}"' in shown
        assert shown.count("<text") == svg.count("<text")


def test_a_resistor_keeps_the_colours_of_its_bands(library: Library) -> None:
    assert "#d11f1f" in inlined(charts.drawing(library, "resistor-bands"))  # red is red by night too


# -- values --------------------------------------------------------------------------------------------------


def test_a_device_sees_its_own_values(library: Library) -> None:
    for device_id, id_ in (("surface-contact", "surface-contact-front"), ("steel-door-contact", "steel-door-section")):
        device = library.find("device", device_id)
        assert device
        page = Page(library, device.address, device, device)
        said = in_words(quantity(device["values"]["fit-gap"]))
        assert f"gap: {said}" in labels_of(page.drawing(id_))
        assert ("device", device_id, "fit-gap") in page.values  # so that its status stands at the foot


def test_a_page_for_no_device_names_the_label(library: Library) -> None:
    page = Page(library, "procedures/try-gap/")
    unknown = messages("latchside.pages.drawn")("unknown")
    assert f"gap: {unknown}" in labels_of(page.drawing("surface-contact-front"))
    assert not page.values
    other = library.find("device", "wired-input-transmitter")
    elsewhere = drawn(library, "surface-contact-front", other)
    assert elsewhere
    assert f"gap: {unknown}" in labels(elsewhere.drawing.svg)


def test_a_drawing_is_shown_once_on_a_page(library: Library) -> None:
    page = Page(library, "study/")
    assert "<svg" in page.drawing("opening-gate")
    again = page.drawing("opening-gate")
    assert "<svg" not in again
    assert "#drawing-opening-gate" in again
    assert page.drawing("opening-gateau") == ""


# -- what a maintainer does ----------------------------------------------------------------------------------


def test_a_file_and_its_name_in_the_record_are_all_it_takes(tmp_path: Path) -> None:
    root = lay(tmp_path, RECORDS / "good" / "drawing-value" / "stated")
    (root / "content/drawings/reed-and-leaf.svg").rename(root / "content/drawings/pane-cut.svg")
    change(root, "content/drawings/pane-cut.svg", "Reed and leaf", "The pane, cut")
    change(root, "content/devices/pane-contact.yaml", "drawings: [reed-and-leaf]", "drawings: [pane-cut]")
    library = base_library(root)
    device = library.find("device", "pane-contact")
    assert device
    shown = Writer(library).record(device)
    assert "The pane, cut" in shown
    assert "gap  3 to 8\u00a0mm (0.12 to 0.31\u00a0in)" in labels_of(shown)


def test_what_a_drawing_program_adds_is_left_behind(tmp_path: Path) -> None:
    library = base_library(lay(tmp_path, RECORDS / "good" / "drawing-form" / "as-a-program-saves-it"))
    found = drawn(library, "reed-and-leaf")
    assert found
    root = tree(found.drawing.svg)
    assert {str(one.tag).partition("}")[0] for one in root.iter()} == {SVG.rstrip("}")}
    assert not [name for one in root.iter() for name in one.attrib if str(name).startswith("{") or name == "style"]
    body, moves = root.iter(f"{SVG}rect")
    assert (body.get("fill"), body.get("stroke"), body.get("stroke-width")) == ("#ffffff", "#111111", "1.75")
    pattern = root.find(f".//{SVG}pattern")
    assert pattern is not None
    assert moves.get("fill") == f"url(#{pattern.get('id')})"
    assert (root.get("width"), root.get("height")) == ("360", "120")  # units, whatever the paper was
    assert labels(found.drawing.svg) == ["gap"]


# -- what somebody hostile does ------------------------------------------------------------------------------


def test_text_stays_text() -> None:
    nasty = "&lt;script&gt;alert(1)&lt;/script&gt; ]]&gt; &quot;&amp;amp; {{x}} [[a]] "
    made = finished(picture(f'<text id="a" x="1" y="20">{nasty}</text>', title=nasty))
    plain = '<script>alert(1)</script> ]]> "&amp; {{x}} [[a]]'
    assert made.title == plain
    assert [one.strip() for one in labels(made.svg)] == [plain]
    assert not list(tree(made.svg).iter(f"{SVG}script"))


def test_a_value_stays_text() -> None:
    made = finished(picture('<text id="a" x="1" y="20">{{reach}}</text>'), (("reach", '<b onclick="x">&'),))
    assert labels(made.svg) == ['<b onclick="x">&']


@pytest.mark.parametrize(
    "inside",
    [
        "<script>alert(1)</script>",
        "<g><script>alert(1)</script></g>",
        '<foreignObject><body xmlns="http://www.w3.org/1999/xhtml" onload="alert(1)"/></foreignObject>',
        '<image href="data:image/png;base64,AA"/>',
        '<use xlink:href="#a"/>',
        '<a xlink:href="javascript:alert(1)"><rect width="9" height="9"/></a>',
        '<rect onclick="alert(1)"/>',
        '<rect fill="url(http://outside.example/#x)"/>',
        '<rect fill="u\\72l(http://outside.example)"/>',
        '<rect style="fill: url(//outside.example)"/>',
        '<style>@import "http://outside.example"</style>',
        '<animate attributeName="fill" values="red"/>',
        '<set attributeName="onclick" to="alert(1)"/>',
        '<x:script xmlns:x="http://www.w3.org/1999/xhtml">alert(1)</x:script>',
        '<svg onload="alert(1)"/>',
        '<text id="a"><script>alert(1)</script></text>',
    ],
)
def test_nothing_that_acts_or_asks_outside_comes_through(inside: str) -> None:
    made = finished(picture(inside, about='onload="alert(1)"'))
    allowed = {"svg", "title", "desc", "g", "rect", "text"}
    assert {str(one.tag).removeprefix(SVG) for one in tree(made.svg).iter()} <= allowed
    assert not re.search(r"alert|outside|javascript|href|\son\w+=|\\|data:", made.svg)


def test_entities_are_not_expanded() -> None:
    bomb = '<!DOCTYPE svg [<!ENTITY a "aa"><!ENTITY b SYSTEM "file:///etc/hostname">]>'
    for name in ("a", "b"):
        read = read_svg(f'{bomb}<svg xmlns="http://www.w3.org/2000/svg"><title>&{name};</title></svg>', "x.svg")
        assert isinstance(read, Finding)
        assert read.code == "broken-svg"
