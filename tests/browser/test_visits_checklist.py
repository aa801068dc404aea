"""A checklist as a tool: outcomes, readings, what is open, completion, undo, starting anew, and where it writes to."""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Locator, Page, expect
from pypdf import PdfReader

from ..visits.make import DOOR, VISIT, entry, site
from .contexts import Contexts
from .field import (
    PHONE,
    add_opening,
    answer_all,
    comes_to,
    items,
    more,
    new_page,
    other,
    put,
    ready,
    settled,
    start_visit,
    stored,
    tick,
)

LIST = "proving-each-opening"
PROVING = f"checklists/{LIST}/"
UNDER_THE_THUMB = """chosen => {
  const box = document.querySelector(chosen).getBoundingClientRect(), middle = (box.top + box.bottom) / 2;
  return innerHeight / 2 < middle && middle < document.querySelector('.ls-bar').getBoundingClientRect().top;
}"""
"""Whether the middle of a row stands in the lower half of the screen, above the bar."""


@pytest.fixture
def context(browser: Browser, contexts: Contexts) -> Iterator[BrowserContext]:
    with contexts.lent(browser, viewport=PHONE, service_workers="block") as lent:
        yield lent


@pytest.fixture
def page(context: BrowserContext, base: str) -> Page:
    return new_page(context, base + PROVING)


def judged_against(row: Locator, words: str) -> None:
    """Choose the figure that a reading is held against by some of its words."""
    choice = row.get_by_label("Judge against")
    choice.select_option(label=next(one for one in choice.locator("option").all_inner_texts() if words in one))


def test_an_item_is_done_taken_back_and_done_again(page: Page) -> None:
    row = page.locator("#item-push-pull")
    tick(page, "push-pull")
    expect(row.locator("input[type=checkbox]")).to_be_checked()
    expect(more(row).locator(".ls-more")).to_contain_text("Done. ")
    row.locator(".ls-item").click()
    expect(row).to_have_attribute("data-state", "open")
    page.get_by_role("button", name="Undo").click()
    expect(row).to_have_attribute("data-state", "done")
    page.get_by_role("button", name="Undo").click()
    expect(row).to_have_attribute("data-state", "open")
    expect(page.get_by_role("button", name="Undo")).to_be_disabled()
    kinds = [entry["kind"] for entry in sorted(stored(page), key=lambda entry: entry["n"])]
    assert kinds == ["item", "undo", "undo", "undo"]
    assert [entry["n"] for entry in sorted(stored(page), key=lambda entry: entry["n"])] == [1, 2, 3, 4]


def test_a_double_tap_is_one_tap(page: Page) -> None:
    page.locator("#item-push-pull .ls-item").dblclick()
    expect(page.locator("#item-push-pull")).to_have_attribute("data-state", "done")
    settled(page)
    assert [entry["kind"] for entry in stored(page)] == ["item"]


def test_other_outcomes_say_why(page: Page) -> None:
    row = page.locator("#item-look")
    other(row, "Problem", "What is the problem?", "Hinge is loose")
    expect(row).to_have_attribute("data-state", "problem")
    expect(row.locator(".ls-outcome")).to_contain_text("Problem: Hinge is loose.")
    row.locator(".ls-item").click()
    expect(page.locator(".ls-said")).to_contain_text("Press Change")
    expect(row).to_have_attribute("data-state", "problem")
    other(row, "Not applicable", "Why does it not apply?", "No hinge here")
    expect(row).to_have_attribute("data-state", "not-applicable")
    more(row).get_by_role("button", name="Change").click()
    row.get_by_role("button", name="Open again").click()
    expect(row).to_have_attribute("data-state", "problem")
    first, second = sorted((one for one in stored(page) if one["kind"] == "item"), key=lambda one: one["n"])
    assert second["after"] == [first["id"]]


def test_an_outcome_without_words_is_not_saved(page: Page) -> None:
    row = page.locator("#item-look")
    more(row).get_by_role("button", name="Not done?").click()
    row.get_by_role("button", name="Problem", exact=True).click()
    row.get_by_role("button", name="Save as a problem").click()
    expect(row.get_by_role("alert")).to_have_text("What is the problem?: write it first.")
    assert stored(page) == []


def test_a_note_that_looks_like_a_code_is_warned_of(page: Page) -> None:
    row = page.locator("#item-look")
    other(row, "Problem", "What is the problem?", "Keypad takes 4711")
    expect(row.get_by_role("alert")).to_contain_text("looks as if it held a code")
    assert stored(page) == []
    row.get_by_role("button", name="Save as a problem").click()
    expect(row).to_have_attribute("data-state", "problem")


