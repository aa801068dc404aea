"""The demo jobs in the site: invented and marked so, complete, printable, with files that a general library reads."""

from __future__ import annotations

import csv
import io
import json
import re
from pathlib import Path
from types import MappingProxyType

import icalendar
import pytest
from lxml.html import HtmlElement

from latchside.library import Library
from latchside.packs.system import in_system_of
from latchside.packs.view import PARTS
from latchside.pages.job_pages import plan_of
from latchside.planning.plan import Plan
from latchside.root import ROOT
from latchside.visits.file import read_visit

DEMOS = ("corner-bakery", "foil-house")


@pytest.fixture(scope="module")
def plans(shipped_library: Library) -> dict[str, Plan]:
    return {job.id: in_system_of(plan_of(job, shipped_library)) for job in shipped_library.of("job")}


def said(element: HtmlElement) -> str:
    return " ".join(element.text_content().split())


def test_two_demo_sites_are_built(shipped_library: Library, articles: dict[str, HtmlElement]) -> None:
    assert tuple(job.id for job in shipped_library.of("job")) == DEMOS
    for job in DEMOS:
        for part in ("", *(f"{part}/" for part in (*PARTS, "print"))):
            assert f"jobs/{job}/{part}" in articles


def test_every_page_of_a_demo_says_that_it_is_invented(articles: dict[str, HtmlElement]) -> None:
    pages = [address for address in articles if address.startswith("jobs/")]
    assert len(pages) == 1 + len(DEMOS) * (len(PARTS) + 2)
    for address in pages:
        assert re.search(r"\bInvented site\b|\bare invented\b", said(articles[address])), address


@pytest.mark.parametrize("job", DEMOS)
def test_a_demo_shows_openings_of_many_kinds_and_what_stands_open(job: str, plans: dict[str, Plan]) -> None:
    plan = plans[job]
    assert 8 <= len(plan.openings) <= 14
    assert len({one.opening.kind for one in plan.openings}) >= 7
    assert plan.questions
    assert plan.on == plan.survey.surveyed
    assert {line.verdict for one in plan.openings for line in one.figures} >= {"good", "test on site"}


def test_one_demo_shows_a_choice_of_the_lead(plans: dict[str, Plan], articles: dict[str, HtmlElement]) -> None:
    chosen = [(job, one) for job, plan in plans.items() for one in plan.openings if one.choice.overridden]
    assert chosen
    for job, one in chosen:
        assert str(one.choice.overridden) in said(articles[f"jobs/{job}/openings/"])
        assert "chosen by the lead" in said(articles[f"jobs/{job}/"])


@pytest.mark.parametrize("job", DEMOS)
def test_the_summary_lists_every_opening_question_and_problem(
    job: str, plans: dict[str, Plan], articles: dict[str, HtmlElement]
) -> None:
    text = said(articles[f"jobs/{job}/"])
    for one in plans[job].openings:
        assert one.spoken in text
    for question in plans[job].questions:
        assert question.text in text
        assert question.why in said(articles[f"jobs/{job}/annex/"])
    for problem in plans[job].problems:
        assert " ".join(problem.found.split()) in text
        assert " ".join(problem.action.split()) in text


@pytest.mark.parametrize("job", DEMOS)
def test_cautions_of_the_job_stand_before_its_openings_and_work(
    job: str, plans: dict[str, Plan], articles: dict[str, HtmlElement]
) -> None:
    assert plans[job].cautions
    for part in ("", "work/"):
        links = articles[f"jobs/{job}/{part}"].xpath('.//*[contains(@class, "ls-caution")]//a/@href')
        shown = {link.rstrip("/").rpartition("/")[2] for link in links}
        assert {one.caution for one in plans[job].cautions} <= shown
    whole = articles[f"jobs/{job}/print/"]
    titles = [said(heading) for heading in whole.xpath(".//h2 | .//h3")]
    assert titles.index("Open questions") < titles.index("Cautions of this job") < titles.index("Opening sheets")
    sheets = articles[f"jobs/{job}/openings/"]
    for one in plans[job].openings:
        head = sheets.xpath(f'.//h2[@id="opening-{one.opening.id}"]')[0]
        facts = head.xpath('following-sibling::dl[contains(@class, "ls-kit")][1]')[0]
        after = list(head.itersiblings())
        before = after[: after.index(facts)]
        shown = {link.split("/")[-2] for tag in before for link in tag.xpath(".//a/@href") if "cautions/" in link}
        assert set(one.cautions) <= shown, one.opening.id


@pytest.mark.parametrize("job", DEMOS)
def test_the_sheets_say_where_how_and_what_it_reads_and_the_annex_why(
    job: str, plans: dict[str, Plan], articles: dict[str, HtmlElement]
) -> None:
    sheets, annex = (said(articles[f"jobs/{job}/{part}/"]) for part in ("openings", "annex"))
    for one in plans[job].openings:
        why = (
            *one.choice.reasons, *one.choice.against, *(why for other in one.choice.passed_over for why in other.why),
            *(line.meaning for line in one.figures), *(words for line in one.figures for words in line.assumed),
        )  # fmt: skip
        for words in why:
            assert " ".join(words.split()) in annex, (one.opening.id, words)
        fixed = (one.fixing.sensor, one.fixing.magnet, one.fixing.spacer, one.fixing.hold) if one.fixing else ()
        read = {"cable-resistance"} if any(value.measure == "cable-ohm" for value in one.expected) else set[str]()
        doubtful = [line for line in one.figures if line.verdict in ("test on site", "poor")]
        tried = (line.meaning for line in doubtful if line.figure not in read)  # a cable is metered, not tried in place
        for words in (*fixed, *tried, *(value.shown for value in one.expected)):
            assert " ".join(words.split()) in sheets, (one.opening.id, words)
    devices = {one.choice.device for one in plans[job].openings} - {None}
    for device in devices:
        assert f"../../../devices/{device}/" in articles[f"jobs/{job}/openings/"].xpath(".//a/@href")


