"""The quick finder: the reader's own words, small errors, keys, what was used last; and nothing typed is ever run."""

from __future__ import annotations

import gzip
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

Visit = Callable[..., Page]
PHONE = (390, 844)
NARROW = (320, 640)

FIND = """async ([script, index, queries]) => {
  const { find, prepare } = await import(script), known = prepare(await (await fetch(index)).json());
  return queries.map((query) => find(known, query).map(({ thing }) => thing.address));
}"""

WANTED = {
    # as people say it
    "my meter shows more than the resistor": "faults/reads-high/",
    "magnet fell off": "faults/adhesive-let-go/",
    "two doors mixed up": "faults/two-openings-swapped/",
    "it wont enrol": "faults/will-not-enrol/",
    "opening the door does nothing": "faults/learnt-on-wrong-input/",
    "flickers in the wind": "faults/comes-and-goes-in-wind/",
    # with errors of typing
    "door shows opn when shut": "faults/shows-open-when-shut/",
    "recesed contact": "devices/recessed-contact/",
    "end of line resister": "terms/#end-of-line-resistor",
    "hysterisis": "terms/#hysteresis",
    "asbetsos": "cautions/asbestos/",
    # words of either continent
    "antenna": "terms/#aerial",
    "aerial": "terms/#aerial",
    "central station": "terms/#alarm-receiving-centre",
    "monitoring center": "terms/#alarm-receiving-centre",
    "arm": "terms/#set",
    # what is wanted by its kind
    "install surface contact": "devices/surface-contact/install/",
    "yearly": "checklists/yearly-service/",
    "handover": "checklists/handover/",
    "ladder": "cautions/ladders/",
    "stud finder": "tools/#service-detector",
    "PROVING": "checklists/proving-each-opening/",
}


def near_the_top(found: list[str], wanted: str) -> bool:
    return wanted in found[:3]


def test_it_finds_what_is_meant(visit: Visit, quick_base: str) -> None:
    page = visit("", PHONE, searching=False)
    found = page.evaluate(FIND, [f"{quick_base}assets/js/finder/match.js", f"{quick_base}finder.json", list(WANTED)])
    wrong = {
        query: addresses[:3]
        for (query, wanted), addresses in zip(WANTED.items(), found, strict=True)
        if not near_the_top(addresses, wanted)
    }
    assert not wrong


def test_every_thing_is_found_by_its_own_name_and_leads_to_a_page(visit: Visit, quick_base: str, site: Path) -> None:
    data = json.loads((site / "finder.json").read_text("utf-8"))
    names = [entry[2] for entry in data["entries"]]
    own = [data["kinds"][entry[0]][1].replace("{id}", entry[1]) for entry in data["entries"]]
    page = visit("", PHONE, searching=False)
    found = page.evaluate(FIND, [f"{quick_base}assets/js/finder/match.js", f"{quick_base}finder.json", names])
    missed = [name for name, address, addresses in zip(names, own, found, strict=True) if address not in addresses[:4]]
    assert not missed
    for address in own:
        path, _, fragment = address.partition("#")
        text = (site / path / "index.html").read_text("utf-8")
        assert not fragment or f'id="{fragment}"' in text, address


def test_the_index_stays_small(site: Path) -> None:
    """At most 150 KB packed for 1,000 records."""
    packed = len(gzip.compress((site / "finder.json").read_bytes(), 6))
    entries = len(json.loads((site / "finder.json").read_text("utf-8"))["entries"])
    assert packed / entries <= 150


def test_nonsense_finds_nothing(visit: Visit, quick_base: str) -> None:
    page = visit("", PHONE, searching=False)
    queries = ["", "   ", "qwertyuiop", "\u0000\u202e", "!!!", "x" * 5000, "__proto__", "constructor"]
    found = page.evaluate(FIND, [f"{quick_base}assets/js/finder/match.js", f"{quick_base}finder.json", queries])
    assert found[0] == found[1] == found[2] == found[4] == []
    assert all(len(addresses) <= 12 for addresses in found)


