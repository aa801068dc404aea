"""Photographs at an opening of a visit: taken, seen, taken off, saved, printed, locked, wiped, and a full storage."""

from __future__ import annotations

import json
from base64 import b64decode
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any
from zipfile import ZipFile

import pytest
from PIL import Image
from playwright.sync_api import Browser, BrowserContext, Download, Page, expect
from pypdf import PdfReader

from latchside.visits.file import parse_visit

from ..visits.make import SCHEMA, VISIT, site
from .camera import photograph, written_afresh
from .contexts import Contexts, not_again
from .field import FILL_UP, PHONE, add_opening, axe_finds, new_page, put, ready, start_visit, stored

PICTURES = """() => new Promise((resolve) => {
  const request = indexedDB.open('latchside');
  request.onsuccess = () => {
    const all = request.result.transaction('pictures').objectStore('pictures').getAll();
    all.onsuccess = () => {
      request.result.close();
      const text = (bytes) => btoa(Array.from(new Uint8Array(bytes), (byte) => String.fromCharCode(byte)).join(''));
      resolve(all.result.map((row) => ({ ...row, bytes: row.bytes ? text(row.bytes) : '' })));
    };
  };
})"""

LATE = """async ([script, row]) => {
  const picture = { bytes: new ArrayBuffer(9), small: row.small, width: 3, height: 3 };
  const { add } = await import(script);
  return add({ ...row, id: 'late' }, picture).then(() => 'kept', (error) => error.constructor.name);
}"""
"""Keep a photograph that was taken before its visit was put away."""

EARLIER = """(entries) => new Promise((resolve) => {
  const request = indexedDB.open('latchside', 1);
  request.onupgradeneeded = () => {
    const db = request.result;
    db.createObjectStore('entries', { keyPath: 'id' }).createIndex('visit', ['visit', 'n']);
    db.createObjectStore('meta', { keyPath: 'key' });
    db.createObjectStore('aside', { autoIncrement: true });
    db.createObjectStore('locked', { keyPath: 'visit' });
  };
  request.onsuccess = () => {
    const db = request.result;
    db.onversionchange = () => db.close();
    const change = db.transaction('entries', 'readwrite');
    for (const entry of entries) change.objectStore('entries').put(entry);
    change.oncomplete = () => resolve();
  };
})"""
"""The store as the first copies of the site made it, held open by their page."""


@pytest.fixture
def context(browser: Browser, contexts: Contexts) -> Iterator[BrowserContext]:
    with contexts.lent(browser, viewport=PHONE, service_workers="block") as lent:
        yield lent


@pytest.fixture
def page(context: BrowserContext, base: str) -> Iterator[Page]:
    """The page of a visit with one opening; what its policy refuses fails the test."""
    refused: list[str] = []
    made = new_page(context, f"{base}visits/")
    made.on("console", lambda message: refused.append(message.text) if message.type == "error" else None)
    start_visit(made, base)
    add_opening(made, "Back door", "surface-contact")
    yield made
    assert refused == []


def take(page: Page, what: str, name: str = "photo.jpg", data: bytes | None = None) -> None:
    """Take a photograph at the one opening."""
    press = page.get_by_role("button", name="Photograph Back door")
    if press.get_attribute("aria-expanded") != "true":
        press.click()
    page.get_by_label("What it shows").select_option(what)
    file: Any = {"name": name, "mimeType": "image/jpeg", "buffer": data or photograph()}
    page.get_by_label("Take a photograph").set_input_files(file)


def pictures(page: Page) -> list[bytes]:
    """The large pictures as they are kept; empty where they cannot be read."""
    return [b64decode(row["bytes"]) for row in page.evaluate(PICTURES)]


def save(page: Page, button: str) -> Download:
    with page.expect_download() as download:
        page.get_by_role("button", name=button).click()
    page.get_by_role("button", name="It is there").click()
    return download.value


