"""A page of many short records: a line each, a field that narrows it, more on tap, and one line each on paper."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from ..paper import sheets

Visit = Callable[..., Page]
PHONE = (390, 844)


def test_the_list_of_terms_narrows_as_one_types_and_helps_where_nothing_is_left(visit: Visit) -> None:
    page = visit("terms/", PHONE)
    field, shown = page.get_by_label("Narrow the list"), page.locator(".ls-entry:visible")
    everything = shown.count()
    field.fill("STRIKE pl")
    expect(shown).to_have_count(1)
    expect(shown).to_have_id("keep")
    expect(page.locator("[data-ls-narrow] [role=status]")).to_have_text(f"One of {everything}")
    expect(page.locator(".ls-entries h2:visible")).to_have_text("K")
    shown.locator("summary").click()
    page.locator("#keep a[href='#latch']").click()  # it is left out at the moment
    expect(page.locator("#latch")).to_be_in_viewport()
    expect(page.locator("#latch")).to_have_attribute("open", "")
    expect(shown).to_have_count(everything)
    field.fill("<img src=x>")
    expect(shown).to_have_count(0)
    expect(page.locator("[data-ls-narrow] [role=status]")).to_have_text("Nothing here is called “<img src=x>”.")
    field.fill("false alarm")
    page.get_by_role("link", name="Look for it in the whole library").click()
    expect(page.locator("#ls-find-here")).to_have_value("false alarm")
    expect(page.locator(".ls-finder-here [role=option]").first).to_be_visible()


def test_the_terms_print_one_line_each(visit: Visit) -> None:
    page = visit("terms/", PHONE)
    paper = sheets(page.pdf(format="A4"))
    assert len(paper) <= 5
    text = " ".join(" ".join(paper).split())
    assert "keep The plate or pocket in the frame that takes the latch." in text
    assert "A worn or moved keep" not in text
    assert "Narrow the list" not in text
