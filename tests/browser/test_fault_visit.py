"""A whole visit for a fault: found by its words, checks, a remedy in vain, another, the record, the counts; offline."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, BrowserContext, Page, expect

from latchside.cli import main

from .contexts import Contexts
from .field import PHONE, add_opening, new_page, ready, start_visit
from .host import Host, Phone

FAULT = "shows-open-when-shut"


@pytest.fixture
def context(browser: Browser, contexts: Contexts) -> Iterator[BrowserContext]:
    with contexts.lent(browser, viewport=PHONE, service_workers="block") as lent:
        yield lent


def answer(page: Page, words: str) -> None:
    page.locator(".ls-find .ls-answer", has_text=words).first.click()


def at(page: Page, heading: str) -> None:
    expect(page.locator(".ls-find h3")).to_have_text(heading)


def picked(page: Page, base: str) -> None:
    """From the page of all faults to the one whose words come nearest."""
    page.goto(f"{base}faults/find/")
    page.get_by_role("link", name="It says the window is open but it's locked.").first.click()
    ready(page)
    page.get_by_role("button", name="Find it step by step").click()


def run_of_the_fault(page: Page) -> None:
    """Checks with readings, one that cannot be done, a remedy in vain, a reload, another remedy that holds."""
    expect(page.locator(".ls-find .ls-writes")).to_contain_text("Elm House")
    expect(page.locator(".ls-find .ls-needs").first).to_contain_text("On: Recessed contact")
    at(page, "Check 1")
    page.get_by_label("Reading", exact=True).fill("5")
    answer(page, "The gap is within the fit gap.")
    at(page, "Check 2")
    page.get_by_role("button", name="Meter shows over range").click()
    answer(page, "The loop reads as with the door or window open")
    at(page, "Check 3")
    page.get_by_role("button", name="Can't do this one").click()
    at(page, "Check 4")
    answer(page, "The zone stays open.")
    at(page, "Fix 5")
    answer(page, "Still there")
    at(page, "Fix 6")
    page.reload()
    ready(page)
    at(page, "Fix 6")
    expect(page.locator(".ls-find .ls-do")).to_have_text("The reed is broken inside the sensor")
    answer(page, "The fault is gone")
    at(page, "The fault is gone")
    expect(page.locator(".ls-find-step")).to_contain_text("It was: The reed is broken inside the sensor")
    done = page.locator(".ls-find-step li").filter(has_text="The door or window no longer closes fully")
    expect(done).to_have_count(1)
    expect(page.get_by_role("link", name="Off test and leave")).to_be_visible()
    expect(page.get_by_role("link", name="The visit")).to_contain_text("Elm House")


def saved(page: Page, base: str, visit: str, to: Path) -> Path:
    page.goto(f"{base}visits/#v={visit}")
    ready(page)
    for words in ("over range", "5 mm", "Faults looked for", "Fixed, and the proof holds."):
        expect(page.locator("main")).to_contain_text(words)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    download.value.save_as(to)
    return to


def command(*arguments: str | Path) -> str:
    result = CliRunner().invoke(main, [str(one) for one in arguments])
    assert result.exit_code == 0, result.output
    return result.stdout


def counted(file: Path) -> None:
    """What `record` prints of the file, and what `tally` counts in it."""
    printed = command("record", file)
    for words in (
        "Elm House", "Back door, left", "5 mm", "over range", "Could not be done.", "ruled out",
        "The reed is broken", "Fixed, and the proof holds.", "complete:",
    ):  # fmt: skip
        assert words in " ".join(printed.split()), words
    rows = json.loads(command("tally", "--json", file))
    place = {"fault": FAULT, "device": "recessed-contact"}
    assert rows == [
        place | {"cause": "conductor-open", "found": 0, "mended_in_vain": 1},
        place | {"cause": "reed-broken", "found": 1, "mended_in_vain": 0},
    ]
    told = command("tally", file)
    assert not [words for words in ("Elm", "House", "Back door", "Anna", "kΩ") if words in told + json.dumps(rows)]


def entries(file: Path) -> dict[str, dict[str, object]]:
    found = json.loads(file.read_text("utf-8"))["entries"]
    return {one["item"]: one for one in found if one["kind"] == "item"}


def test_a_whole_visit(context: BrowserContext, base: str, tmp_path: Path) -> None:
    page = new_page(context, f"{base}visits/")
    visit = start_visit(page, base)
    add_opening(page, "Back door, left", "recessed-contact")
    picked(page, base)
    run_of_the_fault(page)
    file = saved(page, base, visit, tmp_path / "visit.json")
    made = entries(file)
    assert made["check-gap-against-record"]["reading"] == {"value": 5, "unit": "mm"}
    assert made["check-loop-at-its-end"]["reading"] == {"over": True, "unit": "kΩ"}
    assert made["check-across-the-reed"]["outcome"] == "not-applicable"
    assert made["cause-conductor-open"]["outcome"] == "not-applicable"
    assert made["cause-reed-broken"]["outcome"] == "done"
    assert "passed-on" not in made
    counted(file)


def test_each_opening_has_a_run_of_its_own_and_back_takes_an_entry_back(context: BrowserContext, base: str) -> None:
    page = new_page(context, f"{base}visits/")
    start_visit(page, base)
    add_opening(page, "Back door, left", "recessed-contact")
    add_opening(page, "Loft hatch", "surface-contact")
    picked(page, base)
    page.get_by_role("button", name="Change where it writes to").click()
    page.get_by_label("Opening", exact=True).select_option("Back door, left")
    page.get_by_label("Reading", exact=True).fill("5")
    answer(page, "The gap is within the fit gap.")
    at(page, "Check 2")
    page.get_by_label("Opening", exact=True).select_option("Loft hatch")
    at(page, "Check 1")
    expect(page.locator(".ls-find .ls-needs").first).to_contain_text("On: Surface contact")
    page.get_by_label("Opening", exact=True).select_option("Back door, left")
    at(page, "Check 2")
    page.get_by_role("button", name="Back", exact=True).click()
    at(page, "Check 1")
    page.wait_for_selector("[data-kept='0']")


def test_a_whole_visit_with_the_network_off_after_the_first_load(saver: Phone, host: Host, tmp_path: Path) -> None:
    host.stop()
    page = saver.on()  # a cold start
    visit = start_visit(page, host.base)
    add_opening(page, "Back door, left", "recessed-contact")
    picked(page, host.base)
    run_of_the_fault(page)
    counted(saved(page, host.base, visit, tmp_path / "visit.json"))
    assert saver.complaints == []
