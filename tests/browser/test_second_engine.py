"""The core of the saved copy and of visits in WebKit, by Debian's driver; skipped, with the reason, where it is not.

The driver's browser keeps nothing when it closes, so cold starts are shown in the first engine alone, as are kills and
the switch.
"""

from __future__ import annotations

from base64 import b64decode, b64encode
from collections.abc import Iterator
from pathlib import Path

import pytest

from bring_webkit import missing

from .camera import photograph, written_afresh
from .host import Host
from .webkit import WebKit, driver

pytestmark = pytest.mark.skipif(bool(missing()), reason=f"no second engine: {missing()}")

LIST = "checklists/proving-each-opening/"
HEADING = "return document.querySelector('article h1')?.textContent"
STATE = "return document.querySelector(`#item-${given[0]}`)?.dataset.state === given[1]"
TICK = "document.querySelector(`#item-${given[0]} .ls-item`).click()"


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with driver(tmp_path_factory.mktemp("home")) as running:
        yield running


@pytest.fixture
def page(address: str) -> Iterator[WebKit]:
    made = WebKit(address)
    yield made
    made.close()


@pytest.fixture
def below(few_pages: Path) -> Iterator[Host]:
    made = Host(few_pages, "field/library/")
    yield made
    made.stop()


def saved(page: WebKit, host: Host, path: str) -> None:
    page.open(host.base + path)
    page.until("return document.documentElement.dataset.lsCopy === 'saved'")


def listed(page: WebKit, address: str) -> None:
    page.open(address)
    page.until("return document.documentElement.dataset.lsReady === 'checklist'")


def test_with_no_server_lists_pages_and_the_finder_answer_below_a_path(page: WebKit, below: Host) -> None:
    saved(page, below, LIST)
    page.run(TICK, "look")
    page.until(STATE, "look", "done")
    below.stop()
    for path, heading in (
        ("faults/reads-high/", "The loop reads high"),
        ("cautions/ladders/", "Ladders and stepladders"),
    ):
        page.open(below.base + path)
        assert page.run(HEADING) == heading
    page.until("return document.querySelector('button.ls-find-open')")
    page.run("document.querySelector('button.ls-find-open').click()")
    page.until("return document.querySelector('.ls-finder input')")
    page.run(
        """const box = document.querySelector('.ls-finder input'); box.value = 'magnet fell off the door';
        box.dispatchEvent(new Event('input', {bubbles: true}))"""
    )
    first = "document.querySelector('.ls-finder [role=option]')?.textContent"  # at first, what was used last
    page.until(f"return {first}?.includes('Adhesive let go')")
    listed(page, below.base + LIST)
    page.until(STATE, "look", "done")
    page.run(TICK, "latched")
    page.until(STATE, "latched", "done")


def visit_with_an_opening(page: WebKit, host: Host) -> None:
    page.open(f"{host.base}visits/")
    page.until("return document.documentElement.dataset.lsReady === 'visits'")
    page.run(
        """const [site, , who] = document.querySelectorAll('.ls-new input');
        site.value = 'Elm House'; who.value = 'Anna'; document.querySelector('.ls-new button').click()"""
    )
    page.until("return document.querySelector('.ls-visit h2')?.textContent === 'Elm House'")
    page.run(
        """const forms = [...document.querySelectorAll('.ls-visit form')];
        const form = forms.find(one => one.textContent.includes('Add it'));
        form.querySelector('input').value = 'Back door'; form.querySelector('button').click()"""
    )


def test_a_visit_holds_a_reading_judged_and_merges_with_itself(page: WebKit, host: Host) -> None:
    visit_with_an_opening(page, host)
    page.until("return document.querySelectorAll('.ls-openings li').length === 1")
    way = page.until("return document.querySelector('.ls-folded a[href*=proving-each-opening]')?.href")
    listed(page, way)
    page.run(
        """const box = document.querySelector('#item-play input[type=text]'); box.value = '7';
        box.dispatchEvent(new Event('input', {bubbles: true}))"""
    )
    said = page.run("return document.querySelector('#item-play .ls-verdict').textContent")
    assert said.startswith("Outside: 7\u00a0mm, expected at most 3\u00a0mm")
    page.run("document.querySelector('#item-play .ls-verdict + .ls-tools button').click()")
    page.until(STATE, "play", "problem")
    listed(page, host.base + LIST)
    page.until(STATE, "play", "problem")
    kinds = page.run(
        """const store = await import(given[0] + 'store.js'), {merge} = await import(given[0] + 'entries.js');
        const entries = await store.entriesOf(await store.recall('last'));
        return merge(entries, [...entries].reverse()).map(one => one.kind)""",
        f"{host.base}assets/js/visit/",
    )
    assert kinds == ["visit", "opening", "item"]


def test_a_photograph_is_written_afresh_and_kept(page: WebKit, host: Host) -> None:
    visit_with_an_opening(page, host)
    page.until("return document.querySelector('.ls-photographing button')")
    page.run("document.querySelector('.ls-photographing button').click()")
    page.until("return document.querySelector('.ls-photographing select')")
    page.run(
        """const choice = document.querySelector('.ls-photographing select');
        choice.value = 'label'; choice.dispatchEvent(new Event('change'));
        const input = document.querySelector('.ls-photographing input[type=file]'), files = new DataTransfer();
        files.items.add(new File([Uint8Array.from(atob(given[0]), (sign) => sign.charCodeAt(0))], 'a.jpg'));
        input.files = files.files; input.dispatchEvent(new Event('change'))""",
        b64encode(photograph()).decode(),
    )
    page.until("return document.querySelector('.ls-photographs img')?.naturalHeight === 360")
    kept = page.run(
        """const visit = location.hash.slice(3), store = await import(given[0] + 'store.js');
        const [one] = await store.photographsOf(visit), { bytes } = await store.largeOf(one);
        return btoa(Array.from(new Uint8Array(bytes), (byte) => String.fromCharCode(byte)).join(''))""",
        f"{host.base}assets/js/photo/",
    )
    written_afresh(b64decode(kept))
