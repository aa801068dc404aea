"""The guided run of a fault: the same plan as in Python, down to a remedy or somebody named, and into the record."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from latchside.library import Library
from latchside.pages.fault_data import problem_data
from latchside.pages.fault_plan import plan_of
from latchside.visits.command import SCHEMA
from latchside.visits.file import parse_visit
from latchside.visits.state import view
from latchside.visits.tally import as_rows, tally

from ..unit.random_faults import random_cases
from .field import PHONE, add_opening, new_page, start_visit

FAULT = "faults/shows-open-when-shut/"
PLANNED = """async ([script, cases]) => {
  const { Exact, Moves } = await import(script);
  return cases.map(problem => {
    const moves = new Moves(problem), exact = new Exact(moves), start = moves.start();
    const action = exact.choose(start);
    let next = [];
    if (action >= moves.checks) next = [moves.ruledOut(start, action - moves.checks)];
    else if (action >= 0) next = moves.branches(start, action).filter(one => !one.ends).map(one => one.state);
    const after = next.filter(state => state.left).map(state => [exact.choose(state), exact.value(state)]);
    return { action, minutes: exact.value(start), after };
  });
}"""
WALK = """async ([script, problem]) => {
  // Every answer at every point, remedies proved and in vain, each check left out once: how many ends, and which.
  const { standing } = await import(script);
  const ends = {};
  let points = 0;
  const walk = (events) => {
    const at = standing(problem, events);
    if (at.events !== events.length) throw new Error('an event was not played');
    if (at.kind === 'end') return void (ends[at.why] = (ends[at.why] ?? 0) + 1);
    if ((points += 1) > 20000) throw new Error('no end');
    if (at.kind === 'mend') for (const gone of [true, false]) walk([...events, { do: 'mend', id: at.id, gone }]);
    else {
      const check = problem.checks.find(one => one.id === at.id);
      for (const result of check.results) walk([...events, { do: 'check', id: at.id, result: result.id }]);
      if (!events.some(one => one.do === 'cannot')) walk([...events, { do: 'cannot', id: at.id }]);
    }
  };
  walk([]);
  return ends;
}"""


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport=PHONE, service_workers="block")
    yield context
    context.close()


@pytest.fixture
def page(phone: BrowserContext, base: str) -> Page:
    return new_page(phone, base + FAULT)


def answer(page: Page, words: str) -> None:
    page.locator(".ls-find .ls-answer", has_text=words).first.click()


def heading(page: Page) -> str:
    return page.locator(".ls-find h3").inner_text()


def test_a_thousand_problems_have_the_plan_that_python_makes(page: Page, base: str) -> None:
    cases = random_cases()
    script = f"{base}assets/js/fault-plan.js"
    found = page.evaluate(PLANNED, [script, [case["problem"] for case in cases]])
    assert len(found) == 1000
    for number, (case, made) in enumerate(zip(cases, found, strict=True)):
        assert made["action"] == case["action"], number
        assert made["minutes"] == pytest.approx(case["minutes"], abs=1e-9, rel=0), number
        assert [one[0] for one in made["after"]] == [one[0] for one in case["after"]], number
        for mine, theirs in zip(made["after"], case["after"], strict=True):
            assert mine[1] == pytest.approx(theirs[1], abs=1e-9, rel=0), number


def test_every_shipped_fault_has_the_plan_that_python_makes_and_ends(
    page: Page, base: str, shipped_library: Library
) -> None:
    for fault in shipped_library.of("fault"):
        for device in (None, *(one.id for one in shipped_library.referring("fault", fault.id, "device"))):
            plan = plan_of(shipped_library, fault, device)
            data = problem_data(plan.problem)
            [made] = page.evaluate(PLANNED, [f"{base}assets/js/fault-plan.js", [data]])
            assert made["minutes"] == pytest.approx(plan.expected, abs=1e-9), (fault.id, device)
            assert plan.tree is not None
            names = [one.id for one in plan.problem.checks] + [one.id for one in plan.problem.causes]
            assert names[made["action"]] == plan.tree.id, (fault.id, device)
        ends = page.evaluate(
            WALK, [f"{base}assets/js/fault-steps.js", problem_data(plan_of(shipped_library, fault).problem)]
        )
        assert ends["gone"], fault.id


def test_a_run_ends_in_a_remedy_and_goes_on_where_the_proof_fails(page: Page) -> None:
    answer(page, "Recessed contact")
    expect(page.locator(".ls-find .ls-do")).to_have_text(
        "Measure the gap, leaf shut and latched, against the gap written at hand-over."
    )
    answer(page, "The gap is within the fit gap.")
    expect(page.locator(".ls-find .ls-caution").first).to_be_visible()
    answer(page, "open without it")
    expect(page.locator(".ls-find h3")).to_have_text("Mend 3")
    expect(page.locator(".ls-find-step > .ls-restore")).to_contain_text("Take the test magnet away")
    answer(page, "Still there")
    expect(page.locator(".ls-find h3")).to_have_text("Pass it on")
    expect(page.locator(".ls-find-step")).to_contain_text("Ruled out")
    expect(page.locator(".ls-find-step")).to_contain_text("lead technician")
    page.get_by_role("button", name="Back", exact=True).click()
    answer(page, "The fault is gone")
    expect(page.locator(".ls-find h3")).to_have_text("The fault is gone")
    expect(page.locator(".ls-find-step")).to_contain_text("It was: Steel near the parts")


def test_answers_are_large_and_survive_a_reload(page: Page) -> None:
    answer(page, "Surface contact")
    for button in page.locator(".ls-find .ls-answer").all():
        box = button.bounding_box()
        assert box
        assert box["height"] >= 56
    answer(page, "The gap is within the fit gap.")
    second = page.locator(".ls-find-step").inner_text()
    page.wait_for_selector("[data-kept='1']")
    page.reload()
    page.wait_for_selector("html[data-ls-ready=fault]")
    assert page.locator(".ls-find-step").inner_text() == second
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]


def test_what_cannot_be_done_is_planned_around_and_told(page: Page) -> None:
    answer(page, "Recessed contact")
    first = page.locator(".ls-find .ls-do").inner_text()
    page.get_by_role("button", name="Can't do this one").click()
    expect(page.locator(".ls-find .ls-do")).not_to_have_text(first)
    page.get_by_role("button", name="Something else").click()
    expect(page.locator(".ls-find h3")).to_have_text("Pass it on")
    expect(page.locator(".ls-find-step")).to_contain_text("Not checked")
    expect(page.locator(".ls-find-step")).to_contain_text(first)
    expect(page.locator(".ls-find-step")).to_contain_text("Still possible")


def test_a_whole_visit_fault_checks_remedy_proof_and_record(phone: BrowserContext, base: str) -> None:
    page = new_page(phone, f"{base}visits/")
    visit = start_visit(page, base)
    add_opening(page, "Back door, left", "recessed-contact")
    page.goto(base + FAULT)
    page.wait_for_selector("html[data-ls-ready=fault]")
    expect(page.locator(".ls-find .ls-writes")).to_contain_text("Elm House")
    expect(page.locator(".ls-find .ls-needs").first).to_contain_text("On: Recessed contact")
    page.get_by_label("Reading, if you took one").fill("14")
    answer(page, "wider than the one written")
    answer(page, "Still there")
    expect(page.locator(".ls-find h3")).to_have_text("Pass it on")
    page.get_by_role("button", name="Back", exact=True).click()
    answer(page, "The fault is gone")
    expect(page.locator(".ls-find h3")).to_have_text("The fault is gone")
    page.wait_for_selector("[data-kept='2']")
    page.goto(f"{base}visits/#v={visit}")
    page.wait_for_selector("html[data-ls-ready]")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    found, faults = parse_visit(Path(download.value.path()).read_text("utf-8"), SCHEMA)
    assert not faults
    assert found is not None
    seen = view(found.entries)
    [run] = [one for key, one in seen.runs.items() if key.startswith("fault-run-")]
    assert run.items["check-gap-against-record"][0]["reading"] == {"value": 14, "unit": "mm"}
    assert "passed-on" not in run.items
    assert run.complete[0]["words"] == "The fault is gone."
    assert as_rows(tally([seen])) == [
        {"fault": "shows-open-when-shut", "cause": "leaf-not-home", "device": "recessed-contact", "found": 1,
         "mended_in_vain": 0},
    ]  # fmt: skip


def test_text_from_the_store_is_never_markup(phone: BrowserContext, base: str) -> None:
    page = new_page(phone, base + FAULT)
    bad: list[dict[str, Any]] = [{"do": "check", "id": "<img src=x onerror=alert(1)>", "result": "x"}]
    page.evaluate(
        """([key, value]) => new Promise(done => {
          const request = indexedDB.open('latchside');
          request.onsuccess = () => {
            const change = request.result.transaction('meta', 'readwrite');
            change.objectStore('meta').put({ key, value });
            change.oncomplete = () => (request.result.close(), done());
          };
        })""",
        ["fault-run shows-open-when-shut", json.loads(json.dumps({"device": "recessed-contact", "events": bad}))],
    )
    page.reload()
    page.wait_for_selector("html[data-ls-ready=fault]")
    assert heading(page) == "Check 1"
    assert page.locator(".ls-find img").count() == 0
