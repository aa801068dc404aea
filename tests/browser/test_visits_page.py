"""The page of visits: side by side, out as files, in again or refused, put together, printed, locked, wiped."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Download, Page, expect

from latchside.visits.file import VisitFile, parse_visit

from ..paper import sheets
from ..visits.hostile import HOSTILE, injecting_record
from ..visits.make import SCHEMA, VISIT, entry, full_record, item, record, site, some_id
from .contexts import Contexts
from .field import PHONE, add_opening, answer_all, items, new_page, other, ready, start_visit, stored, tick


@pytest.fixture
def context(browser: Browser, contexts: Contexts) -> Iterator[BrowserContext]:
    with contexts.lent(browser, viewport=PHONE, service_workers="block") as lent:
        yield lent


@pytest.fixture
def page(context: BrowserContext, base: str) -> Page:
    return new_page(context, f"{base}visits/")


def text_of(download: Download) -> str:
    return Path(download.path()).read_bytes().decode("utf-8")


def save(page: Page) -> tuple[str, VisitFile]:
    """Save the visit that is open; the text of the file, and what it holds."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    found, faults = parse_visit(text_of(download.value), SCHEMA)
    assert not faults
    assert found is not None
    return text_of(download.value), found


def bring_in(page: Page, content: str, name: str = "visit.json") -> None:
    """Choose a file on the page of visits."""
    raw = content.encode("utf-8", "surrogatepass")
    page.get_by_label("Bring in a saved file").set_input_files(
        {"name": name, "mimeType": "application/json", "buffer": raw}
    )


def opened(page: Page, base: str, site: str = "Elm House") -> Page:
    page.goto(f"{base}visits/")
    ready(page)
    page.get_by_role("link", name=site).click()
    expect(page.get_by_role("heading", name=site).first).to_be_visible()
    return page


def test_visits_stand_side_by_side(page: Page, base: str) -> None:
    expect(page.get_by_text("No visit is open on this device.")).to_be_visible()
    start_visit(page, base, "Elm House", "Anna")
    start_visit(page, base, "Oak House", "Anna")
    page.get_by_role("button", name="All visits").first.click()
    expect(page.locator(".ls-visits .ls-rows a")).to_have_count(2)
    expect(page.locator(".ls-visits")).to_contain_text("1 entry only on this device")
    page.get_by_role("link", name="Elm House").click()
    expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
    page.go_back()
    expect(page.get_by_role("link", name="Oak House")).to_be_visible()


def test_a_visit_needs_a_name_and_takes_no_code(page: Page) -> None:
    page.get_by_label("A name for the site").fill("   ")
    page.get_by_role("button", name="Start this visit").click()
    expect(page.get_by_text("Give the site a name and the visit a date.")).to_be_visible()
    page.get_by_label("A name for the site").fill("Elm House, code 4711")
    page.get_by_role("button", name="Start this visit").click()
    said = page.get_by_text("looks as if it held a code")
    expect(said).to_be_visible()
    expect(said).to_contain_text("A name for the site")
    assert stored(page) == []


def test_it_can_be_called_otherwise(page: Page, base: str) -> None:
    start_visit(page, base)
    page.get_by_role("button", name="Change name, date or who").click()
    form = page.locator(".ls-visit")
    form.get_by_label("A name for the site").fill("Elm House, rear")
    form.get_by_label("Date").fill("2026-11-26")
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.get_by_role("heading", name="Elm House, rear")).to_be_visible()
    expect(page.locator(".ls-visit")).to_contain_text("2026-11-26")
    assert [one["site"] for one in stored(page)].count("Elm House") == 1


def test_lists_per_site_and_per_opening(page: Page, base: str) -> None:
    start_visit(page, base)
    add_opening(page, "Back door", "recessed-contact")
    add_opening(page, "Front window", "surface-contact")
    expect(page.get_by_role("heading", name="Lists for Back door")).to_be_visible()
    lists = page.locator(".ls-visit .ls-rows strong")
    for name, count in (("Handover", 1), ("Proving an opening", 2)):
        expect(lists.filter(has_text=re.compile(f"^{name}$"))).to_have_count(count)
    expect(lists.filter(has_text="Power and cover"), "a device without a cell has no list for one").to_have_count(1)
    page.get_by_role("link", name="Proving an opening").first.click()
    ready(page)
    expect(page.locator(".ls-where")).to_have_text("Writes to: Elm House, Back door")
    tick(page, "look")
    opened(page, base)
    rows = page.get_by_role("link", name="Proving an opening")
    of_door = items("proving-each-opening", "recessed-contact")
    expect(rows.first).to_contain_text(f"1 of {of_door}, {of_door - 1} open")
    expect(rows.last).to_contain_text("Not started")