def test_a_photograph_is_taken_seen_and_taken_off(page: Page, context: BrowserContext) -> None:
    raw = photograph()
    page.get_by_role("button", name="Photograph Back door").click()
    expect(
        page.get_by_text("Keep out of the picture: codes, keypads, keys, people, the list of zones.")
    ).to_be_visible()
    camera = page.get_by_label("Take a photograph")
    expect(camera, "what it shows is said first").to_be_disabled()
    assert (camera.get_attribute("accept"), camera.get_attribute("capture")) == ("image/*", "environment")
    take(page, "label", "notes.jpg", b"no picture at all")
    expect(page.locator(".ls-photographing")).to_contain_text("notes.jpg is no picture that this browser can read.")
    assert stored(page, "photographs") == []

    take(page, "label", data=raw)
    shown = page.get_by_role("img", name="Photograph of the label")
    expect(shown).to_be_visible()
    expect(page.locator(".ls-photographing")).to_contain_text("Kept: the label. It is only on this device")
    expect(page.locator(".ls-photographs figcaption")).to_contain_text("Anna")
    (kept,) = pictures(page)
    written_afresh(kept)
    assert not axe_finds(page)

    other = new_page(context, page.url)
    take(other, "place")
    expect(other.locator(".ls-photographs li")).to_have_count(2)
    expect(page.locator(".ls-photographs li")).to_have_count(2)
    assert sorted((one["number"], one["what"]) for one in stored(page, "photographs")) == [(1, "label"), (2, "place")]
    page.reload()
    ready(page)
    expect(shown).to_be_visible()
    assert shown.evaluate("image => image.decode().then(() => image.naturalHeight)") == 360
    shown.click()
    expect(page.get_by_role("button", name="Photograph of the label")).to_have_attribute("aria-expanded", "true")
    assert shown.evaluate("image => image.decode().then(() => image.naturalHeight)") == 1600
    page.get_by_role("button", name="Take the photograph off").first.click()
    expect(page.get_by_text("It is in no file yet, and goes from this device for good.")).to_be_visible()
    assert len(pictures(page)) == 2, "it is asked first"
    page.get_by_role("button", name="Take it off").click()
    expect(shown).to_have_count(0)
    expect(other.locator(".ls-photographs li")).to_have_count(1)
    assert (len(pictures(page)), [one["what"] for one in stored(page, "photographs")]) == (1, ["place"])


def test_photographs_leave_with_the_record_and_are_wiped_with_it(page: Page, base: str, tmp_path: Path) -> None:
    assert page.get_by_role("button", name="(ZIP)").count() == 0
    take(page, "label")
    expect(page.locator(".ls-photographs li")).to_have_count(1)
    take(page, "loop")
    expect(page.locator(".ls-photographs li")).to_have_count(2)
    alone = save(page, "Save as a file")
    expect(page.locator(".ls-file")).to_contain_text("2 photographs are only on this device.")
    expect(page.get_by_role("button", name="Wipe it from this device")).to_have_count(0)
    page.get_by_role("button", name="All visits").first.click()
    expect(page.locator(".ls-visits")).to_contain_text("2 photographs only on this device")
    page.get_by_role("link", name="Elm House").click()

    saved = save(page, "Save with its 2 photographs (ZIP)")
    expect(page.locator(".ls-file")).to_contain_text("All of it, 3 entries, is in a file that you saved.")
    opening = next(one["opening"] for one in stored(page) if one["kind"] == "opening")
    record = alone.suggested_filename
    assert saved.suggested_filename == record.replace(".json", ".zip")
    with ZipFile(saved.path()) as found:
        assert found.testzip() is None
        assert found.namelist() == [
            record, f"photographs/{opening}-1-label.jpg", f"photographs/{opening}-2-loop.jpg",
        ]  # fmt: skip
        assert sorted(found.read(name) for name in found.namelist()[1:]) == sorted(pictures(page))
        inside = found.read(record).decode("utf-8")
    assert not parse_visit(inside, SCHEMA)[1]
    assert json.loads(inside)["entries"] == json.loads(Path(alone.path()).read_text("utf-8"))["entries"]

    page.evaluate("() => { window.print = () => { window.printed = true; }; }")
    for press in ("Print as fitted", "Print the sheet"):
        page.get_by_role("button", name=press).click()
        page.wait_for_function("window.printed")
        page.pdf(path=tmp_path / "sheet.pdf")
        sheets = PdfReader(tmp_path / "sheet.pdf").pages
        text = " ".join(" ".join(sheet.extract_text() for sheet in sheets).split())
        assert "Photographs: Back door" in text
        assert sum(len(sheet.images) for sheet in sheets) >= 1

    page.get_by_role("button", name="Wipe it from this device").click()
    expect(page.get_by_text("3 entries and 2 photographs go from this device for good.")).to_be_visible()
    page.get_by_role("button", name="Wipe it", exact=True).click()
    expect(page.get_by_text("No visit is open on this device.")).to_be_visible()
    assert [stored(page, store) for store in ("entries", "photographs", "pictures")] == [[], [], []]


