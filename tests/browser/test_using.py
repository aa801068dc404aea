"""Keys, boxes, the finder, paper, and what is left without scripts."""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import AbstractContextManager
from io import BytesIO
from pathlib import Path

import lxml.html
import pytest
from lxml.html import HtmlElement
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from latchside.library import Library

from ..long import LONG
from ..paper import sheets
from .field import ready

Visit = Callable[..., Page]
Watch = Callable[[], AbstractContextManager[Visit]]

PHONE = (390, 844)
DESK = (1280, 800)
SIZES = pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
# The room between the margins of our print sheet, in CSS pixels.
PAPERS = {"A4": 680, "Letter": 703}


def _tab_to(page: Page, chosen: str, at_most: int = 30) -> None:
    for _ in range(at_most):
        page.keyboard.press("Tab")
        if page.evaluate("chosen => document.activeElement.matches(chosen)", chosen):
            return
    pytest.fail(f"{at_most} presses of Tab do not reach {chosen}")


@SIZES
def test_keys_reach_the_first_row_and_follow_it(visit: Visit, size: tuple[int, int]) -> None:
    page = visit("", size)
    _tab_to(page, ".ls-rows > li:first-child > a")
    ring = page.evaluate(
        """() => { const s = getComputedStyle(document.activeElement);
          const colour = s.outlineColor.match(/[\\d.]+/g).map(Number);
          return {style: s.outlineStyle, width: parseFloat(s.outlineWidth), colour}; }"""
    )
    assert ring["style"] == "solid"
    assert ring["width"] >= 2
    assert _contrast_to_white(ring["colour"][:3]) >= 3
    page.keyboard.press("Enter")
    page.wait_for_url("**/on-site/")


def _contrast_to_white(colour: list[float]) -> float:
    red, green, blue = (v / 255 / 12.92 if v <= 10 else ((v / 255 + 0.055) / 1.055) ** 2.4 for v in colour)
    return 1.05 / (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05)


@SIZES
def test_a_key_skips_to_the_content(visit: Visit, size: tuple[int, int]) -> None:
    page = visit("procedures/meter-loop/", size)
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.matches('.md-skip')")
    page.keyboard.press("Enter")
    expect(page).to_have_url(re.compile(r"#\w+$"))


@pytest.mark.parametrize("address", ["devices/surface-contact/", "checklists/position/", "faults/reads-high/"])
def test_every_stop_of_the_tab_key_shows_a_ring(visit: Visit, address: str) -> None:
    page = visit(address, PHONE)
    seen = 0
    for _ in range(40):
        page.keyboard.press("Tab")
        stop = page.evaluate(
            """() => { const e = document.activeElement, s = getComputedStyle(e);
              return {ours: Boolean(e.closest('article')), what: e.outerHTML.slice(0, 80),
                ring: s.outlineStyle !== 'none' && parseFloat(s.outlineWidth) >= 2,
                box: e.getBoundingClientRect().height}; }"""
        )
        if stop["ours"]:
            seen += 1
            assert stop["ring"], stop["what"]
            assert stop["box"] > 0, stop["what"]
    assert seen > 10


@SIZES
def test_a_row_of_a_checklist_is_ticked_anywhere(visit: Visit, size: tuple[int, int]) -> None:
    page = ready(visit("checklists/position/", size))  # the row has the size that its tool gives it
    row = page.locator(".ls-item").first
    box = row.locator("input")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")  # past the list of sections and the contents
    _tab_to(page, ".ls-item input")
    expect(box).to_be_focused()
    page.keyboard.press("Space")
    expect(box).to_be_checked()
    page.keyboard.press("Space")
    expect(box).not_to_be_checked()
    area = row.bounding_box()
    assert area is not None
    for ticked, part in ((True, 0.02), (False, 0.5), (True, 0.8)):  # at the end stands More
        row.click(position={"x": area["width"] * part, "y": area["height"] / 2})
        expect(box).to_be_checked(checked=ticked)
    row.click(position={"x": area["width"] * 0.5, "y": area["height"] - 4})
    expect(box).not_to_be_checked()


def test_a_tick_is_told_by_more_than_colour(visit: Visit) -> None:
    page = visit("checklists/position/", PHONE)
    row = page.locator(".ls-item").first
    row.click()
    expect(row.locator("input")).to_be_checked()
    expect(row.locator("input")).to_have_css("appearance", "auto")  # the browser's own box, with its tick