def test_problems_readings_and_notes_are_gathered(page: Page, base: str) -> None:
    start_visit(page, base)
    add_opening(page, "Back door")
    page.get_by_role("link", name="Proving an opening").click()
    ready(page)
    other(page.locator("#item-look"), "Problem", "What is the problem?", "Hinge is loose")
    page.locator("#item-play").get_by_label("Reading").fill("5")
    page.get_by_role("button", name="Save: outside, a problem").click()
    page.wait_for_selector("#item-play[data-state=problem]")
    opened(page, base)
    page.get_by_label("A note about this visit").fill("Dog in the yard")
    page.get_by_role("button", name="Save the note").click()
    for words in ("Hinge is loose", "5\u00a0mm \u2013 outside, expected at most 3", "Dog in the yard"):
        expect(page.locator(".ls-visit")).to_contain_text(words)


def test_an_opening_taken_off_keeps_what_was_recorded(page: Page, base: str) -> None:
    start_visit(page, base)
    add_opening(page, "Back door")
    page.get_by_role("button", name="Take off the list").click()
    page.get_by_role("button", name="Take it off").click()
    expect(page.locator(".ls-openings li")).to_have_count(0)
    assert [one["removed"] for one in stored(page) if one["kind"] == "opening"].count(True) == 1
    assert len(stored(page)) == 3


def test_the_file_says_everything_and_fits_the_schema(page: Page, base: str) -> None:
    start_visit(page, base, "Élm Höuse / back")
    add_opening(page, "Back door", "surface-contact")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    assert download.value.suggested_filename == f"visit-{stored(page)[0]['at'][:10]}-elm-house-back.json"
    found, faults = parse_visit(text_of(download.value), SCHEMA)
    assert not faults
    assert found is not None
    assert sorted(map(str, found.entries)) == sorted(map(str, sorted(stored(page), key=lambda one: one["n"])))
    expect(page.locator(".ls-file")).to_contain_text("Before you go: 3 entries are only on this device.")
    page.get_by_role("button", name="It is there").click()
    expect(page.locator(".ls-file")).to_contain_text("All of it, 3 entries, is in a file that you saved.")
    page.reload()
    ready(page)
    expect(page.locator(".ls-file")).to_contain_text("All of it, 3 entries, is in a file")


def test_the_table_opens_in_a_spreadsheet_and_runs_nothing(page: Page, base: str) -> None:
    bring_in(page, json.dumps(injecting_record()))
    page.get_by_role("button", name="Bring it in").click()
    expect(page.get_by_role("button", name="Save as a table")).to_be_visible()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a table").click()
    text = text_of(download.value)
    assert text.startswith("\ufeff")
    assert '"\'=1+1"' in text or "'=1+1" in text
    assert ",=1+1" not in text
    assert text.count("\r\n") == 1 + len(injecting_record()["entries"])


SHARES = """window.shared = []; window.refuse = '';
  navigator.canShare = data => data.files.every(file => file.type === 'text/plain');
  navigator.share = async data => { if (window.refuse) throw new DOMException('no', window.refuse);
    window.shared.push([data.files[0].name, await data.files[0].text()]); };"""


def test_share_hands_over_a_file(context: BrowserContext, base: str) -> None:
    page = new_page(context, f"{base}visits/", first=SHARES)
    start_visit(page, base)
    page.evaluate("window.refuse = 'AbortError'")
    page.get_by_role("button", name="Share").click()
    expect(page.locator(".ls-file")).to_contain_text("Not shared.")
    page.evaluate("window.refuse = 'NotAllowedError'")
    page.get_by_role("button", name="Share").click()
    expect(page.locator(".ls-file")).to_contain_text("Sharing was refused. Save it as a file instead.")
    expect(page.locator(".ls-file")).to_contain_text("Before you go")
    page.evaluate("window.refuse = ''")
    page.get_by_role("button", name="Share").click()
    expect(page.locator(".ls-file")).to_contain_text("All of it, 1 entry, is in a file")
    name, text = page.evaluate("shared[0]")
    assert name.endswith(".json.txt")
    assert not parse_visit(text, SCHEMA)[1]