@pytest.mark.parametrize(
    ("typed", "verdict"),
    [("2", "Inside: 2 mm"), ("2,5", "Inside: 2.5 mm"), ("3.1", "Outside: 3.1 mm"), ("3", "Inside: 3 mm")],
)
def test_a_reading_is_judged_while_it_is_typed(page: Page, typed: str, verdict: str) -> None:
    row = page.locator("#item-play")
    reading = row.get_by_label("Reading")
    assert reading.get_attribute("inputmode") == "decimal"
    reading.press_sequentially(typed)
    said = row.locator(".ls-verdict")
    expect(said).to_contain_text(f"{verdict.replace(' mm', chr(160) + 'mm')}, expected at most 3")
    if verdict.startswith("Outside"):
        outside = row.locator(".ls-measure dd").last.text_content() or ""
        expect(said).to_contain_text(outside)
    assert stored(page) == []


def test_a_reading_is_kept_with_what_it_was_judged_against(page: Page) -> None:
    row = page.locator("#item-play")
    row.locator(".ls-item").click()
    expect(row.get_by_label("Reading")).to_be_focused()
    row.get_by_label("Reading").fill("2,5")
    row.get_by_label("Reading").press("Enter")
    expect(row).to_have_attribute("data-state", "done")
    expect(row.locator(".ls-outcome")).to_contain_text("2.5\u00a0mm, inside: expected at most 3")
    entry = stored(page)[0]
    assert entry["reading"] == {"value": 2.5, "unit": "mm"}
    assert entry["expected"]["ranges"] == [{"high": 3}]
    assert entry["expected"]["unit"] == "mm"
    assert entry["words"] == "Play without a trip \u2014 measured and written"


def test_a_reading_is_saved_when_its_field_is_left_and_when_its_item_is_ticked(page: Page) -> None:
    row = page.locator("#item-play")
    row.get_by_label("Reading").fill("2")
    row.get_by_label("Unit").focus()
    assert stored(page) == []
    page.locator("#item-look summary").focus()
    expect(row).to_have_attribute("data-state", "done")
    again = page.locator("[data-item]:has(.ls-reading)").nth(1)
    again.get_by_label("Reading").fill("1")
    again.locator(".ls-item").click()
    expect(again).to_have_attribute("data-state", re.compile("done|problem"))
    assert [entry["reading"]["value"] for entry in sorted(stored(page), key=lambda entry: entry["n"])] == [2, 1]


def test_what_is_typed_and_not_saved_is_there_after_a_reload(page: Page) -> None:
    """A thumb that slips to a link or back costs no reading."""
    row = page.locator("#item-play")
    row.get_by_label("Reading").press_sequentially("2.5")
    page.reload()
    ready(page)
    expect(row.get_by_label("Reading")).to_have_value("2.5")
    expect(row.locator(".ls-verdict")).to_contain_text("Inside")
    row.get_by_label("Reading").press("Enter")
    expect(row).to_have_attribute("data-state", "done")
    page.reload()
    ready(page)
    expect(row.get_by_label("Reading")).to_have_value("")
    assert len(stored(page)) == 1


HOLD = """() => new Promise(begun => {
  indexedDB.open('latchside').onsuccess = event => {
    const store = event.target.result.transaction('entries', 'readwrite').objectStore('entries');
    const spin = () => { if (!window.release) store.count().onsuccess = () => { begun(); spin(); }; };
    spin();
  };
})"""
"""Keeps the store busy until `release` is set."""


def test_a_tick_that_is_not_stored_yet_shows_no_tick(page: Page) -> None:
    box = page.locator("#item-look input[type=checkbox]")
    page.evaluate(HOLD)
    page.locator("#item-look .ls-item").click()
    comes_to(page, "document.querySelector('#item-look input').indeterminate", True)
    expect(box).not_to_be_checked()
    expect(page.locator(".ls-said")).to_contain_text("Not stored yet: ")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "open")
    page.evaluate("window.release = true")
    expect(box).to_be_checked()
    comes_to(page, "document.querySelector('#item-look input').indeterminate", False)


