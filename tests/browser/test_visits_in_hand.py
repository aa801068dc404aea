"""The tools in a gloved hand: large, within reach, readable when narrow or doubled, clean by axe, quick and small."""

from __future__ import annotations

import gzip
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from ..long import tries
from ..visits.make import item, site
from .contexts import Contexts
from .field import PHONE, add_opening, axe_finds, comes_to, more, new_page, other, put, ready, start_visit, tick

PROVING = "checklists/proving-each-opening/"


def list_in_use(page: Page, base: str) -> None:
    """A checklist with everything open that can be open."""
    start_visit(page, base)
    add_opening(page, "Ground floor, garden side, back door", "surface-contact")
    page.get_by_role("link", name="Proving an opening").click()
    ready(page)
    tick(page, "latched")
    other(page.locator("#item-look"), "Problem", "What is the problem?", "Hinge is loose")
    page.wait_for_selector("#item-look[data-state=problem]")
    page.locator("#item-play").get_by_label("Reading").fill("7")
    more(page.locator("#item-knock")).get_by_role("button", name="Not done?").click()
    more(page.locator("#item-restore")).get_by_role("button", name="Not done?").click()
    page.locator("#item-restore").get_by_role("button", name="Problem", exact=True).click()
    page.get_by_role("button", name="Change where it writes to").click()
    expect(page.get_by_label("Opening", exact=True)).to_be_visible()
    page.get_by_role("button", name="Start this list anew").click()
    expect(page.get_by_role("button", name="Take them all back")).to_be_visible()


def visits_listed(page: Page, base: str) -> None:
    """The page of visits with one of them listed."""
    start_visit(page, base)
    page.get_by_role("button", name="All visits").first.click()
    expect(page.get_by_role("link", name="Elm House")).to_be_visible()


def visit_open(page: Page, base: str) -> None:
    """A visit with an opening and a note."""
    start_visit(page, base)
    add_opening(page, "Back door", "surface-contact")
    page.get_by_label("A note about this visit").fill("Dog in the yard")
    page.get_by_role("button", name="Save the note").click()
    expect(page.locator(".ls-visit")).to_contain_text("Dog in the yard")


STATES: dict[str, Callable[[Page, str], None]] = {"list": list_in_use, "visits": visits_listed, "visit": visit_open}


@pytest.fixture(scope="module", params=STATES)
def shown(request: pytest.FixtureRequest, browser: Browser, contexts: Contexts, base: str) -> Iterator[Page]:
    """A page in one of the states, which nobody changes."""
    with contexts.lent(browser, viewport=PHONE, service_workers="block", reduced_motion="reduce") as context:
        page = new_page(context, f"{base}visits/")
        STATES[request.param](page, base)
        yield page


@pytest.fixture
def context(browser: Browser, contexts: Contexts) -> Iterator[BrowserContext]:
    with contexts.lent(browser, service_workers="block") as lent:
        yield lent


@pytest.fixture
def in_use(shown: Page) -> Page:
    """That page on a phone, seen from its top."""
    shown.set_viewport_size(PHONE)
    shown.evaluate("scrollTo(0, 0)")
    return shown


TOO_SMALL = """() => [...document.querySelectorAll(
    'article :is(button, input, select, summary, .ls-item, .ls-rows a), .ls-bar button')]
  .filter(e => e.getClientRects().length && !e.matches('.ls-item input'))
  .map(e => ({what: `${e.tagName} ${e.className} ${e.textContent.slice(0, 30)}`,
    least: e.matches('.ls-item, .ls-rows a, .ls-main') ? 56 : 48,
    height: e.getBoundingClientRect().height, width: e.getBoundingClientRect().width}))
  .filter(one => one.height < one.least || one.width < 44)"""

TOO_WIDE = """() => [...document.querySelectorAll('article *, .ls-bar *')]
  .filter(e => e.getClientRects().length && !e.closest('.ls-table, .ls-figure, pre')
    && e.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
  .map(e => `${e.tagName} ${e.className} ${e.textContent.slice(0, 30)}`)"""


IN_THE_LOWER_HALF = """() => {
  const box = document.querySelector('.ls-bar .ls-main').getBoundingClientRect();
  return box.height > 0 && box.top > innerHeight / 2 && box.bottom <= innerHeight;
}"""


