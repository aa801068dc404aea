"""Scripts come from the site only: what is typed, linked or remembered is text, and every page keeps its own policy."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any
from urllib.parse import quote

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from .contexts import not_again
from .field import settled
from .test_finder import PHONE, opened

Visit = Callable[..., Page]

ATTACKS = (
    '<img src=x onerror="window.ran=1">', "<script>window.ran=1</script>", '"><svg onload=window.ran=1>',
    "javascript:window.ran=1", "{{constructor.constructor('window.ran=1')()}}", "'-window.ran-'", "\u2028window.ran=1",
)  # fmt: skip


def test_a_query_is_only_ever_text(visit: Visit) -> None:
    page = visit("faults/reads-high/", PHONE)
    box = opened(page)
    for attack in ATTACKS:
        query = f"reads high {attack}"
        box.fill(query)
        page.wait_for_function("query => document.documentElement.dataset.lsFound === query", arg=query)
        assert page.locator(".ls-finder img, .ls-finder script, .ls-finder svg").count() == 0
    with page.expect_navigation():
        page.keyboard.press("Enter")  # opens what was found first
    page.locator("html[data-ls-copy]").wait_for(state="attached")
    assert page.evaluate("window.ran") is None


@pytest.mark.parametrize(
    "address",
    [
        "?find={}", "?q={}", "?h={}", "#{}", "offline/?wanted={}", "checklists/position/?visit={}&opening={}",
        "visits/#v={}", "figures/cable-resistance/?length={}",
    ],
)  # fmt: skip
def test_what_a_link_brings_along_is_only_ever_text(visit: Visit, base: str, address: str) -> None:
    # All in one text; and an address, which only tells by itself.
    all_in_one, script = (address.format(*[quote(attack)] * 2) for attack in (" ".join(ATTACKS), ATTACKS[3]))
    page = visit(all_in_one, PHONE)
    for again in (False, True):
        if again:
            page.goto("about:blank")
            page.goto(base + script)
        page.locator("html[data-ls-copy]").wait_for(state="attached")
        if "checklists/" in address or "visits/" in address:
            page.locator("html[data-ls-ready]").wait_for(state="attached")
        page.evaluate("new Promise((done) => setTimeout(done, 20))")
        assert page.evaluate("window.ran") is None
        hrefs = page.evaluate("[...document.querySelectorAll('a')].map((link) => link.protocol)")
        assert set(hrefs) <= {"http:", "https:"}
        assert page.locator("article img[src=x], article script").count() == 0


@pytest.mark.parametrize(
    "wanted", ["//evil.example/", "https://evil.example/", "..\\..\\x", "a/../../b", "javascript:1", "%2e%2e/"]
)
def test_a_page_that_was_wanted_leads_nowhere_else(visit: Visit, wanted: str) -> None:
    page = visit(f"offline/?wanted={quote(wanted)}", PHONE)
    expect(page.locator(".ls-wanted")).to_contain_text("not saved on this device")
    expect(page.locator(".ls-wanted a")).to_have_count(0)


def test_what_was_remembered_is_not_trusted(browser: Any, base: str) -> None:
    context: BrowserContext = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(base)
    named = "checklists/position/|<img src=x onerror=window.ran=1>"
    for stored in (json.dumps(["javascript:window.ran=1|x", "//evil.example/|y", named, 7]), "{", "null"):
        page.evaluate("text => localStorage.setItem('latchside / lists', text)", stored)
        page.goto(f"{base}on-site/")
        opened(page)
        settled(page)
        assert page.evaluate("window.ran") is None
        assert page.locator(".ls-finder img, .ls-recent img").count() == 0
        links = page.locator(".ls-finder [role=option], .ls-recent li a").evaluate_all("all => all.map(e => e.href)")
        assert set(links) <= {f"{base}checklists/position/"}
    context.close()


EACH = (
    "", "on-site/", "visits/", "survey/", "offline/", "labels/", "404.html", "devices/surface-contact/",
    "checklists/position/", "faults/reads-high/", "terms/", "figures/cable-resistance/", "cards/placement/",
    "maintain/rules/",
)  # fmt: skip
"""One of each page that brings scripts or styles that others do not."""


def test_no_page_breaks_its_own_policy(visit: Visit, base: str) -> None:
    page = visit("404.html", PHONE)
    not_again(page)
    page.add_init_script(
        """window.broken = [];
        addEventListener('securitypolicyviolation',
          (e) => window.broken.push(`${e.violatedDirective} ${e.blockedURI}`));"""
    )
    for address in EACH:
        page.goto(base + address)
        page.get_by_role("button", name="Find", exact=True).or_(page.locator("h1").first).first.wait_for()
        if address != "404.html":
            opened(page).fill("reads high")
            expect(page.locator(".ls-finder [role=option]").first).to_be_visible()
            page.keyboard.press("Escape")
            for box in page.locator("article .ls-item, article summary").all()[:2]:
                box.click()
        assert page.evaluate("window.broken") == [], address


def test_the_policy_holds(browser: Any, base: str) -> None:
    """What would run without a policy does not run."""
    page = browser.new_page(service_workers="block")
    page.goto(f"{base}faults/reads-high/")
    page.evaluate(
        "() => { window.refused = 0; addEventListener('securitypolicyviolation', () => { window.refused += 1; }); }"
    )
    inside = "text => document.querySelector('article').insertAdjacentHTML('beforeend', text)"
    page.evaluate(inside, '<img src="data:," onerror="window.ran=1"><svg onload="window.ran=1"></svg>')
    page.evaluate(
        "() => document.body.append(Object.assign(document.createElement('script'), {text: 'window.ran = 2'}))"
    )
    page.evaluate(
        "() => document.body.append(Object.assign(document.createElement('script'), {src: 'data:,window.ran=3'}))"
    )
    page.wait_for_function("window.refused >= 4")
    assert page.evaluate("window.ran") is None
    assert "script-src 'self' 'sha256-" in page.locator("meta[http-equiv]").get_attribute("content")
    page.close()