def test_what_was_ticked_before_the_visit_is_offered_to_it(page: Page, base: str) -> None:
    tick(page, "look")
    start_visit(page, base)
    add_opening(page, "Back door", "surface-contact")
    expect(page.get_by_role("heading", name="Ticked without a visit")).to_be_visible()
    page.get_by_role("link", name="Proving an opening").last.click()
    ready(page)
    expect(page.locator("#item-look")).to_have_attribute("data-state", "open")
    page.get_by_role("button", name="Take them into Elm House").click()
    expect(page.locator("#item-look")).to_have_attribute("data-state", "done")
    expect(page.locator(".ls-offer")).to_be_empty()
    page.get_by_role("button", name="Change where it writes to").click()
    page.get_by_label("Visit").select_option("No visit")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "open")


def test_a_reading_outside_is_a_problem_or_explained(page: Page) -> None:
    row = page.locator("#item-play")
    row.get_by_label("Reading").fill("7")
    row.get_by_role("button", name="Save: outside, a problem").click()
    expect(row).to_have_attribute("data-state", "problem")
    expect(row.locator(".ls-outcome")).to_contain_text("7\u00a0mm, outside")
    row.get_by_label("Reading").fill("7")
    row.get_by_role("button", name="Done all the same").click()
    row.get_by_label("Why does this reading hold here?").fill("The label allows it")
    row.get_by_role("button", name="Save as done").click()
    expect(row).to_have_attribute("data-state", "done")
    expect(row.locator(".ls-outcome")).to_contain_text("Done: The label allows it. 7\u00a0mm, outside")


def test_what_is_no_number_is_said_and_kept(page: Page) -> None:
    row = page.locator("#item-play")
    row.get_by_label("Reading").fill("1.000,5")
    expect(row.locator(".ls-verdict")).to_have_text("That is no number. Type it as 2.2 or 2,2.")
    expect(row.get_by_label("Reading")).to_have_value("1.000,5")
    expect(row.get_by_label("Reading")).to_have_attribute("aria-invalid", "true")
    expect(row.get_by_role("button", name="Save:")).to_have_count(0)


def test_a_reading_can_be_in_the_other_unit(page: Page) -> None:
    row = page.locator("#item-play")
    row.get_by_label("Unit").select_option("in")
    row.get_by_label("Reading").fill("0.12")
    expect(row.locator(".ls-verdict")).to_contain_text("Inside: 0.12\u00a0in")
    row.get_by_label("Reading").fill(".13")
    expect(row.locator(".ls-verdict")).to_contain_text("Outside: 0.13\u00a0in")


def test_a_change_can_be_below_zero_without_a_minus_key(context: BrowserContext, base: str) -> None:
    page = new_page(context, f"{base}checklists/yearly-service/")
    row = page.locator("[data-item]", has=page.get_by_role("button", name="Minus")).first
    row.get_by_label("Reading").fill("1")
    row.get_by_role("button", name="Minus").click()
    expect(row.get_by_label("Reading")).to_have_value("-1")
    expect(row.locator(".ls-verdict")).to_contain_text("Inside: \u22121\u00a0mm")


def test_a_reading_waits_for_its_opening(context: BrowserContext, base: str) -> None:
    page = new_page(context, f"{base}visits/")
    start_visit(page, base)
    page.goto(base + PROVING)
    ready(page)
    row = page.locator("#item-play")
    row.get_by_label("Reading").fill("2")
    expect(row.locator(".ls-verdict")).to_contain_text("Inside")
    expect(row.locator(".ls-verdict")).to_contain_text("Not stored: choose first where this list writes to.")
    expect(row.get_by_role("button", name="Save")).to_have_count(0)
    page.locator(".ls-bar").get_by_role("button", name="Choose the opening").click()
    expect(page.get_by_label("Opening", exact=True)).to_be_focused()
    assert [entry["kind"] for entry in stored(page)] == ["visit"]


