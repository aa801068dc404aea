"""The expected figure of a checklist: one system of units, that of the reader's region, before and after a choice."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

Visit = Callable[..., Page]
PHONE = (390, 844)


@pytest.mark.parametrize(("locale", "has", "lacks"), [("en-GB", "mm", "in"), ("en-US", "in", "mm")])
def test_an_expected_figure_stands_in_one_system_of_units(visit: Visit, locale: str, has: str, lacks: str) -> None:
    page = visit("checklists/position/", PHONE, locale=locale)
    gap = page.locator("#item-surface-gap .ls-reading .ls-expect")

    def units() -> set[str]:
        return set(gap.inner_text().replace("\u00a0", " ").replace(",", " ").split())

    assert has in units()
    assert lacks not in units()
    page.locator(".ls-bar").get_by_role("button", name="Choose the device").click()
    page.get_by_label("Device class").select_option("surface-contact")
    expect(gap).to_be_visible()
    assert has in units()
    assert lacks not in units()


def test_without_scripts_both_stand_side_by_side(visit: Visit) -> None:
    page = visit("checklists/position/", PHONE, java_script_enabled=False)
    words = page.locator("#item-surface-gap .ls-reading .ls-expect").inner_text().replace("\u00a0", " ")
    assert " mm" in words
    assert " in)" in words