def test_photographs_are_locked_and_wiped_with_their_visit(page: Page, base: str) -> None:
    take(page, "label")
    expect(page.locator(".ls-photographs li")).to_have_count(1)
    (before,), (row,) = pictures(page), stored(page, "photographs")
    save(page, "Save with its photograph (ZIP)")

    def lock() -> None:
        page.get_by_label("A passphrase").fill("ladders lean on walls")
        page.get_by_label("The same again").fill("ladders lean on walls")
        page.get_by_role("button", name="Lock it away").click()
        expect(page.get_by_role("heading", name="Locked visit of")).to_be_visible()

    lock()
    assert stored(page, "photographs") == []
    assert pictures(page) == [b""], "kept, and to be read by nobody"
    assert page.locator("img[src^='data:image/jpeg']").count() == 0
    page.get_by_label("Passphrase").fill("ladders lean on walls")
    page.get_by_role("button", name="Unlock").click()
    expect(page.get_by_role("img", name="Photograph of the label")).to_be_visible()
    assert (pictures(page), stored(page, "photographs")) == ([before], [row])
    expect(page.locator(".ls-file")).to_contain_text("All of it, 3 entries, is in a file")
    lock()
    page.get_by_role("button", name="Wipe the locked visit").click()
    page.get_by_role("button", name="Wipe it", exact=True).click()
    expect(page.get_by_text("No visit is open on this device.")).to_be_visible()
    assert [stored(page, store) for store in ("locked", "photographs", "pictures")] == [[], [], []]
    late = page.evaluate(LATE, [f"{base}assets/js/photo/store.js", row])
    assert (late, pictures(page)) == ("VisitGone", []), "one that was under way is not left behind"


def test_a_damaged_photograph_harms_no_other(page: Page) -> None:
    for number, what in enumerate(("label", "loop"), 1):
        take(page, what)
        expect(page.locator(".ls-photographs li")).to_have_count(number)
    label, loop = sorted(stored(page, "photographs"), key=lambda one: one["number"])
    put(page, [{**label, "small": 7}, loop], "photographs")
    page.reload()
    ready(page)
    expect(page.locator(".ls-photographs li")).to_have_count(1)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save with its 2 photographs (ZIP)").click()
    with ZipFile(download.value.path()) as found:
        assert [name[-10:] for name in found.namelist()[1:]] == ["2-loop.jpg"]
    expect(page.locator(".ls-file")).to_contain_text("1 photograph can no longer be read, and is left out.")
    page.get_by_role("button", name="It is there").click()
    expect(page.get_by_role("button", name="Wipe it from this device"), "it does not hold the visit up").to_be_visible()


