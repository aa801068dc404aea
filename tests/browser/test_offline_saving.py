"""The copy a phone saves: complete or not called saved, there after a cold start, and going on where it broke off."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any
from urllib.parse import quote

import lxml.html
import pytest
from playwright.sync_api import Page, expect

from .field import ready
from .host import Host, Phone, standing, words
from .test_finder import opened

STORED = """async () => Promise.all((await caches.keys()).map(async (name) =>
  (await (await caches.open(name)).keys()).length))"""


BROUGHT = """addresses => Promise.all(addresses.map(async (address) => {
  const page = new DOMParser().parseFromString(await (await fetch(address)).text(), 'text/html');
  return page.querySelector('article h1').textContent.trim();
}))"""
"""The headings of pages, as the worker brings them with no server: far quicker than opening each."""


def listed(site: Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((site / "offline.json").read_text("utf-8"))
    return found


def first_visit(hand: Phone, host: Host) -> Page:
    page = hand.on()
    page.goto(host.base)
    standing(page, "saved")
    return page


def broke_off(page: Page) -> None:
    """Wait until the page says why nothing is saved."""
    expect(page.locator(".ls-strip-state")).to_contain_text(re.compile("^Not saved: (?!not yet)"))
    standing(page, "none")


def heading(site: Path, path: str) -> str:
    document = lxml.html.document_fromstring((site / path).read_text("utf-8"))
    return str(document.xpath("string(//article//h1)")).strip()


def test_every_page_of_the_first_copy_opens_cold_with_no_server(hand: Phone, host: Host, site: Path) -> None:
    """The copy of the whole site, as it is built; most other tests save that of few pages."""
    host.anew(site)
    page = first_visit(hand, host)
    assert re.fullmatch(r"Saved for offline: version \S+, (\d{4}-\d\d-\d\d|undated)", words(page))
    page.goto(f"{host.base}checklists/position/")
    ready(page)
    row = page.locator("[data-item]").first
    row.locator(".ls-item").click()
    expect(row).to_have_attribute("data-state", "done")
    host.stop()
    page = hand.on()
    pages = [path for path in listed(site)["first"] if path.endswith("index.html")]
    assert len(pages) > 110
    of_each_folder = {path.partition("/")[0]: path for path in pages}
    assert len(of_each_folder) > 8
    for path in of_each_folder.values():
        address = host.base + path.removesuffix("index.html")
        page.goto(address, wait_until="domcontentloaded")
        assert page.url == address
        assert page.locator("article h1").inner_text() == heading(site, path)
    brought = page.evaluate(BROUGHT, [host.base + path.removesuffix("index.html") for path in pages])
    assert brought == [heading(site, path) for path in pages]
    page.goto(f"{host.base}checklists/position/")
    expect(page.locator("[data-item]").first).to_have_attribute("data-state", "done")
    broken = page.evaluate("[...document.images].filter((image) => image.complete && !image.naturalWidth).length")
    assert broken == 0
    page.goto(f"{host.base}procedures/position-surface-contact/")
    page.wait_for_load_state("load")
    page.locator("details").evaluate_all("all => all.forEach((fold) => { fold.open = true; })")
    assert page.evaluate("[...document.images].filter((image) => !image.naturalWidth).map((image) => image.src)") == []
    assert hand.complaints == []


def test_the_promised_kinds_are_all_in_the_first_copy(site: Path) -> None:
    first = listed(site)["first"]
    for pattern in (
        "checklists/*/index.html",
        "faults/*/index.html",
        "cautions/*/index.html",
        "devices/*/install/index.html",
        "procedures/*/index.html",
        "figures/**/index.html",
    ):
        pages = [path.relative_to(site).as_posix() for path in site.glob(pattern)]
        assert pages, pattern
        assert set(pages) <= set(first), pattern
    scripts = [path.relative_to(site).as_posix() for path in (site / "assets" / "js").rglob("*.js")]
    assert {
        *scripts,
        "index.html",
        "on-site/index.html",
        "visits/index.html",
        "offline/index.html",
        "finder.json",
    } <= set(first)
    assert listed(site)["size"]["first"] <= 1_500_000


def test_the_finder_and_the_calculators_answer_with_no_server(saver: Phone, host: Host) -> None:
    host.stop()
    page = saver.on()
    page.goto(f"{host.base}cautions/ladders/")
    opened(page).fill("magnet fell off the door")
    expect(page.locator(".ls-finder [role=option]").first).to_contain_text("Adhesive let go")
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile(r"/faults/adhesive-let-go/$"))
    page.goto(f"{host.base}figures/")
    page.locator("article a[href$='loop-states/']").first.click()
    expect(page.locator("form[data-figure]:not([hidden])")).to_be_visible()


def test_what_is_not_saved_says_so_and_can_be_tried_again(saver: Phone, host: Host) -> None:
    host.stop()
    page = saver.on()
    address = "devices/surface-contact/"
    page.goto(host.base + address)
    assert page.url == f"{host.base}offline/?wanted={quote(address, safe='')}"
    expect(page.locator(".ls-wanted")).to_contain_text("not saved on this device")
    host.start()
    page.locator(".ls-wanted a").click()
    page.wait_for_url(host.base + address)


def test_a_server_that_dies_half_way_is_not_called_saved_and_is_gone_on_with(
    hand: Phone, host: Host, site: Path
) -> None:
    """With the whole site, of which a page by itself asks for the smaller part."""
    host.anew(site)
    files = len(listed(site)["first"])
    host.breaks_after = files // 2
    page = hand.on()
    page.goto(host.base)
    broke_off(page)
    came = max(page.evaluate(STORED))
    assert 10 < came < files
    host.stop()
    page = hand.on()
    with pytest.raises(Exception, match="ERR_CONNECTION_REFUSED"):
        page.goto(host.base)
    host.breaks_after = None
    host.asked.clear()
    host.start()
    page = hand.on()
    page.goto(host.base)
    standing(page, "saved")
    whole = [path for path in host.asked if path.startswith(("/checklists/", "/faults/", "/cautions/", "/procedures/"))]
    assert len(host.asked) < files
    assert len(whole) == len(set(whole))
    host.stop()
    page = hand.on()
    page.goto(f"{host.base}faults/reads-high/")
    expect(page.locator("article h1")).to_have_text("The loop reads high")


def test_it_goes_on_by_itself_when_the_network_returns(hand: Phone, host: Host, few_pages: Path) -> None:
    host.breaks_after = len(listed(few_pages)["first"]) // 2
    page = hand.on()
    page.goto(host.base)
    broke_off(page)
    host.breaks_after = None
    page.evaluate("dispatchEvent(new Event('online'))")
    standing(page, "saved")


def test_everything_is_saved_on_request_with_its_size_shown_first(saver: Phone, host: Host, few_pages: Path) -> None:
    page = first_visit(saver, host)
    page.goto(f"{host.base}offline/")
    button = page.get_by_role("button", name=re.compile("Save everything"))
    more = listed(few_pages)["size"]["rest"] / 1e6
    expect(button).to_have_text(f"Save everything: {more:.2f} MB more")
    button.click()
    expect(page.locator(".ls-copy")).to_contain_text("Every page is saved.")
    expect(page.locator(".ls-copy")).to_contain_text(re.compile("promise"))
    expect(button).to_have_count(0)
    host.stop()
    page = saver.on()
    page.goto(f"{host.base}devices/surface-contact/")
    expect(page.locator("article h1")).to_contain_text("Surface contact")
    opened(page).fill("hysteresis")
    expect(page.locator(".ls-finder [role=option]").first).to_contain_text("hysteresis")
    assert saver.complaints == []


def test_a_copy_that_lost_a_file_is_not_called_saved_and_is_mended(saver: Phone, host: Host) -> None:
    page = first_visit(saver, host)
    gone = """async () => { for (const name of await caches.keys()) { const cache = await caches.open(name);
      for (const request of await cache.keys())
        if (request.url.includes('faults/reads-high/')) await cache.delete(request); } }"""
    page.evaluate(gone)
    host.stop()
    page = saver.on()
    page.goto(f"{host.base}checklists/position/")
    standing(page, "none")
    host.start()
    page.reload()
    standing(page, "saved")
    host.stop()
    page.goto(f"{host.base}faults/reads-high/")
    expect(page.locator("article h1")).to_have_text("The loop reads high")


def test_a_copy_not_compared_for_long_says_so(saver: Phone, host: Host) -> None:
    host.stop()
    page = saver.on()
    now = page.evaluate("Date.now()")
    for days, warned in ((89, False), (91, True)):
        page.clock.set_fixed_time((now + days * 86_400_000 + 60_000) / 1000)
        page.goto(f"{host.base}offline/")
        standing(page, "saved")
        expect(page.locator(".ls-copy")).to_contain_text(f"Last compared with the site {days} days ago.")
        assert (f"not compared with the site for {days} days" in words(page)) is warned
        assert ("This copy is old" in page.locator(".ls-copy").inner_text()) is warned
    page.clock.set_fixed_time((now - 40 * 86_400_000) / 1000)
    page.goto(f"{host.base}offline/")
    expect(page.locator(".ls-copy")).to_contain_text("its age is not known")


def test_it_works_below_a_path(hand: Phone, few_pages: Path) -> None:
    below = Host(few_pages, "field/library/")
    try:
        page = first_visit(hand, below)
        below.stop()
        page = hand.on()
        page.goto(f"{below.base}on-site/")
        page.locator(".ls-rows a", has_text="Position").first.click()
        page.wait_for_url(f"{below.base}checklists/position/")
        opened(page).fill("reads high")
        page.locator(".ls-finder [role=option]", has_text="The loop reads high").first.click()
        page.wait_for_url(f"{below.base}faults/reads-high/")
        page.goto(f"{below.base}faults/reads-high")
        assert page.url == f"{below.base}faults/reads-high/"
        assert hand.complaints == []
    finally:
        below.stop()