def test_a_reading_can_be_written_beside_its_item(visit: Visit) -> None:
    page = visit("checklists/position/", PHONE)
    field = page.get_by_label("Reading").first
    field.fill("12.5")
    expect(field).to_have_value("12.5")
    assert page.locator(".ls-item input:checked").count() == 0


@SIZES
def test_how_leads_from_an_item_to_its_step(visit: Visit, size: tuple[int, int]) -> None:
    page = visit("checklists/position/", size)
    page.locator(".ls-more summary").first.click()
    link = page.locator(".ls-how a").first
    target = link.get_attribute("href") or ""
    link.click()
    page.wait_for_url(f"**/{target.removeprefix('../../')}")
    step = page.locator(f"[id='{target.partition('#')[2]}']")
    expect(step).to_be_in_viewport()
    assert page.locator(".ls-item input:checked").count() == 0


@pytest.mark.parametrize(("size", "deeper"), [(PHONE, False), (DESK, True)], ids=["root-phone", "below-a-path-desk"])
def test_the_finder_leads_to_a_step_by_keys(
    visit: Visit, base: str, deeper_base: str, size: tuple[int, int], deeper: bool
) -> None:
    page = visit("faults/", size, at=deeper_base if deeper else base)
    page.locator("button.ls-find-open").wait_for()
    page.keyboard.press("/")
    expect(page.locator(".ls-finder").get_by_role("combobox")).to_be_focused()
    page.keyboard.type("hold a test magnet at the mark on the sensor")
    found = page.locator("[role=option][href$='faults/shows-open-when-shut/#check-test-magnet']")
    expect(found).to_be_visible()
    while found.get_attribute("aria-selected") != "true":
        page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile(r"/faults/shows-open-when-shut/#check-test-magnet$"))
    expect(page.locator("#check-test-magnet")).to_be_in_viewport()


def test_the_site_works_below_a_path(visit: Visit, deeper_base: str) -> None:
    page = visit("", PHONE, at=deeper_base)
    for words, end in (("On site", "on-site/"), ("Position", "checklists/position/")):
        page.locator(".ls-rows a", has=page.locator("strong", has_text=re.compile(f"^{words}$"))).first.click()
        page.wait_for_url(deeper_base + end)
    page.locator(".ls-more summary").first.click()
    page.locator(".ls-how a").first.click()
    page.wait_for_url(deeper_base + "procedures/**")
    page.locator(".ls-path a").first.click()
    page.wait_for_url(deeper_base)


def _folded(text: str) -> str:
    """The text without its white space, which a page break or a line break may put anywhere."""
    return re.sub(r"\s+", "", text)


def _wanted(site: Path, address: str, chosen: str) -> list[str]:
    document: HtmlElement = lxml.html.document_fromstring((site / address / "index.html").read_text("utf-8"))
    return [element.text_content() for element in document.xpath(chosen)]


@pytest.mark.parametrize(
    ("address", "chosen"),
    [
        ("devices/surface-contact/position/", '//*[@class="ls-do" or @class="ls-result" or @class="ls-num"]'),
        ("checklists/position/", '//label[@class="ls-item"] | //p[@class="ls-complete"] | //span[@class="ls-expect"]'),
        ("faults/reads-high/", '//p[@class="ls-do"] | //dl[@class="ls-results"]/* | //div[@class="ls-remedy"]//li'),
        ("cards/meter/", "//article//td | //article//th | //article//li"),
        ("tables/end-of-line-habits/", "//article//td | //article//th"),
    ],
    ids=["stage", "checklist", "fault", "card", "table"],
)
def test_paper_holds_it_all(visit: Visit, site: Path, address: str, chosen: str) -> None:
    """With every fold open, and with the words and units of every region; on Letter it is read in the long run."""
    page = visit(address, DESK)
    wanted = _wanted(site, address, chosen)
    assert len(wanted) > 10
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    page.evaluate("delete document.documentElement.dataset.region")
    for paper, width in {"A4": 595.3, "Letter": 612}.items():
        made = page.pdf(format=paper, print_background=False)
        if paper == "A4" or LONG:
            printed = _folded("".join(sheets(made)))
            assert not [text for text in wanted if _folded(text) not in printed]
        assert all(abs(float(sheet.mediabox.width) - width) < 1 for sheet in PdfReader(BytesIO(made)).pages)


