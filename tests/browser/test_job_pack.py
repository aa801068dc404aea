"""From a filled survey to its pack, and from the pack to a filled test sheet: on paper, and on the phone."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, Page, expect

from latchside.cli import main
from latchside.root import ROOT
from latchside.visits.file import read_visit

from ..paper import sheets
from .contexts import Contexts
from .field import PHONE, new_page, ready
from .test_reading import CONTRAST, SIDEWAYS
from .test_survey_form import add_opening, all_openings, pick, saved_file, start_survey, type_in

SURVEY = ROOT / "content" / "jobs" / "corner-bakery.yaml"
VISIT_SCHEMA = ROOT / "schema" / "visit.schema.json"


@pytest.fixture(scope="module")
def pack(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The pack of a filled survey, made by the command."""
    folder = tmp_path_factory.mktemp("pack") / "bakery"
    result = CliRunner().invoke(main, ["plan", str(SURVEY), "--out", str(folder)])
    assert (folder / "index.html").is_file(), result.output
    return folder


@pytest.fixture
def document(browser: Browser, pack: Path) -> Iterator[Page]:
    """The document, opened from its folder with no server behind it; it asks nobody for anything."""
    context = browser.new_context(viewport=PHONE)
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: asked.append(message.text))
    page.goto((pack / "index.html").as_uri())
    yield page
    assert not [one for one in asked[1:] if not one.startswith("data:")]
    context.close()


def planned(pack: Path) -> dict[str, Any]:
    data: dict[str, Any] = json.loads((pack / "plan.json").read_text("utf-8"))
    return data


def test_the_document_is_readable_on_the_narrowest_phone_and_in_sunlight(document: Page) -> None:
    document.set_viewport_size({"width": 320, "height": 640})
    assert document.evaluate("document.documentElement.scrollWidth") == 320
    assert document.evaluate(SIDEWAYS.replace("article *", "main *")) == []
    found = document.evaluate(CONTRAST, ["main", 7])
    assert found["seen"] > 200
    assert found["poor"] == []


PAPER = {"corner-bakery": 794, "foil-house": 816}
"""The width of A4 and of Letter, in pixels of 96 to the inch."""
SIDE_MARGIN = 38
"""That of `job_document.jinja`."""


@pytest.mark.parametrize("job", PAPER)
def test_eleven_openings_print_on_twenty_sides_one_an_opening(browser: Browser, tmp_path: Path, job: str) -> None:
    survey = ROOT / "content" / "jobs" / f"{job}.yaml"
    CliRunner().invoke(main, ["plan", str(survey), "--address", "https://field.example/", "--out", str(tmp_path / job)])
    openings = planned(tmp_path / job)["openings"]
    assert len(openings) == 11
    page = browser.new_page(viewport={"width": PAPER[job] - 2 * SIDE_MARGIN, "height": 1000})
    page.goto((tmp_path / job / "index.html").as_uri())
    sides = [" ".join(side.split()) for side in sheets(page.pdf(prefer_css_page_size=True))]
    page.get_by_label("Print the annex for the lead too").check()
    page.emulate_media(media="print")
    assert page.evaluate(SIDEWAYS.replace("article *", "main *")) == [], "a browser would print all of it smaller"
    with_annex = sheets(page.pdf(prefer_css_page_size=True), after=len(sides))
    page.close()
    assert len(sides) <= 20
    assert "What each answer decides" in " ".join(" ".join(with_annex).split())
    all_is_there(planned(tmp_path / job), " ".join(sides))
    starts = [
        next(
            at
            for at, side in enumerate(sides)
            if side.partition("Faults ")[2].startswith(f"{number} · {one['spoken']}")
        )
        for number, one in enumerate(openings, 1)
    ]
    assert starts == list(range(starts[0], starts[0] + 11)), "one side an opening"
    assert sides[starts[-1] + 1].startswith("Zone schedule")
    assert sides[0].find("The job at a glance") < sides[0].find("Settle first")
    assert sides[1].startswith("The walk"), "the glance is one page"


def all_is_there(data: dict[str, Any], text: str) -> None:
    for zone in data["zones"]:
        assert zone["spoken"] in text
    for question in data["questions"]:
        assert " ".join(question["text"].split()) in text
    for title in ("Zone schedule", "Test sheet", "Handover sheet", "Service plan"):
        assert title in text


def test_links_inside_the_document_lead_to_their_place(document: Page) -> None:
    lost = document.evaluate(
        "[...document.querySelectorAll('a[href]')].map(a => a.getAttribute('href'))"
        ".filter(link => !link.startsWith('#') || !document.getElementById(link.slice(1)))"
    )
    assert lost == []