def test_no_share_button_where_there_is_no_share_sheet(context: BrowserContext, base: str) -> None:
    lacking = "navigator.canShare = undefined; navigator.share = undefined;"
    page = new_page(context, f"{base}visits/", first=lacking)
    start_visit(page, base)
    expect(page.get_by_role("button", name="Save as a file")).to_be_visible()
    expect(page.get_by_role("button", name="Share")).to_have_count(0)


def test_hostile_files_are_refused_and_change_nothing(page: Page, base: str) -> None:
    start_visit(page, base)
    before = stored(page)
    page.get_by_role("button", name="All visits").first.click()
    for name, content in HOSTILE.items():
        bring_in(page, content)
        said = page.locator(".ls-import .ls-said")
        expect(said, name).to_contain_text("Nothing was changed.")
        expect(page.get_by_role("button", name="Bring it in")).to_have_count(0)
    assert stored(page) == before
    assert stored(page, "aside") == []


def test_a_file_is_looked_at_before_it_is_brought_in(page: Page) -> None:
    bring_in(page, json.dumps(full_record()))
    expect(page.locator(".ls-import")).to_contain_text(
        "Elm House, 2026-11-25: 10 entries by Anna, 10 of them new here."
    )
    assert stored(page) == []
    page.get_by_role("button", name="Leave it").click()
    assert stored(page) == []
    bring_in(page, json.dumps(full_record()))
    page.get_by_role("button", name="Bring it in").click()
    expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
    assert len(stored(page)) == 10
    page.get_by_role("button", name="All visits").first.click()
    bring_in(page, json.dumps(full_record()))
    expect(page.locator(".ls-import")).to_contain_text("Nothing to bring in.")


def test_an_altered_copy_is_refused(page: Page) -> None:
    bring_in(page, json.dumps(record(site(), item(2, 2))))
    page.get_by_role("button", name="Bring it in").click()
    page.get_by_role("button", name="All visits").first.click()
    bring_in(page, json.dumps(record(site(), item(2, 2, outcome="problem", note="x"), item(3, 3))))
    expect(page.locator(".ls-import")).to_contain_text(
        "an entry that is on this device reads otherwise in the file. Nothing was changed."
    )
    stranger = {**item(2, 1), "visit": some_id(50)}
    bring_in(page, json.dumps(record(stranger, visit=some_id(50))))
    expect(page.locator(".ls-import")).to_contain_text("it holds an entry of another visit. Nothing was changed.")
    assert len(stored(page)) == 2


def test_two_technicians_lose_nothing(browser: Browser, contexts: Contexts, context: BrowserContext, base: str) -> None:
    """Anna starts, hands over the file; both work on; each brings in the other's; both see the same."""
    with contexts.lent(browser, viewport=PHONE, service_workers="block") as another:
        anna, ben = (new_page(one, f"{base}visits/") for one in (context, another))
        both_work_on(anna, ben, base)


def both_work_on(anna: Page, ben: Page, base: str) -> None:
    start_visit(anna, base, "Elm House", "Anna")
    add_opening(anna, "Back door", "surface-contact")
    bring_in(ben, save(anna)[0])
    ben.get_by_role("button", name="Bring it in").click()
    expect(ben.get_by_role("heading", name="Elm House")).to_be_visible()
    for page in (anna, ben):
        page.get_by_role("link", name="Proving an opening").click()
        ready(page)
    tick(anna, "push-pull")
    tick(anna, "look")
    tick(ben, "latched")
    tick(ben, "knock")
    other(ben.locator("#item-look"), "Problem", "What is the problem?", "Hinge is loose")
    ben.wait_for_selector("#item-look[data-state=problem]")
    files = [save(opened(page, base))[0] for page in (anna, ben)]
    for page, file in ((anna, files[1]), (ben, files[0])):
        page.get_by_role("button", name="All visits").first.click()
        bring_in(page, file)
        page.get_by_role("button", name="Bring it in").click()
        page.get_by_role("link", name="Proving an opening").click()
        ready(page)
        expect(page.locator("#item-look")).to_have_attribute("data-state", "differs")
        expect(page.locator("#item-look")).to_contain_text("two entries do not agree")
        expect(page.locator("#item-look")).to_contain_text("Hinge is loose")
        for item_ in ("push-pull", "latched", "knock"):
            expect(page.locator(f"#item-{item_}")).to_have_attribute("data-state", "done")
    mine, theirs = (sorted(stored(page), key=lambda one: one["id"]) for page in (anna, ben))
    assert mine == theirs
    tick(anna, "look")
    expect(anna.locator("#item-look .ls-outcome p")).to_have_count(0)  # a plain tick says it


