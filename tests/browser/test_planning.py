"""The plan beside the survey: made on the device, kept up to what is answered, there with no network, and harmless."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from playwright.sync_api import Page, expect

from latchside.cli import main
from latchside.library import Library
from latchside.read.yaml_text import read_text
from latchside.root import ROOT

from .field import axe_finds, ready
from .host import Host, Phone

Visit = Callable[..., Page]
PHONE = (390, 844)
HOSTILE = "<img src=x onerror='window.ran=1'> {{1+1}}"


def survey(tmp_path: Path, **change: Any) -> str:
    """The file of the house of foil with two of its openings, some of it changed. `test_in_page` plans it whole."""
    file = ROOT / "content/jobs/foil-house.yaml"
    data = read_text(file.read_text("utf-8"), file.name).value
    data["openings"] = [one for one in data["openings"] if one["id"] in ("front-door", "attic-hatch")]
    data |= change
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


def pack_is_that_of_the_command(page: Page, tmp_path: Path) -> None:
    """Take every file of the pack, and print it; there is no network."""
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save as a file").click()
    file = tmp_path / "taken.json"
    saved.value.save_as(file)
    CliRunner().invoke(main, ["plan", str(file), "--out", str(tmp_path / "pack")])
    written = {path.name: path.read_bytes() for path in (tmp_path / "pack").iterdir()}
    page.get_by_role("button", name="Make the pack").click()
    expect(page.locator(".ls-each")).to_be_visible()
    page.locator(".ls-each summary").click()
    assert {*page.locator(".ls-each button").all_inner_texts(), "pack.zip"} == set(written)
    for name in written:
        label = "Save all as one file (ZIP)" if name == "pack.zip" else name
        with page.expect_download() as taken:
            page.get_by_role("button", name=label, exact=True).click()
        content = Path(taken.value.path()).read_bytes()
        assert unzipped(content) == unzipped(written[name]) if name == "pack.zip" else content == written[name]
    with page.expect_popup() as opened:
        page.get_by_role("button", name="Print the pack").click()
    paper = opened.value
    expect(paper.get_by_role("heading", level=1)).to_be_visible()
    assert paper.evaluate("[window.printed, document.scripts.length]") == [True, 0]
    assert paper.evaluate("getComputedStyle(document.querySelector('.ls-box')).borderTopStyle") == "solid"
    assert not axe_finds(page)


def test_a_lead_sees_the_plan_takes_its_pack_and_sees_what_an_answer_changes_with_no_signal(
    saver: Phone, host: Host, tmp_path: Path, shipped_library: Library
) -> None:
    page = saver.on()
    page.context.add_init_script("print = () => (window.printed = true)")
    page.goto(f"{host.base}survey/")
    brought(page, survey(tmp_path))
    planned(page)
    expect(page.locator(".ls-plan .ls-count")).to_contain_text("2 openings, 2 with a device")
    rows = page.locator(".ls-walk li")
    names = [one.name for one in shipped_library.of("device")]
    assert all(any(name in text for name in names) for text in rows.all_inner_texts())
    assert not axe_finds(page)
    host.stop()
    pack_is_that_of_the_command(page, tmp_path)
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
    tried(page)
    gap.fill("0.15")
    expect(page.locator(".ls-trying .ls-compared").first).to_be_visible()
    page.locator(".ls-bar").get_by_role("button", name="Keep").click()
    expect(page.locator(".ls-trying")).to_have_count(0)
    page.reload()
    ready(page)
    expect(gap).to_have_value("0.15")
    assert saver.complaints == []


def test_without_the_planner_the_form_goes_on_and_says_what_to_do(hand: Phone, host: Host, tmp_path: Path) -> None:
    page = hand.on()
    page.route("**/planner.zip", lambda route: route.fulfill(status=404, body="gone"))
    page.add_init_script("delete navigator.serviceWorker")
    page.goto(f"{host.base}survey/")
    brought(page, survey(tmp_path))
    page.get_by_role("button", name="Work out the plan").click()
    expect(page.locator(".ls-plan")).to_contain_text("The form works as before")
    expect(page.locator(".ls-walk li")).to_have_count(2)
    page.unroute("**/planner.zip")
    with page.expect_response("**/planner.zip") as again:
        page.get_by_role("button", name="Try again").click()
    assert again.value.ok


def unzipped(content: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(content)) as opened:
        return {name: opened.read(name) for name in opened.namelist()}


def tried(page: Page) -> None:
    """Try other answers at the opening that is shown, once there is a plan."""
    button = page.get_by_role("button", name="Try other answers")
    expect(button).to_be_visible()
    button.click()


def test_a_question_leads_to_its_field_and_answers_are_tried_before_they_are_kept(visit: Visit, tmp_path: Path) -> None:
    page = visit("survey/", PHONE)
    brought(page, survey(tmp_path))
    planned(page)
    asked = page.locator(".ls-plan .ls-told a:has(strong)")
    page.locator(".ls-plan summary").last.click()
    asked.filter(has_text="listed or protected").focus()
    page.keyboard.press("Enter")
    expect(page.locator("[data-way='site.listed'] button").first).to_be_focused()
    asked.filter(has_text="How wide is the gap").click()
    expect(page.locator("[data-way='gap'] input")).to_be_focused()
    page.get_by_role("button", name="All openings").first.click()
    page.locator(".ls-walk a").first.click()
    tried(page)
    gap = page.locator("[data-way='gap'] input")
    stood = gap.input_value()
    gap.fill("19")
    compared = page.locator(".ls-trying .ls-compared").first
    expect(compared).to_contain_text("Steel-door contact")
    assert not axe_finds(page)
    page.locator(".ls-bar").get_by_role("button", name="Drop").click()
    expect(gap).to_have_value(stood)
    tried(page)
    gap.fill("19")
    expect(compared).to_contain_text("Steel-door contact")
    page.reload()
    ready(page)
    expect(gap).to_have_value(stood)


def test_house_rules_of_the_firm_hold_in_the_plan_and_leave_as_the_file_of_the_command(
    visit: Visit, tmp_path: Path
) -> None:
    page = visit("survey/", PHONE)
    ready(page)
    page.locator(".ls-house > summary").click()
    page.locator(".ls-house summary", has_text="Days and minutes").click()
    box = page.locator("#ls-house-move-minutes")
    box.fill("300")
    expect(page.locator("#ls-house-move-minutes-said")).to_contain_text("0 to 60")
    box.fill("60")
    with page.expect_download() as saved:
        page.locator(".ls-house").get_by_role("button", name="Save as a file").click()
    own = json.loads(Path(saved.value.path()).read_text("utf-8"))
    assert own == {"values": {"move-minutes": {"value": 60, "unit": "min"}}}
    brought(page, survey(tmp_path))
    planned(page)
    expect(page.locator(".ls-plan")).to_contain_text("House rules of your firm hold")
    assert not axe_finds(page)
    page.get_by_role("button", name="All surveys").first.click()
    opening = {"id": "a", "place": HOSTILE, "kind": "hinged-door"}
    brought(page, survey(tmp_path, openings=[opening], name=HOSTILE))  # what it says stays text in its plan
    expect(page.locator(".ls-plan .ls-count")).to_contain_text("1 opening")
    page.locator(".ls-walk a").first.click()
    expect(page.locator(".ls-plan .ls-planned")).to_be_visible()
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