def test_paper_holds_every_command_of_the_records(visit: Visit, shipped_library: Library) -> None:
    """Straight from the records to the paper, for three stages of one device, with the folds as they are."""
    stages = ("position", "wire", "prove")
    made = [visit(f"devices/recessed-contact/{stage}/", PHONE).pdf(format="A4") for stage in stages]
    printed = _folded("".join(sheet for one in made for sheet in sheets(one)))
    device = shipped_library.find("device", "recessed-contact")
    assert device is not None
    commands = [
        step["do"]
        for stage in stages
        for id_ in device["procedures"][stage]
        for procedure in [shipped_library.records["procedure"][id_]]
        for group in procedure["steps"]
        for step in group.get("do", ())
        if "recessed-contact" in group.get("only", ["recessed-contact"])
        and "recessed-contact" in step.get("only", ["recessed-contact"])
        and "[[" not in step["do"]
    ]
    assert len(commands) > 30
    assert not [command for command in commands if _folded(command) not in printed]


@pytest.mark.parametrize(
    "address",
    [
        "devices/surface-contact/",
        "devices/surface-contact/install/",
        "devices/recessed-contact/wire/",
        "checklists/position/",
        "procedures/meter-loop/",
        "faults/reads-high/",
        "tables/end-of-line-habits/",
        "terms/",
        "cards/placement/",
        "cards/two-continents/",
    ],
)
def test_nothing_is_cut_at_the_edge_of_the_paper(visit: Visit, address: str) -> None:
    page = visit(address, DESK)
    page.emulate_media(media="print")
    for width in PAPERS.values():
        page.set_viewport_size({"width": width, "height": 1000})
        assert page.evaluate(CUT) == []


CUT = """() => { const width = document.documentElement.clientWidth, cut = [];
          for (const e of document.querySelectorAll('article, article *')) {
            const box = e.getBoundingClientRect(), style = getComputedStyle(e);
            if (!box.width || e.closest('svg')) continue;
            if (box.right > width + 1 || box.left < -1)
              cut.push(`${e.tagName}.${e.className} to ${Math.round(box.right)} of ${width}`);
            if (style.overflowX !== 'visible' && e.scrollWidth > e.clientWidth + 1)
              cut.push(`${e.tagName}.${e.className} holds ${e.scrollWidth} in ${e.clientWidth}`);
          }
          return cut; }"""


def test_paper_leaves_out_what_only_a_screen_needs(visit: Visit) -> None:
    page = visit("checklists/position/", DESK)
    page.emulate_media(media="print")
    for chosen in (".md-header", ".md-footer", ".md-sidebar--secondary", ".ls-path"):
        expect(page.locator(chosen)).to_be_hidden()
    for chosen in (".ls-sheet-head", ".ls-box", ".ls-items", "h1"):
        expect(page.locator(chosen).first).to_be_visible()


@pytest.mark.parametrize(
    ("address", "chosen"),
    [
        ("devices/surface-contact/position/", ".ls-do"),
        ("checklists/position/", ".ls-item"),
        ("faults/reads-high/", ".ls-do"),
        ("procedures/meter-loop/", ".ls-do"),
        ("terms/", "summary"),
        ("cards/meter/", "figure svg"),
    ],
)
def test_without_scripts_all_is_there(visit: Visit, site: Path, address: str, chosen: str) -> None:
    page = visit(address, PHONE, java_script_enabled=False)
    shown = page.locator(f"article {chosen}")
    document: HtmlElement = lxml.html.document_fromstring((site / address / "index.html").read_text("utf-8"))
    assert shown.count() == len(document.find_class(chosen.lstrip(".")) if chosen.startswith(".") else document.xpath(
        {"summary": "//article//summary", "figure svg": "//article//figure//*[local-name()='svg']"}[chosen]
    ))  # fmt: skip
    assert shown.count() > 2
    assert shown.evaluate_all("all => all.every(e => e.getBoundingClientRect().height > 10)")


def test_without_scripts_links_and_boxes_work(visit: Visit) -> None:
    page = visit("", PHONE, java_script_enabled=False)
    page.locator(".ls-rows a").first.click()
    page.wait_for_url("**/on-site/")
    page.locator(".ls-rows a").first.click()
    page.wait_for_url("**/checklists/**")
    page.locator(".ls-item").first.click()
    expect(page.locator(".ls-item input").first).to_be_checked()