def brought_in(page: Page, pack: Path, site: str) -> None:
    """Bring the visit of a pack in on the phone."""
    entries = json.loads((pack / "visit.json").read_text("utf-8"))["entries"]
    page.get_by_label("Bring in a saved file").set_input_files(pack / "visit.json")
    expect(page.locator(".ls-import")).to_contain_text(f"{len(entries)} entries")
    page.get_by_role("button", name="Bring it in").click()
    expect(page.get_by_role("heading", name=site).first).to_be_visible()
    for one in entries[1:]:
        expect(page.get_by_label(one["name"], exact=True)).to_be_visible()


def filled_in(page: Page, base: str, opening: dict[str, Any], gap: dict[str, Any], folder: Path) -> Path:
    """Judge the gap at an opening by what the plan expects there, and save the visit as a file."""
    visit = opening["visit"]
    page.goto(f"{base}checklists/position/?visit={visit}&opening={opening['opening']}")
    ready(page)
    expect(page.locator(".ls-where")).to_contain_text(opening["name"])
    row = page.locator("[data-item]:not([data-state=foreign]):has([data-measure=fit-gap])").first
    expect(row).to_contain_text(gap["words"].partition(" (")[0])
    row.get_by_label("Reading").fill(str(gap["ranges"][0].get("low", gap["ranges"][0].get("high"))))
    row.get_by_role("button", name="Save: inside, done").click()
    expect(row).to_have_attribute("data-state", "done")
    page.goto(f"{base}visits/#v={visit}")
    ready(page)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    download.value.save_as(folder / "filled.json")
    return folder / "filled.json"


def test_the_visit_is_brought_in_and_a_reading_is_judged_by_the_plan(
    browser: Browser, contexts: Contexts, base: str, pack: Path, tmp_path: Path
) -> None:
    """What is planned for an opening goes before the figures of its device class, and comes back in the record."""
    entries = json.loads((pack / "visit.json").read_text("utf-8"))["entries"]
    opening = next(one for one in entries if "fit-gap" in one.get("expected", {}) and one["device"])
    gap = opening["expected"]["fit-gap"]
    with contexts.lent(browser, viewport=PHONE, service_workers="block") as context:
        page = new_page(context, f"{base}visits/")
        brought_in(page, pack, "Corner bakery with a flat above")
        saved = filled_in(page, base, opening, gap, tmp_path)
    found, faults = read_visit(saved, VISIT_SCHEMA)
    assert not faults
    assert found is not None
    filled = [entry for entry in found.entries if entry["kind"] == "item"]
    assert [entry["opening"] for entry in filled] == [opening["opening"]]
    assert filled[0]["expected"]["ranges"] == gap["ranges"]
    assert CliRunner().invoke(main, ["record", str(saved)]).exit_code == 0


def test_from_the_form_to_the_pack_to_a_filled_sheet(browser: Browser, base: str, tmp_path: Path) -> None:
    """A survey filled in on the phone becomes a pack, and the pack's visit is filled in on the same phone."""
    context = browser.new_context(viewport=PHONE, service_workers="block", has_touch=True, is_mobile=True)
    page = new_page(context, f"{base}survey/")
    start_survey(page, "Harbour cottage")
    add_opening(page, "Kitchen", "casement")
    for way in ("fire_rated", "escape", "cable", "old_contact", "outdoors"):
        pick(page, way, "no")
    pick(page, "drill", "yes")
    for way, words in (("leaf_material", "wood"), ("frame_material", "wood"), ("steel", "none")):
        pick(page, way, words)
    for way, figure in (("gap", "4"), ("play", "1"), ("distance", "6"), ("height", "1,4")):
        type_in(page, way, figure)
    all_openings(page)
    survey = tmp_path / "harbour-cottage.json"
    survey.write_text(json.dumps(saved_file(page)), "utf-8")
    pack = tmp_path / "pack"
    result = CliRunner().invoke(main, ["plan", str(survey), "--date", "2026-11-25", "--out", str(pack)])
    assert "Kitchen" in (pack / "index.html").read_text("utf-8"), result.output
    opening = json.loads((pack / "visit.json").read_text("utf-8"))["entries"][1]
    assert opening["device"] == "surface-contact"
    page.goto(f"{base}visits/")
    ready(page)
    brought_in(page, pack, "Harbour cottage")
    saved = filled_in(page, base, opening, opening["expected"]["fit-gap"], tmp_path)
    printed = CliRunner().invoke(main, ["record", str(saved)])
    assert printed.exit_code == 0
    assert "Harbour cottage" in printed.output
    context.close()
