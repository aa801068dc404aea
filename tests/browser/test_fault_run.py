"""The guided run of a fault: the same plan as in Python, down to a remedy or somebody named, and into the record."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from latchside.library import Library, Record
from latchside.pages.fault_data import problem_data
from latchside.pages.fault_influence import every_node
from latchside.pages.fault_plan import plan_of

from ..long import tries
from ..paper import sheets
from ..unit.random_faults import random_cases
from .contexts import Contexts
from .field import PHONE, new_page

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
  // Every answer at every point, remedies proved and in vain, one thing left out once: how many ends, and which.
  const { standing } = await import(script);
  const ends = {};
  let points = 0;
  const walk = (events) => {
    const at = standing(problem, events);
    if (at.events !== events.length) throw new Error('an event was not played');
    if (at.kind === 'end') return void (ends[at.why] = (ends[at.why] ?? 0) + 1);
    if ((points += 1) > 20000) throw new Error('no end');
    const all = events.every(one => !['cannot', 'skip'].includes(one.do));
    if (at.kind === 'mend') {
      const waits = problem.causes.find(one => one.id === at.id).after;
      const soon = problem.causes.some((one, index) => waits >> index & 1 && at.left.includes(one.id));
      if (soon) throw new Error('mended too soon');
      for (const gone of [true, false]) walk([...events, { do: 'mend', id: at.id, gone }]);
      if (all) walk([...events, { do: 'skip', id: at.id }]);
    } else {
      const check = problem.checks.find(one => one.id === at.id);
      for (const result of check.results) walk([...events, { do: 'check', id: at.id, result: result.id }]);
      if (all) walk([...events, { do: 'cannot', id: at.id }]);
    }
  };
  walk([]);
  return ends;
}"""


@pytest.fixture
def phone(browser: Browser, contexts: Contexts) -> Iterator[BrowserContext]:
    with contexts.lent(browser, viewport=PHONE, service_workers="block") as lent:
        yield lent


@pytest.fixture
def page(phone: BrowserContext, base: str) -> Page:
    made = new_page(phone, base + FAULT)
    begin(made)
    return made


def begin(page: Page) -> None:
    page.get_by_role("button", name="Find it step by step").click()


def reading(page: Page, figure: str) -> None:
    page.get_by_label("Reading", exact=True).fill(figure)


def answer(page: Page, words: str) -> None:
    page.locator(".ls-find .ls-answer", has_text=words).first.click()


def test_problems_by_chance_have_the_plan_that_python_makes(page: Page, base: str) -> None:
    cases = random_cases(tries(100, 1000))
    script = f"{base}assets/js/fault/plan.js"
    found = page.evaluate(PLANNED, [script, [case["problem"] for case in cases]])
    assert len(found) == len(cases)
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
            [made] = page.evaluate(PLANNED, [f"{base}assets/js/fault/plan.js", [data]])
            assert made["minutes"] == pytest.approx(plan.expected, abs=1e-9), (fault.id, device)
            assert plan.tree is not None
            names = [one.id for one in plan.problem.checks] + [one.id for one in plan.problem.causes]
            assert names[made["action"]] == plan.tree.id, (fault.id, device)
        ends = page.evaluate(
            WALK, [f"{base}assets/js/fault/steps.js", problem_data(plan_of(shipped_library, fault).problem)]
        )
        assert ends["gone"], fault.id


def test_a_run_ends_in_a_remedy_and_goes_on_where_the_proof_fails(page: Page) -> None:
    answer(page, "Recessed contact")
    expect(page.locator(".ls-find .ls-do")).to_have_text(
        "Measure the gap with the door or window closed and latched, against the gap written at hand-over."
    )
    expect(page.locator(".ls-find .ls-expect")).to_contain_text("Typical: 3 to 10")  # of this device alone
    expect(page.locator(".ls-find .ls-expect")).not_to_contain_text("Surface contact")
    reading(page, "5")
    answer(page, "The gap is within the fit gap.")
    answer(page, "The loop reads as with the door or window open")
    expect(page.locator(".ls-find .ls-caution").first).to_be_visible()
    answer(page, "closes with the test magnet at its mark")
    expect(page.locator(".ls-find h3")).to_have_text("Fix 4")
    expect(page.locator(".ls-find-step > .ls-restore").first).to_contain_text("Reconnect the lead and refit the cover")
    expect(page.locator(".ls-find-step > .ls-restore").last).to_contain_text("Reconnect both conductors")
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
    expect(page.locator(".ls-find h3")).to_have_text("Check 1")  # the answers are those of a step that stands
    heights = page.locator(".ls-find .ls-answer").evaluate_all("all => all.map(e => e.getBoundingClientRect().height)")
    assert len(heights) > 1
    assert min(heights) >= 56
    answer(page, "Both halves sit firm")
    expect(page.locator(".ls-find h3")).to_have_text("Check 2")
    expect(page.locator(".ls-find .ls-so-far")).to_contain_text("So far: 1 step")
    second = page.locator(".ls-find-step").inner_text()
    page.wait_for_selector("[data-kept='1']")
    page.reload()
    page.wait_for_selector("html[data-ls-ready=fault]")
    expect(page.locator(".ls-find h3")).to_have_text("Check 2")
    assert page.locator(".ls-find-step").inner_text() == second
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]


