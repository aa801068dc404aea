"""The calculators as a person uses them: they read what is typed, answer at once, and say what is wrong beside it."""

from __future__ import annotations

from collections.abc import Iterator
from urllib.parse import urlencode, urlsplit

import pytest
from playwright.sync_api import Page, expect

from latchside.library import Library, Record
from latchside.pages.calculators import figure_of, worked

from .conftest import Watch

BRITISH = {"locale": "en-GB"}
IN_VIEW = """() => {
  const words = (text) => text.split(/\\s+/).filter(Boolean).length;
  const labels = [...document.querySelectorAll("article svg text")].filter((one) => one.checkVisibility());
  return words(document.querySelector("article").innerText) - labels.reduce((n, one) => n + words(one.textContent), 0);
}"""
"""How many words stand in view, those in pictures not counted."""
MOST_WORDS = 350


@pytest.fixture(scope="module")
def reader(watch: Watch) -> Iterator[Page]:
    with watch() as visit:
        yield visit("figures/", (390, 844), **BRITISH)


@pytest.fixture
def cable(reader: Page, base: str) -> Page:
    """A calculator as it opens: nothing that was typed before is kept."""
    reader.goto("about:blank")
    reader.goto(f"{base}figures/cable-resistance/?length_m=30&awg=22")
    expect(reader.locator(".ls-answer dd").first).to_be_visible()
    return reader


def said(page: Page) -> dict[str, str]:
    """Every output the page shows, by its label, read at one moment; rows of figures have a test of their own."""
    rows: list[tuple[str, str]] = page.locator(".ls-answer dt").evaluate_all(
        """terms => terms.filter((one) => !one.nextElementSibling.querySelector("table"))
          .map((one) => [one.textContent, one.nextElementSibling.textContent])"""
    )
    return {label: " ".join(words.split()) for label, words in rows}


def example_link(record: Record) -> str:
    """The query that carries the inputs of a figure's own example."""
    inputs = figure_of(record).answer(record["examples"][0]["inputs"]).inputs
    typed = {
        name: ";".join(map(str, value)) if isinstance(value, list | tuple) else str(value).lower()
        if isinstance(value, bool) else str(value)
        for name, value in inputs.items() if value is not None
    }  # fmt: skip
    return urlencode(typed)


def test_every_figure_agrees_with_python_and_answers_on_the_first_screen(
    shipped_library: Library, watch: Watch, base: str
) -> None:
    assert len(shipped_library.of("formula")) >= 20
    with watch() as visit:
        page = visit("figures/", (390, 844), **BRITISH)
        for record in shipped_library.of("formula"):
            page.goto(f"{base}{record.address}")
            expect(page.locator(".ls-judged")).to_be_visible()
            bottom = page.locator(".ls-judged").evaluate("e => e.getBoundingClientRect().bottom + scrollY")
            assert bottom <= 844, f"{record.id}: what it means ends {bottom - 844:.0f} px below the first screen"
            assert page.evaluate("document.documentElement.scrollWidth") == 390, record.id
            words = page.evaluate(IN_VIEW)
            assert words <= MOST_WORDS, f"{record.id}: {words} words in view"
            page.goto(f"{base}{record.address}?{example_link(record)}")
            expect(page.locator(".ls-out-main dd")).to_be_visible()
            example = next(worked(record))
            ours = {label: shown.striptags() for label, shown in example["outputs"] if "<table" not in shown}
            assert said(page) == ours, record.id
            warnings = page.locator(".ls-answer .ls-note").all_text_contents()
            assert set(example["warnings"]) <= set(warnings), record.id


def test_the_readings_of_a_loop_stand_in_rows(reader: Page, base: str) -> None:
    reader.goto(f"{base}figures/loop-states/")
    reader.fill("[name=pull_up_ohm]", "2k2")
    reader.fill("[name=end_ohm]", "2200")
    reader.fill("[name=contact_ohm]", "2.2k")
    reader.fill("[name=tolerance_percent]", "0")
    rows = reader.locator(".ls-answer tbody tr")
    # equal resistors: half the supply closed, two thirds of it open (Ohm's law)
    expect(rows.nth(0)).to_contain_text("Closed")
    assert rows.nth(0).locator("td").all_text_contents() == ["2,200", "2.5", "2.5", "2.5"]
    assert rows.nth(1).locator("td").all_text_contents() == ["4,400", "3.333", "3.333", "3.333"]
    assert rows.nth(3).locator("td").first.text_content() == "open"


