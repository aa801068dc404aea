"""The browser and the Python of this library understand a record alike."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from latchside.visits.file import parse_visit
from latchside.visits.state import canonical, merge, view

from ..long import tries
from ..unit.test_visit_file import spoil
from ..visits.hostile import HOSTILE, injecting_record
from ..visits.make import AS_PLAIN_IN_BROWSER, CASES, SCHEMA, as_plain, full_record, history


@pytest.fixture(scope="module")
def modules(browser: Browser, base: str) -> Iterator[Page]:
    """A page with the modules at hand as `m`."""
    page = browser.new_page(service_workers="block")
    page.goto(f"{base}visits/")
    page.evaluate(
        """async base => { window.m = Object.assign({}, ...await Promise.all(
            ['visit/entries', 'visit/shape', 'core/words', 'visit/record-file']
            .map(name => import(`${base}assets/js/${name}.js`)))) }""",
        base,
    )
    yield page
    page.close()


def test_histories_mean_the_same(modules: Page) -> None:
    held = [history(Random(seed), devices=1 + seed % 4, changes=60) for seed in range(60)]
    seen = modules.evaluate(f"lists => lists.map(held => ({AS_PLAIN_IN_BROWSER})(m.view(m.merge(...held))))", held)
    assert seen == [as_plain(view(merge(*lists))) for lists in held]


def test_merging_is_a_union_in_any_order(modules: Page) -> None:
    held = [history(Random(seed), devices=3) for seed in range(40)]
    same = modules.evaluate(
        """lists => lists.every(([a, b, c]) => { const all = JSON.stringify(m.merge(a, b, c));
          return [m.merge(c, a, b), m.merge(m.merge(a, b), c), m.merge(a, m.merge(b, c)), m.merge(b, a, b, c, a),
            m.merge([...a, ...b, ...c].reverse())].every(one => JSON.stringify(one) === all); })""",
        held,
    )
    assert same


def test_canonical_texts_are_the_same(modules: Page) -> None:
    entries = [*full_record()["entries"], *injecting_record()["entries"]]
    assert modules.evaluate("entries => entries.map(m.canonical)", entries) == [canonical(one) for one in entries]


@pytest.mark.parametrize("case", CASES["judge"], ids=lambda case: case["about"])
def test_a_reading_is_judged(modules: Page, case: dict[str, Any]) -> None:
    verdict = modules.evaluate(
        "c => m.judge(c.reading, c.ranges ? {words: 'x', unit: '', ranges: c.ranges} : undefined)", case
    )
    assert verdict == case["verdict"]


@pytest.mark.parametrize(("function", "cases"), [("number", "number"), ("looksLikeCode", "code")])
def test_texts_are_read_alike(modules: Page, function: str, cases: str) -> None:
    texts = [text for text, _ in CASES[cases]]
    assert modules.evaluate(f"texts => texts.map(m.{function})", texts) == [wanted for _, wanted in CASES[cases]]


def test_texts_are_cleaned(modules: Page) -> None:
    for text, wanted in CASES["clean"]:
        assert modules.evaluate("text => m.clean(text, 500)", text) == wanted
    assert modules.evaluate(r"m.clean('half \ud800 a character \u{1f600}', 19)") == "half a character \U0001f600"
    assert modules.evaluate("m.clean('x'.repeat(600), 500).length") == 500


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_is_refused(modules: Page, name: str) -> None:
    found = modules.evaluate("text => m.readFile(text)", HOSTILE[name])
    assert "record" not in found
    assert found["fault"]
    assert modules.evaluate("({}).polluted === undefined")


def test_spoilt_records_are_refused_alike(modules: Page) -> None:
    texts = [spoil(full_record(), Random(seed)) for seed in range(tries(150, 1500))]
    by_browser = modules.evaluate("texts => texts.map(text => !m.readFile(text).fault)", texts)
    by_command = [not parse_visit(text, SCHEMA)[1] for text in texts]
    assert [texts[index] for index in range(len(texts)) if by_browser[index] != by_command[index]] == []
    assert 0 < sum(by_command) < 0.95 * len(texts)


def test_what_the_browser_writes_fits_the_schema(modules: Page) -> None:
    for seed in range(20):
        entries = merge(*history(Random(seed)))
        text = modules.evaluate("entries => m.recordText(entries[0].visit, entries, '0.1.0')", entries)
        found, faults = parse_visit(text, SCHEMA)
        assert not faults
        assert found is not None
        assert json.loads(text)["entries"] == entries


def test_no_cell_of_a_table_is_a_formula(modules: Page) -> None:
    rows = modules.evaluate("entries => m.csvText(entries)", injecting_record()["entries"]).lstrip("\ufeff")
    parsed = [cell for line in csv.reader(io.StringIO(rows, newline="")) for cell in line]
    assert len(parsed) > 100
    for cell in parsed:
        assert not cell.lstrip(' "').startswith(("=", "+", "-", "@", "\t", "\r", "\uff1d")), cell
    assert "1" in parsed
