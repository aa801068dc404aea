"""From the plan to the visit and back, on one phone with no signal: nothing is typed twice, nothing changed unasked."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import icalendar
from playwright.sync_api import Page, expect

from latchside.read.yaml_text import read_text
from latchside.root import ROOT
from latchside.visits.file import parse_visit

from ..paper import sheets
from ..visits.make import SCHEMA
from .field import axe_finds, comes_to, other, ready, stored
from .host import Host, Phone
from .test_visits_in_hand import TOO_SMALL, TOO_WIDE

SITE = "Low-energy house on the slope"
DOOR, HATCH = "Hall front door", "Gallery attic hatch"
Visit = Callable[..., Page]


def planned(page: Page, tmp_path: Path) -> None:
    """A survey of two openings is brought in, and its plan stands."""
    file = ROOT / "content/jobs/foil-house.yaml"
    data = read_text(file.read_text("utf-8"), file.name).value
    data["openings"] = [one for one in data["openings"] if one["id"] in ("front-door", "attic-hatch")]
    path = tmp_path / "survey.json"
    path.write_text(json.dumps(data), "utf-8")
    ready(page)
    page.set_input_files("#ls-file", path)
    page.get_by_role("button", name="Bring it in").click()
    page.get_by_role("button", name="Work out the plan").click()
    expect(page.get_by_role("button", name="Start the visit")).to_be_visible()


def started(page: Page, said: str) -> str:
    """Press the one button; the visit it leads to."""
    page.get_by_role("button", name="Start the visit").click()
    page.wait_for_url("**/visits/#v=*")
    expect(page.get_by_role("heading", name=SITE)).to_be_focused()
    expect(page.locator(".ls-bar .ls-said")).to_contain_text(said)
    return page.url.partition("#v=")[2]


def visit_of_the_pack(page: Page, tmp_path: Path) -> list[dict[str, object]]:
    """The entries of the visit file that the pack of this survey holds."""
    page.get_by_role("button", name="Make the pack").click()
    page.locator(".ls-each summary").click()
    with page.expect_download() as taken:
        page.get_by_role("button", name="visit.json", exact=True).click()
    taken.value.save_as(tmp_path / "visit.json")
    entries: list[dict[str, object]] = json.loads((tmp_path / "visit.json").read_text("utf-8"))["entries"]
    return entries


def sound_in_both_modes(page: Page) -> None:
    for mode in ("light", "dark"):
        page.emulate_media(color_scheme=mode, reduced_motion="reduce")
        assert axe_finds(page) == []
    comes_to(page, TOO_SMALL, [])
    comes_to(page, TOO_WIDE, [])


def worked(page: Page, base: str, visit: str) -> None:
    """Another class is fitted at the hatch, the gap at the door read, and a defect found there."""
    page.get_by_label(HATCH, exact=True).select_option("wide-reach-contact")
    expect(page.locator(".ls-bar .ls-said")).to_contain_text("Changed.")
    door = next(one["opening"] for one in stored(page) if one.get("name") == DOOR)
    page.goto(f"{base}checklists/position/?visit={visit}&opening={door}")
    ready(page)
    row = page.locator("[data-item]:not([data-state=foreign]):has([data-measure=fit-gap])").first
    expect(row).to_contain_text("Planned for this opening")
    row.get_by_label("Reading").fill("7")
    row.get_by_role("button", name="Save: inside, done").click()
    expect(row).to_have_attribute("data-state", "done")
    look = page.locator("[data-item]:not([data-state=foreign]):not(:has(.ls-reading))").first
    other(look, "Problem", "What is the problem?", "Hinge is loose")
    expect(look).to_have_attribute("data-state", "problem")
    page.goto(f"{base}visits/#v={visit}")
    ready(page)


def taken_into_the_survey(page: Page) -> None:
    """Before and after is looked at first; one is left out, the others are taken, and their rows are gone."""
    part = page.locator(".ls-job")
    part.get_by_role("button", name="Take this into the survey").click()
    rows = part.locator("li")
    expect(rows).to_have_count(3)
    gap, defect, device = (rows.nth(number) for number in range(3))
    for row, words in (
        (gap, (DOOR, "1/8 in", "7 mm")),
        (defect, (DOOR, "nothing", "Hinge is loose")),
        (device, (HATCH, "Surface contact", "Wide-gap contact")),
    ):
        for one in words:
            expect(row).to_contain_text(one)
    sound_in_both_modes(page)
    defect.get_by_role("checkbox").uncheck()
    part.get_by_role("button", name="Make 2 changes").click()
    expect(part).to_contain_text("2 changes taken into the survey")
    expect(rows).to_have_count(1)
    expect(rows).to_contain_text("Hinge is loose")
    expect(part.get_by_role("button", name="Nothing to change")).to_be_disabled()  # it is left out still
    rows.get_by_role("checkbox").check()
    part.get_by_role("button", name="Make 1 change").click()
    expect(rows).to_have_count(0)
    part.get_by_role("button", name="Take this into the survey").click()
    expect(part).to_contain_text("The survey says the same as this visit.")


def the_plan_shows_it(page: Page) -> None:
    page.locator(".ls-job").get_by_role("link", name="survey").click()
    ready(page)
    row = page.locator(".ls-walk li").filter(has_text="attic")
    expect(row).to_contain_text("Wide-gap contact")
    row.get_by_role("link").click()
    expect(page.locator(".ls-plan .ls-planned strong")).to_have_text("Wide-gap contact")
    page.get_by_role("button", name="All openings").first.click()


def other_plan_other_visit(page: Page, visit: str) -> None:
    """Once a visit is archived, what the plan says by now is a visit of its own."""
    page.get_by_role("button", name="Archive it").click()
    page.locator(".ls-second").get_by_role("button", name="Archive it").last.click()
    page.locator(".ls-job").get_by_role("link", name="survey").click()
    ready(page)
    expect(page.get_by_role("button", name="Start the visit")).to_be_visible()
    assert started(page, "Started from the survey") != visit
    expect(page.get_by_label(HATCH, exact=True)).to_have_value("wide-reach-contact")
    page.evaluate("visit => { location.hash = `v=${visit}`; }", visit)
    expect(page.get_by_text("Archived: nothing more is written to it.")).to_be_visible()


def papers(page: Page) -> None:
    """What was fitted, without a certificate and with one."""
    page.evaluate("() => { window.print = () => { window.printed = true; }; }")
    press = page.get_by_role("button", name="Print as fitted")
    press.click()
    page.wait_for_function("window.printed")
    assert "Test certificate" not in "".join(sheets(page.pdf()))
    page.locator("label", has_text="With a test certificate").click()
    press.click()
    fitted, certificate = (" ".join(text.split()) for text in sheets(page.pdf()))
    for words in (f"{SITE}: as fitted", "W1", "Steel-door contact", "7 mm – inside", "Hinge is loose"):
        assert words in fitted
    assert f"{HATCH}: planned Surface contact, fitted Wide-gap contact." in fitted
    for words in ("claims no compliance", "insurer", "System", "Grade as specified", "Standard worked to", "Signature"):
        assert words in certificate
    assert "contact" not in certificate  # nothing is filled in
    page.get_by_role("button", name="Print the sheet").click()
    assert "as fitted" not in "".join(sheets(page.pdf()))


def dates(page: Page) -> None:
    with page.expect_download() as saved:
        page.get_by_role("button", name="Service dates for a calendar").click()
    calendar = icalendar.Calendar.from_ical(Path(saved.value.path()).read_bytes())
    assert saved.value.suggested_filename.endswith(".ics")
    assert any("Service" in str(event["summary"]) for event in calendar.walk("VEVENT"))


def test_from_plan_to_visit_and_back_with_no_signal(saver: Phone, host: Host, tmp_path: Path) -> None:
    page = saver.on()
    page.goto(f"{host.base}survey/")
    planned(page, tmp_path)
    host.stop()
    sound_in_both_modes(page)
    packed = visit_of_the_pack(page, tmp_path)
    visit = started(page, "Started from the survey")
    entries = stored(page)
    assert [one for one in entries if one["id"] in {entry["id"] for entry in packed}] == sorted(
        packed, key=lambda one: str(one["id"])
    )
    worked(page, host.base, visit)
    taken_into_the_survey(page)
    the_plan_shows_it(page)
    kept = stored(page)
    assert started(page, "on this device already. Nothing of it was changed.") == visit
    assert stored(page) == kept
    other_plan_other_visit(page, visit)
    papers(page)
    dates(page)
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save as a file").click()
    assert not parse_visit(Path(saved.value.path()).read_text("utf-8"), SCHEMA)[1]
    assert saver.complaints == []


def test_where_storage_is_refused_no_visit_is_started_and_the_survey_stays(visit: Visit, tmp_path: Path) -> None:
    page = visit("on-site/", (390, 844))
    page.add_init_script(
        """const open = IDBFactory.prototype.open;
        IDBFactory.prototype.open = function (name, ...more) {
          if (name === "latchside") throw new DOMException("no", "SecurityError");
          return open.call(this, name, ...more);
        };"""
    )
    page.goto(page.url.replace("on-site/", "survey/"))
    planned(page, tmp_path)
    page.get_by_role("button", name="Start the visit").click()
    expect(page.locator(".ls-plan")).to_contain_text("No visit was started, and your survey is untouched")
    expect(page.locator(".ls-walk li")).to_have_count(2)
    expect(page.get_by_role("button", name="Start the visit")).to_be_enabled()


def test_a_visit_of_its_own_has_papers_and_no_survey(visit: Visit) -> None:
    page = visit("visits/", (390, 844))
    ready(page)
    page.get_by_label("A name for the site").fill("Elm House")
    page.get_by_role("button", name="Start this visit").click()
    expect(page.get_by_role("heading", name="Elm House")).to_be_focused()
    expect(page.get_by_role("button", name="Take this into the survey")).to_have_count(0)
    expect(page.get_by_role("button", name="Service dates for a calendar")).to_have_count(0)
    page.evaluate("() => { window.print = () => { window.printed = true; }; }")
    page.get_by_role("button", name="Print as fitted").click()
    page.wait_for_function("window.printed")
    assert "No plan came with this visit" in " ".join("".join(sheets(page.pdf())).split())
