"""A new version waits; nothing is swapped under work in progress; what endangers people is said; the switch works."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from latchside.site.finish import OFF, WORKER

from .field import comes_to, ready, settled, until
from .host import Host, Phone, changed, reword, standing, words

LIST = "checklists/position/"
OLD, NEW = "latch-side corner", "hinge-side corner"
CORRECTION = {
    "key": "fault/reads-high/2",
    "address": "faults/reads-high/",
    "name": "The loop reads high",
    "text": "Read <b>2</b> & not 1.",
}


@pytest.fixture(scope="session")
def newer(few_pages: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site after a change to a checklist."""
    folder = tmp_path_factory.mktemp("newer") / "site"
    return changed(few_pages, folder, lambda copy: reword(copy, LIST, OLD, NEW))


@pytest.fixture(scope="session")
def corrected(newer: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The changed site with a safety correction."""
    return changed(newer, tmp_path_factory.mktemp("corrected") / "site", lambda copy: None, [CORRECTION])


def saved(saver: Phone, host: Host, address: str = "") -> Page:
    page = saver.on()
    page.goto(host.base + address)
    standing(page, "saved")
    return page


def tick(page: Page, number: int = 0) -> None:
    row = ready(page).locator("[data-item]").nth(number)
    row.locator(".ls-item").click()
    expect(row).to_have_attribute("data-state", "done")


def text(page: Page) -> str:
    return page.locator("article").inner_text()


def test_with_nothing_in_progress_the_next_start_brings_the_new_version(saver: Phone, host: Host, newer: Path) -> None:
    page = saved(saver, host)
    host.folder = newer
    page.reload()
    standing(page, "ready")
    assert words(page).startswith("Update ready; saved is version ")
    page.goto(host.base + LIST)
    assert OLD in text(page)
    page = saver.on()
    page.goto(host.base + LIST)
    standing(page, "saved")
    assert NEW in text(page)
    assert "2031-02-03" in words(page)


def test_a_new_version_is_never_swapped_in_under_a_checklist(saver: Phone, host: Host, newer: Path) -> None:
    page = saved(saver, host, LIST)
    tick(page)
    host.folder = newer
    page.reload()
    standing(page, "ready")
    assert OLD in text(page)
    tick(page, 1)
    for _ in range(2):
        page = saver.on()
        page.goto(host.base + LIST)
        standing(page, "ready")
        assert OLD in text(page)
        expect(page.locator("[data-item][data-state=done]")).to_have_count(2)
    page.locator(".ls-strip-state").click()
    page.get_by_role("button", name="Use the new version now").click()
    expect(page.locator(".ls-copy")).to_contain_text("A checklist or a visit is in progress, so the new version waits.")
    page.goto(host.base + LIST)
    assert OLD in text(page)
    page.locator(".ls-strip-state").click()
    page.get_by_role("button", name="Use the new version now").click()
    page.get_by_role("button", name="Use the new version all the same").click()
    expect(page.locator(".ls-copy-state")).to_contain_text("Saved for offline")
    page.goto(host.base + LIST)
    assert NEW in text(page)
    expect(page.locator("[data-item][data-state=done]").first).to_be_attached()
    assert saver.complaints == []


def test_a_list_taken_back_no_longer_holds_it(saver: Phone, host: Host, newer: Path) -> None:
    page = saved(saver, host, LIST)
    tick(page)
    host.folder = newer
    page.reload()
    standing(page, "ready")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("[data-item][data-state=done]")).to_have_count(0)
    page = saver.on()
    page.goto(host.base + LIST)
    standing(page, "saved")
    assert NEW in text(page)


def test_another_open_page_holds_it(saver: Phone, host: Host, newer: Path) -> None:
    page = saved(saver, host)
    host.folder = newer
    page.reload()
    standing(page, "ready")
    other = saver.another_page()
    other.goto(f"{host.base}offline/")
    other.get_by_role("button", name="Use the new version now").click()
    expect(other.locator(".ls-copy")).to_contain_text("Other pages of this library are open")
    page.close()
    other.reload()
    other.get_by_role("button", name="Use the new version now").click()
    expect(other.locator(".ls-copy-state")).to_contain_text("Saved for offline")


def test_only_what_changed_is_fetched(saver: Phone, host: Host, newer: Path) -> None:
    page = saved(saver, host)
    host.folder = newer
    host.asked.clear()
    page.reload()
    standing(page, "ready")
    assert {path for path in host.asked if path.endswith("/")} == {f"/{LIST}"}


def test_a_site_changed_by_halves_is_not_taken(
    saver: Phone, host: Host, few_pages: Path, newer: Path, tmp_path: Path
) -> None:
    mixed = tmp_path / "mixed"
    shutil.copytree(few_pages, mixed)
    for name in ("sw.js", "offline.json"):
        shutil.copy(newer / name, mixed / name)
    page = saved(saver, host)
    host.folder = mixed
    page.reload()
    page.goto(f"{host.base}offline/")
    expect(page.locator(".ls-copy")).to_contain_text(f"{LIST}index.html is not the file that the list names")
    standing(page, "saved")
    host.stop()
    page = saver.on()
    page.goto(host.base + LIST)
    assert OLD in text(page)


def test_a_server_that_dies_while_an_update_comes_leaves_the_old_copy(saver: Phone, host: Host, newer: Path) -> None:
    page = saved(saver, host)
    host.folder = newer
    host.asked.clear()
    host.breaks_after = 3
    page.reload()
    until(page, lambda: len(host.asked) > 3)  # the first request that got no answer
    host.stop()
    host.breaks_after = None
    page = saver.on()
    page.goto(host.base + LIST)
    standing(page, "saved")
    assert OLD in text(page)
    host.start()
    page.reload()
    standing(page, "ready")


def test_a_safety_correction_is_announced_at_the_next_contact(saver: Phone, host: Host, corrected: Path) -> None:
    page = saved(saver, host, LIST)
    tick(page)
    host.folder = corrected
    page.reload()
    news = page.locator(".ls-correction")
    expect(news).to_contain_text("Safety correction: The loop reads high. Read <b>2</b> & not 1.")
    standing(page, "ready")
    host.stop()
    page = saver.on()
    page.goto(f"{host.base}cautions/")
    expect(page.locator(".ls-correction")).to_be_visible()
    page.get_by_role("button", name="I have read it").click()
    expect(page.locator(".ls-correction")).to_have_count(0)
    page.reload()
    standing(page, "ready")
    expect(page.locator(".ls-correction")).to_have_count(0)


def test_who_never_had_the_earlier_version_is_not_told(hand: Phone, host: Host, corrected: Path) -> None:
    host.folder = corrected
    page = saved(hand, host)
    page.reload()
    standing(page, "saved")
    expect(page.locator(".ls-correction")).to_have_count(0)


@pytest.mark.parametrize("with_the_list", [True, False], ids=["built with offline: false", "worker file swapped"])
def test_the_switch_takes_the_copy_off_and_leaves_visits(
    saver: Phone, host: Host, few_pages: Path, tmp_path: Path, with_the_list: bool
) -> None:
    page = saved(saver, host, LIST)
    tick(page)
    switched = tmp_path / "switched"
    shutil.copytree(few_pages, switched)
    shutil.copy(WORKER / "sw-off.js", switched / "sw.js")
    if with_the_list:
        (switched / "offline.json").write_text(OFF, "utf-8")
    reword(switched, LIST, OLD, NEW)
    host.folder = switched
    page.reload()
    expect(page.locator(".ls-strip-state")).to_contain_text("switched off")
    page.wait_for_function(
        "async () => !(await caches.keys()).length && !(await navigator.serviceWorker.getRegistrations()).length"
    )
    page.reload()
    assert NEW in text(page)
    expect(page.locator("[data-item][data-state=done]").first).to_be_attached()
    settled(page)
    comes_to(page, "caches.keys()", [])
    host.folder = few_pages
    page.reload()
    standing(page, "saved")
    assert re.match("Saved for offline", words(page))