@pytest.mark.parametrize("job", DEMOS)
def test_links_to_what_moved_from_the_sheets_still_lead_to_the_opening(
    job: str, plans: dict[str, Plan], articles: dict[str, HtmlElement]
) -> None:
    ids = set(articles[f"jobs/{job}/openings/"].xpath(".//@id"))
    for one in plans[job].openings:
        parts = ("opening", "fixing", "figures", "others", "expected") if one.choice.device else ("opening",)
        assert {f"{part}-{one.opening.id}" for part in parts} <= ids


AT_PANEL = 'ancestor::div[1]/following-sibling::*[1][self::ul[@class="ls-at-panel"]]/li'
"""What is set at the panel for the contacts of a table, beneath it."""


@pytest.mark.parametrize("job", DEMOS)
def test_the_test_sheet_has_room_for_every_expected_reading(
    job: str, plans: dict[str, Plan], articles: dict[str, HtmlElement]
) -> None:
    page = articles[f"jobs/{job}/test-sheet/"]
    tested = page.xpath('.//table[contains(@class, "ls-test")]//tbody/tr')
    for one in plans[job].openings:
        rows = [
            row
            for row in page.xpath(".//tr[@id]")
            if re.fullmatch(rf"test-{one.opening.id}(-contact-2)?", row.get("id"))
        ]
        assert len(rows) == (one.contacts if one.choice.device else 0)  # each contact is read by itself
        for row in rows:
            name = said(row.xpath("./th")[0])
            at_places = [other for other in tested if said(other.xpath("./th")[0]) == name]
            beside = [li for other in at_places for li in other.xpath(AT_PANEL)]
            filled = [fill for other in at_places for fill in other.xpath('.//*[@class="ls-fill"]')]
            # beside these: name, closed again, and landed or, of a radio contact, its cover
            ends = {"play", "trip", "fit-gap"} - {value.measure for value in one.expected}
            assert len(filled) + len(beside) == len(one.expected) + len(ends) + 3, row.get("id")


@pytest.mark.parametrize("job", DEMOS)
def test_the_handover_sheet_speaks_plainly(job: str, plans: dict[str, Plan], articles: dict[str, HtmlElement]) -> None:
    text = said(articles[f"jobs/{job}/handover/"])
    for word in ("reed", "enrol", "tamper loop", "end-of-line", "dBm", "margin", "supervision"):
        assert word not in text.lower(), word
    for one in plans[job].openings:
        assert one.spoken in text
    assert "Tell it to nobody" in text


def test_a_verdict_is_never_told_by_colour_alone(articles: dict[str, HtmlElement]) -> None:
    seen = 0
    for address, article in articles.items():
        for verdict in article.xpath('.//*[contains(@class, "ls-bears ")]') if address.startswith("jobs/") else ():
            words = ("good", "test on site", "poor", "problem", "for information", "no verdict", "no device yet")
            assert said(verdict) in words
            seen += 1
    assert seen > 100


@pytest.mark.parametrize("job", DEMOS)
def test_files_of_a_demo_read_back(job: str, site: Path, plans: dict[str, Plan]) -> None:
    folder = site / "jobs" / job
    found, faults = read_visit(folder / "visit.json", ROOT / "schema" / "visit.schema.json")
    assert not faults
    assert found is not None
    assert len(found.entries) == 1 + sum(one.contacts for one in plans[job].openings)
    assert json.loads((folder / "plan.json").read_text("utf-8"))["survey"]["id"] == job
    zones = list(csv.reader(io.StringIO((folder / "zones.csv").read_bytes().decode("utf-8-sig"), newline="")))
    assert [row[0] for row in zones[1:]] == [zone.position for zone in plans[job].zones]
    calendar = icalendar.Calendar.from_ical((folder / "service.ics").read_bytes())
    assert len(calendar.walk("VEVENT")) == len(plans[job].service)


@pytest.mark.parametrize("job", DEMOS)
def test_files_of_a_demo_are_linked(job: str, site: Path, articles: dict[str, HtmlElement]) -> None:
    links = set(articles[f"jobs/{job}/"].xpath('.//ul[@class="ls-files"]//a/@href'))
    there = {f"./{path.name}".removeprefix("./") for path in (site / "jobs" / job).iterdir() if path.suffix != ".html"}
    assert links == {name for name in there if (site / "jobs" / job / name).is_file()}


def test_packs_are_saved_on_request_and_not_on_the_first_visit(site: Path) -> None:
    listed = json.loads((site / "offline.json").read_text("utf-8"))
    assert not [path for path in listed["first"] if path.startswith("jobs/")]
    assert [path for path in listed["rest"] if path.startswith("jobs/corner-bakery/")]


@pytest.mark.parametrize("change", [{"invented": None}, {"surveyed": None}])
def test_a_job_without_its_mark_or_day_is_not_built(shipped_library: Library, change: dict[str, None]) -> None:
    from dataclasses import replace

    job = shipped_library.of("job")[0]
    bare = {name: value for name, value in job.data.items() if name not in change}
    with pytest.raises(ValueError, match="content/jobs/"):
        plan_of(replace(job, _data=MappingProxyType(bare)), shipped_library)


def test_no_page_or_file_of_a_pack_holds_a_code(site: Path) -> None:
    from latchside.library.codes import looks_like_code

    for path in (site / "jobs").rglob("visit.json"):
        for entry in json.loads(path.read_text("utf-8"))["entries"]:
            assert not looks_like_code(entry.get("note", "")), path
            assert not looks_like_code(entry.get("name", "")), path
