"""What tests of visits do again and again: open a page and wait for its tool, start a visit, tick, read the store."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any
from weakref import WeakSet

import yaml
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import BrowserContext, Locator, Page, ViewportSize, expect

from .contexts import not_again, page_of

CHECKLISTS = Path(__file__).parents[2] / "checklists"
DEVICES = Path(__file__).parents[2] / "content" / "devices"
PHONE: ViewportSize = {"width": 360, "height": 740}

Open = Callable[[str], Page]
complaints: list[str] = []
"""Errors in the pages of the test that runs; it fails in the end where there are any."""
_heard: WeakSet[Page] = WeakSet()


def items(checklist: str, device: str = "") -> int:
    """How many items the record of a checklist holds, of those that concern a device where one is named."""
    record = yaml.safe_load((CHECKLISTS / f"{checklist}.yaml").read_text(encoding="utf-8"))
    every = [item for point in record["points"] for item in point["items"]]
    return sum(not device or concerns(device, item.get("only", [device])) for item in every)


def concerns(device: str, only: Any) -> bool:
    """Whether `only` of an item names a device, or its traits: read from the records themselves."""
    if isinstance(only, list):
        return device in only
    record = yaml.safe_load((DEVICES / f"{device}.yaml").read_text(encoding="utf-8"))
    listed = {"parts": [one["role"] for one in record["parts"]], "inputs": [one["kind"] for one in record["inputs"]]}
    known = {**{name: [word] for name, word in record["traits"].items()}, **listed}
    return all(set(words) & set(known[name]) for name, words in only.items())


def ready(page: Page) -> Page:
    """The page, once its script has taken over."""
    page.wait_for_selector("html[data-ls-ready]")
    return page


def new_page(context: BrowserContext, address: str, at: str = "", first: str = "") -> Page:
    """A page of the context, with its clock standing at `at` from the start, and a script run `first` of all.

    An error in it fails the test, but not from here: that would break the driver off.
    """
    page = page_of(context)
    if page not in _heard:
        _heard.add(page)
        page.on("pageerror", lambda error: complaints.append(str(error)))
    if at:
        not_again(context)
        page.clock.set_fixed_time(at)
    if first:
        not_again(page)
        page.add_init_script(first)
    page.goto(address)
    return ready(page)


def axe_finds(page: Page, *, contrast: bool = True, within: str | None = None) -> list[str]:
    """What axe finds wrong with a page or a part of it. What it asks of contrast takes it longer than all else."""
    options = {"resultTypes": ["violations"], "rules": {"color-contrast": {"enabled": contrast}}}
    found = Axe().run(page, context=within, options=options).response["violations"]
    return [f"{one['id']}: {[node['target'] for node in one['nodes'][:4]]}" for one in found]


SETTLED = """async () => {
  const frame = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
  for (let n = 0; n < 4; n += 1) await frame();
}"""


def settled(page: Page) -> None:
    """Wait until whatever was set off has had its turn: several frames are painted, and the tasks between them done."""
    page.evaluate(SETTLED)


def until(page: Page, holds: Callable[[], bool], patience: float = 60_000) -> None:
    """Wait until something holds that no locator can be asked for, such as what lies in the store or at the host."""
    for _ in range(int(patience / 50)):
        if holds():
            return
        page.wait_for_timeout(50)
    assert holds()


def comes_to(page: Page, script: str, wanted: Any, argument: Any = None) -> None:
    """Wait until a script of the page gives what is wanted; where it never does, what it gave last is said."""
    given: list[Any] = []

    def holds() -> bool:
        given[:] = [page.evaluate(script, argument)]
        return bool(given[0] == wanted)

    with suppress(AssertionError):
        until(page, holds)
    assert given[0] == wanted


def start_visit(page: Page, base: str, site: str = "Elm House", who: str = "Anna") -> str:
    """Start a visit on the page of visits; its id."""
    if page.url != f"{base}visits/":
        page.goto(f"{base}visits/")
    ready(page)
    page.get_by_label("A name for the site").fill(site)
    page.get_by_label("Who you are").fill(who)
    page.get_by_role("button", name="Start this visit").click()
    expect(page.get_by_role("heading", name=site)).to_be_focused()
    return page.url.partition("#v=")[2]


def add_opening(page: Page, name: str, device: str = "") -> None:
    """Add an opening on the page of a visit."""
    page.get_by_label("Another opening").fill(name)
    page.get_by_role("button", name="Add it").click()
    choice = page.get_by_label(name, exact=True)
    expect(choice).to_be_visible()
    if device:

        def told() -> int:
            return sum(one.get("device") == device for one in stored(page))

        before = told()
        choice.select_option(device)
        until(page, lambda: told() == before + 1)
        expect(page.get_by_text("Changed.")).to_be_visible()
        page.evaluate("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))")


def tick(page: Page, item: str) -> None:
    """Tap the row of an item and wait until it shows as done."""
    page.locator(f"#item-{item} .ls-item").click()
    page.wait_for_selector(f"#item-{item}[data-state=done]")


def answer_all(page: Page) -> None:
    """Give every open item an outcome."""
    for row in page.locator("[data-item]").all():
        if row.get_attribute("data-state") != "open":
            continue
        if row.locator(".ls-reading").count():
            other(row, "Not applicable", "Why does it not apply?", "Not today")
        else:
            row.locator(".ls-item").click()
        expect(row).not_to_have_attribute("data-state", "open")


def more(row: Locator) -> Locator:
    """The row of an item, once what stands under *More* is open."""
    fold = row.locator(".ls-more")
    if fold.get_attribute("open") is None:
        fold.locator("summary").click()
    return row


def other(row: Locator, choice: str, question: str, words: str) -> None:
    """Give an item another outcome than done, with words."""
    more(row).get_by_role("button", name="Not done?").or_(row.get_by_role("button", name="Change")).click()
    row.get_by_role("button", name=choice, exact=True).click()
    row.get_by_label(question).fill(words)
    row.get_by_role("button", name="Save as").click()


STORED = """store => new Promise((resolve, reject) => {
  const request = indexedDB.open('latchside');
  request.onerror = () => reject(request.error);
  request.onsuccess = () => {
    const all = request.result.transaction(store).objectStore(store).getAll();
    all.onsuccess = () => { request.result.close(); resolve(all.result); };
  };
})"""


def stored(page: Page, store: str = "entries", *, with_sums: bool = False) -> list[dict[str, Any]]:
    """The rows of a store; of entries, what they say, or that with the sum over it."""
    rows: list[dict[str, Any]] = page.evaluate(STORED, store)
    return rows if with_sums else [{key: value for key, value in row.items() if key != "sum"} for row in rows]


PUT = """async ([store, rows, script]) => {
 const { sealed } = script ? await import(script) : { sealed: row => row };
 return new Promise((resolve, reject) => {
  const request = indexedDB.open('latchside');
  request.onsuccess = () => {
    const change = request.result.transaction(store, 'readwrite');
    for (const row of rows) change.objectStore(store).put(sealed(row));
    change.oncomplete = () => { request.result.close(); resolve(); };
    change.onabort = () => reject(change.error);
  };
 });
}"""


def put(page: Page, rows: list[Any], store: str = "entries", *, sealed_by: str = "") -> None:
    """Write rows into a store by hand: as they are, or sealed by the script at an address."""
    page.evaluate(PUT, [store, rows, sealed_by])


FILL_UP = """() => new Promise(resolve => {
  const request = indexedDB.open('latchside');
  request.onsuccess = () => {
    const more = (size, count) => {
      const change = request.result.transaction('meta', 'readwrite', {durability: 'strict'});
      change.objectStore('meta').put({key: `filler ${count}`, value: 'x'.repeat(size)});
      change.oncomplete = () => more(size, count + 1);
      change.onabort = () => size > 300 ? more(size / 2, count + 1) : (request.result.close(), resolve(count));
    };
    more(20000, 0);
  };
})"""
"""Write until nothing more fits into the storage."""
