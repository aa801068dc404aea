"""Something wrong here?: a text on tap, to copy, share or send; without scripts a sentence."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

Visit = Callable[..., Page]
PHONE = (390, 844)
HOSTILE = "<img src=x onerror=window.ran=1>"


def opened(page: Page) -> Page:
    page.get_by_text("Something wrong here?").click()
    page.locator(".ls-tell textarea").wait_for()
    return page


def test_a_reader_makes_a_text_and_copies_it(visit: Visit) -> None:
    options = {"permissions": ["clipboard-read", "clipboard-write"], "locale": "en-GB"}
    page = opened(visit("faults/reads-high/?visit=secret#top", PHONE, **options))
    page.get_by_label("What is wrong, and what is right?").fill(HOSTILE)
    text = page.locator(".ls-report")
    expect(text).to_contain_text("Page: The loop reads high")
    expect(text).to_contain_text("/faults/reads-high/#top")
    expect(text).to_contain_text("Region: UK")
    expect(text).to_contain_text("Content: version ")
    expect(text).to_contain_text(HOSTILE)
    expect(text).not_to_contain_text("secret")
    assert page.evaluate("window.ran") is None
    page.get_by_role("button", name="Copy").click()
    expect(page.locator(".ls-tell [role=status]")).to_have_text("Copied.")
    assert page.evaluate("navigator.clipboard.readText()").replace("\r", "") == text.text_content()
    expect(page.get_by_role("link", name="Send by e-mail")).to_have_count(0)


def test_a_code_is_warned_of_and_what_cannot_be_copied_is_marked(visit: Visit) -> None:
    page = visit("checklists/position/", PHONE)
    page.evaluate("delete Navigator.prototype.clipboard; Navigator.prototype.share = async (it) => (window.it = it)")
    opened(page)
    expect(page.locator(".ls-tell [role=alert]")).to_have_count(0)
    page.locator(".ls-tell textarea").fill("the alarm code is 4711")
    expect(page.locator(".ls-tell [role=alert]")).to_contain_text("looks like a code")
    page.get_by_role("button", name="Copy").click()
    expect(page.locator(".ls-tell [role=status]")).to_contain_text("copy it by hand")
    assert "Page: Position" in page.evaluate("String(getSelection())")
    page.get_by_role("button", name="Share").click()
    assert page.evaluate("window.it.title") == "Something wrong: Position"


def test_an_address_that_the_firm_names_is_written_to(visit: Visit) -> None:
    page = visit("figures/cable-resistance/", PHONE)
    page.evaluate("document.querySelector('.ls-tell').dataset.to = 'library@firm.example'")
    opened(page)
    link = page.get_by_role("link", name="Send by e-mail")
    expect(link).to_have_attribute("href", re.compile(r"^mailto:library@firm\.example\?subject=.+&body=.+"))


def test_every_page_ends_so_and_without_scripts_a_sentence_is_left(visit: Visit, site: Path) -> None:
    pages = [path for path in site.rglob("*.html") if 'class="ls-fold ls-tell"' not in path.read_text("utf-8")]
    assert not pages
    page = visit("terms/", PHONE, java_script_enabled=False)
    page.get_by_text("Something wrong here?").click()
    expect(page.locator(".ls-tell p")).to_contain_text("Leave out codes, and the names and addresses of customers.")
    page.emulate_media(media="print")
    expect(page.locator(".ls-tell")).to_be_hidden()