def opened(page: Page) -> Any:
    page.get_by_role("button", name="Find", exact=True).click()
    box = page.get_by_label("What do you see, have or need?")
    expect(box).to_be_focused()
    return box


@pytest.mark.parametrize("address", ["", "checklists/position/", "faults/reads-high/", "terms/", "figures/", "visits/"])
def test_it_is_on_every_page(visit: Visit, address: str) -> None:
    page = visit(address, PHONE, searching=False)
    opened(page).fill("reads high")
    expect(page.locator(".ls-finder li a").first).to_contain_text("The loop reads high")
    page.keyboard.press("Escape")
    expect(page.locator(".ls-finder")).to_be_hidden()
    expect(page.get_by_role("button", name="Find", exact=True)).to_be_focused()


def test_keys_lead_to_an_answer(visit: Visit) -> None:
    page = visit("cautions/ladders/", PHONE, searching=False)
    opened(page)
    page.keyboard.type("loop reads")
    expect(page.locator(".ls-finder li a").nth(2)).to_be_visible()
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    expect(page.locator(".ls-finder li a").nth(1)).to_be_focused()
    page.keyboard.press("ArrowUp")
    page.keyboard.press("ArrowUp")
    expect(page.get_by_label("What do you see, have or need?")).to_be_focused()
    target = page.locator(".ls-finder li a").first.get_attribute("href")
    page.keyboard.press("Enter")
    page.wait_for_url(str(target))


def test_lists_used_last_stand_on_top(visit: Visit, quick_base: str) -> None:
    page = visit("checklists/position/", PHONE, searching=False)
    for address in ("checklists/handover/", "checklists/enrolling/", "checklists/position/", ""):
        page.goto(quick_base + address)
        page.get_by_role("button", name="Find", exact=True).wait_for()
    opened(page)
    expect(page.locator(".ls-finder li strong")).to_have_text(["Position", "Enrolling", "Handover"])
    page.goto(f"{quick_base}on-site/")
    expect(page.locator(".ls-recent li strong")).to_have_text(["Position", "Enrolling", "Handover"])
    page.locator(".ls-recent a").first.click()
    page.wait_for_url(f"{quick_base}checklists/position/")


@pytest.mark.parametrize("address", ["faults/reads-high/", "checklists/position/", "offline/"])
def test_it_is_readable_reachable_and_fits(visit: Visit, address: str) -> None:
    page = visit(address, NARROW, searching=False)
    opened(page).fill("reads")
    expect(page.locator(".ls-finder li a").first).to_be_visible()
    found = Axe().run(page).response["violations"]
    assert not [f"{one['id']}: {[node['target'] for node in one['nodes'][:4]]}" for one in found]
    rows = page.locator(".ls-finder li a, .ls-finder input, .ls-finder button")
    boxes = rows.evaluate_all(
        "all => all.map(e => [e.getBoundingClientRect().height, e.getBoundingClientRect().right])"
    )
    assert all(height >= 48 and right <= NARROW[0] for height, right in boxes)
    assert page.evaluate("document.documentElement.scrollWidth") <= NARROW[0]


def test_the_strip_covers_nothing_that_keys_reach(visit: Visit) -> None:
    page = visit("faults/reads-high/", PHONE, searching=False)
    page.get_by_role("button", name="Find", exact=True).wait_for()
    for _ in range(60):
        page.keyboard.press("Tab")
        covered = page.evaluate(
            """() => { const e = document.activeElement, strip = document.querySelector('.ls-strip');
              const under = e.getBoundingClientRect().bottom > strip.getBoundingClientRect().top + 1;
              return Boolean(e.closest('article')) && under && e.textContent; }"""
        )
        assert not covered


def test_without_scripts_the_strip_still_leads_somewhere(visit: Visit) -> None:
    page = visit("faults/reads-high/", PHONE, searching=False, java_script_enabled=False)
    page.locator(".ls-strip-find").click()
    page.wait_for_url("**/on-site/")
    page.locator(".ls-strip-state").click()
    page.wait_for_url("**/offline/")