def test_a_comma_marks_decimals_as_a_point_does(cable: Page) -> None:
    cable.fill("[name=length_m]", "30.5")
    point = said(cable)
    cable.fill("[name=length_m]", "30,5")
    assert said(cable) == point
    cable.fill("[name=length_m]", "30")
    assert said(cable) != point


@pytest.mark.parametrize("typed", ["98 ft 5 1/8 in", "98' 5 1/8\"", "30 m", "3000 cm"])
def test_a_length_is_read_as_a_survey_takes_it(typed: str, cable: Page) -> None:
    """30 m is 98 ft 5.1024 in (0.3048 m a foot exactly: NIST SP 811, appendix B.8)."""
    cable.fill("[name=length_m]", "30")
    metric = said(cable)["Resistance of the run, both conductors"]
    cable.fill("[name=length_m]", "1")
    expect(cable.locator(".ls-answer dd").first).not_to_have_text(metric)
    cable.fill("[name=length_m]", typed)
    expect(cable.locator(".ls-answer")).to_contain_text(metric)


def test_a_thousands_mark_is_not_guessed_at(cable: Page) -> None:
    cable.fill("[name=length_m]", "1,500")
    expect(cable.locator("#error-length_m")).to_have_text(
        "“1,500” could be 1500 or 1.500. Write it without the thousands mark."
    )
    assert not said(cable)


@pytest.mark.parametrize("typed", ["5000", "0", "-3", "abc", "1e999", "<b>3</b>", "3 m; 4", "١٢"])
def test_what_is_no_answer_is_said_beside_the_field_and_in_the_summary(typed: str, cable: Page) -> None:
    cable.fill("[name=length_m]", typed)
    beside = cable.locator("#error-length_m")
    expect(beside).to_be_visible()
    words = beside.text_content() or ""
    assert "0.1" in words
    assert "2,000" in words
    assert words in (cable.locator(".ls-answer li").text_content() or ""), "the same words in the summary"
    assert cable.input_value("[name=length_m]") == typed, "what was typed is kept"
    assert not said(cable)
    assert cable.locator(".ls-answer b").count() == 0


def test_one_of_two_inputs_is_asked_for_and_the_other_on_a_tap(cable: Page) -> None:
    by_gauge = said(cable)
    expect(cable.locator("[name=area_mm2]")).to_have_count(0)
    cable.get_by_role("button", name="Instead: Area of one conductor").click()
    expect(cable.locator("[name=area_mm2]")).to_be_focused()
    expect(cable.locator("[name=awg]")).to_have_count(0)
    expect(cable.locator(".ls-answer li").first).to_contain_text("Missing")
    cable.keyboard.type("0.22")
    assert said(cable)
    assert said(cable) != by_gauge


def test_both_of_two_in_a_link_are_refused(cable: Page, base: str) -> None:
    cable.goto(f"{base}figures/cable-resistance/?length_m=30&awg=22&area_mm2=0.22")
    expect(cable.locator(".ls-answer li").first).to_contain_text("Give one of the two")
    cable.fill("[name=awg]", "")
    assert said(cable)


def test_the_other_system_of_units_gives_the_same_answer(cable: Page) -> None:
    metric = said(cable)
    button = cable.get_by_role("button", name="Length of the cable, one way: unit m, change to ft")
    button.click()
    assert cable.input_value("[name=length_m]") == "98.4252"
    close = said(cable)
    assert close.keys() == metric.keys()
    # 30 m is 98.4252 ft to six figures (0.3048 m a foot exactly: NIST SP 811, appendix B.8)
    assert close["Resistance of the run, both conductors"] == metric["Resistance of the run, both conductors"]