def test_the_figure_is_that_of_the_device_at_hand(context: BrowserContext, base: str) -> None:
    page = new_page(context, f"{base}visits/")
    start_visit(page, base)
    add_opening(page, "Back door", "wired-input-transmitter")
    add_opening(page, "Front window", "recessed-contact")
    page.get_by_role("link", name="Fixing").last.click()
    ready(page)
    expect(page.locator(".ls-writes")).to_contain_text("Front window")
    expect(page.locator("#item-surface-gap")).to_be_hidden()
    expect(page.get_by_role("heading", name="Surface set")).to_be_hidden()
    row = page.locator("#item-recessed-shut")
    row.get_by_label("Reading").fill("2,2")
    expect(row.locator(".ls-verdict")).to_have_text("Not stored yet. Choose what to judge it against.")
    judged_against(row, "one resistor in series")
    expect(row.locator(".ls-verdict")).to_contain_text("Inside: 2.2\u00a0k\u03a9")
    judged_against(row, "one in series with the contact, one across both")
    expect(row.locator(".ls-verdict")).to_contain_text("Outside: 2.2\u00a0k\u03a9")
    row.get_by_role("button", name="Meter shows over range").click()
    expect(row.locator(".ls-verdict")).to_contain_text("Outside: over range")
    opened = page.locator("#item-recessed-open")
    opened.get_by_role("button", name="Meter shows over range").click()
    judged_against(opened, "no resistor, or one in series alone")
    expect(opened.locator(".ls-verdict")).to_contain_text("Inside: over range")
    opened.get_by_role("button", name="Save: inside, done").click()
    expect(opened).to_have_attribute("data-state", "done")
    page.get_by_role("button", name="Change where it writes to").click()
    page.get_by_label("Opening", exact=True).select_option(label="Back door")
    expect(page.locator("#item-recessed-shut")).to_be_hidden()
    row = page.locator("#item-transmitter-shut")
    row.get_by_label("Reading").fill("4.7")
    expect(row.locator(".ls-verdict")).to_have_text("Not stored yet. Choose what to judge it against.")
    judged_against(row, "4.7\u00a0k\u03a9")
    expect(row.locator(".ls-verdict")).to_contain_text("Inside: 4.7\u00a0k\u03a9")
    row.get_by_label("Judge against").select_option("None of these: the label decides")
    expect(row.locator(".ls-verdict")).to_contain_text("The label on the part decides")


def test_what_is_planned_for_the_opening_goes_before_its_device(context: BrowserContext, base: str) -> None:
    page = new_page(context, f"{base}visits/")
    planned = {
        "fit-gap": {"words": "4 mm to 6 mm", "unit": "mm", "ranges": [{"low": 4, "high": 6}]},
        "loop-shut": {"words": "5.6 k\u03a9 \u00b16 %", "unit": "k\u03a9", "ranges": [{"low": 5.264, "high": 5.936}]},
    }
    door = {"opening": DOOR, "name": "Back door", "device": "recessed-contact", "removed": False, "after": []}
    put(page, [site(), entry("opening", 2, 2, **door, expected=planned)])
    page.goto(f"{base}checklists/fixing/?visit={VISIT}&opening={DOOR}")
    ready(page)
    gap = page.locator("#item-recessed-gap")
    expect(gap.locator(".ls-reading .ls-expect")).to_have_text("Planned for this opening: 4 mm to 6 mm")
    gap.get_by_label("Reading").fill("8")
    expect(gap.locator(".ls-verdict")).to_contain_text("Outside: 8\u00a0mm, expected 4 mm to 6 mm.")
    gap.get_by_label("Unit").select_option("in")
    gap.get_by_label("Reading").fill("0.2")
    expect(gap.locator(".ls-verdict")).to_contain_text("Inside: 0.2\u00a0in")
    loop = page.locator("#item-recessed-shut")
    loop.get_by_label("Unit").select_option("\u03a9")
    loop.get_by_label("Reading").fill("5600")
    loop.get_by_role("button", name="Save: inside, done").click()
    expect(loop).to_have_attribute("data-state", "done")
    (kept,) = (row for row in stored(page) if row.get("item") == "recessed-shut")
    assert kept["expected"] == {**planned["loop-shut"], "unit": "\u03a9", "ranges": [{"low": 5264, "high": 5936}]}
    opened = page.locator("#item-recessed-open")
    expect(opened.locator(".ls-reading .ls-expect")).not_to_contain_text("Planned")
    page.get_by_role("button", name="Change where it writes to").click()
    page.get_by_label("Device class at this opening").select_option("surface-contact")
    expect(page.locator("#item-surface-gap")).to_have_attribute("data-state", "open")
    expect(page.locator("#item-surface-gap .ls-reading .ls-expect")).not_to_contain_text("Planned")