UNDER_THE_BAR = """() => {
  const bar = document.querySelector('.ls-bar'), it = document.activeElement;
  return !bar.contains(it) && it !== document.body && it.getBoundingClientRect().height > 0
    && it.getBoundingClientRect().bottom > bar.getBoundingClientRect().top;
}"""


def test_targets_are_large_enough(in_use: Page) -> None:
    comes_to(in_use, TOO_SMALL, [])


def test_axe_finds_nothing(in_use: Page) -> None:
    assert axe_finds(in_use) == []


def test_it_fits_a_narrow_screen(in_use: Page) -> None:
    for width, height in ((320, 568), (320, 256), (768, 1024)):
        in_use.set_viewport_size({"width": width, "height": height})
        comes_to(in_use, "innerWidth", width)
        comes_to(in_use, TOO_WIDE, [])
        comes_to(in_use, "document.documentElement.scrollWidth <= document.documentElement.clientWidth", True)


def test_it_fits_with_text_doubled(large_text_browser: Browser, base: str) -> None:
    context = large_text_browser.new_context(viewport={"width": 360, "height": 740}, service_workers="block")
    page = new_page(context, f"{base}visits/")
    list_in_use(page, base)
    comes_to(page, TOO_WIDE, [])
    comes_to(page, "getComputedStyle(document.querySelector('.ls-bar')).position", "static")
    context.close()


def test_the_main_actions_are_under_the_thumb(in_use: Page) -> None:
    """Where a list or a visit is open, its main action stands in the lower half, wherever one has scrolled to."""
    if not in_use.locator(".ls-bar:visible").count():
        return
    comes_to(in_use, "innerHeight", PHONE["height"])
    for at in (0, 500, 100_000):
        in_use.evaluate("y => scrollTo(0, y)", at)
        comes_to(in_use, IN_THE_LOWER_HALF, True)


def test_it_can_be_worked_with_the_keyboard_alone(context: BrowserContext, base: str) -> None:
    page = new_page(context, base + PROVING)
    page.locator("#item-look input[type=checkbox]").focus()
    page.keyboard.press("Space")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "done")
    page.keyboard.press("Tab")
    expect(page.locator("#item-look summary")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#item-look").get_by_role("button", name="Not done?")).to_be_visible()
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    expect(page.locator("#item-look").get_by_role("button", name="Not done?")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("#item-look").get_by_role("button", name="Problem", exact=True)).to_be_visible()
    for _ in range(20):  # to the end of the list and beyond: what has the focus lies under no bar
        page.keyboard.press("Tab")
        comes_to(page, UNDER_THE_BAR, False)


def test_our_scripts_on_a_checklist_page_are_small(browser: Browser, base: str, site: Path) -> None:
    """The list, with what every page has in its header."""
    context: BrowserContext = browser.new_context(service_workers="block")
    page = context.new_page()
    asked: set[str] = set()
    page.on("request", lambda request: asked.add(request.url) if "/assets/js/" in request.url else None)
    page.goto(base + PROVING, wait_until="networkidle")
    ready(page)
    names = {url.rpartition("/assets/js/")[2] for url in asked}
    size = sum(len(gzip.compress((site / "assets" / "js" / name).read_bytes(), 9)) for name in names)
    assert {"visit/checklist.js", "visit/store.js", "finder/start.js"} <= names
    assert size <= 34 * 1024, f"{size} bytes: {sorted(names)}"
    context.close()


def many_visits(count: int, items: int) -> list[dict[str, Any]]:
    """So many visits of so many items each, as they lie in the store."""
    rows: list[dict[str, Any]] = []
    for visit in range(count):
        id_ = f"{visit:08x}-2222-4222-8222-222222222222"
        entries = [
            site(site=f"Site {visit}"),
            *(item(2 + index, 2 + index, item=f"item-{index}") for index in range(items)),
        ]
        rows += [
            {**one, "visit": id_, "id": f"{visit:08x}-{index:04x}-4222-8222-222222222222"}
            for index, one in enumerate(entries)
        ]
    return rows


def test_two_hundred_visits_are_listed(context: BrowserContext, base: str) -> None:
    """Of sixty items each in the long run."""
    page = new_page(context, f"{base}visits/")
    put(page, many_visits(200, tries(6, 60)), sealed_by=f"{base}assets/js/visit/store.js")
    page.reload()
    ready(page)
    expect(page.locator(".ls-visits .ls-rows a")).to_have_count(200)
