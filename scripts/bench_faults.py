"""What fault finding takes on a phone: the next check after each answer, with the processor slowed down four times.

Run it by itself with `.venv/bin/python scripts/bench_faults.py`; `lines` gives what it prints. Limit: 100 ms.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import sync_playwright

from bring_browser import bring, chromium_path
from latchside.project import check_project
from latchside.root import ROOT
from latchside.site.build import build_site
from served import served

SLOWER, LIMIT_MS = 4, 100
SETTLED_MS = 1500
"""From the opened page to the first answer: nobody reads a check faster."""
ANSWERED = """(words) => new Promise((done) => {
  // From the tap to the next frame that shows another step: storing the answer, planning, drawing.
  const step = document.querySelector('.ls-find-step');
  const answer = words
    ? [...step.querySelectorAll('button')].find((one) => one.textContent === words)
    : step.querySelector('.ls-answer:last-of-type') ?? step.querySelector('.ls-answer');
  if (!answer) return done(null);
  const from = performance.now();
  new MutationObserver((_, seen) => {
    seen.disconnect();
    requestAnimationFrame(() => done(performance.now() - from));
  }).observe(step, { childList: true });
  answer.click();
})"""
PLANNED = """async (script) => {
  const { standing } = await import(script);
  const data = JSON.parse(document.getElementById('fault-data').textContent);
  return Math.max(...[data.any, ...Object.values(data.own)].map((problem) => {
    const from = performance.now();
    standing(problem, []);
    return performance.now() - from;
  }));
}"""


def lines(site: Path) -> Iterator[str]:
    """What was measured, a line each."""
    planned, answered, left_out = measured(site)
    yield f"first plan of a fault, worked out afresh: longest {max(planned):.0f} ms of {len(planned)} faults"
    for what, took in (("an answer", answered), ("a check that cannot be done", left_out)):
        ranked = sorted(took)
        middle, near_end = ranked[len(ranked) // 2], ranked[int(len(ranked) * 0.95)]
        yield (
            f"next check after {what}, processor {SLOWER} times slower: middle {middle:.0f} ms, 95 of 100 within "
            f"{near_end:.0f} ms, longest {ranked[-1]:.0f} ms of {len(ranked)}; limit {LIMIT_MS} ms"
        )


def measured(site: Path) -> tuple[list[float], list[float], list[float]]:
    """Milliseconds of each fault's first plan, each answer on the longest way, and planning around its first check."""
    planned, answered, left_out = [], [], []
    with served(site) as base, sync_playwright() as started:
        browser = started.chromium.launch(
            executable_path=chromium_path() or bring(), args=["--no-sandbox", "--disable-gpu"]
        )
        page = browser.new_page(viewport={"width": 390, "height": 844}, service_workers="block")
        page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        for fault in check_project(ROOT).library.of("fault"):
            page.goto(f"{base}{fault.address}")
            page.wait_for_selector("html[data-ls-ready=fault]")
            planned.append(page.evaluate(PLANNED, f"{base}assets/js/fault/steps.js"))
            if page.locator(".ls-find h3", has_text="Which device?").count():
                page.evaluate(ANSWERED, "")
            page.wait_for_timeout(SETTLED_MS)
            if (took := page.evaluate(ANSWERED, "Can't do this one")) is not None:
                left_out.append(took)
                page.evaluate(ANSWERED, "Back")
            while (took := page.evaluate(ANSWERED, "")) is not None:
                answered.append(took)
        browser.close()
    return planned, answered, left_out


def main() -> None:
    """Build the site into a folder that is thrown away, or use the one named, and print what was measured."""
    if len(sys.argv) > 1:
        print("\n".join(lines(Path(sys.argv[1]))))
        return
    with TemporaryDirectory() as folder:
        print("\n".join(lines(build_site(ROOT, Path(folder) / "site")[0])))


if __name__ == "__main__":
    main()
