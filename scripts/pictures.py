"""Take a picture of every type of page as readers see it, for whoever judges how the site looks.

`make pictures` builds the site and runs this; the pictures and a sheet of them, `index.html`, go to build/pictures/.
`python scripts/pictures.py fault home` takes those pages alone, of the site as it was built last.
"""

from __future__ import annotations

import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Literal

from markupsafe import Markup
from playwright.sync_api import Browser, sync_playwright

from bring_browser import chromium_path
from served import served

ROOT = Path(__file__).resolve().parents[1]
SITE, OUT = ROOT / "site", ROOT / "build" / "pictures"

PAGES: Mapping[str, str] = {
    "home": "",
    "on-site": "on-site/",
    "survey": "survey/",
    "visits": "visits/",
    "saved-copy": "offline/",
    "devices": "devices/",
    "device": "devices/surface-contact/",
    "device-wired": "devices/recessed-contact/",
    "install": "devices/surface-contact/install/",
    "stage": "devices/surface-contact/position/",
    "checklists": "checklists/",
    "checklist": "checklists/position/",
    "faults": "faults/",
    "find": "faults/find/",
    "fault": "faults/shows-open-when-shut/",
    "jobs": "jobs/",
    "job": "jobs/corner-bakery/",
    "job-openings": "jobs/corner-bakery/openings/",
    "job-annex": "jobs/corner-bakery/annex/",
    "job-test-sheet": "jobs/corner-bakery/test-sheet/",
    "study": "study/",
    "cards": "cards/",
    "card-placement": "cards/placement/",
    "card-meter": "cards/meter/",
    "procedures": "procedures/",
    "procedure": "procedures/prove-opening/",
    "cautions": "cautions/",
    "caution": "cautions/life-safety/",
    "figures": "figures/",
    "figure": "figures/reed-gap/",
    "figure-with-chart": "figures/loop-states/",
    "tables": "tables/",
    "table": "tables/cells/",
    "terms": "terms/",
    "words": "words/",
    "tools": "tools/",
    "sources": "sources/",
    "maintain": "maintain/",
    "components": "maintain/components/",
    "rules": "maintain/rules/",
    "labels": "labels/",
}
"""A page of each type, by the name of its pictures, and where it stands in the site."""

SIZES: Mapping[str, tuple[int, int]] = {"phone": (390, 844), "desk": (1280, 800)}
MODES: tuple[Literal["light", "dark"], ...] = ("light", "dark")
SETTLED = 500
"""Milliseconds in which the colours of a screen turn to those of paper."""
A4 = (794, 1123)
"""A sheet of A4 in CSS pixels."""

PAGE = Markup(
    '<!doctype html><html lang="en"><meta charset="utf-8"><title>Pictures of the site</title>'
    "<style>body{{font:16px sans-serif;margin:1rem;background:#ddd}}div{{display:flex;gap:.5rem;align-items:start}}"
    "img{{height:420px;border:1px solid #888}}</style>{}"
)
ROW = Markup('<h2 id="{0}">{0}</h2><p>/{1} · <a href="{0}-print.pdf">first sheet in print</a></p><div>{2}</div>')
SHOWN = Markup('<a href="{0}"><img src="{0}" alt="{0}" loading="lazy"></a>')


def take(browser: Browser, base: str, name: str, out: Path) -> list[str]:
    """Every picture of one page, and its first sheet in print; returns the names of the pictures."""
    made = []
    for size, (width, height) in SIZES.items():
        for mode in MODES:
            page = browser.new_page(
                viewport={"width": width, "height": height}, color_scheme=mode, service_workers="block"
            )
            page.goto(base + PAGES[name], wait_until="networkidle")
            made.append(f"{name}-{size}-{mode}.png")
            page.screenshot(path=out / made[-1])
            if (size, mode) == ("desk", "dark"):  # from a screen by night, as it would be printed then
                page.pdf(path=out / f"{name}-print.pdf", page_ranges="1", format="A4", print_background=False)
                page.set_viewport_size({"width": A4[0], "height": A4[1]})
                page.emulate_media(media="print")
                page.wait_for_timeout(SETTLED)
                made.append(f"{name}-print.png")
                page.screenshot(path=out / made[-1])
            page.close()
    return made


def sheet(names: Sequence[str]) -> str:
    """The page that shows all pictures, one row a page."""
    files = [f"{size}-{mode}" for size in SIZES for mode in MODES] + ["print"]
    rows = (
        ROW.format(name, PAGES[name], Markup("").join(SHOWN.format(f"{name}-{file}.png") for file in files))
        for name in names
    )
    return PAGE.format(Markup("\n").join(rows))


def main(names: Sequence[str]) -> None:
    """Take the pictures of the pages named, or of all."""
    unknown = [name for name in names if name not in PAGES]
    if unknown:
        raise SystemExit(f"Not a page: {', '.join(unknown)}. There are: {', '.join(PAGES)}.")
    if not SITE.is_dir():
        raise SystemExit("There is no site yet: make site")
    path = chromium_path()
    if path is None:
        raise SystemExit("There is no Chromium: python scripts/bring_browser.py brings one.")
    OUT.mkdir(parents=True, exist_ok=True)
    with served(SITE) as base, sync_playwright() as started:
        browser = started.chromium.launch(executable_path=path, args=["--no-sandbox"])
        for name in names or PAGES:
            take(browser, base, name, OUT)
        browser.close()
    (OUT / "index.html").write_text(sheet(list(PAGES)), "utf-8")
    print(f"The pictures are in {OUT / 'index.html'}")


if __name__ == "__main__":
    main(sys.argv[1:])