def test_what_is_open_stays_in_sight_and_is_led_to(page: Page) -> None:
    tick(page, "look")
    expect(page.locator("#item-push-pull")).to_contain_text("Skipped: still open.")
    expect(page.locator("#item-latched")).not_to_contain_text("Skipped")
    page.get_by_role("button", name=f"Next open item ({items(LIST) - 1} left)").click()
    expect(page.locator("#item-latched")).to_be_in_viewport()
    expect(page.locator("#item-latched input[type=checkbox]")).to_be_focused()
    comes_to(page, UNDER_THE_THUMB, True, "#item-latched .ls-item")
    for _ in range(items(LIST) - 2):
        page.get_by_role("button", name="Next open item").click()
    expect(page.locator("#item-play input[type=checkbox]")).to_be_focused()


def test_the_last_line_is_closed_while_anything_is_open(page: Page) -> None:
    last = page.get_by_role("button", name="Complete", exact=True)
    line = page.locator(".ls-complete")
    expect(last).to_be_disabled()
    expect(line).to_be_hidden()
    expect(page.locator(".ls-finish")).to_contain_text(f"Closed while {items(LIST)} items are open.")
    answer_all(page)
    expect(page.locator(".ls-finish")).not_to_contain_text("open")
    expect(line).to_be_hidden()
    last.click()
    expect(line).to_be_visible()
    expect(page.locator(".ls-finish")).to_contain_text("Complete, ")
    expect(page.locator(".ls-file")).to_contain_text("Before you go: ")
    page.locator("#item-look .ls-item").click()
    expect(last).to_be_disabled()
    expect(line).to_be_hidden()
    tick(page, "look")
    expect(page.locator(".ls-finish")).to_contain_text("Complete, ")


def test_completion_names_its_problems(page: Page) -> None:
    other(page.locator("#item-look"), "Problem", "What is the problem?", "Hinge is loose")
    answer_all(page)
    page.get_by_role("button", name="Complete, with 1 problem").click()
    expect(page.locator(".ls-finish")).to_contain_text("With 1 problem")


def test_starting_anew_needs_a_second_press_and_can_be_taken_back(page: Page) -> None:
    tick(page, "push-pull")
    tick(page, "look")
    page.get_by_role("button", name="Start this list anew").click()
    expect(page.get_by_text("This takes back 2 entries")).to_be_visible()
    page.get_by_role("button", name="No, leave it").click()
    expect(page.locator("[data-state=done]")).to_have_count(2)
    page.get_by_role("button", name="Start this list anew").click()
    page.get_by_role("button", name="Take them all back").click()
    expect(page.locator("[data-state=done]")).to_have_count(0)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("[data-state=done]")).to_have_count(2)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("[data-state=done]")).to_have_count(1)


def test_a_list_that_changed_says_so_and_keeps_what_it_can(page: Page, base: str) -> None:
    tick(page, "push-pull")
    tick(page, "look")
    tick(page, "latched")
    changed: dict[str, dict[str, Any]] = {
        "push-pull": {"list_version": 7},
        "look": {"words": "Hinge \u2014 sound"},
        "latched": {"item": "gone", "words": "Old item \u2014 true"},
    }
    put(page, [{**entry, **changed[entry["item"]]} for entry in stored(page)])
    page.goto(base + PROVING)
    ready(page)
    note = page.locator(".ls-changed")
    expect(note).to_contain_text("This list has changed since it was filled in (version 7, now 2). 1 outcome is kept.")
    expect(note).to_contain_text("No longer on the list, still in the record: Old item \u2014 true.")
    expect(page.locator("#item-push-pull")).to_have_attribute("data-state", "done")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "changed")
    expect(page.locator("#item-look")).to_contain_text("It was: Hinge \u2014 sound")
    tick(page, "look")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "done")


def test_it_says_where_it_writes_to(page: Page, base: str) -> None:
    expect(page.locator(".ls-writes")).to_have_text("No visit, this device only")
    expect(page.locator(".ls-where")).to_have_text("Writes to: no visit")
    tick(page, "look")
    first = start_visit(page, base, "Elm House")
    add_opening(page, "Back door")
    add_opening(page, "Front door")
    page.goto(base + PROVING)
    ready(page)
    expect(page.locator(".ls-writes")).to_contain_text("Elm House, ")
    expect(page.locator(".ls-where")).to_have_text("Choose the opening first: this list is run once for each.")
    expect(page.locator("#item-look input[type=checkbox]")).to_be_disabled()
    page.get_by_role("button", name="Change where it writes to").click()
    page.get_by_label("Opening", exact=True).select_option(label="Front door")
    expect(page.locator(".ls-where")).to_have_text("Writes to: Elm House, Front door")
    tick(page, "latched")
    second = start_visit(page, base, "Oak House")
    page.goto(f"{base}checklists/handover/")
    ready(page)
    expect(page.locator(".ls-where")).to_have_text("Writes to: Oak House")
    page.locator(".ls-item").first.click()
    expect(page.locator("[data-state=done]")).to_have_count(1)
    page.goto(f"{base}{PROVING}?visit={first}")
    ready(page)
    expect(page.locator(".ls-writes")).to_contain_text("Elm House")
    assert {entry["visit"] for entry in stored(page) if entry["kind"] == "item"} >= {first, second}
    page.get_by_role("button", name="Change where it writes to").click()
    page.get_by_label("Visit").select_option("No visit")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "done")
    expect(page.locator("#item-latched")).to_have_attribute("data-state", "open")


