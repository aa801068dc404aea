"""How many sides of A4 a page prints: a stage two, one of five procedures three, a list one; nothing is told twice."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page

from latchside.library import Library

from ..paper import sheets

Visit = Callable[..., Page]
PHONE = (390, 844)
PAPER = (703, 1000)
"""A4 less the margins, in pixels of 96 to the inch."""
DANGER = "Touching live line voltage will kill or burn."  # the browser of the tests is one of North America
SIDES = {
    "devices/surface-contact/survey/": 2,
    "devices/surface-contact/hand-over/": 2,
    "devices/recessed-contact/position/": 2,
    "devices/wide-reach-contact/wire/": 3,  # five procedures
    "checklists/survey-of-openings/": 1,
    "checklists/handover/": 1,
    "jobs/corner-bakery/handover/": 2,
}


@pytest.mark.parametrize(("address", "most"), SIDES.items(), ids=SIDES)
def test_a_page_prints_few_sides(visit: Visit, address: str, most: int) -> None:
    assert len(sheets(visit(address, PHONE).pdf(format="A4"))) <= most


def test_nothing_is_wider_than_the_paper(visit: Visit, shipped_library: Library) -> None:
    """A browser prints the whole of such a page smaller, and with it what has to be read in a hallway."""
    tables = [one.address for one in shipped_library.of("table")]
    jobs = [f"{one.address}{part}/" for one in shipped_library.of("job") for part in ("print", "zones", "test-sheet")]
    assert len(tables) > 10
    page = visit(tables[0], PAPER)
    page.emulate_media(media="print")
    base = page.url.removesuffix(tables[0])
    wide = {}
    for address in (*tables, *jobs):
        page.goto(base + address)
        wide[address] = page.evaluate("document.documentElement.scrollWidth")
    assert {address: width for address, width in wide.items() if width > PAPER[0]} == {}


def test_a_stage_tells_each_danger_in_full_once_and_keeps_every_command_and_reading(visit: Visit) -> None:
    page = visit("devices/recessed-contact/wire/", PHONE)
    printed = " ".join(" ".join(sheets(page.pdf(format="A4"))).split())
    assert printed.count(DANGER) == 1
    assert printed.count("Mains wiring") > 3
    for chosen in (".ls-do", ".ls-reads"):
        words = page.locator(f".ls-work {chosen}").all_text_contents()
        assert len(words) > 5
        page.emulate_media(media="print")
        hidden = page.locator(f".ls-work {chosen}").evaluate_all("all => all.filter(e => !e.checkVisibility()).length")
        assert not hidden, chosen
    assert "Find it before you meter any resistance" in printed  # what stops the work
    page.evaluate("window.print = () => {}")
    page.emulate_media(media="screen")
    page.get_by_role("button", name="Print everything").click()
    whole = " ".join(" ".join(sheets(page.pdf(format="A4"))).split())
    assert whole.count(DANGER) > 1
    assert len(whole) > 1.3 * len(printed)


def test_the_handover_sheet_is_signed_by_both(visit: Visit) -> None:
    printed = " ".join(sheets(visit("jobs/corner-bakery/handover/", PHONE).pdf(format="A4")))
    assert printed.count("(name, date, signature)") == 2