def test_what_cannot_be_done_is_planned_around_and_told(page: Page) -> None:
    answer(page, "Recessed contact")
    expect(page.locator(".ls-find h3")).to_have_text("Check 1")
    first = page.locator(".ls-find .ls-do").inner_text()
    page.get_by_role("button", name="Can't do this one").click()
    expect(page.locator(".ls-find .ls-do")).not_to_have_text(first)
    page.get_by_role("button", name="Something else").click()
    expect(page.locator(".ls-find h3")).to_have_text("Pass it on")
    expect(page.locator(".ls-find-step")).to_contain_text("Not checked")
    expect(page.locator(".ls-find-step")).to_contain_text(first)
    expect(page.locator(".ls-find-step")).to_contain_text("Still possible")


def test_a_remedy_that_cannot_be_done_is_planned_around(page: Page) -> None:
    answer(page, "Recessed contact")
    reading(page, "5")
    answer(page, "The gap is within the fit gap.")
    answer(page, "The loop reads as with the door or window open")
    expect(page.locator(".ls-find h3")).to_have_text("Check 3")
    page.get_by_role("button", name="Can't do this one").click()
    expect(page.locator(".ls-find h3")).to_have_text("Check 4")
    answer(page, "The zone stays open.")
    expect(page.locator(".ls-find h3")).to_have_text("Fix 5")
    expect(page.locator(".ls-find .ls-do")).to_contain_text("A lead or conductor is off")
    page.get_by_role("button", name="Can't do this one").click()
    expect(page.locator(".ls-find h3")).to_have_text("Fix 6")
    expect(page.locator(".ls-find .ls-do")).to_have_text("The reed is broken inside the sensor")
    answer(page, "Still there")
    expect(page.locator(".ls-find .ls-do")).to_have_text("Contact, leads or set-up are of the other kind")
    answer(page, "Still there")
    expect(page.locator(".ls-find h3")).to_have_text("Pass it on")
    expect(page.locator(".ls-find-step")).to_contain_text("What is left could not be fixed here.")
    expect(page.locator(".ls-find-step")).to_contain_text("(could not be fixed here)")
    expect(page.locator(".ls-find-step")).to_contain_text("The reed is broken inside the sensor")


def test_an_answer_is_stored_before_the_next_step_shows(page: Page) -> None:
    answer(page, "Surface contact")
    expect(page.locator(".ls-find h3")).to_have_text("Check 1")
    first = page.locator(".ls-find .ls-do").inner_text()
    kept = page.evaluate(
        """() => new Promise((done) => {
          // When the next step shows, the store is read at once.
          const step = document.querySelector('.ls-find-step');
          new MutationObserver((_, seen) => {
            seen.disconnect();
            const request = indexedDB.open('latchside');
            request.onsuccess = () => {
              const meta = request.result.transaction('meta').objectStore('meta');
              const found = meta.get('fault-run shows-open-when-shut');
              found.onsuccess = () => (request.result.close(), done(found.result.value.events.length));
            };
          }).observe(step, { childList: true, characterData: true, subtree: true });
          const tap = step.querySelector('.ls-answer');
          tap.click();
          tap.click();  // a second tap before it shows is not an answer to the next step
        })"""
    )
    assert kept == 1
    expect(page.locator(".ls-find .ls-do")).not_to_have_text(first)
    expect(page.locator("[data-fault-run]")).to_have_attribute("data-kept", "1")


def test_what_the_store_refuses_is_said_and_the_run_goes_on(page: Page) -> None:
    answer(page, "Recessed contact")
    page.wait_for_selector("[data-kept='0']")
    refused = "IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); }"
    page.evaluate(f"() => {{ {refused} }}")
    reading(page, "5")
    answer(page, "The gap is within the fit gap.")
    expect(page.locator(".ls-find-step [role=alert]")).to_contain_text("Not stored")
    expect(page.locator(".ls-find h3")).to_have_text("Check 2")


