"""Nothing is lost: a browser killed, two tabs at once, storage refused or full, a damaged record, a clock set back."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from random import Random

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, expect

from latchside.visits.file import parse_visit

from ..long import LONG
from ..visits.make import SCHEMA
from .contexts import Contexts
from .field import FILL_UP, PHONE, add_opening, new_page, other, put, ready, start_visit, stored, tick, until
from .killed import TICK, doomed

PROVING = "checklists/proving-each-opening/"
KILLED = 20 if LONG else 4
ANEW = () if LONG else (3,)
"""When the list is started anew though some of it is open; else it is once all is done."""


@pytest.fixture
def context(browser: Browser, contexts: Contexts) -> Iterator[BrowserContext]:
    with contexts.lent(browser, viewport=PHONE, service_workers="block") as lent:
        yield lent


def test_a_tick_that_was_painted_survives_a_kill(playwright: Playwright, base: str, tmp_path: Path) -> None:
    chance = Random(4)
    items: list[str] = []
    done: list[str] = []
    for turn in range(KILLED + 1):
        with doomed(playwright, tmp_path / "profile", base + PROVING) as page:
            shown = page.eval_on_selector_all("[data-state=done]", "rows => rows.map(row => row.dataset.item)")
            assert sorted(shown) == sorted(done)
            if not items:
                items = page.eval_on_selector_all(
                    "[data-item]:not(:has(.ls-reading))", "rows => rows.map(row => row.dataset.item)"
                )
            left = [item for item in items if item not in done]
            if not left or turn in ANEW:  # start the list anew, and kill right after that
                page.get_by_role("button", name="Start this list anew").click()
                page.get_by_role("button", name="Take them all back").click()
                expect(page.locator("[data-state=done]")).to_have_count(0)
                done = []
            else:
                done.append(chance.choice(left))
                page.evaluate(TICK, done[-1])


def test_a_reading_and_a_problem_survive_a_kill(playwright: Playwright, base: str, tmp_path: Path) -> None:
    with doomed(playwright, tmp_path / "profile", base + PROVING) as page:
        page.locator("#item-play").get_by_label("Reading").fill("2,5")
        page.get_by_role("button", name="Save: inside, done").click()
        page.wait_for_selector("#item-play[data-state=done]")
    with doomed(playwright, tmp_path / "profile", base + PROVING) as page:
        expect(page.locator("#item-play .ls-outcome")).to_contain_text("2.5\u00a0mm, inside")
        other(page.locator("#item-look"), "Problem", "What is the problem?", "Hinge is loose")
        page.wait_for_selector("#item-look[data-state=problem]")
    with doomed(playwright, tmp_path / "profile", base + PROVING) as page:
        expect(page.locator("#item-look .ls-outcome")).to_contain_text("Hinge is loose")


def test_two_tabs_at_once(context: BrowserContext, base: str) -> None:
    one, two = new_page(context, base + PROVING), new_page(context, base + PROVING)
    items = one.eval_on_selector_all("[data-item]:not(:has(.ls-reading))", "rows => rows.map(row => row.dataset.item)")
    tap = "items => items.forEach(item => document.querySelector(`#item-${item} .ls-item`).click())"
    for start in range(0, len(items), 4):
        one.evaluate(tap, items[start : start + 2])
        two.evaluate(tap, items[start + 2 : start + 4])
    for page in (one, two):
        expect(page.locator("[data-state=done]")).to_have_count(len(items))
    entries = stored(one)
    assert sorted(entry["n"] for entry in entries) == list(range(1, len(items) + 1))
    two.locator(f"#item-{items[0]} .ls-item").click()
    expect(one.locator(f"#item-{items[0]}")).to_have_attribute("data-state", "open")


def test_the_same_item_in_two_tabs_at_once_ends_alike(context: BrowserContext, base: str) -> None:
    """Whether the second tap came too late to be the same tap or not: both tabs show one state, that of the entries."""
    one, two = new_page(context, base + PROVING), new_page(context, base + PROVING)
    at = one.evaluate("Date.now() + 500")
    for page in (one, two):
        page.evaluate(
            """at => { window.tapped = new Promise(done => setTimeout(() => {
              document.querySelector('#item-look .ls-item').click(); done(); }, at - Date.now())); }""",
            at,
        )
    for page in (one, two):
        page.evaluate("tapped")

    def alike() -> bool:
        """Both tabs show what the entries say that are stored by now."""
        kinds = [entry["kind"] for entry in sorted(stored(one), key=lambda entry: entry["n"])]
        state = {("item",): "done", ("item", "item"): "done", ("item", "undo"): "open"}.get(tuple(kinds))
        return all(page.locator("#item-look").get_attribute("data-state") == state for page in (one, two))

    until(one, alike)


REFUSALS = {
    "throws": "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };",
    "fails": """IDBFactory.prototype.open = () => {
      const request = {error: new DOMException('no', 'InvalidStateError')};
      setTimeout(() => request.onerror?.(), 5); return request; };""",
    "absent": "Object.defineProperty(window, 'indexedDB', {value: undefined});",
}


@pytest.mark.parametrize("how", REFUSALS)
def test_storage_refused_is_said_and_the_list_still_works(context: BrowserContext, base: str, how: str) -> None:
    page = new_page(context, base + PROVING, first=REFUSALS[how])
    expect(page.locator(".ls-kept")).to_contain_text("This browser refuses to store anything here")
    tick(page, "look")
    expect(page.locator("[data-state=done]")).to_have_count(1)
    page.goto(f"{base}visits/")
    ready(page)
    expect(page.locator(".ls-kept")).to_contain_text("only while this page is open")
    start_visit(page, base)
    add_opening(page, "Back door")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    found, faults = parse_visit(Path(download.value.path()).read_text("utf-8"), SCHEMA)
    assert not faults
    assert found is not None
    assert len(found.entries) == 2
    page.get_by_role("button", name="It is there").click()
    for label in ("A passphrase", "The same again"):
        page.get_by_label(label).fill("ladders lean on walls")
    page.get_by_role("button", name="Lock it away").click()
    expect(page.get_by_role("heading", name="Locked visit of")).to_be_visible()
    page.get_by_label("Passphrase").fill("ladders lean on walls")
    page.get_by_role("button", name="Unlock").click()
    expect(page.get_by_label("Back door", exact=True)).to_be_visible()


def test_storage_full_shows_nothing_as_done(context: BrowserContext, base: str) -> None:
    page = context.new_page()
    session = context.new_cdp_session(page)
    session.send("Storage.overrideQuotaForOrigin", {"origin": base, "quotaSize": 500_000})
    page.goto(base + PROVING)
    ready(page)
    tick(page, "look")
    page.evaluate(FILL_UP)
    page.locator("#item-latched .ls-item").click()
    expect(page.locator(".ls-said")).to_contain_text("Not stored: the storage of this browser is full.")
    expect(page.locator("#item-latched")).to_have_attribute("data-state", "open")
    expect(page.locator("#item-latched input[type=checkbox]")).not_to_be_checked()
    assert len(stored(page)) == 1
    session.send("Storage.overrideQuotaForOrigin", {"origin": base})
    tick(page, "latched")
    assert len(stored(page)) == 2


def test_a_damaged_record_is_put_aside_and_the_rest_works(context: BrowserContext, base: str, tmp_path: Path) -> None:
    page = new_page(context, f"{base}visits/")
    visit = start_visit(page, base)
    add_opening(page, "Back door")
    page.get_by_role("link", name="Proving an opening").click()
    ready(page)
    for item in ("push-pull", "look", "latched", "knock"):
        tick(page, item)
    rows = {entry.get("item"): entry for entry in stored(page)}
    put(page, [
        {"id": rows["look"]["id"], "visit": visit, "n": rows["look"]["n"], "kind": "item", "outcome": {"a": "x"}},
        {**rows["latched"], "n": "seven"},
        {**rows["knock"], "note": "half \u0007 a note"},
        {"id": "nothing else"},
        {"id": "22222222-2222-4222-8222-222222222222", "visit": visit, "n": 3, "kind": "photo", "at": 7},
    ])  # fmt: skip
    page.reload()
    ready(page)
    expect(page.locator("#item-push-pull")).to_have_attribute("data-state", "done")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "open")
    tick(page, "second-way")
    page.goto(f"{base}visits/")
    ready(page)
    expect(page.locator(".ls-damaged")).to_contain_text(
        "5 stored entries were damaged and put aside. Everything else is unharmed."
    )
    with page.expect_download() as download:
        page.get_by_role("button", name="Save the damaged entries as a file").click()
    aside = json.loads(Path(download.value.path()).read_text("utf-8"))
    assert {row["raw"]["id"] for row in aside} >= {rows["look"]["id"], "nothing else"}
    assert all(row["why"] for row in aside)
    page.get_by_role("link", name="Elm House").click()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    found, faults = parse_visit(Path(download.value.path()).read_text("utf-8"), SCHEMA)
    assert not faults
    assert found is not None
    assert [entry["item"] for entry in found.entries if entry["kind"] == "item"] == ["push-pull", "second-way"]
    page.get_by_role("button", name="All visits").first.click()
    page.get_by_role("button", name="Forget them").click()
    page.get_by_role("button", name="Forget them").click()
    expect(page.locator(".ls-damaged")).to_have_count(0)


def test_damage_that_still_reads_like_an_entry_is_noticed(context: BrowserContext, base: str) -> None:
    page = new_page(context, base + PROVING)
    tick(page, "look")
    page.locator("#item-play").get_by_label("Reading").fill("7")
    page.get_by_role("button", name="Save: outside, a problem").click()
    page.wait_for_selector("#item-play[data-state=problem]")
    reading = next(row for row in stored(page, with_sums=True) if row["item"] == "play")
    put(page, [{**reading, "reading": {"value": 1, "unit": "mm"}, "outcome": "done"}])
    page.reload()
    ready(page)
    expect(page.locator("#item-look")).to_have_attribute("data-state", "done")
    expect(page.locator("#item-play")).to_have_attribute("data-state", "open")
    page.goto(f"{base}visits/")
    ready(page)
    expect(page.locator(".ls-damaged")).to_contain_text("1 stored entry was damaged and put aside.")
    assert [row["why"] for row in stored(page, "aside")] == ["no longer reads as it was written"]


def test_an_entry_stored_without_a_sum_is_read(context: BrowserContext, base: str) -> None:
    page = new_page(context, base + PROVING)
    tick(page, "look")
    put(page, stored(page))
    page.reload()
    ready(page)
    expect(page.locator("#item-look")).to_have_attribute("data-state", "done")


def test_a_clock_set_back_harms_nothing(context: BrowserContext, base: str) -> None:
    page = new_page(context, base + PROVING, at="2031-05-01T10:00:00Z")
    other(page.locator("#item-look"), "Problem", "What is the problem?", "Hinge is loose")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "problem")
    page.clock.set_fixed_time("2001-01-01T00:00:00Z")
    tick(page, "push-pull")
    other(page.locator("#item-look"), "Not applicable", "Why does it not apply?", "No hinge")
    expect(page.locator("#item-look")).to_have_attribute("data-state", "not-applicable")
    page.reload()
    ready(page)
    expect(page.locator("#item-look")).to_have_attribute("data-state", "not-applicable")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#item-look")).to_have_attribute("data-state", "problem")
    times = [entry["at"][:4] for entry in sorted(stored(page), key=lambda entry: entry["n"])]
    assert times[:3] == ["2031", "2001", "2001"]


@pytest.mark.parametrize("zone", ["Pacific/Auckland", "America/St_Johns", "UTC"])
def test_times_are_written_with_their_offset(browser: Browser, base: str, zone: str) -> None:
    context = browser.new_context(timezone_id=zone, service_workers="block")
    page = new_page(context, base + PROVING, at="2026-11-25T02:00:00.500Z")
    tick(page, "look")
    wanted = {
        "Pacific/Auckland": "2026-11-25T15:00:00.500+13:00", "America/St_Johns": "2026-11-24T22:30:00.500-03:30",
        "UTC": "2026-11-25T02:00:00.500+00:00",
    }  # fmt: skip
    assert stored(page)[0]["at"] == wanted[zone]
    context.close()


def test_nothing_of_it_needs_the_network(context: BrowserContext, base: str) -> None:
    """What is fetched only when it is wanted is fetched from the site alone; a page that stands works on without."""
    page: Page = new_page(context, base + PROVING)
    context.set_offline(True)
    tick(page, "look")
    page.locator("#item-play").get_by_label("Reading").fill("2")
    page.get_by_role("button", name="Save: inside, done").click()
    page.wait_for_selector("#item-play[data-state=done]")
    context.set_offline(False)
