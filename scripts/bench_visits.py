"""How fast and how safe visits are: run by hand, or by `make bench` beside the others.

Each line is a figure to write into the guide for maintainers, with the limit it is held to.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
from pathlib import Path
from random import Random

from playwright.sync_api import Browser, Page, Playwright, expect, sync_playwright

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT), str(ROOT / "scripts")]

from tests.browser.field import put, ready  # noqa: E402
from tests.browser.killed import TICK, doomed  # noqa: E402
from tests.browser.test_visits_in_hand import many_visits  # noqa: E402

from bring_browser import chromium_path  # noqa: E402
from served import served  # noqa: E402

PROVING = "checklists/proving-each-opening/"
PLAIN = "[data-item]:not(:has(.ls-reading))"
KILLS = 200

TICKED = """item => new Promise(resolve => {
  const row = document.getElementById(`item-${item}`);
  const start = performance.now();
  const over = () => setTimeout(() => resolve(performance.now() - start));
  new MutationObserver((_, seen) => { seen.disconnect(); requestAnimationFrame(over); })
    .observe(row, {attributes: true, attributeFilter: ['data-state']});
  row.querySelector('.ls-item').click();
})"""


def names(page: Page) -> list[str]:
    """The items of the list that need no reading."""
    found: list[str] = page.eval_on_selector_all(PLAIN, "rows => rows.map(row => row.dataset.item)")
    return found


def ticking(browser: Browser, base: str, slow: int) -> tuple[float, float]:
    """Milliseconds from the tap to the frame that shows the stored tick: median and worst of five hundred."""
    page = browser.new_page(service_workers="block")
    page.goto(base + PROVING)
    ready(page)
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slow})
    items = names(page)
    took = [float(page.evaluate(TICKED, items[turn % len(items)])) for turn in range(500)]
    page.close()
    return statistics.median(took), max(took)


def listing(browser: Browser, base: str) -> float:
    """Milliseconds from the start of the page to 200 visits of 60 items each in the list: median of five."""
    context = browser.new_context(service_workers="block")
    page = context.new_page()
    page.goto(f"{base}visits/")
    ready(page)
    put(page, many_visits(200, 60), sealed_by=f"{base}assets/js/visit/store.js")
    page.add_init_script(
        """const look = () => { if (document.documentElement?.dataset.lsReady) window.listed ??= performance.now(); };
        new MutationObserver(look).observe(document, {attributes: true, subtree: true});"""
    )
    took = []
    for _ in range(5):
        page.reload()
        ready(page)
        took.append(float(page.evaluate("window.listed")))
    assert page.locator(".ls-visits .ls-rows a").count() == 200
    context.close()
    return statistics.median(took)


def killing(playwright: Playwright, base: str, times: int) -> int:
    """How many of so many ticks were lost to a kill right after they were painted."""
    chance = Random(4)
    lost = 0
    done: list[str] = []
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        for _ in range(times + 1):
            with doomed(playwright, Path(folder) / "profile", base + PROVING) as page:
                shown = set(page.eval_on_selector_all("[data-state=done]", "rows => rows.map(row => row.dataset.item)"))
                lost += len(set(done) - shown)
                left = [item for item in names(page) if item not in shown]
                if not left:
                    page.get_by_role("button", name="Start this list anew").click()
                    page.get_by_role("button", name="Take them all back").click()
                    expect(page.locator("[data-state=done]")).to_have_count(0)
                    done, left = [], names(page)
                done.append(chance.choice(left))
                page.evaluate(TICK, done[-1])
    return lost


def main() -> None:
    """Print every figure."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT / "site"
    kills = int(sys.argv[2]) if len(sys.argv) > 2 else KILLS
    with served(folder) as base, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium_path(), args=["--no-sandbox"])
        for slow in (1, 4):
            median, worst = ticking(browser, base, slow)
            took = f"median {median:.0f} ms, worst {worst:.0f} ms (limit 100)"
            print(f"tick to painted and stored, CPU slowed {slow}×: {took}")
        print(f"200 visits of 60 items listed: {listing(browser, base):.0f} ms (limit 1000)")
        browser.close()
        print(
            f"ticks lost in {kills} kills right after they were painted: {killing(playwright, base, kills)} (limit 0)"
        )


if __name__ == "__main__":
    main()
