"""Each type of page on a phone and at a desk: readable, reachable, usable by anyone."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from itertools import product
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from ..long import some_pages
from .field import axe_finds

Visit = Callable[..., Page]
Watch = Callable[[], AbstractContextManager[Visit]]

PHONE = (390, 844)
DESK = (1280, 800)
NARROW = (320, 640)
SIZES = {"phone": PHONE, "desk": DESK}

ONE_OF_EACH = {
    "home": "",
    "on-site": "on-site/",
    "list": "faults/",
    "device": "devices/surface-contact/",
    "stage": "devices/wired-input-transmitter/wire/",
    "install": "devices/surface-contact/install/",
    "procedure": "procedures/meter-loop/",
    "checklist": "checklists/position/",
    "fault": "faults/reads-high/",
    "caution": "cautions/mains-wiring/",
    "table": "tables/meter-readings/",
    "figure": "figures/loop-states/",
    "terms": "terms/",
    "tools": "tools/",
    "sources": "sources/",
    "card": "cards/meter/",
    "placement": "cards/placement/",
    "two-continents": "cards/two-continents/",
    "study": "study/",
    "maintain": "maintain/",
    "rules": "maintain/rules/",
    "components": "maintain/components/",
}
WIDE_OTHERWISE = ("home", "device", "checklist", "terms")
"""Types that show at a desk what a phone folds or leaves out."""
AT_A_DESK = (*WIDE_OTHERWISE, "stage", "fault", "figure", "table", "placement", "components")
"""Types that are laid out otherwise at a desk; the rest are the same column, looked at on a phone."""
AXE_ON_CONTRAST = {("home", "phone"), ("home", "desk"), ("checklist", "phone"), ("fault", "phone"), ("card", "phone")}
WITH_STEPS = {"stage", "procedure", "checklist", "fault", "components"}


@pytest.fixture(scope="module")
def readers(watch: Watch) -> Iterator[dict[str, Page]]:
    """A page of each size, on which all is opened in turn."""
    with watch() as visit:
        yield {name: visit("", size) for name, size in SIZES.items()}


@pytest.fixture(scope="module", params=[*product(ONE_OF_EACH, ["phone"]), *product(AT_A_DESK, ["desk"])], ids="-".join)
def shown(request: pytest.FixtureRequest, readers: dict[str, Page], base: str) -> tuple[str, str, Page]:
    """One page of each type at both sizes, opened once for all that is looked at: its type, its size, and the page."""
    name, size = request.param
    page = readers[size]
    page.goto(base + ONE_OF_EACH[name], wait_until="load")
    page.wait_for_selector("html.js")
    return name, size, page


# What stands out at the right, and is neither inside a box that scrolls by itself nor off the screen on purpose.
SIDEWAYS = """() => {
  const width = document.documentElement.clientWidth, found = [];
  const whole = document.documentElement.scrollWidth;
  if (whole > width) found.push(`page ${whole} > ${width}`);
  const scrolls = element => { for (let e = element.parentElement; e; e = e.parentElement) {
    const clips = ['auto', 'scroll', 'hidden', 'clip'].includes(getComputedStyle(e).overflowX);
    if (clips) return e.closest('.ls-table'); } };
  for (const element of document.querySelectorAll('article *')) {
    const box = element.getBoundingClientRect(), out = box.width && box.right > width + 1;
    const wide = element.clientWidth && element.scrollWidth > element.clientWidth + 1;
    if (!(out || wide) || scrolls(element) || element.closest('svg')) continue;
    const name = `${element.tagName}.${element.className}`;
    if (wide && !element.matches('.ls-table'))
      found.push(`${name} holds ${element.scrollWidth} in ${element.clientWidth}`);
    if (out) found.push(`${name} ${Math.round(box.right)}: ${element.textContent.slice(0, 60)}`);
  }
  return found;
}"""

# Every piece of text inside the chosen elements whose contrast is below a limit, by the colours in fact in force.
CONTRAST = """([chosen, limit]) => {
  const parse = text => { const n = text.match(/[\\d.]+/g).map(Number);
    return {rgb: text.startsWith('color(') ? n.slice(0, 3).map(v => v * 255) : n.slice(0, 3), alpha: n[3] ?? 1}; };
  const linear = v => (v /= 255) <= .04045 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4;
  const light = rgb => { const [r, g, b] = rgb.map(linear);
    return .2126 * r + .7152 * g + .0722 * b; };
  const over = (front, back) => front.rgb.map((v, i) => v * front.alpha + back[i] * (1 - front.alpha));
  const behind = element => { const layers = [];
    for (let e = element; e; e = e.parentElement) { const b = parse(getComputedStyle(e).backgroundColor);
      if (b.alpha) layers.push(b); if (b.alpha === 1) break; }
    return layers.reverse().reduce((back, front) => over(front, back), [255, 255, 255]); };
  let seen = 0; const poor = [];
  for (const root of document.querySelectorAll(chosen)) {
    const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
      const element = text.parentElement;
      if (!text.data.trim() || !element.getClientRects().length) continue;
      seen++;
      let faint = 1; for (let e = element; e; e = e.parentElement) faint *= Number(getComputedStyle(e).opacity);
      const back = behind(element), colour = parse(getComputedStyle(element).color);
      const front = over({rgb: colour.rgb, alpha: colour.alpha * faint}, back);
      const [a, b] = [light(front), light(back)].sort((x, y) => y - x), ratio = (a + .05) / (b + .05);
      if (ratio < limit) poor.push(`${ratio.toFixed(2)}: ${text.data.trim().slice(0, 50)}`);
    }
  }
  return {seen, poor};
}"""


def test_axe_finds_nothing(shown: tuple[str, str, Page]) -> None:
    """On a phone on every type; at a desk on those that show there what a phone folds or leaves out.

    What axe asks of contrast is asked of a few, for it takes axe longer than all else: of all of our text on every type
    more is asked below, and what stands around it is the same on every page.
    """
    name, size, page = shown
    if size == "phone" or name in WIDE_OTHERWISE:
        assert axe_finds(page, contrast=(name, size) in AXE_ON_CONTRAST) == []


def test_targets_are_large_enough_for_a_gloved_thumb(shown: tuple[str, str, Page]) -> None:
    """Rows 56 px, other controls 48, links within a line 24."""
    found: list[dict[str, Any]] = shown[2].evaluate(
        """() => [...document.querySelectorAll('article :is(a, button, input, label, select, textarea, summary)')]
          .filter(e => e.getClientRects().length && !e.matches('.ls-item input'))
          .map(e => { const style = getComputedStyle(e), inline = style.display === 'inline';
            return {
              what: `${e.tagName}.${e.className} in ${e.parentElement.className}: ${e.textContent.slice(0, 40)}`,
              row: e.matches('.ls-rows > li > a, .ls-item, .ls-quick a'),
              words: e.matches('label:not(.ls-item)') || (e.matches('a') && style.display.startsWith('inline')),
              height: inline ? parseFloat(style.lineHeight) : e.getBoundingClientRect().height,
              width: e.getBoundingClientRect().width}; })"""
    )
    assert found
    low = [one for one in found if one["height"] < (56 if one["row"] else 24 if one["words"] else 48)]
    assert not low
    assert not [one for one in found if not one["words"] and one["width"] < 44]


def test_steps_are_set_large(shown: tuple[str, str, Page]) -> None:
    name, _, page = shown
    seen, small = page.evaluate(
        """() => { const inside = [...document.querySelectorAll('.ls-steps > li, .ls-items > li')];
          const behind_a_tap = '.ls-row > .ls-more', words = '.ls-critical, .ls-only, small, .ls-tap, .ls-needs';
          const QUIET = `${behind_a_tap}, ${words}, .ls-why, .ls-note, .ls-how, .ls-short`;
          const small = inside.flatMap(root => [root, ...root.querySelectorAll('*')])
            .filter(e => !e.closest('svg, figure') && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
            .filter(e => parseFloat(getComputedStyle(e).fontSize) < (e.closest(QUIET) ? 15 : 18))
            .map(e => `${getComputedStyle(e).fontSize} ${e.className}: ${e.textContent.slice(0, 40)}`);
          return [inside.length, small]; }"""
    )
    assert bool(seen) == (name in WITH_STEPS)
    assert small == []


def test_contrast_holds_in_sunlight(shown: tuple[str, str, Page]) -> None:
    """All our text at 7:1, and steps and cautions counted by themselves so that none is missed."""
    name, _, page = shown
    wanted = {"article": 7, ".ls-caution": 7} if page.locator(".ls-caution").count() else {"article": 7}
    if name in WITH_STEPS:
        wanted[".ls-steps > li, .ls-item"] = 7
    for chosen, limit in wanted.items():
        found = page.evaluate(CONTRAST, [chosen, limit])
        assert found["seen"] > 2, chosen
        assert found["poor"] == [], chosen


def test_all_of_the_page_is_shown(shown: tuple[str, str, Page]) -> None:
    """Nothing is clipped or empty: every text that is not folded has its place, but for what only paper shows.

    Of words and units that differ by region something is shown.
    """
    hidden = shown[2].evaluate(
        """() => { const out = [];
          const texts = document.createTreeWalker(document.querySelector('article'), NodeFilter.SHOW_TEXT);
          for (let text = texts.nextNode(); text; text = texts.nextNode()) {
            const element = text.parentElement;
            const apart = '.ls-print, .ls-sheet-head, .ls-box, svg, thead, option, button, script';
            if (!text.data.trim() || element.closest(apart) || element.closest('[hidden]')) continue;
            if (element.closest('details:not([open])') && !element.closest('summary')) continue;
            const range = document.createRange();
            range.selectNodeContents(element.closest('.ls-word, .ls-both') ?? text);
            const box = range.getBoundingClientRect(), style = getComputedStyle(element);
            if (!box.width || !box.height || style.visibility !== 'visible') out.push(text.data.trim().slice(0, 60));
          }
          return out; }"""
    )
    assert hidden == []


def test_pictures_are_drawn(shown: tuple[str, str, Page]) -> None:
    blank = shown[2].evaluate(
        """async () => { const blank = [];
          for (const image of document.querySelectorAll('article img')) {
            image.loading = 'eager';
            try { await image.decode(); } catch { blank.push(image.src); continue; }
            if (!image.naturalWidth || image.getBoundingClientRect().width < 100) blank.push(image.src);
          }
          return blank; }"""
    )
    assert blank == []


def test_it_does_not_scroll_sideways_on_the_narrowest_phone(shown: tuple[str, str, Page]) -> None:
    _, size, page = shown
    if size == "phone":
        page.set_viewport_size({"width": NARROW[0], "height": NARROW[1]})
        found = page.evaluate(SIDEWAYS)
        page.set_viewport_size({"width": PHONE[0], "height": PHONE[1]})
        assert not found


def test_no_page_scrolls_sideways_on_the_narrowest_phone(
    visit: Visit, base: str, site: Path, every_address: list[str]
) -> None:
    """What is ours of some pages of each kind, in the long run of all, set in turn into the frame of one page.

    The one page with a stylesheet of its own, the survey, is looked at by its own tests.
    """
    page = visit("maintain/rules/", NARROW, at=base)
    some = some_pages({one: (site / one / "index.html").stat().st_size for one in every_address})
    wrong = page.evaluate(
        f"""async addresses => {{
          const wrong = {{}}, sideways = {SIDEWAYS};
          for (const address of addresses) {{
            const page = new DOMParser().parseFromString(await (await fetch(address)).text(), 'text/html');
            const article = page.querySelector('article');
            if (article.querySelector('link[rel=stylesheet]')) continue;  // needs a frame of its own
            for (const image of article.querySelectorAll('img')) image.removeAttribute('src');
            document.querySelector('article').replaceWith(document.adoptNode(article));
            const found = sideways();
            if (found.length) wrong[address] = found;
          }}
          return wrong;
        }}""",
        [base + address for address in some],
    )
    assert len(some) > 80
    assert not wrong


@pytest.mark.parametrize("size", SIZES)
def test_nothing_breaks_with_text_twice_as_large(
    visit: Visit, base: str, large_text_browser: Browser, size: str
) -> None:
    page = visit("", SIZES[size], in_browser=large_text_browser)
    wrong = {}
    for name, address in ONE_OF_EACH.items():
        if size == "desk" and name not in WIDE_OTHERWISE:
            continue
        page.goto(base + address, wait_until="load")
        assert page.evaluate("getComputedStyle(document.documentElement).fontSize") == "32px"
        title, text = page.evaluate(
            "['h1', ':is(.ls-do, .ls-item-words, p, li)'].map(chosen => "
            "parseFloat(getComputedStyle(document.querySelector(`article ${chosen}`)).fontSize))"
        )
        assert title >= 56
        assert text >= 32
        found = page.evaluate(SIDEWAYS)
        if found:
            wrong[name] = found
    assert not wrong


def test_without_scripts_no_page_scrolls_sideways(visit: Visit, base: str) -> None:
    page = visit("", NARROW, java_script_enabled=False)
    wrong = {}
    for name, address in ONE_OF_EACH.items():
        page.goto(base + address, wait_until="load")
        found = page.evaluate(SIDEWAYS)
        if found:
            wrong[name] = found
    assert not wrong