def test_injection_through_a_record_runs_nothing(page: Page, context: BrowserContext, base: str) -> None:
    bring_in(page, json.dumps(injecting_record()))
    page.get_by_role("button", name="Bring it in").click()
    expect(page.locator(".ls-visit")).to_contain_text("<script>window.ran=1</script>")
    page.get_by_role("link", name="Position", exact=False).first.click()
    ready(page)
    page.get_by_role("button", name="Change where it writes to").click()
    expect(page.get_by_label("Visit")).to_contain_text("<img src=x")
    assert page.evaluate("window.ran") is None
    opened(page, base, "<img src=x")
    page.evaluate("() => { window.print = () => { window.printed = document.querySelector('.ls-sheet').innerHTML; }; }")
    page.get_by_role("button", name="Print the sheet").click()
    page.wait_for_function("window.printed")
    assert "<img" not in page.evaluate("window.printed")
    assert page.evaluate("window.ran") is None
    assert page.locator("article img[src=x], .ls-sheet img, article script, .ls-sheet script").count() == 0


def test_injection_through_what_is_typed_runs_nothing(page: Page, base: str) -> None:
    bad = '"><img src=x onerror="window.ran=1">'
    start_visit(page, base, f"Elm {bad}", f"A{bad}")
    add_opening(page, f"Door {bad}")
    page.get_by_label("A note about this visit").fill(bad)
    page.get_by_role("button", name="Save the note").click()
    expect(page.locator(".ls-visit")).to_contain_text(bad)
    page.get_by_role("link", name="Proving an opening").click()
    ready(page)
    other(page.locator("#item-look"), "Problem", "What is the problem?", bad)
    expect(page.locator("#item-look .ls-outcome")).to_contain_text(bad)
    page.get_by_role("button", name="Change where it writes to").click()
    expect(page.get_by_label("Visit")).to_contain_text(bad)
    assert page.evaluate("window.ran") is None
    assert page.locator("img[src=x]").count() == 0


@pytest.mark.parametrize("parameter", ["visit", "opening"])
def test_injection_through_a_link_runs_nothing(context: BrowserContext, base: str, parameter: str) -> None:
    bad = "%22%3E%3Cimg%20src=x%20onerror=window.ran=1%3E"
    page = new_page(context, f"{base}checklists/position/?{parameter}={bad}#v={bad}")
    tick(page, page.locator("[data-item]:not(:has(.ls-reading))").first.get_attribute("data-item") or "")
    page.goto(f"{base}visits/#v={bad}")
    ready(page)
    assert page.evaluate("window.ran") is None
    assert page.locator("img[src=x]").count() == 0


def test_what_is_typed_and_where_the_reader_stands_survive_a_change(
    page: Page, context: BrowserContext, base: str
) -> None:
    visit = start_visit(page, base)
    page.get_by_role("button", name="Change name, date or who").click()
    page.get_by_label("A name for the site").fill("Elm House, rear")
    note = page.get_by_label("A note about this visit")
    note.fill("Dog in the yard")
    note.press("Home")
    stood = page.evaluate("scrollY")
    other_tab = new_page(context, f"{base}visits/#v={visit}")
    other_tab.get_by_label("A note about this visit").fill("Key with the baker")
    other_tab.get_by_role("button", name="Save the note").click()
    expect(page.locator(".ls-visit")).to_contain_text("Key with the baker")
    expect(page.get_by_label("A name for the site")).to_have_value("Elm House, rear")
    expect(note).to_have_value("Dog in the yard")
    expect(note).to_be_focused()
    assert page.evaluate("document.activeElement.selectionStart") == 0
    assert abs(page.evaluate("scrollY") - stood) < 100, "the line of the note, and no more"