def test_where_nothing_is_stored_photographs_leave_all_the_same(browser: Browser, base: str) -> None:
    context = browser.new_context(viewport=PHONE, service_workers="block")
    context.add_init_script("IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };")
    page = new_page(context, f"{base}visits/")
    start_visit(page, base)
    add_opening(page, "Back door")
    for number, what in enumerate(("loop", "label", "place"), 1):
        take(page, what)
        expect(page.locator(".ls-photographs li")).to_have_count(number)
    page.get_by_role("button", name="Take the photograph off").first.click()
    page.get_by_role("button", name="Take it off").click()
    expect(page.locator(".ls-photographs li")).to_have_count(2)
    with ZipFile(save(page, "Save with its 2 photographs (ZIP)").path()) as found:
        assert [name[-11:] for name in found.namelist()[1:]] == ["2-label.jpg", "3-place.jpg"]
    context.close()


SAYS = """quota => Object.defineProperty(navigator.storage, 'estimate', {
  configurable: true, value: async () => ({ usage: 1_000_000, quota }),
})"""
"""What the browser says of its room: 1 MB is used of a quota."""


def test_a_full_storage_is_said_and_loses_nothing(page: Page) -> None:
    panel = page.locator(".ls-photographing")
    take(page, "place")
    expect(page.locator(".ls-photographs li")).to_have_count(1)
    (size,) = (one["size"] for one in stored(page, "photographs"))
    expect(panel).not_to_contain_text("There is room for")
    page.evaluate(SAYS, 3_000_000 + 5.5 * size)  # of which 2 MB stay free for the record
    page.get_by_role("button", name="Photograph Back door").click()
    page.get_by_role("button", name="Photograph Back door").click()
    expect(panel).to_contain_text("There is room for about 5 more photographs in this browser.")
    page.evaluate(SAYS, 3_000_000 + 0.5 * size)
    take(page, "label")
    expect(panel).to_contain_text("Not kept: this browser has no room for it.")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save this one as a file").click()
    assert Image.open(BytesIO(Path(download.value.path()).read_bytes())).size == (800, 1600)
    page.evaluate(SAYS, 9_000_000_000)
    page.get_by_role("button", name="Try again").click()
    expect(page.locator(".ls-photographs li")).to_have_count(2)
    expect(panel).to_contain_text("Kept: the label.")
    assert [len(stored(page)), len(stored(page, "photographs")), len(pictures(page))] == [3, 2, 2]


def test_where_the_store_itself_refuses_nothing_is_lost(context: BrowserContext, base: str) -> None:
    """What a browser says of its room need not be so."""
    page = context.new_page()
    session = context.new_cdp_session(page)
    session.send("Storage.overrideQuotaForOrigin", {"origin": base, "quotaSize": 500_000})
    page.goto(f"{base}visits/")
    start_visit(page, base)
    add_opening(page, "Back door")
    take(page, "place")
    expect(page.locator(".ls-photographs li")).to_have_count(1)
    page.evaluate(FILL_UP)
    take(page, "label")
    expect(page.locator(".ls-photographing")).to_contain_text("Not kept: this browser has no room for it.")
    assert [len(stored(page)), len(stored(page, "photographs")), len(pictures(page))] == [2, 1, 1]
    session.send("Storage.overrideQuotaForOrigin", {"origin": base})
    page.get_by_role("button", name="Try again").click()
    expect(page.locator(".ls-photographs li")).to_have_count(2)


def test_visits_of_an_earlier_copy_stay_and_take_photographs(context: BrowserContext, base: str) -> None:
    """Also while a page of that copy is open; and a page of this copy works on once a later one raised the version."""
    earlier = context.new_page()
    earlier.goto(f"{base}finder.json")
    earlier.evaluate(EARLIER, [site()])
    page = new_page(context, f"{base}visits/#v={VISIT}")
    expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
    add_opening(page, "Back door")
    take(page, "label")
    expect(page.locator(".ls-photographs li")).to_have_count(1)
    page.goto(f"{base}finder.json")
    page.evaluate(
        """() => new Promise((resolve) => {
          const request = indexedDB.open('latchside', 9);
          request.onsuccess = () => { request.result.close(); resolve(); };
        })"""
    )
    page.goto(f"{base}visits/#v={VISIT}")
    ready(page)
    expect(page.get_by_role("img", name="Photograph of the label")).to_be_visible()
    not_again(context)
