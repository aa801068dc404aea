"""Ways walked as a person walks them, from home, each tap counted; to type into the finder is one."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from dataclasses import dataclass

import pytest
from playwright.sync_api import Locator, Page, expect

Visit = Callable[..., Page]
PHONE = (390, 844)


@dataclass
class Person:
    """Somebody with a phone at the home page."""

    page: Page
    taps: int = 0

    def tap(self, place: Locator) -> None:
        self.taps += 1
        place.click()

    def types(self, words: str) -> None:
        self.taps += 1
        self.page.locator("#ls-find-here").fill(words)

    def answer(self, kind: str, name: str) -> Locator:
        """An answer of the finder, in view without scrolling the page."""
        found = self.page.locator(".ls-finder-here [role=option]").filter(has_text=kind).filter(has_text=name).first
        expect(found).to_be_in_viewport()
        return found


@pytest.fixture
def person(watch: Callable[[], AbstractContextManager[Visit]]) -> Iterator[Person]:
    with watch() as open_page:
        page = open_page("", PHONE)
        page.locator("#ls-find-here").wait_for()
        yield Person(page)


def test_the_right_checklist(person: Person) -> None:
    person.tap(person.page.locator(".ls-rows").get_by_role("link", name="On site"))
    person.tap(person.page.locator(".ls-rows").get_by_role("link", name="Position"))
    expect(person.page.get_by_role("heading", level=1)).to_have_text("Position")
    assert person.taps <= 2


def test_the_next_check_of_a_named_symptom(person: Person) -> None:
    person.types("zone shows open")
    person.tap(person.answer("Fault", "Zone shows open with the door or window closed"))
    expect(person.page.locator(".ls-first")).to_be_in_viewport()  # what comes before any check
    check = person.page.locator(".ls-check-line").first
    expect(check).to_be_visible()
    box = check.bounding_box()
    assert box
    assert box["y"] < 1.5 * PHONE[1]  # half a screen down, with no tap
    assert person.taps <= 3


@pytest.mark.parametrize("words", ["reading of a loop", "loop reading", "what should the loop read"])
def test_the_expected_reading_of_a_loop(person: Person, words: str) -> None:
    person.types(words)
    person.tap(person.answer("Table", "Meter readings of a loop"))
    row = person.page.locator("table.ls-cards tbody tr").first
    expect(row.get_by_role("rowheader")).to_have_text("Door or window closed")
    expect(row.get_by_text("resistor value plus leads").first).to_be_in_viewport()
    assert person.taps <= 3


def test_the_caution_of_a_ladder(person: Person) -> None:
    person.types("ladder")
    person.tap(person.answer("Caution", "Ladders and stepladders"))
    expect(person.page.locator(".ls-caution")).to_be_in_viewport()
    expect(person.page.get_by_text("Check feet, rails, rungs and locks")).to_be_in_viewport()
    assert person.taps <= 2