def test_no_script_of_ours_reads_a_text_as_markup(site: Path) -> None:
    """The library of templates reads those of ours as markup, what is filled in as text."""
    for path in (site / "assets" / "js").rglob("*.js"):
        if path.parent.name == "vendor":
            continue
        text = path.read_text("utf-8")
        for way in (
            "unsafe",
            "innerHTML",
            "outerHTML",
            "insertAdjacentHTML",
            "document.write",
            "eval(",
            "new Function",
            'setTimeout("',
        ):
            assert way not in text, f"{path.name}: {way}"


def test_archive_and_open_again(page: Page, base: str) -> None:
    visit = start_visit(page, base)
    page.get_by_role("button", name="Archive it").click()
    expect(page.get_by_text("1 entry is in no file yet.")).to_be_visible()
    page.get_by_role("button", name="Archive it").click()
    expect(page.get_by_text("Archived: nothing more is written to it.")).to_be_visible()
    start_visit(page, base, "Oak House")
    page.goto(f"{base}checklists/handover/?visit={visit}")
    ready(page)
    expect(page.locator(".ls-writes")).to_contain_text("The visit Elm House is archived. Oak House")
    opened(page, base)
    page.goto(f"{base}checklists/handover/")
    ready(page)
    expect(page.locator(".ls-where")).to_have_text("Writes to: Oak House")
    page.goto(f"{base}visits/")
    ready(page)
    expect(page.get_by_role("heading", name="Archived")).to_be_visible()
    opened(page, base).get_by_role("button", name="Open it again").click()
    expect(page.get_by_text("Archived: nothing more is written to it.")).to_have_count(0)
    assert len(stored(page)) == 4


def test_lock_and_unlock(page: Page, base: str) -> None:
    start_visit(page, base)
    expect(page.get_by_text("It can be locked away or wiped once all of it is saved as a file.")).to_be_visible()
    _, file = save(page)
    page.get_by_role("button", name="It is there").click()
    page.get_by_label("A passphrase").fill("4711 4711 4711")
    page.get_by_label("The same again").fill("4711 4711 4711")
    page.get_by_role("button", name="Lock it away").click()
    expect(page.get_by_text("not digits alone")).to_be_visible()
    page.get_by_label("A passphrase").fill("ladders lean on walls")
    page.get_by_label("The same again").fill("ladders lean on walls")
    page.get_by_role("button", name="Lock it away").click()
    expect(page.get_by_role("heading", name="Locked visit of")).to_be_visible()
    assert stored(page) == []
    assert "Elm House" not in page.evaluate("() => document.body.innerText")
    page.get_by_label("Passphrase").fill("another one entirely")
    page.get_by_role("button", name="Unlock").click()
    expect(page.get_by_text("That is not its passphrase.")).to_be_visible()
    page.get_by_label("Passphrase").fill("ladders lean on walls")
    page.get_by_role("button", name="Unlock").click()
    expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
    assert [dict(one) for one in file.entries] == stored(page)
    assert stored(page, "locked") == []


def test_a_locked_visit_is_not_brought_in_beside_itself(page: Page, base: str) -> None:
    start_visit(page, base)
    text, _ = save(page)
    page.get_by_role("button", name="It is there").click()
    page.get_by_label("A passphrase").fill("ladders lean on walls")
    page.get_by_label("The same again").fill("ladders lean on walls")
    page.get_by_role("button", name="Lock it away").click()
    expect(page.get_by_role("heading", name="Locked visit of")).to_be_visible()
    page.get_by_role("button", name="All visits").first.click()
    bring_in(page, text)
    expect(page.locator(".ls-import")).to_contain_text("This visit is locked away on this device. Unlock it first.")


def test_wipe_only_after_it_was_saved(page: Page, base: str) -> None:
    start_visit(page, base)
    expect(page.get_by_role("button", name="Wipe it from this device")).to_have_count(0)
    text, _ = save(page)
    page.get_by_role("button", name="It is there").click()
    page.get_by_role("button", name="Wipe it from this device").click()
    page.get_by_role("button", name="Wipe it", exact=True).click()
    expect(page.get_by_text("No visit is open on this device.")).to_be_visible()
    assert stored(page) == []
    bring_in(page, text)
    page.get_by_role("button", name="Bring it in").click()
    expect(page.get_by_role("heading", name="Elm House")).to_be_visible()


