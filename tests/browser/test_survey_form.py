"""The form of a survey in the hand: filled, kept, copied, left open, taken along as a file and brought back."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from jsonschema import ValidationError
from playwright.sync_api import Browser, BrowserContext, Locator, Page, ViewportSize, expect

from latchside.figures.lengths import LengthError, read_length
from latchside.kinds import KINDS
from latchside.root import ROOT
from latchside.schemas import load_schemas
from latchside.surveys.read import read_survey
from latchside.surveys.survey import Survey

from ..paper import sheets
from .contexts import Contexts
from .field import axe_finds, comes_to, new_page, ready, until

PHONE = (390, 844)
SCHEMAS = load_schemas(ROOT / "schema")
FITS = SCHEMAS.exact(KINDS["job"])

OPENING = {"id": "kitchen-casement", "place": "Kitchen", "kind": "casement"}
FULL: dict[str, Any] = {
    "id": "elm-house",
    "name": "Elm House",
    "surveyed": "2026-11-25",
    "units": "imperial",
    "site": {"region": "canada", "year_built": "unknown", "occupied": "yes"},
    "control_unit": {"frequency": 433.92, "zones_in_use": ["Front door", "Hall"], "layout": "series"},
    "rules": {"cable_spare": "2 m", "technicians": 2},
    "openings": [
        {
            **OPENING,
            "side": "rear",
            "play": "2 in",
            "gap": "3/16 in",
            "step": "-2.5 mm",
            "height": "12 ft 6 in",
            "walls": [{"material": "brick", "thickness": "4 1/2 in"}, {"material": "wood"}],
            "floors": 1,
            "device": {"class": "surface-contact", "reason": "Asked for by the people on site"},
        },
        {"id": "hall-door", "place": "Hall", "kind": "double-door", "passive_leaf": "unknown", "walls": []},
    ],
}


def changed(*way: str | int, to: Any) -> dict[str, Any]:
    """The full survey with one thing changed; ... takes it out."""
    made: Any = json.loads(json.dumps(FULL))
    inner = made
    for part in way[:-1]:
        inner = inner[part]
    if to is ...:
        del inner[way[-1]]
    else:
        inner[way[-1]] = to
    return dict(made)


NO_ROOM = """() => { window.real = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); }; }"""
"""The storage is full from here on; after `ROOM` it takes things again."""
ROOM = "() => { IDBObjectStore.prototype.put = window.real; }"


@pytest.fixture
def context(browser: Browser, contexts: Contexts) -> Iterator[BrowserContext]:
    size = {"width": PHONE[0], "height": PHONE[1]}
    with contexts.lent(browser, viewport=size, service_workers="block", has_touch=True, is_mobile=True) as lent:
        yield lent


@pytest.fixture
def page(context: BrowserContext, base: str) -> Page:
    return new_page(context, f"{base}survey/")


def start_survey(page: Page, name: str = "Elm House") -> None:
    page.locator(".ls-new").get_by_label("Name of the site").fill(name)
    page.get_by_role("button", name="Start this survey").tap()
    expect(page.get_by_role("heading", name=name)).to_be_visible()


def question(page: Page, way: str) -> Locator:
    return page.locator(f"[data-way='{way}']")


def pick(page: Page, way: str, words: str) -> None:
    """Tap an answer and wait until it shows as kept."""
    button = question(page, way).get_by_role("button", name=words, exact=True)
    button.tap()
    expect(button).to_have_attribute("aria-pressed", "true")


def type_in(page: Page, way: str, text: str) -> None:
    box = question(page, way).locator("input, textarea")
    box.tap()
    page.keyboard.press("Control+A")
    page.keyboard.type(text)
    page.keyboard.press("Tab")


def add_opening(page: Page, place: str, kind: str) -> None:
    before = page.url
    page.get_by_role("button", name="Add an opening").tap()
    expect(page).not_to_have_url(before)
    expect(question(page, "place").locator("input")).to_be_focused()
    page.keyboard.type(place)
    question(page, "kind").locator("select").select_option(kind)
    expect(page.locator(".ls-survey h2")).to_contain_text(place)


def open_opening(page: Page, number: int) -> None:
    """Tap an opening of the walk; the bar at the foot of the screen has to be off it."""
    link = page.locator(".ls-walk a").nth(number)
    link.evaluate("e => e.scrollIntoView({block: 'center'})")
    link.tap()
    expect(page.locator(".ls-survey h2")).to_contain_text(f"{number + 1}.")


def kept(page: Page) -> None:
    expect(page.locator(".ls-bar .ls-where")).to_contain_text("Saved on this device")


def all_openings(page: Page) -> None:
    page.get_by_role("button", name="All openings").first.tap()  # another stands at the foot
    expect(page.get_by_role("heading", name="Take it with you")).to_be_visible()


def saved_file(page: Page) -> dict[str, Any]:
    """Save the survey that is open as a file, which has to fit the schema."""
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").tap()
    text = Path(download.value.path()).read_text("utf-8")
    data: dict[str, Any] = json.loads(text)
    assert download.value.suggested_filename == f"{data['id']}.json"
    assert not list(FITS.iter_errors(data))
    return data


def bring_in(page: Page, content: str | bytes, name: str = "survey.json") -> None:
    raw = content.encode("utf-8", "surrogatepass") if isinstance(content, str) else content
    page.get_by_label("Bring in a saved survey").set_input_files(
        {"name": name, "mimeType": "application/json", "buffer": raw}
    )


def test_a_survey_of_two_openings_by_touch_and_keys(page: Page, tmp_path: Path) -> None:
    start_survey(page)
    page.locator("summary", has_text="Site").tap()
    pick(page, "site.monitored", "no")
    type_in(page, "site.year_built", "1934")
    add_opening(page, "Kitchen", "casement")
    pick(page, "fire_rated", "not known")
    pick(page, "leaf_material", "plastic")
    type_in(page, "gap", "4,5")
    question(page, "play").get_by_role("button", name="in", exact=True).tap()
    type_in(page, "play", "3/16")
    question(page, "step").get_by_role("button", name="Minus").tap()
    page.keyboard.type("2")
    page.keyboard.press("Tab")
    question(page, "walls").get_by_role("button", name="Add one").tap()
    question(page, "walls.0.material").locator("select").select_option("brick")
    type_in(page, "walls.0.thickness", "110")
    type_in(page, "floors", "1")
    kept(page)
    add_opening(page, "Shop", "roller-door")
    question(page, "walls").get_by_role("button", name="None").tap()
    kept(page)
    page.reload()
    ready(page)
    expect(question(page, "place").locator("input")).to_have_value("Shop")
    expect(question(page, "walls").get_by_role("button", name="None")).to_have_attribute("aria-pressed", "true")
    all_openings(page)
    expect(page.locator(".ls-walk strong")).to_have_text(["1. Kitchen: casement window", "2. Shop: roller door"])
    data = saved_file(page)
    assert data["site"] == {"year_built": 1934, "monitored": "no"}
    assert data["openings"] == [
        {
            "id": "kitchen-casement",
            "place": "Kitchen",
            "kind": "casement",
            "fire_rated": "unknown",
            "play": "3/16 in",
            "leaf_material": "plastic",
            "gap": "4.5 mm",
            "step": "-2 mm",
            "walls": [{"material": "brick", "thickness": "110 mm"}],
            "floors": 1,
        },
        {"id": "shop-roller-door", "place": "Shop", "kind": "roller-door", "walls": []},
    ]
    read = read_as_a_survey(tmp_path, data)
    assert [one.gap_mm for one in read.openings] == [4.5, None]
    assert read.openings[0].play_mm == pytest.approx(4.7625)
    assert read.openings[0].step_mm == -2
    assert read.openings[0].walls is not None
    assert read.openings[0].walls[0].thickness_mm == 110
    assert read.openings[1].walls == ()
    page.get_by_role("button", name="It is there").tap()
    expect(page.get_by_text("All of it is in a file that you saved.")).to_be_visible()


def read_as_a_survey(folder: Path, data: dict[str, Any]) -> Survey:
    """What the command reads from a file."""
    path = folder / f"{data['id']}.json"
    path.write_text(json.dumps(data), "utf-8")
    survey, findings = read_survey(path, SCHEMAS)
    assert not findings
    assert survey is not None
    return survey


def test_hardware_is_pressed_word_by_word_and_none_is_an_answer(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Hall", "hinged-door")
    pick(page, "hardware", "door closer")
    pick(page, "hardware", "panic bar")
    expect(question(page, "hardware").locator(".ls-warn")).to_have_count(0)
    all_openings(page)
    assert saved_file(page)["openings"][0]["hardware"] == ["panic-bar", "closer"]
    open_opening(page, 0)
    pick(page, "hardware", "None")
    all_openings(page)
    assert saved_file(page)["openings"][0]["hardware"] == []


def test_what_does_not_read_is_said_at_the_field_and_not_lost(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    for typed, words in (
        ("abt 4", "That is no length. Type it as 4.5 or 4,5, or inches as 3/16"),
        ("1,200", "can be read two ways"),
        ("2 m", "More than 1000 mm. Look at the figure, and at its unit."),
        ("-3", "A length is not less than nothing"),
    ):
        type_in(page, "gap", typed)
        expect(question(page, "gap").locator(".ls-q-said")).to_contain_text(words)
    type_in(page, "floors", "1.5")
    expect(question(page, "floors")).to_contain_text("Type a whole number.")
    type_in(page, "floors", "11")
    expect(question(page, "floors")).to_contain_text("Out of range. Type a number of at least 0, at most 10.")
    expect(question(page, "floors").locator("input")).to_have_attribute("aria-invalid", "true")
    kept(page)
    page.reload()
    ready(page)
    expect(question(page, "gap").locator("input")).to_have_value("-3")
    expect(question(page, "gap")).to_contain_text("A length is not less than nothing")
    all_openings(page)
    expect(page.locator(".ls-file")).to_contain_text("2 answers do not read and would stay out of the file")
    assert set(saved_file(page)["openings"][0]) == {"id", "place", "kind"}


def test_a_code_is_not_kept_before_somebody_says_that_it_is_none(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    page.locator("summary", has_text="More to tell").tap()
    type_in(page, "notes", "Key safe 4711 by the gate")
    expect(question(page, "notes")).to_contain_text("looks as if it held a code")
    page.reload()
    ready(page)
    assert "4711" not in page.evaluate("document.body.innerText")
    page.locator("summary", has_text="More to tell").tap()
    expect(question(page, "notes").locator("textarea")).to_have_value("")
    type_in(page, "notes", "Drawing code 4711")
    question(page, "notes").get_by_role("button", name="It is no code: keep it").tap()
    kept(page)
    page.reload()
    ready(page)
    expect(question(page, "notes").locator("textarea")).to_have_value("Drawing code 4711")
    expect(question(page, "notes")).not_to_contain_text("looks as if it held a code")
    all_openings(page)
    assert saved_file(page)["openings"][0]["no_codes"] == ["notes"]


def test_the_file_keeps_that_a_text_is_no_code_until_it_changes(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Room 1204", "casement")
    page.locator("summary", has_text="More to tell").tap()
    type_in(page, "notes", "Hinge pin worn, combination window")
    kept(page)
    all_openings(page)
    assert "no_codes" not in saved_file(page)["openings"][0], "nothing is asked of these"
    told = changed("openings", 0, "notes", to="code 4711")
    told["openings"][0]["no_codes"] = ["notes"]
    page.get_by_role("button", name="All surveys").tap()
    bring_in(page, json.dumps(told))
    expect(page.locator(".ls-import")).to_contain_text("2 openings")
    expect(page.locator(".ls-import")).not_to_contain_text("It looks as if a code stood in")
    page.get_by_role("button", name="Bring it in").tap()
    expect(page.get_by_role("heading", name="Take it with you")).to_be_visible()
    assert saved_file(page)["openings"][0]["no_codes"] == ["notes"]
    open_opening(page, 0)
    type_in(page, "notes", "Nothing more")
    kept(page)
    all_openings(page)
    assert "no_codes" not in saved_file(page)["openings"][0]


def test_many_openings_of_one_name_get_their_ids_in_one_go(page: Page, base: str) -> None:
    """Counted: how often the page looks whether an id is taken, for 200 and for 800 openings of one name."""
    looked = page.evaluate(
        """async (script) => {
          const { ids } = await import(script);
          const has = Set.prototype.has;
          return [200, 800].map((size) => {
            let count = 0;
            Set.prototype.has = function (one) { count += 1; return has.call(this, one); };
            const data = { place: 'Hall', kind: 'gate' };
            const openings = Array.from({ length: size }, (_, n) => ({ key: String(n), data }));
            const made = ids({ survey: { named: {} }, openings });
            Set.prototype.has = has;
            return [count, new Set(made.values()).size, made.get('0'), made.get('1')];
          });
        }""",
        f"{base}assets/js/survey/naming.js",
    )
    (few, _, *_), (many, different, first, second) = looked
    assert (different, first, second) == (800, "hall-gate", "hall-gate-2")
    assert many < 5 * few


def test_openings_are_copied_moved_taken_away_and_put_back(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    pick(page, "leaf_material", "wood")
    page.get_by_role("button", name="Copy this opening").tap()
    expect(page.locator(".ls-survey h2")).to_have_text("2. Kitchen: casement window")
    expect(question(page, "leaf_material").get_by_role("button", name="wood")).to_have_attribute("aria-pressed", "true")
    all_openings(page)
    names = page.locator(".ls-walk strong")
    expect(page.locator(".ls-walk")).to_contain_text("place, side and kind as another")
    open_opening(page, 1)
    type_in(page, "place", "Bath")
    all_openings(page)
    expect(names).to_have_text(["1. Kitchen: casement window", "2. Bath: casement window"])
    page.get_by_role("button", name="More for 2.").tap()
    page.get_by_role("button", name="Move up").tap()
    expect(names).to_have_text(["1. Bath: casement window", "2. Kitchen: casement window"])
    page.get_by_role("button", name="Remove", exact=True).tap()
    expect(names).to_have_text(["1. Kitchen: casement window"])
    page.reload()
    ready(page)
    expect(page.locator(".ls-gone")).to_contain_text("Bath: casement window was removed.")
    page.get_by_role("button", name="Put it back").tap()
    expect(names).to_have_text(["1. Bath: casement window", "2. Kitchen: casement window"])
    assert [one["id"] for one in saved_file(page)["openings"]] == ["bath-casement", "kitchen-casement"]


def test_the_next_open_question_is_found_to_the_last(page: Page) -> None:
    bring_in(page, json.dumps(FULL))
    page.get_by_role("button", name="Bring it in").tap()
    expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
    forward = page.locator(".ls-bar .ls-main")
    expect(forward).to_have_text(re.compile(r"Next open question \(\d+\)"))
    forward.tap()
    expect(page.locator("[data-way^='site.'] :focus")).to_have_count(1)
    open_opening(page, 1)
    expect(page.locator(".ls-survey h2")).to_contain_text("Hall")
    forward.tap()
    expect(question(page, "side").locator("input")).to_be_focused()
    expect(page.locator(":focus")).to_be_in_viewport()
    forward.tap()
    expect(question(page, "upper_sash")).to_be_hidden()
    expect(question(page, "fire_rated").get_by_role("button").first).to_be_focused()


def test_surveys_stand_side_by_side_and_are_deleted_after_a_question(page: Page) -> None:
    start_survey(page)
    page.get_by_role("button", name="All surveys").tap()
    start_survey(page, "Oak House")
    page.get_by_role("button", name="All surveys").tap()
    expect(page.locator("[data-ls-survey] .ls-rows strong")).to_have_count(2)
    page.get_by_role("link", name="Oak House").tap()
    page.get_by_role("button", name="Delete this survey").tap()
    expect(page.get_by_text("What was changed last is in no file yet.")).to_be_visible()
    page.get_by_role("button", name="Delete it", exact=True).tap()
    expect(page.locator("[data-ls-survey] .ls-rows strong")).to_have_text(["Elm House"])


def test_what_is_brought_in_leaves_as_it_came(page: Page) -> None:
    bring_in(page, json.dumps(FULL))
    page.get_by_role("button", name="Bring it in").tap()
    expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
    assert saved_file(page) == FULL


def test_a_bare_number_is_given_the_unit_that_it_had(page: Page) -> None:
    for units, gap, distance in (("imperial", "2 in", "40 ft"), ("metric", "2 mm", "40 m")):
        page.goto(page.url.partition("#")[0])
        ready(page)
        made = changed("units", to=units)
        made["openings"][0] |= {"gap": 2, "distance": "40"}
        bring_in(page, json.dumps(made))
        page.get_by_role("button", name="Bring it in").tap()
        expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
        saved = saved_file(page)["openings"][0]
        assert (saved["gap"], saved["distance"]) == (gap, distance)


HOSTILE: dict[str, tuple[str | bytes, str]] = {
    "empty": ("", "cannot be read as JSON"),
    "cut-short": (json.dumps(FULL)[:-30], "cannot be read as JSON"),
    "markup": ("<img src=x onerror=window.ran=1>", "cannot be read as JSON"),
    "binary": (bytes(range(256)), "cannot be read as JSON"),
    "null": ("null", "no list of openings"),
    "a-list": ("[]", "no list of openings"),
    "openings-no-list": (json.dumps(changed("openings", to={"0": {}})), "no list of openings"),
    "too-many": (json.dumps(changed("openings", to=[OPENING] * 2001)), "may have 0 to 2,000"),
    "no-name": (json.dumps(changed("name", to=...)), "Name of the site is missing"),
    "wrong-word": (json.dumps(changed("openings", 0, "kind", to="portcullis")), "is none of: hinged-door"),
    "markup-as-word": (json.dumps(changed("site", "region", to="<b>")), "Site, Region is none of"),
    "number-as-text": (json.dumps(changed("openings", 0, "floors", to="1")), "Floors is no number"),
    "truth-as-number": (json.dumps(changed("openings", 0, "floors", to=True)), "Floors is no number"),
    "endless": (json.dumps(FULL).replace("433.92", "1e999"), "Radio frequency is no number"),
    "below-nothing": (json.dumps(changed("openings", 0, "play", to=-1)), "is no length"),
    "too-long": (json.dumps(changed("openings", 0, "place", to="x" * 61)), "has 61 letters"),
    "id-of-a-path": (json.dumps(changed("id", to="../../etc")), "is not written as it has to be"),
    "id-with-a-break": (json.dumps(changed("id", to="elm\n")), "is not written as it has to be"),
    "group-a-list": (json.dumps(changed("site", to=[])), "Site is no group"),
    "not-invented": (json.dumps(changed("invented", to="yes")), "Invented"),
}


def test_damaged_and_hostile_files_are_refused_in_words(page: Page) -> None:
    for name, (content, words) in HOSTILE.items():
        bring_in(page, content, f"{name}.json")
        said = page.locator(".ls-import .ls-said")
        expect(said).to_contain_text(f"{name}.json: ")
        expect(said, name).to_contain_text(words)
        expect(said, name).to_contain_text("Nothing was changed.")
    expect(page.get_by_text("No survey is on this device.")).to_be_visible()
    assert page.evaluate("window.ran") is None


def test_unknown_fields_are_left_out_with_a_word_and_text_stays_text(page: Page) -> None:
    bad = '"><img src=x onerror="window.ran=1">'
    odd = changed("openings", 0, "place", to=f"A{bad}")
    odd["openings"][0]["notes"] = f"{bad} code 4711"
    odd["openings"][1]["id"] = odd["openings"][0]["id"]
    odd["openings"][1][bad] = 1
    text = json.dumps({**odd, "name": f"B{bad}", "extra": [1]})[:-1] + ', "__proto__": {"polluted": 1}}'
    bring_in(page, text)
    said = page.locator(".ls-import .ls-said")
    for words in ("extra", "__proto__", "a second id kitchen-casement", "a code stood in: Notes", f"Openings 2, {bad}"):
        expect(said).to_contain_text(words)
    page.get_by_role("button", name="Bring it in").tap()
    expect(page.get_by_role("heading", name=f"B{bad}")).to_be_visible()
    expect(page.locator(".ls-walk")).to_contain_text(f"A{bad}")
    page.evaluate("() => { window.print = () => { window.printed = document.querySelector('.ls-sheet').innerHTML; }; }")
    page.get_by_role("button", name="Print the survey").tap()
    page.wait_for_function("window.printed")
    open_opening(page, 0)
    expect(question(page, "place").locator("input")).to_have_value(f"A{bad}")
    assert page.evaluate("window.ran") is None
    assert page.evaluate("({}).polluted") is None
    assert page.locator("img[src=x]").count() == 0
    all_openings(page)
    assert "extra" not in saved_file(page)


MUTANTS: list[Any] = [
    None,
    True,
    0,
    -1,
    1.5,
    3.0,
    1e6,
    "",
    "x",
    "yes",
    "unknown",
    "4 mm",
    "y" * 300,
    [],
    ["a", "a"],
    {},
]


def every_way(value: Any, way: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    if way:
        yield way
    for key, below in value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ():
        yield from every_way(below, (*way, key))


CHECK = """async ([folder, surveys]) => {
  const [{ lookAt }, { take }] = await Promise.all([import(`${folder}file.js`), import(`${folder}check.js`)]);
  const { fields } = JSON.parse(document.getElementById('survey-form').textContent);
  const whole = { name: "", label: "", help: "", ask: "group", fields };
  const sound = (text) => {
    try {
      return Boolean(take(whole, JSON.parse(text), "", []));
    } catch {
      return false;
    }
  };
  return surveys.map((text) => [!('fault' in lookAt(fields, text)), sound(text)]);
}"""


def test_the_page_and_the_schema_judge_alike(page: Page, base: str) -> None:
    """On one thing alone the page is stricter: a device class has to be one of this library.

    A file whose openings only lack something is brought in all the same, so that it can be carried on.
    """
    ways = [way for way in every_way(FULL) if way[-1] != "class"]
    made = [(way, to, changed(*way, to=to)) for way in ways for to in (*MUTANTS, ...)]
    judged = page.evaluate(CHECK, [f"{base}assets/js/survey/", [json.dumps(one) for _, _, one in made]])
    faults = [list(FITS.iter_errors(one)) for _, _, one in made]
    right = [[all(_lacks(fault) for fault in found), not found] for found in faults]
    assert len(made) > 500
    assert [True, False] in judged
    assert not [
        (way, to, answer) for (way, to, _), answer, ours in zip(made, judged, right, strict=True) if answer != ours
    ]


def _lacks(fault: ValidationError) -> bool:
    """Whether something at the openings is missing, and nothing wrong."""
    return fault.validator in {"required", "minItems"} and list(fault.absolute_path)[:1] == ["openings"]


def test_a_survey_that_lacks_something_leaves_and_comes_back(page: Page, base: str) -> None:
    start_survey(page)
    page.get_by_role("button", name="Add an opening").tap()
    expect(question(page, "place").locator("input")).to_be_focused()
    page.keyboard.type("Kitchen")
    page.keyboard.press("Tab")
    type_in(page, "gap", "5")
    question(page, "walls").get_by_role("button", name="Add one").tap()
    kept(page)
    all_openings(page)
    expect(page.locator(".ls-file")).to_contain_text("It can be planned once this is put right")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").tap()
    text = Path(download.value.path()).read_text("utf-8")
    (saved,) = json.loads(text)["openings"]
    assert (saved["place"], saved["gap"], saved["walls"]) == ("Kitchen", "5 mm", [{}])
    assert "kind" not in saved
    page.goto(f"{base}survey/")
    ready(page)
    bring_in(page, text)
    page.get_by_role("button", name="Bring it in").tap()
    expect(page.locator(".ls-walk")).to_contain_text("Kitchen")
    open_opening(page, 0)
    expect(question(page, "gap").locator("input")).to_have_value("5")
    question(page, "kind").locator("select").select_option("casement")
    question(page, "walls.0.material").locator("select").select_option("brick")
    kept(page)
    all_openings(page)
    expect(page.locator(".ls-file")).not_to_contain_text("put right")
    assert saved_file(page)["openings"][0]["walls"] == [{"material": "brick"}]


LENGTHS = [
    "4", "4.5", "4,5", ".5", "4.", "-2,5", "\u22122", "+3", "3/16", "1 3/16", "1-3/16", "2 5/4", "3/0", "4 mm", "4mm",
    '3/16"', "3/16 in", "1\u00bd in", "\u00be", "12 ft 6 in", "12' 6\"", "12 ft", "12.5 ft 6 in", "6 in 12 ft", "2 m 5",
    "5 cm", "2 metres", "4 5", "4 mm 5 mm", "1e3", "0x10", "NaN", "abt 4", "4 parsec", "4 mm.", "12 ft -6 in",
    "1/2 ft", "1234567 mm", "12345678 mm", "- 2", "--2", "3 1/2", "1,250", "1,250.", "5''", "12\u2032 6\u2033",
    "1 - 3/16 in", "3/16 furlong", "4 kg", "0.01 km",
    "12 mil", "40 thou", "3 yards", "", " ",
]  # fmt: skip
LENGTH = """async ([script, texts]) => {
  const { length, lengthIn } = await import(script);
  return texts.map((text) => [length(text, 'mm'), lengthIn(text, 'mm')]);
}"""


def test_a_length_is_read_alike_by_page_and_command(page: Page, base: str) -> None:
    made = page.evaluate(LENGTH, [f"{base}assets/js/core/lengths.js", LENGTHS])
    for text, (kept, size) in zip(LENGTHS, made, strict=True):
        try:
            read = read_length(text, "mm", signed=True)
        except LengthError:
            assert size is None, text
            continue
        assert size == pytest.approx(read), text
        assert read_length(kept, "mm", signed=True) == pytest.approx(read), text


def test_the_way_back_from_an_opening_leads_to_where_it_was_left(page: Page) -> None:
    start_survey(page)
    for number in range(8):
        add_opening(page, f"Room {number}", "casement")
    all_openings(page)
    open_opening(page, 6)
    page.evaluate("scrollTo(0, 2000)")
    page.go_back()
    link = page.locator(".ls-walk a").nth(6)
    expect(link).to_be_focused()
    expect(link).to_be_in_viewport()


def test_two_tabs_lose_nothing_of_each_other(page: Page, context: BrowserContext) -> None:
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    kept(page)
    other = new_page(context, page.url)
    expect(question(other, "place").locator("input")).to_have_value("Kitchen")
    pick(page, "fire_rated", "no")
    pick(other, "escape", "yes")
    type_in(other, "gap", "5")
    type_in(page, "floors", "2")
    for one in (page, other):
        for way, words in (("fire_rated", "no"), ("escape", "yes")):
            button = question(one, way).get_by_role("button", name=words, exact=True)
            expect(button).to_have_attribute("aria-pressed", "true")
        expect(question(one, "gap").locator("input")).to_have_value("5")
        expect(question(one, "floors").locator("input")).to_have_value("2")
    page.get_by_role("button", name="Remove this opening").tap()
    expect(other.get_by_text("This opening was removed.")).to_be_visible()


def test_storage_that_is_refused_is_said(context: BrowserContext, base: str) -> None:
    refused = "indexedDB.open = () => { throw new DOMException('no', 'SecurityError'); }"
    page = new_page(context, f"{base}survey/", first=refused)
    expect(page.locator("[data-ls-survey]")).to_contain_text("refuses to store anything here (SecurityError)")
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    expect(page.locator(".ls-bar .ls-where")).to_contain_text("kept only while this page is open")
    all_openings(page)
    assert saved_file(page)["openings"] == [OPENING]


def test_storage_that_is_full_is_said(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    kept(page)
    page.evaluate(NO_ROOM)
    type_in(page, "gap", "5")
    expect(page.locator(".ls-bar")).to_contain_text("the storage of this browser is full")
    expect(question(page, "gap").locator("input")).to_have_value("5")
    page.evaluate(ROOM)
    page.get_by_role("button", name="Try again").tap()
    kept(page)
    page.reload()
    ready(page)
    expect(question(page, "gap").locator("input")).to_have_value("5")


def test_a_pause_in_typing_changes_neither_text_nor_caret(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Front ", "casement")
    box = question(page, "place").locator("input")
    box.tap()
    page.keyboard.press("End")
    kept(page)
    page.keyboard.type("door ")
    page.keyboard.press("Home")
    page.keyboard.type("Old ")
    kept(page)
    assert page.evaluate("document.activeElement.selectionStart") == 4
    page.keyboard.type("oak ")
    expect(box).to_have_value(re.compile(r"^Old oak Front ?door $"))
    page.keyboard.press("Tab")
    kept(page)
    expect(page.locator(".ls-survey h2")).to_contain_text("Old oak Front")


def test_what_cannot_be_stored_stays_and_never_shows_as_kept(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    kept(page)
    page.evaluate(NO_ROOM)
    type_in(page, "gap", "5")
    question(page, "escape").get_by_role("button", name="yes", exact=True).tap()
    bar = page.locator(".ls-bar")
    expect(question(page, "gap")).to_contain_text("Not stored yet: “5”")
    expect(question(page, "escape")).to_contain_text("Not stored yet: “yes”")
    expect(question(page, "escape").locator("[aria-pressed=true]")).to_have_count(0)
    for way in ("gap", "escape"):
        expect(question(page, way).locator(".ls-q-open")).to_have_text("open")
    all_openings(page)
    expect(bar).not_to_contain_text("Saved on this device")
    expect(page.locator(".ls-file")).to_contain_text("2 answers are not stored and would stay out of the file")
    open_opening(page, 0)
    expect(question(page, "gap").locator("input")).to_have_value("5")
    page.evaluate(ROOM)
    page.get_by_role("button", name="Try again").tap()
    kept(page)
    page.reload()
    ready(page)
    expect(question(page, "gap").locator("input")).to_have_value("5")
    expect(question(page, "escape").get_by_role("button", name="yes", exact=True)).to_have_attribute(
        "aria-pressed", "true"
    )


def test_typing_redraws_no_opening(page: Page) -> None:
    """Counted: what changes in the list of 200 openings while the name of the site is typed."""
    bring_in(page, json.dumps(changed("openings", to=[{**OPENING, "id": f"window-{n}"} for n in range(200)])))
    page.get_by_role("button", name="Bring it in").tap()
    expect(page.locator(".ls-walk > li")).to_have_count(200)
    page.locator("summary", has_text="This survey").tap()
    page.evaluate(
        """() => { window.redrawn = 0;
          new MutationObserver((all) => { window.redrawn += all.length; })
            .observe(document.querySelector('.ls-walk'),
                     {subtree: true, childList: true, attributes: true, characterData: true}); }"""
    )
    type_in(page, "name", "Elm Farm")
    expect(page.locator(".ls-survey h2")).to_have_text("Elm Farm")
    kept(page)
    assert page.evaluate("window.redrawn") == 0


def test_a_link_does_nothing_but_name_a_place(context: BrowserContext, base: str) -> None:
    bad = "%22%3E%3Cimg%20src=x%20onerror=window.ran=1%3E"
    for end in (f"?name={bad}#s={bad}", f"?s={bad}#s=00000000-0000-4000-8000-000000000000&o={bad}"):
        page = new_page(context, f"{base}survey/{end}")
        expect(page.get_by_text("No survey is on this device.")).to_be_visible()
        assert page.evaluate("window.ran") is None
    page = new_page(context, f"{base}survey/#s=00000000-0000-4000-8000-000000000000")
    expect(page.get_by_text("This survey is not on this device.")).to_be_visible()


WIDE = """() => { const width = document.documentElement.clientWidth;
  return [...document.querySelectorAll('article *, .ls-bar *')]
    .filter((e) => e.getClientRects().length && e.getBoundingClientRect().right > width + 1)
    .map((e) => `${e.tagName}.${e.className} ${e.textContent.slice(0, 40)}`); }"""
LOW = """() => [...document.querySelectorAll('.ls-survey *, .ls-bar *')]
  .filter((e) => e.matches('button, input, select, textarea, summary, li > a') && e.getClientRects().length)
  .filter((e) => e.getBoundingClientRect().height < (e.matches('.ls-q *, .ls-bar *') ? 56 : 48))
  .map((e) => e.outerHTML.slice(0, 120))"""


NARROW_AND_DESK: list[ViewportSize] = [{"width": 1280, "height": 800}, {"width": 320, "height": 640}]


def test_every_view_is_clean_large_and_no_wider_than_the_screen(
    browser: Browser, contexts: Contexts, base: str
) -> None:
    with contexts.lent(browser, service_workers="block", has_touch=True) as context:
        every_view_is_so(new_page(context, f"{base}survey/"))


def every_view_is_so(page: Page) -> None:
    for view in ("list", "survey", "opening"):
        if view == "survey":
            bring_in(page, json.dumps(FULL))
            page.get_by_role("button", name="Bring it in").tap()
            expect(page.get_by_role("heading", name="Elm House")).to_be_visible()
            for summary in page.locator("details.ls-part > summary").all():
                summary.tap()
            page.get_by_role("button", name="More for 1.").tap()
        if view == "opening":
            open_opening(page, 0)
            expect(page.locator(".ls-survey h2")).to_contain_text("Kitchen")
            type_in(page, "distance", "far")
            expect(question(page, "distance")).to_contain_text("That is no length.")
        for size in NARROW_AND_DESK:
            page.set_viewport_size(size)
            comes_to(page, "innerWidth", size["width"])
            assert axe_finds(page, contrast=False) == [], (view, size)  # colours do not change with the width
            comes_to(page, WIDE, [])
            comes_to(page, LOW, [])


def test_a_number_pad_is_offered_where_it_serves(page: Page) -> None:
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    expect(question(page, "gap").locator("input")).to_have_attribute("inputmode", "decimal")
    question(page, "gap").get_by_role("button", name="in", exact=True).tap()
    expect(question(page, "gap").locator("input")).to_have_attribute("inputmode", "text")
    expect(question(page, "floors").locator("input")).to_have_attribute("inputmode", "numeric")


def test_without_scripts_there_is_a_sheet_and_the_way_of_a_file(browser: Browser, base: str, tmp_path: Path) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 320, "height": 640})
    page = context.new_page()
    page.goto(f"{base}survey/")
    expect(page.get_by_text("Without scripts the form does not work here.")).to_be_visible()
    expect(page.locator(".ls-blank")).to_contain_text("Gap when closed")
    expect(page.locator(".ls-blank tr").last).to_be_visible()
    assert page.locator("article").evaluate("e => e.scrollWidth <= e.clientWidth")
    for form in ("A4", "Letter"):
        page.pdf(path=tmp_path / f"{form}.pdf", format=form)
        text = printed(tmp_path / f"{form}.pdf")
        for words in ("Gap when closed", "mm or in", "yes, no, not known", "Opening ___", "Resistors of an input"):
            assert words in text, words
    context.close()


def printed(path: Path) -> str:
    return " ".join(" ".join(sheets(path)).split())


def test_paper_holds_the_survey_or_a_blank_sheet(page: Page, tmp_path: Path) -> None:
    page.pdf(path=tmp_path / "blank.pdf")
    blank = printed(tmp_path / "blank.pdf")
    assert "Opening ___" in blank
    assert "Start a survey" not in blank
    bring_in(page, json.dumps(FULL))
    page.get_by_role("button", name="Bring it in").tap()
    open_opening(page, 0)
    expect(page.locator(".ls-survey h2")).to_contain_text("Kitchen")
    type_in(page, "distance", "far off")
    kept(page)

    def on_paper() -> str:
        page.pdf(path=tmp_path / "survey.pdf", format="A4")
        return printed(tmp_path / "survey.pdf")

    until(page, lambda: "far off" in on_paper())  # it was saved before too, so the words of the bar do not tell
    text = on_paper()
    for words in (
        "Elm House",
        "1. Kitchen, rear: casement window",
        "2. Hall: double door",
        "Gap when closed 3/16 in",
        "brick, 4 1/2 in; wood",
        "OPEN",
        "far off",
        "signature",
        "not known",
    ):
        assert words in text, words
    assert "Next open question" not in text


def test_a_new_property_is_asked_kept_and_saved_with_no_change_of_script(
    context: BrowserContext, base: str, site: Path
) -> None:
    """The page with one more property in its description, as it would be built from a schema that has it."""
    built = (site / "survey" / "index.html").read_text("utf-8")
    start, mark, rest = built.partition('<script type="application/json" id="survey-form">')
    data = json.loads(rest.partition("</script>")[0])
    inner = next(one for one in data["fields"] if one["name"] == "openings")["item"]["fields"]
    about = {"label": "Ajar angle", "help": "Angle at which it stands ajar.", "ask": "number", "min": 0, "max": 90}
    inner.append({"name": "ajar_angle", **about})
    body = f"{start}{mark}{json.dumps(data)}</script>{rest.partition('</script>')[2]}"
    context.route("**/survey/", lambda route: route.fulfill(body=body, content_type="text/html"))
    page = new_page(context, f"{base}survey/")
    start_survey(page)
    add_opening(page, "Kitchen", "casement")
    type_in(page, "ajar_angle", "120")
    expect(question(page, "ajar_angle")).to_contain_text("Out of range. Type a number of at least 0, at most 90.")
    type_in(page, "ajar_angle", "12,5")
    kept(page)
    all_openings(page)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").tap()
    saved = json.loads(Path(download.value.path()).read_text("utf-8"))
    assert saved["openings"] == [{**OPENING, "ajar_angle": 12.5}]