def test_a_link_carries_the_inputs(cable: Page, watch: Watch) -> None:
    cable.fill("[name=length_m]", "42")
    cable.locator(".ls-rare > summary").click()
    cable.select_option("[name=conductor]", "tinned")
    answer = said(cable)
    link = cable.locator(".ls-carry").get_attribute("href") or ""
    cable.goto(cable.url.partition("?")[0] + link)
    expect(cable.locator(".ls-answer dd").first).to_be_visible()
    assert cable.input_value("[name=length_m]") == "42"
    expect(cable.locator("[name=conductor]")).to_be_visible()
    assert said(cable) == answer
    assert urlsplit(link).path == ""


def test_a_hostile_link_runs_nothing_and_stays_text(watch: Watch) -> None:
    with watch() as visit:
        page = visit("figures/cable-resistance/?length_m=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E", (390, 844))
        expect(page.locator("#error-length_m")).to_contain_text("<img src=x onerror=alert(1)>")
        assert page.locator("form img").count() == 0


def test_without_scripts_the_worked_example_stands(watch: Watch) -> None:
    with watch() as visit:
        page = visit("figures/cable-resistance/", (390, 844), java_script_enabled=False)
        expect(page.locator("form[data-figure]")).to_be_hidden()
        expect(page.get_by_text("Scripts are off")).to_be_visible()
        page.locator("summary", has=page.locator("#examples")).click()
        expect(page.locator(".ls-worked").first).to_contain_text("3.178 Ω")


def test_fields_have_labels_ranges_and_a_numeric_keypad(cable: Page) -> None:
    field = cable.get_by_label("Length of the cable, one way", exact=True)
    assert field.get_attribute("inputmode") == "decimal"
    described = (field.get_attribute("aria-describedby") or "").split()
    assert "From 0.1 to 2,000 m" in (cable.locator(f"#{described[0]}").text_content() or "")
    cable.locator(".ls-rare > summary").click()
    for control in cable.locator("[data-figure] :is([type=text], select, button)").all():
        expect(control).to_be_visible()
        assert control.evaluate("e => e.getBoundingClientRect().height") >= 48
        assert control.evaluate("e => e.matches('button') || e.labels.length === 1")


def test_the_result_is_announced_and_withdrawn(cable: Page) -> None:
    told = cable.locator(".ls-answer").get_by_role("status")
    expect(told).to_contain_text("3.178 Ω")
    expect(told).to_contain_text("a good pair meters this")
    cable.fill("[name=length_m]", "thirty")
    expect(told).not_to_contain_text("Ω")
    expect(told).to_contain_text("“thirty” is not a number")
    assert cable.get_attribute("[name=length_m]", "aria-invalid") == "true"


def test_a_reader_in_north_america_types_and_reads_feet_and_inches(watch: Watch, base: str) -> None:
    with watch() as visit:
        page = visit("figures/ladder/", (390, 844), locale="en-US")
        field = page.get_by_label("Working length", exact=True)
        expect(page.get_by_role("button", name="Working length: unit ft, change to m")).to_be_visible()
        assert field.get_attribute("inputmode") == "text"
        field.fill("13' 1 1/2\"")
        # a quarter of the working length (29 CFR 1926.1053(b)(5)(i)): of 13 ft 1.5 in, 3.28125 ft
        result = page.locator(".ls-out-main dd")
        assert result.inner_text().split() == ["3.281", "ft"]
        expect(page.get_by_label("Words and units of your region")).to_be_visible()  # then a tap is heard
        result.locator(".ls-both").click()
        assert result.inner_text().split() == ["1", "m", "(3.281", "ft)"]
        field.fill("300")
        expect(page.locator("#error-working_length_m")).to_contain_text("Give from 3.29 to 49.2 ft")
        field.fill("12 ft")
        page.get_by_label("Words and units of your region").select_option("continent")
        expect(field).to_have_value("3.6576")  # 0.3048 m a foot exactly: NIST SP 811, appendix B.8


def test_an_anchor_inside_a_fold_of_a_figure_opens_it(reader: Page, base: str) -> None:
    reader.goto("about:blank")
    reader.goto(f"{base}figures/reed-gap/#formula")
    expect(reader.locator(".ls-formula").first).to_be_visible()