def test_the_printed_sheet_marks_what_is_open(page: Page, base: str, tmp_path: Path) -> None:
    start_visit(page, base)
    add_opening(page, "Back door", "surface-contact")
    page.get_by_role("link", name="Proving an opening").click()
    ready(page)
    tick(page, "look")
    other(page.locator("#item-latched"), "Problem", "What is the problem?", "Latch misses its keep")
    page.wait_for_selector("#item-latched[data-state=problem]")
    opened(page, base)
    page.evaluate("() => { window.print = () => { window.printed = true; }; }")
    page.get_by_role("button", name="Print the sheet").click()
    page.wait_for_function("window.printed")
    left = items("proving-each-opening", "surface-contact") - 2
    for format_ in ("A4", "Letter"):
        path = tmp_path / f"{format_}.pdf"
        page.pdf(path=path, format=format_)
        text = " ".join("".join(sheets(path)).split())
        for words in (
            "Elm House",
            "Proving an opening: Back door",
            "Latch misses its keep",
            "PROBLEM",
            "OPEN",
            f"NOT COMPLETE: {left} open",
            "signature",
        ):
            assert words in text, words
        assert text.count("OPEN") >= left
        assert "Start a visit" not in text
    page.get_by_role("button", name="All visits").first.click()
    expect(page.get_by_role("link", name="Elm House")).to_be_visible()
    page.pdf(path=tmp_path / "list.pdf")
    text = "".join(sheets(tmp_path / "list.pdf"))
    assert "NOT COMPLETE" not in text


def test_lists_run_without_a_visit_can_be_taken_along(page: Page, base: str) -> None:
    page.goto(f"{base}checklists/handover/")
    ready(page)
    answer_all(page)
    page.get_by_role("button", name="Complete", exact=True).click()
    with page.expect_download() as download:
        page.locator(".ls-finish").get_by_role("button", name="Save as a file").click()
    assert not parse_visit(text_of(download.value), SCHEMA)[1]
    page.goto(f"{base}visits/")
    ready(page)
    page.get_by_role("link", name="Without a visit").click()
    expect(page.get_by_role("link", name="Handover")).to_contain_text("Complete")


def test_the_policy_of_the_page_is_kept(browser: Browser, base: str) -> None:
    """Nothing this tool does is refused by the Content-Security-Policy."""
    context = browser.new_context(service_workers="block")
    refused: list[Any] = []
    context.add_init_script(
        "addEventListener('securitypolicyviolation', event => console.error('policy', event.violatedDirective))"
    )
    context.on("console", lambda message: refused.append(message.text) if "policy" in message.text.lower() else None)
    page = new_page(context, f"{base}visits/")
    start_visit(page, base)
    add_opening(page, "Back door", "surface-contact")
    save(page)
    with page.expect_download():
        page.get_by_role("button", name="Save as a table").click()
    page.get_by_role("link", name="Fixing").click()
    ready(page)
    page.locator(".ls-reading input").first.fill("4")
    assert refused == []
    context.close()


def test_entries_of_the_record_stay_as_they_were_made(page: Page, base: str) -> None:
    """What is brought in and saved again is the same, entry by entry."""
    whole = record(
        *full_record()["entries"], entry("note", 11, 11, opening=None, note="\u00e9 \u65e5\u672c \U0001f600")
    )
    bring_in(page, json.dumps(whole))
    page.get_by_role("button", name="Bring it in").click()
    expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
    text, found = save(page)
    assert json.loads(text)["entries"] == whole["entries"]
    assert found.visit == VISIT


@pytest.mark.parametrize(
    ("press", "said"),
    [("Archive it", "This visit is archived. Choose another."), ("Wipe it", "no longer on this device")],
)
def test_a_visit_put_away_in_another_tab_takes_no_more_ticks(
    page: Page, context: BrowserContext, base: str, press: str, said: str
) -> None:
    visit = start_visit(page, base)
    save(page)
    page.get_by_role("button", name="It is there").click()
    checklist = new_page(context, f"{base}checklists/handover/?visit={visit}")
    expect(checklist.locator(".ls-where")).to_have_text("Writes to: Elm House")
    page.get_by_role("button", name=press).click()
    page.get_by_role("button", name=press, exact=True).click()
    expect(checklist.locator(".ls-where")).to_contain_text(said)
    expect(checklist.locator(".ls-item input").first).to_be_disabled()
