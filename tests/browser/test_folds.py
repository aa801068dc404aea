"""Folds: a link to what is inside one opens it, also from where it stood before, and all open to be printed."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO

from playwright.sync_api import Page, expect
from pypdf import PdfReader

Visit = Callable[..., Page]
PHONE = (390, 844)


def test_a_link_into_a_fold_opens_it_on_its_page_and_from_another(visit: Visit) -> None:
    page = visit("devices/surface-contact/#value-surface-contact-reach", PHONE)
    expect(page.locator("#value-surface-contact-reach")).to_be_in_viewport()
    expect(page.locator("details:has(> summary > #faults)")).not_to_have_attribute("open", "")
    for _ in range(2):  # the second time the address stays as it is
        page.locator('.ls-quick a[href="#faults"]').click()
        expect(page.locator("details:has(> summary > #faults)")).to_have_attribute("open", "")
        page.locator("summary:has(> #faults)").click()
    page = visit("devices/recessed-contact/wire/#land-on-terminals-step-dead", PHONE)
    expect(page.locator("#land-on-terminals-step-dead .ls-do")).to_be_in_viewport()


def test_a_step_is_found_by_its_address_on_the_page_of_the_installation(visit: Visit) -> None:
    page = visit("devices/surface-contact/install/#try-gap-step-measure-gap", PHONE)
    page.wait_for_url("**/surface-contact/try/#try-gap-step-measure-gap")
    expect(page.locator("#try-gap-step-measure-gap .ls-do")).to_be_in_viewport()
    still = visit("devices/surface-contact/install/#try-gap-step-measure-gap", PHONE, java_script_enabled=False)
    expect(still.locator("#stage-try")).to_be_in_viewport()


def test_a_stage_prints_short_and_whole_on_demand(visit: Visit) -> None:
    page = visit("devices/surface-contact/position/", PHONE)
    page.evaluate("window.print = () => { window.opened = document.querySelectorAll('details:not([open])').length; }")
    short = PdfReader(BytesIO(page.pdf(format="A4")))
    assert len(short.pages) <= 2
    assert "Near the hinge" not in "".join(sheet.extract_text() for sheet in short.pages)
    page.get_by_role("button", name="Print everything").click()
    assert page.evaluate("window.opened") == 0
    assert "Near the hinge" in "".join(sheet.extract_text() for sheet in PdfReader(BytesIO(page.pdf())).pages)
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    expect(page.locator("details[open]")).to_have_count(0)
