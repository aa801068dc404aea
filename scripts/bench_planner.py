"""How fast the survey's page plans, and how much memory that takes: run by hand, or by `make bench` beside the others.

Each line is a figure to write into the guide for maintainers, with the limit it is held to. A phone four times slower
is played by letting the browser's own processes run only a quarter of the time, since what a page can be slowed by
leaves its workers as fast as they were.
"""

from __future__ import annotations

import os
import signal
import statistics
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, sync_playwright

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT), str(ROOT / "scripts")]

from bring_browser import headless_path  # noqa: E402
from latchside.read.yaml_text import read_text  # noqa: E402
from served import served  # noqa: E402

SLICE = 0.02
"""Seconds of which a slowed process runs its share and waits for the rest."""
OPENINGS = (11, 200)
LIMITS = {11: 0.3, 200: 2.0}
TIMES = 3

BARE = """async () => {
  const text = `
    import { loadPyodide } from "${location.origin}/assets/js/vendor/pyodide/pyodide.mjs";
    const bring = self.fetch.bind(self);
    self.fetch = async (asked, options) => {
      const url = String(asked instanceof Request ? asked.url : asked);
      if (!url.endsWith(".wasm")) return bring(asked, options);
      const packed = new Blob([await (await bring(url + ".gz")).arrayBuffer()]).stream();
      const type = { "Content-Type": "application/wasm" };
      return new Response(packed.pipeThrough(new DecompressionStream("gzip")), { headers: type });
    };
    const core = "${location.origin}/assets/js/vendor/pyodide/";
    const lock = { info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2" },
      packages: {} };
    const python = await loadPyodide({ indexURL: core, lockFileContents: lock, packageBaseUrl: core });
    postMessage(python.runPython("6 * 7"));`;
  const start = performance.now();
  const worker = new Worker(URL.createObjectURL(new Blob([text], { type: "text/javascript" })), { type: "module" });
  await new Promise((done, not) => { worker.onmessage = done; worker.onerror = not; });
  const took = performance.now() - start;
  worker.terminate();
  return took / 1000;
}"""
FIRST = """async (survey) => {
  const { Planner } = await import("/assets/js/plan/planner.js");
  window.planner?.stop();
  window.planner = new Planner(() => {});
  const start = performance.now();
  const { glance } = await window.planner.ask(survey, "2026-03-09", "");
  if (glance.openings.length !== survey.openings.length) throw new Error("not all of it");
  return (performance.now() - start) / 1000;
}"""
AGAIN = """async (surveys) => {
  const took = [];
  for (const survey of surveys) {
    const start = performance.now();
    await window.planner.ask(survey, "2026-03-09", "");
    took.push((performance.now() - start) / 1000);
  }
  return took;
}"""


def survey(openings: int) -> dict[str, Any]:
    """The house of foil with so many openings, those it has over and over."""
    path = ROOT / "content/jobs/foil-house.yaml"
    data: dict[str, Any] = read_text(path.read_text("utf-8"), path.name).value
    own = data["openings"]
    row = [own[at % len(own)] | {"id": f"opening-{at}", "spoken": f"Opening {at}"} for at in range(openings)]
    return data | {"openings": row}


def changed(data: dict[str, Any]) -> list[dict[str, Any]]:
    """The survey with the gap of its first opening told anew, some times over."""
    first, *rest = data["openings"]
    return [data | {"openings": [first | {"gap": f"{gap} mm"}, *rest]} for gap in (7, 9, 12, 8, 6)]


def renderers() -> list[int]:
    """The processes of this run that show pages and run their workers."""
    parents: dict[int, int] = {}
    found = []
    for folder in Path("/proc").glob("[0-9]*"):
        try:
            parents[int(folder.name)] = int((folder / "stat").read_text().rpartition(")")[2].split()[1])
            if b"--type=renderer" in (folder / "cmdline").read_bytes():
                found.append(int(folder.name))
        except (OSError, ValueError):
            continue

    def ours(pid: int) -> bool:
        return pid == os.getpid() or (pid in parents and ours(parents[pid]))

    return [pid for pid in found if ours(pid)]


def memory() -> float:
    """The memory of those processes that is theirs alone or shared by share, in MB."""
    total = 0
    for pid in renderers():
        text = Path(f"/proc/{pid}/smaps_rollup").read_text()
        total += next(int(line.split()[1]) for line in text.splitlines() if line.startswith("Pss:"))
    return total / 1000


@contextmanager
def slowed(times: int) -> Iterator[None]:
    """The processes that show pages run so many times slower."""
    over = threading.Event()

    def hold() -> None:
        while not over.is_set():
            held = renderers()
            for sent, share in ((signal.SIGSTOP, 1 - 1 / times), (signal.SIGCONT, 1 / times)):
                for pid in held:
                    os.kill(pid, sent)
                time.sleep(SLICE * share)

    thread = threading.Thread(target=hold)
    if times > 1:
        thread.start()
    try:
        yield
    finally:
        over.set()
        if times > 1:
            thread.join()


def opened(browser: Browser, base: str) -> Page:
    """The survey's page, which alone may compile."""
    page = browser.new_page(service_workers="block")
    page.goto(f"{base}survey/")
    return page


def measured(browser: Browser, base: str, times: int) -> None:
    """Print the figures of a machine so many times slower than this one."""
    slow = "" if times == 1 else f", {times} times slower"
    whole = survey(11)
    with slowed(times):
        page = opened(browser, base)
        bare = statistics.median(page.evaluate(BARE) for _ in range(TIMES))
        first = statistics.median(page.evaluate(FIRST, whole) for _ in range(TIMES))
        most = 4 if times == 1 else 8
        print(f"first plan of 11 openings{slow}: {first:.1f} s of at most {most}, bare Python {bare:.1f} s")
        print(f"first plan beyond bare Python{slow}: {first - bare:.1f} s of at most 1.5")
        for openings in OPENINGS:
            data = survey(openings)
            page.evaluate(FIRST, data)
            took = page.evaluate(AGAIN, changed(data))
            limit = f" of at most {LIMITS[openings]}" if times > 1 else ""
            print(f"an answer changed, {openings} openings{slow}: {statistics.median(took):.2f} s{limit}")
        print(f"memory of the page with its planner, 200 openings{slow}: {memory():.0f} MB of at most 300")
        page.close()


def main(site: Path) -> None:
    """Measure the site in a folder."""
    with served(site) as base, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=headless_path(), args=["--no-sandbox", "--disable-gpu"])
        for times in (1, 4):
            measured(browser, base, times)
        browser.close()


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else ROOT / "site"))
