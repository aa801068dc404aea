"""The calculators as a person uses them: they read what is typed, answer at once, and say what is wrong beside it."""

from __future__ import annotations

from collections.abc import Iterator
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Page, expect

from latchside.library import Library, Record
from latchside.pages.calculators import is_calculator, worked

from .conftest import Watch


@pytest.fixture(scope="module")
def calculators(shipped_library: Library) -> list[Record]:
    return [record for record in shipped_library.of("formula") if is_calculator(record)]


@pytest.fixture(scope="module")
def reader(watch: Watch) -> Iterator[Page]:
    with watch() as visit:
        yield visit("figures/", (390, 844))


@pytest.fixture
def cable(reader: Page, base: str) -> Page:
    """A calculator as it opens: nothing that was typed before is kept."""
    reader.goto("about:blank")
    reader.goto(f"{base}figures/cable-resistance/")
    expect(reader.locator(".ls-answer dd").first).to_be_visible()
    return reader


def said(page: Page) -> dict[str, str]:
    """Every output the page shows, by its label, read at one moment."""
    rows: list[tuple[str, str]] = page.locator(".ls-answer dt").evaluate_all(
        "terms => terms.map((one) => [one.textContent, one.nextElementSibling.textContent])"
    )
    return dict(rows)


def test_every_page_opens_on_its_example_and_agrees_with_python(
    calculators: list[Record], watch: Watch, base: str
) -> None:
    assert len(calculators) >= 12
    with watch() as visit:
        page = visit("figures/", (390, 844))
        for record in calculators:
            page.goto(base + record.address)
            expect(page.locator(".ls-answer dd").first).to_be_visible()
            example = next(worked(record))
            assert said(page) == dict(example["outputs"]), record.id
            warnings = page.locator(".ls-answer .ls-note").all_text_contents()
            assert set(example["warnings"]) <= set(warnings), record.id


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
    assert cable.locator("form b").count() == 0


def test_one_of_two_inputs_is_enough_and_both_are_refused(cable: Page) -> None:
    by_gauge = said(cable)
    cable.fill("[name=area_mm2]", "0.22")
    expect(cable.locator(".ls-answer li").first).to_contain_text("Give one of the two")
    cable.fill("[name=awg]", "")
    assert said(cable)
    assert said(cable) != by_gauge
    cable.fill("[name=area_mm2]", "")
    expect(cable.locator(".ls-answer li").first).to_contain_text("Missing")


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
    cable.select_option("[name=conductor]", "tinned")
    answer = said(cable)
    link = cable.locator(".ls-carry").get_attribute("href") or ""
    cable.goto(cable.url.partition("#")[0] + link)
    expect(cable.locator(".ls-answer dd").first).to_be_visible()
    assert cable.input_value("[name=length_m]") == "42"
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
        expect(page.locator("#examples ~ .ls-worked").first).to_contain_text("3.178 Ω")


def test_fields_have_labels_ranges_and_a_numeric_keypad(cable: Page) -> None:
    field = cable.get_by_label("Length of the cable, one way", exact=True)
    assert field.get_attribute("inputmode") == "decimal"
    described = (field.get_attribute("aria-describedby") or "").split()
    assert "From 0.1 to 2,000 m" in (cable.locator(f"#{described[0]}").text_content() or "")
    for control in cable.locator("[data-figure] :is([type=text], select, button)").all():
        expect(control).to_be_visible()
        assert control.evaluate("e => e.getBoundingClientRect().height") >= 48
