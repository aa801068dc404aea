"""Small invented surveys, each about one awkward thing, and what a trainer works out by hand before any plan is made.

Beside each survey in `tests/jobs/` lies its file of answers, with the arithmetic and where it is from. `problems` names
every problem of the plan by what it is about, and so what must not be told. Where nothing else is said a fact is
common practice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from functools import cache
from typing import Any

import pytest
import yaml

from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.planning.make import make_plan
from latchside.planning.plan import Line, OpeningPlan, Plan, Zone
from latchside.root import ROOT
from latchside.surveys.read import read_survey
from latchside.surveys.survey import Survey

ON = date(2026, 8, 31)
JOBS = ROOT / "tests" / "jobs"
DRILLED = frozenset({"recessed-contact", "steel-door-contact"})
"""Classes that sit in holes of leaf and frame."""
Answers = Mapping[str, Any]


def _answers() -> dict[str, Answers]:
    paths = sorted(JOBS.glob("*.answers.yaml"))
    return {path.name.removesuffix(".answers.yaml"): yaml.safe_load(path.read_text("utf-8")) for path in paths}


ANSWERS = _answers()
OPENINGS = [(name, id_) for name, found in ANSWERS.items() for id_ in found["openings"]]


def having(*keys: str) -> list[str]:
    """The surveys whose answers say something of these."""
    return [name for name, found in ANSWERS.items() if any(key in found for key in keys)]


@cache
def survey(library: Library, name: str) -> Survey:
    read, findings = read_survey(JOBS / f"{name}.yaml", library.schemas)
    assert read is not None, findings
    assert findings == ()  # nothing in it is taken for a code, and every length is read
    return read


@cache
def planned(library: Library, name: str) -> Plan:
    return make_plan(survey(library, name), library, catalogue(), ON)


def at(plan: Plan, id_: str) -> OpeningPlan:
    return next(one for one in plan.openings if one.opening.id == id_)


def line(plan: OpeningPlan, name: str) -> Line:
    found = [one for one in plan.figures if one.name == name]
    assert len(found) == 1, [one.name for one in plan.figures]
    return found[0]


def zones(plan: Plan) -> list[Zone]:
    return [zone for zone in plan.zones if zone.response != "always-on"]


def words(plan: Plan) -> Iterator[str]:
    """All that the plan says in figures, problems and reasons."""
    for told in plan.problems:
        yield from (told.found, told.action)
    for one in plan.openings:
        yield from (*one.choice.reasons, *one.choice.against)
    for figure in (*plan.site_figures, *(figure for one in plan.openings for figure in one.figures)):
        yield from (figure.name, figure.shown, figure.meaning, figure.action, *figure.assumed)


def test_there_are_twenty_worked_surveys() -> None:
    paths = {path.name.removesuffix(".yaml") for path in JOBS.glob("*.yaml") if ".answers" not in path.name}
    assert len(paths) >= 20
    assert set(ANSWERS) <= paths


@pytest.mark.parametrize("name", ANSWERS)
def test_every_problem_is_told_and_no_other(shipped_library: Library, name: str) -> None:
    plan = planned(shipped_library, name)
    told: dict[str, list[str]] = {}
    for one in plan.problems:
        told.setdefault(one.about, []).append(one.code)
        assert one.found
        assert one.action
    wanted = {about: sorted(codes) for about, codes in ANSWERS[name]["problems"].items()}
    assert {about: sorted(codes) for about, codes in told.items()} == wanted


@pytest.mark.parametrize("name", having("actions"))
def test_a_problem_says_what_to_do(shipped_library: Library, name: str) -> None:
    for code, said in ANSWERS[name]["actions"].items():
        actions = [one.action for one in planned(shipped_library, name).problems if one.code == code]
        assert any(said in action for action in actions), actions


@pytest.mark.parametrize("name", ANSWERS)
def test_zones(shipped_library: Library, name: str) -> None:
    """Position, name and response: the entry route alone waits, EN 50131-1."""
    plan = planned(shipped_library, name)
    assert [[zone.position, zone.spoken, zone.response] for zone in zones(plan)] == ANSWERS[name]["zones"]
    assert {zone.reports for zone in plan.zones} <= {ANSWERS[name].get("reports", False)}


@pytest.mark.parametrize(("name", "id_"), OPENINGS)
def test_choice(shipped_library: Library, name: str, id_: str) -> None:
    """The class at the opening, what is on its loop, what stays, and what may never be fitted there."""
    answers, plan = ANSWERS[name]["openings"][id_], planned(shipped_library, name)
    one = at(plan, id_)
    choice = one.choice
    assert choice.device == answers.get("device", choice.device)
    assert choice.contact == answers.get("contact")
    assert (choice.shared, choice.lacks) == (answers.get("shared", False), answers.get("lacks", False))
    assert (choice.moved is not None) == answers.get("moved", False)
    assert one.contacts == len(one.contact_names) == answers.get("contacts", 1)
    assert (choice.device is None) or choice.reasons
    if "link" in answers:
        assert {zone.link for zone in zones(plan) if zone.opening == id_} == {answers["link"]}
    assert set(answers.get("ruled_out", ())) <= {other.device for other in choice.passed_over if other.ruled_out}
    stays = "planning/choose#contact-stays"
    assert any(getattr(reason, "id", "") == stays for reason in choice.reasons) == answers.get("kept", False)
    if "never_against" in answers:
        assert not any(answers["never_against"] in said for said in choice.against)
    if not one.opening.drill or one.opening.fire_rated or one.opening.escape:
        assert not {choice.device, choice.contact} & DRILLED
        assert "dust-and-eyes" not in one.cautions


@pytest.mark.parametrize(("name", "id_"), OPENINGS)
def test_figures(shipped_library: Library, name: str, id_: str) -> None:
    """Verdicts and numbers by hand; what is worked there is within what is shown: a tenth, or half a per cent."""
    answers, one = ANSWERS[name]["openings"][id_], at(planned(shipped_library, name), id_)
    found = {figure: line(one, figure).verdict for figure in answers.get("verdicts", {})}
    assert found == {figure: str(verdict) for figure, verdict in answers.get("verdicts", {}).items()}
    for figure, inputs in answers.get("inputs", {}).items():
        got = line(one, figure).inputs
        assert {key: got[key] for key in inputs} == {
            key: pytest.approx(value, rel=0.005, abs=0.101 if key.endswith("trip_mm") else 0.0)
            for key, value in inputs.items()
        }
    for figure, said in answers.get("says", {}).items():
        assert said in line(one, figure).meaning.replace("\u00a0", " ")
    for figure, said in answers.get("shows", {}).items():
        assert said in line(one, figure).shown
    names = [figure.name for figure in one.figures]
    assert not set(answers.get("no_lines", ())) & set(names)
    assert set(answers.get("lines", ())) <= set(names)


@pytest.mark.parametrize(
    ("name", "id_"), [(name, id_) for name, id_ in OPENINGS if "reads" in ANSWERS[name]["openings"][id_]]
)
def test_loop_readings(shipped_library: Library, name: str, id_: str) -> None:
    """A good loop passes with resistors at either end of their tolerance; another layout, a cut or a short does not."""
    answers = ANSWERS[name]["openings"][id_]
    expected = {one.measure: one for one in at(planned(shipped_library, name), id_).expected}

    def passes(measure: str, ohm: float) -> bool:
        low, high = expected[measure].low, expected[measure].high
        return (low is None or low <= ohm) and (high is None or ohm <= high)

    for measure, readings in answers["reads"].items():
        assert [ohm for ohm in readings if not passes(measure, ohm)] == []
    for measure, readings in answers["refuses"].items():
        assert [ohm for ohm in readings if passes(measure, ohm)] == []


@pytest.mark.parametrize("name", having("battery"))
def test_standby_battery(shipped_library: Library, name: str) -> None:
    found = [one for one in planned(shipped_library, name).site_figures if one.figure == "standby-battery"]
    shown = [one.shown.replace("\u00a0", " ") for one in found]
    assert shown == [f"{size:g} Ah, for at least {least:g} Ah" for least, size in ANSWERS[name]["battery"]]


@pytest.mark.parametrize("name", having("parts", "no_parts", "totals"))
def test_parts(shipped_library: Library, name: str) -> None:
    """Counted from the survey; beside them one spare of each part, or a tenth, by house rule."""
    answers, items = ANSWERS[name], planned(shipped_library, name).items
    whole = {item.name: item for item in items}
    for start, quantity in answers.get("parts", {}).items():
        (found,) = [item for key, item in whole.items() if key == start or key.startswith(f"{start}\u00a0")]
        assert found.quantity == quantity, start
        assert found.sort == "tool" or found.spare == 1
    for start, total in answers.get("totals", {}).items():
        (found,) = [item for key, item in whole.items() if key.startswith(start) and item.unit == "m"]
        assert found.quantity + found.spare == total
    assert not [key for key in whole if key in answers.get("no_parts", ())]


@pytest.mark.parametrize("name", having("cautions"))
def test_cautions(shipped_library: Library, name: str) -> None:
    found = {one.caution: list(one.about) for one in planned(shipped_library, name).cautions}
    for caution, about in ANSWERS[name]["cautions"].items():
        assert found.get(caution, []) == about, caution


@pytest.mark.parametrize("name", having("nowhere"))
def test_words_that_belong_to_another_country(shipped_library: Library, name: str) -> None:
    assert not [said for said in words(planned(shipped_library, name)) if ANSWERS[name]["nowhere"] in said]


@pytest.mark.parametrize("name", having("keypad"))
def test_names_on_a_short_keypad(shipped_library: Library, name: str) -> None:
    """Every name fits, is one of a kind, and keeps the number of its room. A tamper line takes none."""
    answers, plan = ANSWERS[name], planned(shipped_library, name)
    names = [zone.spoken for zone in zones(plan)]
    assert len({spoken.casefold() for spoken in names}) == len(names)
    assert [spoken for spoken in names if len(spoken) > answers["keypad"]] == []
    assert len(plan.zones) - len(names) == answers["tamper_lines"]
    for id_, number in answers["keeps"].items():
        kept = [zone.spoken for zone in zones(plan) if zone.opening == id_]
        assert [spoken for spoken in (*kept, *at(plan, id_).contact_names) if number not in spoken] == []


# -- fields left out one by one ------------------------------------------------------------------------------

_FIELDS = {
    "gap": "gap_mm", "play": "play_mm", "step": "step_mm", "height": "height_m", "distance": "distance_m",
    "cable_length": "cable_length_m", "cable_area": "cable_area_mm2", "frequency": "frequency_mhz",
    "sensitivity": "sensitivity_dbm", "end_of_line": "end_of_line_ohm", "standby_current": "standby_ma",
    "alarm_current": "alarm_ma", "width": "width_m",
}  # fmt: skip
LEFT_OUT = [
    (name, about, field)
    for name in having("one_by_one")
    for about, fields in ANSWERS[name]["one_by_one"].items()
    for field in fields
]


def without(of: Survey, about: str, field: str) -> Survey:
    """The survey with one field left out."""
    gone = {_FIELDS.get(field, field): None}
    if about == "site":
        return replace(of, site=replace(of.site, **dict[str, Any](gone)))
    if about == "control_unit":
        return replace(of, control_unit=replace(of.control_unit, **dict[str, Any](gone)))
    return replace(
        of, openings=tuple(replace(one, **dict[str, Any](gone)) if one.id == about else one for one in of.openings)
    )


@pytest.mark.parametrize(("name", "about", "field"), LEFT_OUT)
def test_a_field_left_out_is_asked_and_makes_nothing_better(
    shipped_library: Library, name: str, about: str, field: str
) -> None:
    full = planned(shipped_library, name)
    plan = make_plan(without(survey(shipped_library, name), about, field), shipped_library, catalogue(), ON)
    asked = {(one.about, one.field): one for one in plan.questions}
    found = asked[about.replace("_", "-") if about == "control_unit" else about, field]
    assert found.text
    assert found.why
    assert (found.about, found.field) not in {(one.about, one.field) for one in full.questions}
    for one in plan.openings:
        before = {figure.name: figure.verdict for figure in at(full, one.opening.id).figures}
        same = one.choice.device == at(full, one.opening.id).choice.device
        better = [
            figure.name for figure in one.figures if figure.verdict == "good" and before.get(figure.name) != "good"
        ]
        assert not (same and better)


_ASKED = {
    "spacer": re.compile(r"(?i)\b(?:one|two) spacers? of|more under both halves|same spacers under both halves"),
    "bracket": re.compile(r"(?i)\bbracket supplied"),
    "sleeve": re.compile(r"(?i)plastic sleeve"),
}
"""What an opening sheet may ask for, which comes with some sets only."""


@pytest.mark.parametrize("name", ANSWERS)
def test_what_a_sheet_asks_for_is_on_the_van(shipped_library: Library, name: str) -> None:
    """Common practice: what a sheet names goes into the bag of that opening, and a spacer that none needs stays out."""
    plan = planned(shipped_library, name)
    for part, asked in _ASKED.items():
        to = {id_ for item in plan.items if part in item.name.lower() for id_ in item.openings}
        for one in plan.openings:
            text = one.fixing.spacer if one.fixing else ""
            if asked.search(text):
                assert one.opening.id in to, f"{one.opening.id} asks for: {text}"
            elif part == "spacer" and text == "No spacer.":
                assert one.opening.id not in to, one.opening.id