def test_the_keyboard_leads_through_a_run(page: Page) -> None:
    answer(page, "Recessed contact")
    page.wait_for_selector("[data-kept='0']")
    reading(page, "5")
    for number in ("2", "3"):
        for _ in range(30):
            page.keyboard.press("Tab")
            if page.evaluate("document.activeElement.matches('.ls-answer')"):
                break
        box = page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
        assert box != "none"
        page.keyboard.press("Shift+Tab")
        page.keyboard.press("Tab")
        for _ in range(2):  # the last answer: the gap is within, the loop reads another value
            page.keyboard.press("Tab")
            if not page.evaluate("document.activeElement.matches('.ls-answer')"):
                page.keyboard.press("Shift+Tab")
        page.keyboard.press("Enter")
        expect(page.locator(".ls-find h3")).to_contain_text(number)
        expect(page.locator(".ls-find h3")).to_be_focused()


def test_a_fault_prints_on_two_sides_and_its_longest_plan_on_demand(
    visit: Callable[..., Page], shipped_library: Library
) -> None:
    """Opened, the plan as text is on one side, its picture on one side, on both papers."""

    def points(fault: Record) -> int:
        return sum(node.do != "end" for node in every_node(plan_of(shipped_library, fault).tree))

    by_length = sorted(shipped_library.of("fault"), key=points)
    for fault in by_length[-tries(1, 3) :]:
        page = visit(fault.address, (1280, 800))
        for paper in ("A4", "Letter"):
            short = [" ".join(side.split()) for side in sheets(page.pdf(format=paper))]
            assert len(short) <= 2, (fault.id, paper)
            for words in ("Do this first", "Likeliest causes", "All checks", "Stop, and pass it"):
                assert words in " ".join(short), (fault.id, paper)
        page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        for paper in ("A4", "Letter"):
            sides = [" ".join(side.split()) for side in sheets(page.pdf(format=paper))]
            text = [n for n, side in enumerate(sides) if "The order that takes the least time" in side]
            end = [n for n, side in enumerate(sides) if "What to say, how to leave it" in side and n]
            picture = [n for n, side in enumerate(sides) if "A box with corners is a check" in side]
            assert text == end, (fault.id, paper)
            assert picture in ([text[0]], [text[0] + 1]), (fault.id, paper)


def test_a_link_into_a_folded_chapter_opens_it(phone: BrowserContext, base: str) -> None:
    page = new_page(phone, f"{base}{FAULT}#check-loop-at-its-end")
    expect(page.locator("#check-loop-at-its-end .ls-do")).to_be_in_viewport()
    page.locator(".ls-likely a").first.click()
    expect(page.locator("#cause-half-off")).to_be_in_viewport()
    page.locator("#remedies").click()  # folded again, and opened by the same link
    expect(page.locator("#cause-half-off")).not_to_be_visible()
    page.locator(".ls-likely a").first.click()
    expect(page.locator("#cause-half-off")).to_be_in_viewport()


def test_an_answer_that_the_reading_denies_is_asked_about_and_a_step_can_be_changed(page: Page) -> None:
    answer(page, "Recessed contact")
    answer(page, "The gap is within the fit gap.")
    expect(page.locator(".ls-find [role=alert]")).to_contain_text("No reading is typed")
    answer(page, "Type the reading")
    expect(page.get_by_label("Reading", exact=True)).to_be_focused()
    reading(page, "15")
    answer(page, "The gap is within the fit gap.")
    expect(page.locator(".ls-find [role=alert]")).to_have_text("You typed 15\u00a0mm; expected 3–10. Which is right?")
    answer(page, "The reading")
    expect(page.locator(".ls-answer", has_text="The gap is within the fit gap.")).to_have_count(0)
    reading(page, "5")
    answer(page, "The gap is within the fit gap.")
    page.get_by_role("button", name="Meter shows over range").click()
    answer(page, "The loop reads as with the door or window open")
    expect(page.locator(".ls-find h3")).to_have_text("Check 3")
    page.get_by_role("button", name="Back", exact=True).click()
    expect(page.locator(".ls-verdict")).to_contain_text("over range")  # Back keeps the reading
    answer(page, "The loop reads as with the door or window open")
    expect(page.locator(".ls-find h3")).to_have_text("Check 3")
    page.locator(".ls-so-far summary").click()
    page.get_by_role("button", name="Change step 1").click()
    expect(page.get_by_label("Reading", exact=True)).to_have_value("5")
    answer(page, "The gap is wider than the one written at hand-over.")
    expect(page.locator(".ls-so-far li")).to_have_count(2)  # the loop still reads what it read


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
    begin(page)
    expect(page.locator(".ls-find h3")).to_have_text("Check 1")
    assert page.locator(".ls-find img").count() == 0
