"""Measure what the phone does with no signal: saving, cold starts, the finder. Run by `make bench`; not a test.

A cold start is a browser started anew with its profile, the server stopped, and the processor slowed down: from the
moment the page is asked for, by the browser's own clock, until the checklist can be ticked. The finder answers from an
index of 1,000 records, made from the shipped one.
"""

from __future__ import annotations

import gzip
import json
import statistics
import threading
import time
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from playwright.sync_api import BrowserContext, Page, Playwright, sync_playwright
from rich.console import Console
from rich.table import Table

from bring_browser import bring, chromium_path
from latchside.root import ROOT
from latchside.site.build import build_site

ARGUMENTS = ["--no-sandbox", "--disable-gpu"]
STARTS = 9
QUERIES = (
    "m", "ma", "magn", "magnet fell off", "door shows opn when shut", "recesed contact", "end of line resister",
    "my meter shows more than the resistor", "central station", "antenna", "reads high", "it wont enrol",
    "alarm goes off when i come in", "hysterisis", "qwertyuiop asdfghjkl", "low batery aftr a few monhts",
)  # fmt: skip
READY = """addEventListener('DOMContentLoaded', () => {
  const root = document.documentElement, seen = () => root.dataset.lsReady && (window.readyAt ??= performance.now());
  new MutationObserver(seen).observe(root, {attributes: true});
  seen();
});"""
# Each query three times, with nothing else done meanwhile; the slowest of all is what counts.
ANSWERS = """async ([base, queries]) => {
  const { prepare } = await import(`${base}assets/js/finder/index.js`);
  const { find } = await import(`${base}assets/js/finder/rank.js`);
  const data = await (await fetch(`${base}finder.json`)).json();
  const begun = performance.now(), index = await prepare(data), prepared = performance.now() - begun, times = [];
  for (let turn = 0; turn < 3; turn++) for (const query of queries) {
    const start = performance.now();
    find(index, query);
    times.push(performance.now() - start);
  }
  return { prepared, first: times[0], times, words: index.counts.size };
}"""


class _Quiet(SimpleHTTPRequestHandler):
    protocol_version = "HTTP/1.1"

    def log_message(self, format: str, *args: Any) -> None:
        pass


class Served:
    """A folder served at one address, until it is stopped."""

    def __init__(self, folder: Path) -> None:
        self._server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
        self._server.daemon_threads = True
        self.base = f"http://127.0.0.1:{self._server.server_address[1]}/"
        threading.Thread(target=self._server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        """Answer no more."""
        self._server.shutdown()
        self._server.server_close()


def _browser(playwright: Playwright, profile: Path, path: str) -> BrowserContext:
    size = {"width": 390, "height": 844}
    return playwright.chromium.launch_persistent_context(
        str(profile), executable_path=path, args=ARGUMENTS, viewport=size  # type: ignore[arg-type]
    )  # fmt: skip


def _slow(context: BrowserContext, page: Page, rate: int) -> None:
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": rate})


def saving_and_starts(playwright: Playwright, path: str, site: Path, folder: Path) -> tuple[float, list[float]]:
    """Seconds until the first visit has saved its copy, and of each cold start with no server at 4 times slower."""
    served, profile = Served(site), folder / "profile"
    context = _browser(playwright, profile, path)
    begun = time.perf_counter()
    context.pages[0].goto(served.base)
    context.pages[0].wait_for_selector("html[data-ls-copy=saved]", timeout=120_000)
    saved = time.perf_counter() - begun
    context.close()
    served.stop()
    starts = []
    for _ in range(STARTS):
        context = _browser(playwright, profile, path)
        page = context.pages[0]
        _slow(context, page, 4)
        page.add_init_script(READY)
        page.goto(f"{served.base}checklists/proving-each-opening/")
        page.wait_for_selector("html[data-ls-ready=checklist]")
        starts.append(page.evaluate("window.readyAt") / 1000)
        context.close()
    return saved, starts


def finder(playwright: Playwright, path: str, site: Path) -> dict[str, Any]:
    """How long the finder takes, 4 times slower, in milliseconds, and the bytes that travel for it."""
    served = Served(site)
    browser = playwright.chromium.launch(executable_path=path, args=ARGUMENTS)
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(f"{served.base}404.html")
    _slow(context, page, 4)
    found: dict[str, Any] = page.evaluate(ANSWERS, [served.base, list(QUERIES)])
    parts = [site / "finder.json", site / "assets/js/vendor/minisearch.js", *(site / "assets/js/finder").glob("*.js")]
    found["packed"] = sum(len(gzip.compress(part.read_bytes(), 6)) for part in parts)
    browser.close()
    served.stop()
    return found


def main() -> None:
    """Build the site, measure, and print a table."""
    path = chromium_path() or bring()
    table = Table("What", "Measured", "Aim")
    with TemporaryDirectory() as temporary, sync_playwright() as playwright:
        folder = Path(temporary)
        site, _ = build_site(ROOT, folder / "site")
        listed = json.loads((site / "offline.json").read_text("utf-8"))
        table.add_row("Saved on the first visit, packed", f"{listed['size']['first'] / 1e6:.2f} MB", "1.5 MB")
        table.add_row("Save everything, on top", f"{listed['size']['rest'] / 1e6:.2f} MB", "shown first")
        saved, starts = saving_and_starts(playwright, path, site, folder)
        table.add_row("First visit until all of it is saved", f"{saved:.1f} s", "")
        words = f"median {statistics.median(starts):.2f} s, slowest {max(starts):.2f} s"
        table.add_row(f"Cold start offline to a usable checklist, 4 times slower, {STARTS} starts", words, "1.0 s")
        found = finder(playwright, path, site)
        times = sorted(found["times"])
        words = f"first {found['first']:.0f} ms, median {statistics.median(times):.1f} ms, slowest {times[-1]:.0f} ms"
        table.add_row(f"Finder answer, {found['words']} words, 4 times slower", words, "100 ms")
        table.add_row("Finder made ready when first opened, 4 times slower", f"{found['prepared']:.0f} ms", "")
        table.add_row("Finder, documents and scripts, packed", f"{found['packed'] / 1e3:.0f} KB", "150 KB")
    Console().print(table)


if __name__ == "__main__":
    main()