def test_a_reload_and_a_new_tab_come_back_to_the_same_place(page: Page, context: BrowserContext, base: str) -> None:
    start_visit(page, base, "Elm House")
    add_opening(page, "Back door")
    page.get_by_role("link", name="Proving an opening").click()
    ready(page)
    tick(page, "look")
    page.reload()
    ready(page)
    expect(page.locator(".ls-where")).to_have_text("Writes to: Elm House, Back door")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "done")
    again = new_page(context, base + PROVING)
    expect(again.locator(".ls-where")).to_have_text("Writes to: Elm House, Back door")


def test_a_link_to_a_visit_that_is_not_here_says_so(context: BrowserContext, base: str) -> None:
    page = new_page(context, f"{base}{PROVING}?visit=11111111-1111-4111-8111-111111111111&opening=x")
    expect(page.locator(".ls-writes")).to_have_text(
        "The visit asked for is not on this device. No visit, this device only"
    )


WAKE_LOCK = """window.asked = 0; Object.defineProperty(navigator, 'wakeLock', {value: {request: async () => {
  window.asked += 1; return {release: async () => { window.asked -= 1; }}; }}});"""


def test_the_screen_stays_on_by_choice(context: BrowserContext, base: str) -> None:
    page = new_page(context, base + PROVING, first=WAKE_LOCK)
    assert page.evaluate("asked") == 0
    page.get_by_role("button", name="Change where it writes to").click()
    page.get_by_role("button", name="Keep the screen on").click()
    expect(page.get_by_role("button", name="Screen stays on")).to_have_attribute("aria-pressed", "true")
    assert page.evaluate("asked") == 1
    page.get_by_role("button", name="Screen stays on").click()
    expect(page.get_by_role("button", name="Keep the screen on")).to_have_attribute("aria-pressed", "false")
    assert page.evaluate("asked") == 0


def test_without_scripts_it_is_a_list_to_print(browser: Browser, base: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(base + PROVING)
    expect(page.locator(".ls-item")).to_have_count(items(LIST))
    expect(page.locator(".ls-unkept")).to_contain_text("Print the page")
    expect(page.locator(".ls-bar")).to_have_count(0)
    page.locator(".ls-item").first.click()
    expect(page.locator(".ls-item input").first).to_be_checked()
    page.emulate_media(media="print")
    expect(page.locator(".ls-sheet-head")).to_be_visible()
    assert len(page.pdf()) > 10_000
    context.close()


@pytest.mark.parametrize(("checklist", "device"), [("fixing", "recessed-contact"), ("position", "steel-door-contact")])
def test_the_list_of_one_device_is_one_sheet_of_paper(
    context: BrowserContext, base: str, checklist: str, device: str
) -> None:
    page = new_page(context, f"{base}checklists/{checklist}/")
    page.locator(".ls-bar").get_by_role("button", name="Choose the device").click()
    expect(page.get_by_label("Device class")).to_be_focused()
    page.get_by_label("Device class").select_option(device)
    expect(page.locator("[data-item]:visible")).to_have_count(items(checklist, device))
    sheet = PdfReader(BytesIO(page.pdf(format="A4")))
    assert len(sheet.pages) == 1
    assert page.locator(".ls-complete").get_attribute("data-words") is not None


def test_a_list_in_use_prints_what_is_open_and_a_fresh_one_prints_blank(page: Page) -> None:
    mark = """() => [...document.querySelectorAll('.ls-item-words')]
      .filter(e => getComputedStyle(e, '::after').content.includes('OPEN')).length"""
    page.emulate_media(media="print")
    comes_to(page, mark, 0)
    page.emulate_media(media="screen")
    tick(page, "look")
    page.emulate_media(media="print")
    comes_to(page, mark, items(LIST) - 1)
