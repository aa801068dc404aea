"""The finder: one place to search on every page, its keys and roles, what was used last; and nothing typed is run."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from .field import axe_finds

Visit = Callable[..., Page]
PHONE = (390, 844)
NARROW = (320, 640)


def opened(page: Page) -> Any:
    page.get_by_role("button", name="Find", exact=True).click()
    box = page.locator(".ls-finder").get_by_label("What do you see, have or need?")
    expect(box).to_be_focused()
    return box


@pytest.mark.parametrize("address", ["", "checklists/position/", "faults/reads-high/", "terms/", "visits/", "404.html"])
def test_it_is_on_every_page(visit: Visit, address: str) -> None:
    page = visit(address, PHONE)
    opened(page).fill("reads high")
    expect(page.locator(".ls-finder [role=option]").first).to_contain_text("The loop reads high")
    page.keyboard.press("Escape")
    expect(page.locator(".ls-finder")).to_be_hidden()
    expect(page.get_by_role("button", name="Find", exact=True)).to_be_focused()


def test_keys_roles_and_counts(visit: Visit) -> None:
    page = visit("cautions/ladders/", PHONE)
    page.locator("button.ls-find-open").wait_for()
    page.keyboard.press("Control+k")
    finder = page.locator(".ls-finder")
    box = finder.get_by_role("combobox", name="What do you see, have or need?")
    expect(box).to_be_focused()
    expect(box).to_have_attribute("aria-expanded", "false")
    expect(finder.get_by_role("status")).to_contain_text("Type a symptom")
    page.keyboard.type("loop reads")
    options = finder.get_by_role("listbox").get_by_role("option")
    expect(options.nth(2)).to_be_visible()
    expect(box).to_have_attribute("aria-expanded", "true")
    expect(finder.get_by_role("status")).to_have_text(f"{options.count()} found")
    assert box.get_attribute("aria-activedescendant") is None
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    expect(options.nth(1)).to_have_attribute("aria-selected", "true")
    assert box.get_attribute("aria-activedescendant") == options.nth(1).get_attribute("id")
    expect(box).to_be_focused()
    page.keyboard.press("ArrowUp")
    target = options.first.get_attribute("href")
    page.keyboard.press("Enter")
    page.wait_for_url(str(target))


def test_a_slash_that_is_typed_stays_a_slash(visit: Visit) -> None:
    page = visit("figures/cable-resistance/", PHONE)
    field = page.locator("form[data-figure] input[type=text]").first
    field.fill("")
    page.keyboard.type("1/2")
    expect(field).to_have_value("1/2")
    expect(page.locator(".ls-finder")).to_have_count(0)


def test_home_has_it_in_its_place(visit: Visit) -> None:
    page = visit("", PHONE)
    here = page.locator(".ls-finder-here")
    here.get_by_role("combobox").wait_for()
    page.keyboard.press("/")
    expect(here.get_by_role("combobox")).to_be_focused()
    page.keyboard.type("qwertyuiop")
    expect(here.get_by_role("status")).to_contain_text("Nothing found. Try fewer words")
    page.keyboard.press("Escape")
    expect(here.get_by_role("combobox")).to_have_value("")
    page.keyboard.type("surface contact")
    here.get_by_role("option").first.click()
    page.wait_for_url("**/devices/surface-contact/")


def test_an_address_may_bring_the_words(visit: Visit) -> None:
    page = visit("terms/?q=hysteresis", PHONE)
    expect(page.locator(".ls-finder [role=option]").first).to_contain_text("hysteresis")


def test_lists_used_last_stand_on_top(visit: Visit, base: str) -> None:
    page = visit("checklists/position/", PHONE)
    for address in ("checklists/handover/", "checklists/enrolling/", "checklists/position/", "terms/"):
        page.goto(base + address)
        page.get_by_role("button", name="Find", exact=True).wait_for()
    opened(page)
    expect(page.locator(".ls-finder [role=option] strong")).to_have_text(["Position", "Enrolling", "Handover"])
    page.goto(f"{base}on-site/")
    expect(page.locator(".ls-recent li strong")).to_have_text(["Position", "Enrolling", "Handover"])
    page.locator(".ls-recent a").first.click()
    page.wait_for_url(f"{base}checklists/position/")


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("address", ["on-site/", "faults/reads-high/", "checklists/position/"])
def test_it_is_readable_reachable_and_fits(visit: Visit, address: str, scheme: str) -> None:
    """In the dark the whole page is looked at, which in the light has tests of its own."""
    page = visit(address, NARROW, color_scheme=scheme)
    opened(page).fill("reads")
    expect(page.locator(".ls-finder [role=option]").first).to_be_visible()
    page.keyboard.press("ArrowDown")
    assert axe_finds(page, within=".ls-finder" if scheme == "light" else None) == []
    rows = page.locator(".ls-finder [role=option], .ls-finder input, .ls-finder button, .ls-find-open")
    boxes = rows.evaluate_all(
        "all => all.map(e => [e.getBoundingClientRect().height, e.getBoundingClientRect().right])"
    )
    assert all(height >= 48 and right <= NARROW[0] for height, right in boxes)
    assert page.evaluate("document.documentElement.scrollWidth") <= NARROW[0]
    marks = page.locator(".ls-finder mark").first
    assert marks.evaluate("e => getComputedStyle(e).textDecorationLine") == "underline"


def test_without_scripts_it_leads_to_the_list_of_pages(visit: Visit) -> None:
    page = visit("faults/reads-high/", PHONE, java_script_enabled=False)
    page.get_by_role("link", name="Find", exact=True).click()
    page.wait_for_url("**/on-site/")
    page.locator(".ls-strip-state").click()
    page.wait_for_url("**/offline/")
