"""The plan beside the survey: made on the device, kept up to what is answered, there with no network, and harmless."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from latchside.library import Library
from latchside.read.yaml_text import read_text
from latchside.root import ROOT

from .field import axe_finds, ready
from .host import Host, Phone

Visit = Callable[..., Page]
PHONE = (390, 844)
HOSTILE = "<img src=x onerror='window.ran=1'> {{1+1}}"


def survey(tmp_path: Path, **change: Any) -> str:
    """The file of the house of foil, some of it changed."""
    file = ROOT / "content/jobs/foil-house.yaml"
    data = read_text(file.read_text("utf-8"), file.name).value | change
    path = tmp_path / "survey.json"
    path.write_text(json.dumps(data), "utf-8")
    return str(path)


def brought(page: Page, file: str) -> None:
    """Bring a survey in from its file; it is open."""
    ready(page)
    page.set_input_files("#ls-file", file)
    page.get_by_role("button", name="Bring it in").click()
    expect(page.get_by_role("heading", name="The plan so far")).to_be_visible()


def planned(page: Page) -> None:
    """Ask for the plan and wait for it."""
    page.get_by_role("button", name="Work out the plan").click()
    expect(page.locator(".ls-plan .ls-count")).to_contain_text("with a device")


def test_a_lead_sees_the_plan_and_what_an_answer_changes_with_no_signal(
    saver: Phone, host: Host, tmp_path: Path, shipped_library: Library
) -> None:
    page = saver.on()
    page.goto(f"{host.base}survey/")
    brought(page, survey(tmp_path))
    planned(page)
    expect(page.locator(".ls-plan .ls-count")).to_contain_text("11 openings, 11 with a device")
    rows = page.locator(".ls-walk li")
    names = [one.name for one in shipped_library.of("device")]
    assert all(any(name in text for name in names) for text in rows.all_inner_texts())
    assert not axe_finds(page)
    host.stop()
    page = saver.on()
    page.goto(f"{host.base}survey/")
    ready(page)
    page.locator(".ls-rows a").first.click()
    expect(page.locator(".ls-plan .ls-count")).to_contain_text("with a device")  # unasked: it was here
    page.locator(".ls-walk a").first.click()
    expect(page.locator(".ls-plan .ls-planned strong")).to_have_text("Steel-door contact")
    gap = page.locator("[data-way='gap'] input")
    gap.fill("19")
    gap.press("Tab")
    changed = page.locator(".ls-plan .ls-changed")
    expect(changed).to_contain_text("What your last answer changed")
    expect(changed).to_contain_text("→")
    assert saver.complaints == []


def test_without_the_planner_the_form_goes_on_and_says_what_to_do(hand: Phone, host: Host, tmp_path: Path) -> None:
    page = hand.on()
    page.route("**/planner.zip", lambda route: route.fulfill(status=404, body="gone"))
    page.add_init_script("delete navigator.serviceWorker")
    page.goto(f"{host.base}survey/")
    brought(page, survey(tmp_path))
    page.get_by_role("button", name="Work out the plan").click()
    expect(page.locator(".ls-plan")).to_contain_text("The form works as before")
    expect(page.locator(".ls-walk li")).to_have_count(11)
    page.unroute("**/planner.zip")
    page.get_by_role("button", name="Try again").click()
    expect(page.locator(".ls-plan .ls-count")).to_contain_text("11 with a device")


def test_what_a_survey_says_stays_text_in_the_plan(visit: Visit, tmp_path: Path) -> None:
    opening = {"id": "a", "place": HOSTILE, "kind": "hinged-door"}
    page = visit("survey/", PHONE)
    brought(page, survey(tmp_path, openings=[opening], name=HOSTILE))
    planned(page)
    page.locator(".ls-walk a").first.click()
    expect(page.locator(".ls-plan .ls-bears")).to_be_visible()
    assert page.evaluate("window.ran") is None
    assert page.locator(".ls-survey img").count() == 0


@pytest.mark.parametrize(
    ("tried", "refused"),
    [("(0, eval)('1')", True), ("fetch('http://127.0.0.2:1/')", True), ("fetch(address).then((r) => r.ok)", False)],
)
def test_the_worker_keeps_the_policy_of_its_page(visit: Visit, tried: str, refused: bool, base: str) -> None:
    page = visit("on-site/", PHONE)
    assert "wasm" not in str(page.locator("meta[http-equiv]").first.get_attribute("content"))
    page.goto(f"{base}survey/")
    assert "'wasm-unsafe-eval'" in str(page.locator("meta[http-equiv]").first.get_attribute("content"))
    said = page.evaluate(
        """async ([tried, address]) => {
          const text = `const address = ${JSON.stringify(address)};
            const run = async () => ${tried};
            run().then(() => postMessage("done"), () => postMessage("refused"));`;
          const worker = new Worker(URL.createObjectURL(new Blob([text])));
          return new Promise((told) => (worker.onmessage = (event) => told(event.data)));
        }""",
        [tried, f"{base}finder.json"],
    )
    assert said == ("refused" if refused else "done")
