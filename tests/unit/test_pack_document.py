"""The pack as one document: sound, by itself, safe from what a survey says, and the same bytes as a PDF each time."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from functools import cache
from typing import Any

import html5lib
import lxml.html
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.packs.data import plan_data
from latchside.packs.document import render_document, styles
from latchside.packs.pack import pack
from latchside.packs.pdf import NoPdfError, pdf
from latchside.packs.words import reading_name
from latchside.pages.job_pages import pages_of
from latchside.pages.render import _environment
from latchside.planning import summary as in_short
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan, Question
from latchside.project import check_project
from latchside.root import ROOT

from .pack_plans import OPENINGS, PLAN, hostile
from .support import runs_without
from .surveys import read

ADDRESS = "https://field.example/library/"
INJECTIONS = (
    "<script>window.ran=1</script>", '"><img src=x onerror=alert(1)>', "[[device/surface-contact]] [[=device/reach]]",
    "{{ 7*7 }} {% raw %}", "{: onclick=x }", "# Heading\n\n* list", "</style><b>", "]]>", "&lt;b&gt;", "a | b `c`",
)  # fmt: skip


@cache
def library() -> Library:
    return check_project(ROOT).library


def document(plan: Plan, site: str = "") -> str:
    return render_document(plan, library(), styles(ROOT), site)


@cache
def whole(site: str = "") -> str:
    return document(PLAN, site)


def parsed(text: str) -> Any:
    return lxml.html.document_fromstring(text)


@cache
def worked_plan(name: str) -> Plan:
    survey, _ = read(ROOT / "content" / "jobs" / f"{name}.yaml")
    assert survey is not None
    assert survey.surveyed is not None
    return make_plan(survey, library(), catalogue(), survey.surveyed)


def said(page: Any) -> str:
    return " ".join(page.text_content().split())


def test_a_real_parser_finds_no_error() -> None:
    parser = html5lib.HTMLParser(tree=html5lib.getTreeBuilder("etree"))
    parser.parse(whole())
    assert parser.errors == []


def test_headings_do_not_jump_and_ids_are_unique() -> None:
    page = parsed(whole())
    level = 0
    for heading in page.xpath("//h1 | //h2 | //h3 | //h4 | //h5"):
        at = int(heading.tag[1])
        assert at <= level + 1, heading.text_content()
        level = at
    ids = page.xpath("//@id")
    assert len(ids) == len(set(ids))
    assert len(page.xpath("//h1")) == 1


def test_every_part_of_a_pack_is_in_it() -> None:
    page = parsed(whole())
    titles = [heading.text_content() for heading in page.xpath("//h2")]
    assert titles == [
        "The job at a glance", "Opening sheets", "Zone schedule", "What goes on the van", "Order of work",
        "Service plan", "Test sheet", "Handover sheet", "Annex for the lead",
    ]  # fmt: skip
    order = [heading.text_content() for heading in page.xpath("//h3")]
    assert order.index("Settle first") < order.index("Open questions")
    assert order.index("Open questions") < order.index("Cautions of this job") < order.index("1 · Shop street door")


def test_nothing_is_left_out() -> None:
    text = said(parsed(whole()))
    for one in PLAN.openings:
        assert one.spoken in text
        for line in one.figures:
            assert " ".join(line.meaning.split()) in text
            for words in line.assumed:
                assert f"Assumed: {' '.join(words.split())}" in text
        for other in one.choice.passed_over:
            assert all(reason in text for reason in other.why)
        for value in one.expected:
            assert " ".join(value.shown.split()) in text
    for question in PLAN.questions:
        assert question.text in text
        assert question.why in text
    for problem in PLAN.problems:
        assert problem.found in text
        assert problem.action in text
    for zone in PLAN.zones:
        assert zone.supervision in text
    for item in PLAN.items:
        assert item.name in text
    assert "9 March 2027" in text
    assert "never here" in text
    assert "Not watched yet: Cellar hatch" in text


def test_what_is_asked_alike_at_many_openings_is_asked_once_with_their_names() -> None:
    """A lead asks once on the telephone; on site the technician finds it at each opening again, with a box."""
    why, other = "A fire-rated leaf is never drilled.", "Decides how it is fixed."
    rated = [Question(one.opening.id, "fire_rated", "Is it fire-rated?", why) for one in OPENINGS[:2]]
    plan = replace(PLAN, questions=(*rated, Question(OPENINGS[2].opening.id, "fire_rated", "Is it fire-rated?", other)))
    page = parsed(document(plan))
    (summary,) = [said(one) for one in page.xpath('//dl[@class="ls-asked"]/dd')]
    (asked,) = [said(one) for one in page.xpath('//ul[@class="ls-asks"]/li')]
    assert asked == "Every opening: Is it fire-rated?"
    names = ", ".join(one.spoken for one in OPENINGS[:2])
    assert summary == f"Is it fire-rated? {names}: {why} {OPENINGS[2].spoken}: {other}"
    assert len(page.xpath('//*[contains(@class, "ls-ask-line")]//li[contains(., "Is it fire-rated?")]')) == 3
    assert [line for line in in_short.open_ends(plan) if line.startswith("question")] == [f"question  {summary}"]
    alike = replace(PLAN, questions=tuple(rated))
    assert [line for line in in_short.open_ends(alike) if line.startswith("question")] == [
        f"question  {names}: Is it fire-rated? {why}"
    ]
    assert in_short.heading(alike).endswith("1 question"), "as many as the lines that follow"
    assert len(plan_data(alike)["questions"]) == 2, "the data keeps one for each opening"


def test_every_reading_stands_on_its_sheet_and_on_the_test_sheet_with_room_to_write() -> None:
    page = parsed(whole())
    tested = page.xpath('//*[contains(@class, "ls-test")]//tbody/tr')
    for one in OPENINGS:
        sheet = page.xpath(f'//*[@id="expected-{one.opening.id}"]//tbody/tr')
        rows = [row for row in page.xpath("//tbody/tr[@id]") if row.get("id").startswith(f"test-{one.opening.id}")]
        assert len(rows) == (one.contacts if one.choice.device else 0)
        for value in one.expected:
            (line,) = [row for row in sheet if said(row.xpath("./th")[0]) == reading_name(value.measure, value.label)]
            assert said(line.xpath("./td")[0]) == " ".join(value.shown.split())
            assert len(line.xpath('.//*[@class="ls-fill"]')) == one.contacts
        shown = {" ".join(value.shown.split()) for value in one.expected}
        for row in rows:
            name = said(row.xpath("./th")[0])
            at_places = [row for row in tested if said(row.xpath("./th")[0]) == name]
            labels = [label for row in at_places for label in (*row.xpath("./td/@data-label"), said(row))]
            assert all(words in " ".join(" ".join(labels).split()) for words in shown), row.get("id")
            cells = [cell for row in at_places for cell in row.xpath("./td")]
            assert all(cell.xpath('.//*[@class="ls-fill"]') or said(cell) == "–" for cell in cells)


def test_reasons_and_what_was_passed_over_stand_in_the_annex_alone() -> None:
    page = parsed(whole())
    (annex,) = page.xpath('//section[@class="ls-annex"]')
    outside = said(page).replace(said(annex), "")
    for one in OPENINGS:
        for reason in (*one.choice.reasons, *(why for other in one.choice.passed_over for why in other.why)):
            assert reason in said(annex)
            assert reason not in outside


def test_the_annex_is_printed_where_its_box_is_ticked_and_only_there() -> None:
    page = parsed(whole())
    (box,) = page.xpath('//input[@type="checkbox"]')
    assert box.get("checked") is None
    assert page.xpath('//label[@for="with-annex"]')
    assert box.getparent() is page.xpath('//section[@class="ls-annex"]')[0].getparent()
    style = (ROOT / "content" / "assets" / "job.css").read_text("utf-8")
    printed = style[style.index("@media print") :]
    assert re.search(r"#with-annex:not\(:checked\) ~ \.ls-annex,[^{}]*\{\s*display: none", printed)


def test_a_pack_speaks_in_the_units_of_its_region() -> None:
    def in_region(region: str) -> str:
        site = replace(PLAN.survey.site, region=region)
        made = parsed(document(replace(PLAN, survey=replace(PLAN.survey, site=site))))
        return said(made.xpath("//main")[0])

    british, american = in_region("united-kingdom"), in_region("united-states")
    assert "4 mm" in british
    assert "0.16 in" not in british
    assert "0.16 in" in american
    assert "4 mm" not in american


def test_a_pack_speaks_the_words_of_its_region() -> None:
    def handed_over(region: str) -> str:
        site = replace(PLAN.survey.site, region=region)
        return said(parsed(document(replace(PLAN, survey=replace(PLAN.survey, site=site)))))

    british, american = handed_over("united-kingdom"), handed_over("united-states")
    assert "before you set the system" in british
    assert "before you arm the system" in american
    assert "time to unset" in british
    assert "time to disarm" in american
    for word in ("unset", "Mains wiring", "torch", "spanner", "In Europe", "Grade: not known"):
        assert not re.search(rf"\b{word}\b", american), word


def test_the_names_of_the_zones_stand_as_the_keypad_shows_them() -> None:
    unit = replace(PLAN.survey.control_unit, name_length=12)
    page = parsed(document(replace(PLAN, survey=replace(PLAN.survey, control_unit=unit))))
    first, second = page.xpath('//code[@class="ls-keypad"]')[:2]
    assert [" ".join(text.split()) for text in first.itertext()] == ["Shop street", "door"]
    assert "too long: 24 letters" in said(second.getparent())


def test_a_verdict_is_a_sign_and_a_word_and_a_frame_on_paper() -> None:
    page = parsed(whole())
    shown = {
        one.get("class").split()[1]: one.text_content() for one in page.xpath('//*[contains(@class, "ls-bears ")]')
    }
    assert shown["ls-bears-good"] == "good"
    assert shown["ls-bears-test-on-site"] == "test on site"
    assert shown["ls-bears-no-device-yet"] == "no device yet"
    style = (ROOT / "content" / "assets" / "job.css").read_text("utf-8")
    for verdict in ("good", "test-on-site", "problem"):
        assert re.search(rf'\.ls-bears-{verdict}::before[^{{]*{{\s*content: "[^"]', style), verdict
    on_paper = style[style.index("@media print") :]
    assert re.search(r"\.ls-bears,[^{]*{[^}]*border: [^;]*#000;[^}]*color: #000", on_paper)
    assert set(re.findall(r"#[0-9a-f]{3,8}\b", style)) <= {"#000"}


def test_it_needs_no_site_and_asks_nobody() -> None:
    page = parsed(whole())
    assert not page.xpath("//script | //iframe | //object | //link | //form | //@onclick")
    assert not page.xpath("//@src")  # its drawings stand in it
    ids = set(page.xpath("//@id"))
    for link in page.xpath("//a/@href"):
        assert link.startswith("#"), link
        assert link[1:] in ids, link
    assert not re.search(r"url\((?!#)|@import|https?:", whole())


def test_with_an_address_it_links_into_the_site() -> None:
    links = parsed(whole(ADDRESS)).xpath("//a/@href")
    outside = {link for link in links if not link.startswith("#")}
    assert f"{ADDRESS}devices/recessed-contact/" in outside
    assert f"{ADDRESS}cautions/lead-paint/" in outside
    assert all(link.startswith(ADDRESS) for link in outside)


def test_it_is_made_without_what_no_page_could_load() -> None:
    """A page of the site makes the same document: templates and records alone."""
    none = ("lxml", "numpy", "mkdocs", "click", "markdown", "latchside.pages", "latchside.charts")
    runs_without(none, "from latchside.packs.document import render_document\n")


def test_its_policy_runs_nothing() -> None:
    policy = parsed(whole()).xpath('//meta[@http-equiv="Content-Security-Policy"]/@content')[0]
    assert "default-src 'none'" in policy
    assert "script" not in policy


@pytest.mark.parametrize("text", INJECTIONS)
def test_what_a_survey_says_is_only_text(text: str) -> None:
    clean, page = parsed(whole()), parsed(document(hostile(text)))
    assert " ".join(text.split()) in said(page)
    for tag in ("script", "img", "b", "style"):
        assert len(page.xpath(f"//{tag}")) <= len(clean.xpath(f"//{tag}"))
    assert not page.xpath("//@onerror | //@onclick")


@given(st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=60))
@settings(max_examples=15)
def test_any_text_keeps_the_document_sound(text: str) -> None:
    parser = html5lib.HTMLParser(tree=html5lib.getTreeBuilder("etree"))
    parser.parse(document(hostile(text)))
    assert parser.errors == []


@pytest.mark.parametrize("text", INJECTIONS)
def test_what_a_survey_says_is_only_text_in_the_pages_of_the_site(text: str) -> None:
    """No sign that Markdown, an attribute list or a template would read stands in them as it was written."""
    plan = hostile(text)
    for path, page in pages_of(plan, library(), _environment()):
        if path.endswith(".md"):
            assert text not in page or re.fullmatch(r"[\w ,.]*", text), path
            assert "<script" not in page
            assert "{{" not in page
            assert "{%" not in page


def test_paper_is_that_of_the_region() -> None:
    assert "size: A4" in whole()
    america = replace(PLAN, survey=replace(PLAN.survey, site=replace(PLAN.survey.site, region="united-states")))
    assert "size: letter" in document(america)


def test_a_job_that_is_not_invented_does_not_say_so() -> None:
    real = replace(PLAN, survey=replace(PLAN.survey, invented=False))
    assert "Invented site" in whole()
    assert "Invented" not in document(real)


def test_the_whole_pack_is_the_same_bytes_each_time() -> None:
    first, again = (pack(PLAN, library()) for _ in range(2))
    assert first == again
    assert set(first) == {
        "index.html", "zones.csv", "parts.csv", "service.ics", "visit.json", "plan.json", "pack.zip",
    }  # fmt: skip


def test_no_page_of_a_pack_has_room_for_a_code() -> None:
    text = said(parsed(whole()))
    assert "Tell it to nobody, and write it nowhere" in text
    assert not re.search(r"\bcode\s*:", text, re.IGNORECASE)


# -- PDF -------------------------------------------------------------------------------------------------------


def bare() -> Plan:
    return replace(PLAN, openings=PLAN.openings[2:], zones=(), items=(), work=(), service=(), cautions=())


def test_the_pdf_reads_back_and_is_the_same_bytes_each_time() -> None:
    pytest.importorskip("weasyprint", exc_type=ImportError)
    from pypdf import PdfReader

    made = pdf(whole())
    assert made == pdf(whole())
    read = PdfReader(io.BytesIO(made))
    text = " ".join(" ".join(page.extract_text() for page in read.pages).split())
    for one in PLAN.openings:
        assert one.spoken in text
    assert "test on site" in text
    assert read.metadata is not None
    assert str(read.metadata["/CreationDate"]) == "D:20260309"
    assert read.metadata.title == "Elm Corner: job pack"
    assert [round(float(side)) for side in read.pages[0].mediabox[2:]] == [595, 842]


def test_without_weasyprint_it_says_what_to_do(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(__import__("sys").modules, "weasyprint", None)
    with pytest.raises(NoPdfError, match=r"latchside\[pdf\].*index\.html"):
        pdf(document(bare()))


def test_the_hours_of_the_quote_add_up_and_count_each_question_once() -> None:
    page = parsed(whole())
    rows = page.xpath('//*[@id="quote"]/following::table[1]/tbody/tr')
    told = {said(row.xpath("./th")[0]): [said(cell) for cell in row.xpath("./td")] for row in rows}

    def minutes(text: str) -> int:
        return sum(int(n) * (60 if unit == "h" else 1) for n, unit in re.findall(r"(\d+)\s(h|min)", text))

    all_of_it = [minutes(text) for text in told.pop("All of it")]
    assert all_of_it == [sum(minutes(cells[at]) for cells in told.values()) for at in range(3)]
    alone = [sum(getattr(one, end) for one in PLAN.work) for end in ("low", "minutes", "high")]
    assert all(whole >= work for whole, work in zip(all_of_it, alone, strict=True))
    text = " ".join(said(page.xpath('//*[@id="quote"]/following::p[1]')[0]).split())
    asked = len(page.xpath('//*[contains(@class, "ls-asks")]/li'))
    assert f"on {len(PLAN.problems)} problem" in text
    assert f"and {asked} question" in text


@pytest.mark.parametrize(
    ("region", "entry", "exit_"),
    [
        ("united-kingdom", "Entry time (at most 45 s)", "Exit time (as short as the way out allows)"),
        ("europe", "Entry time (at most 45 s)", "Exit time (as short as the way out allows)"),
        ("united-states", "Entry delay (at least 30 s)", "Exit delay (at least 45 s)"),
        (None, "region not known: read the panel's instructions", "region not known: read the panel's instructions"),
    ],
)
def test_entry_and_exit_time_are_agreed_within_the_standard_of_the_region(
    shipped_library: Library, region: str | None, entry: str, exit_: str
) -> None:
    """EN 50131-1 and SIA CP-01, as the trade press gives them; the schedule has room for what is agreed."""
    plan = replace(PLAN, survey=replace(PLAN.survey, site=replace(PLAN.survey.site, region=region)))
    page = parsed(render_document(plan, shipped_library, ""))
    first, second, *_ = (
        " ".join(said(one).split()) for one in page.xpath('//*[@id="part-zones"]/following::p[2]/span')
    )
    assert entry in first
    assert exit_ in second
    boxes = page.xpath('//*[@id="part-zones"]/following::table[1]//td[@data-label="Live with people in"]/span')
    assert len(boxes) == len({zone.position for zone in PLAN.zones})


def test_what_a_gate_sets_off_is_agreed_before_it_is_entered(shipped_library: Library) -> None:
    """Who opens a gate or a garage has not come in: alarm at once is a choice of the customer. Common practice."""
    for name in ("corner-bakery", "foil-house"):
        plan = worked_plan(name)
        page = parsed(render_document(plan, shipped_library, ""))
        kinds = {one.opening.id: one.opening.kind for one in plan.openings}
        outer = {"gate", "up-and-over", "roller-door"}
        asked = [zone.position for zone in plan.zones if kinds[zone.opening] in outer and zone.response == "instant"]
        last = said(page.xpath('//*[@id="part-zones"]/following::p[2]/span')[-1])
        assert asked, name
        assert set(re.findall(r"\b[WR]\d+\b", last)) == set(asked)


def test_landing_and_cover_have_a_box_on_sheet_and_test_sheet(shipped_library: Library) -> None:
    """Every loop of the panel is landed, and every radio contact has a cover switch: both are seen, not trusted."""
    plan = worked_plan("corner-bakery")
    page = parsed(render_document(plan, shipped_library, ""))
    links = {zone.opening: zone.link for zone in plan.zones}
    for one in plan.openings:
        rows = page.xpath(f'//*[@id="opening-{one.opening.id}"]/following::table[1]/tbody/tr/th')
        labels = {said(row) for row in rows}
        assert (reading_name("landed") in labels) == (links[one.opening.id] == "wired"), one.opening.id
        assert (reading_name("cover") in labels) == (links[one.opening.id] == "radio"), one.opening.id
    heads = [said(head) for head in page.xpath("//thead//th")]
    for name in ("landed", "cover"):
        assert any(head.startswith(reading_name(name)) for head in heads)


def test_two_technicians_are_paid_for_all_the_time_they_are_there(shipped_library: Library) -> None:
    """Arrival, walk test and landing take both, and a quote that counts them once loses money: common practice."""
    plan = worked_plan("corner-bakery")
    assert plan.survey.rules.technicians == 2
    page = parsed(render_document(plan, shipped_library, ""))
    row = page.xpath('//*[@id="quote"]/following::table[1]/tbody/tr[last()]/td[2]')[0]
    hours, left = (int(one) for one in re.findall(r"[0-9]+", said(row)))
    before = sum(one.minutes for one in plan.work[:2])
    assert hours * 60 + left == pytest.approx(before + 2 * sum(day.minutes for day in plan.days), abs=1)
