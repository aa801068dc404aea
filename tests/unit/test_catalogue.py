"""Figures are read and worked out: what is given is understood, held to its range, and answered or refused in lines."""

from __future__ import annotations

import json
import math
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from latchside.figures.catalogue import Answer, Figure, InputError, catalogue
from latchside.figures.program import constants
from latchside.figures.typed import TypedError, read_list, read_number
from latchside.root import ROOT
from latchside.rules.formula_example import agrees

from ..each import each
from .support import runs_without

SHIPPED = catalogue(ROOT)
HEAVY = {"numpy", "scipy", "magpylib", "eseries", "sympy", "pint", "mkdocs", "jinja2", "jsonschema", "playwright"}


def record(**fields: Any) -> Figure:
    """A figure of a few fields."""
    base: dict[str, Any] = {
        "id": "made-up",
        "name": "Made up",
        "basis": [{"status": "computed"}],
        "meaning": "Made up.",
        "inputs": [{"name": "length_m", "label": "Length", "unit": "m", "min": 1, "max": 100}],
        "outputs": [{"name": "twice_m", "label": "Twice", "unit": "m", "expression": "2 * length_m"}],
        "examples": [],
    }
    return Figure("made-up", base | fields)


def ask(id_: str, **inputs: Any) -> Answer:
    return SHIPPED[id_].answer(inputs)


def refused(figure: Figure, given: Mapping[str, object]) -> tuple[str, ...]:
    with pytest.raises(InputError) as error:
        figure.answer(given)
    return error.value.lines


# -- what is typed -------------------------------------------------------------------------------------------


@each(
    ("typed", "unit", "number"),
    [
        (30, "m", 30),
        (0.22, "mm2", 0.22),
        ("30", "m", 30),
        (" 30 m ", "m", 30),
        ("0,22", "mm2", 0.22),
        ("0.22 mm²", "mm2", 0.22),
        (".5", "m", 0.5),
        ("1e3", "ohm", 1000),
        ("-12.5", "dBm", -12.5),
        ("−12,5", "dBm", -12.5),
        ("50ft", "m", 15.24),
        ("50 feet", "m", 15.24),
        ("50'", "m", 15.24),
        ("15.24m", "m", 15.24),
        ("4 ft 6 in", "m", 1.3716),
        ("4'6\"", "mm", 1371.6),
        ("1/2 in", "mm", 12.7),
        ("1/2 ft", "m", 0.1524),
        ("3 1/2 in", "mm", 88.9),
        ("3-1/2 in", "m", 0.0889),
        ("3½ in", "mm", 88.9),
        ("1/2", "in", 0.5),
        ("12 ft 6 1/2 in", "m", 3.8227),
        ("5 feet", "ft", 5),
        ("3/0 in", "mm", None),
        ("1 5/4 in", "mm", None),
        ("1.5 ft 3 in", "m", None),
        ("1,500 mm", "m", None),
        ("0.01 km", "m", 10),
        ("2 yd", "m", 1.8288),
        ("5.6k", "ohm", 5600),
        ("5k6", "ohm", 5600),
        ("4R7", "ohm", 4.7),
        ("5,6 kΩ", "ohm", 5600),
        ("1M", "ohm", 1e6),
        ("1.5Ah", "mAh", 1500),
        ("20 mA", "uA", 20000),
        ("12 µA", "uA", 12),
        ("68F", "degC", 20),
        ("68 °F", "degC", 20),
        ("20 C", "degC", 20),
        ("0.8683 GHz", "MHz", 868.3),
        ("868.3 mhz", "MHz", 868.3),
        ("10 mW", "dBm", 10),
        ("1W", "dBm", 30),
        ("0 mW", "dBm", None),
        ("12 h", "min", 720),
        ("1h30min", "min", 90),
        ("3 days", "h", 72),
        ("400 mT", "T", 0.4),
        ("300 G", "mT", 30),
        ("22 AWG", "AWG", 22),
        ("10 %", "%", 10),
        ("10%", "", 0.1),
        ("12 mil", "mm", 0.3048),
        ("", "m", None),
        ("m", "m", None),
        ("thirty", "m", None),
        ("30 30", "m", None),
        ("30 foo", "m", None),
        ("30 kg", "m", None),
        ("30 m m", "m", None),
        ("30 m**9", "m", None),
        ("30 __class__", "m", None),
        ("1,500", "mAh", None),
        ("12,345,678", "", None),
        ("0,500", "mm", 0.5),
        ("1.500", "mm", 1.5),
        ("1e999", "m", None),
        ("nan", "m", None),
        ("inf", "m", None),
        (math.nan, "m", None),
        (math.inf, "m", None),
        (True, "m", None),
        (None, "m", None),
        ([1], "m", None),
        ("9" * 70, "m", None),
        ("3 dB", "m", None),
        ("3 m", "dB", None),
        ("3 m", "", None),
    ],
)
def test_numbers_as_they_are_typed(typed: object, unit: str, number: float | None) -> None:
    if number is None:
        with pytest.raises(TypedError):
            read_number(typed, unit)
    else:
        assert read_number(typed, unit) == pytest.approx(number, rel=1e-12)


@pytest.mark.parametrize(
    ("typed", "numbers"),
    [
        ("1,2,3", [1, 2, 3]),
        ("1, 2, 3", [1, 2, 3]),
        ("1;2,5;3", [1, 2.5, 3]),
        ("1 2.5 3", [1, 2.5, 3]),
        ("1 mm; 0.1 in", [1, 2.54]),
        ("", []),
        ("none", []),
        ([1, "2,5"], [1, 2.5]),
        (4, [4]),
    ],
)
def test_lists_as_they_are_typed(typed: object, numbers: list[float]) -> None:
    assert read_list(typed, "mm") == pytest.approx(numbers)


def test_thousands_are_never_guessed() -> None:
    with pytest.raises(TypedError, match=r'"1,500" could be 1500 or 1\.500'):
        read_number("1,500", "mAh")


# -- inputs --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", ["length_m", "length", "LENGTH", "length-m", " length_m "])
def test_a_name_with_and_without_its_unit(name: str) -> None:
    assert record().answer({name: "50ft"}).outputs == {"twice_m": pytest.approx(30.48)}


def test_bare_name_goes_where_its_unit_fits() -> None:
    given = {"standby": 12, "report": "15mA", "check_in_ms": 200, "check_in_min": 60, "events_per_day": 20}
    found = ask("cell-current", **given, report_ms="0.2 s")
    assert found.inputs["report_ma"] == 15
    assert found.outputs["average_ua"] == pytest.approx(14.2222, abs=1e-4)


@pytest.mark.parametrize(
    ("given", "lines"),
    [
        ({}, ["length_m: missing; give Length (from 1 to 100 m)"]),
        ({"length_m": ""}, ["length_m: missing; give Length (from 1 to 100 m)"]),
        ({"length_m": None}, ["length_m: missing; give Length (from 1 to 100 m)"]),
        ({"length_m": 0.5}, ["length_m: 0.5 m is out of range; give from 1 to 100 m"]),
        ({"length_m": "2 km"}, ["length_m: 2,000 m is out of range; give from 1 to 100 m"]),
        ({"length_m": "long"}, ['length_m: "long", which is no length; it takes from 1 to 100 m']),
        ({"lenght": 3}, ['lenght: unknown; this figure takes length_m. Did you mean "length_m"?']),
        ({"length_m": 3, "length": 4}, ["length_m: given twice"]),
        (
            {"length_m": 1000, "x": 1},
            ["length_m: 1,000 m is out of range; give from 1 to 100 m", "x: unknown; this figure takes length_m."],
        ),
    ],
)
def test_a_line_for_each_wrong_input(given: dict[str, object], lines: list[str]) -> None:
    assert list(refused(record(), given)) == lines


PAIR = [
    {"name": "a_m", "label": "A", "unit": "m", "min": 0, "max": 9},
    {"name": "b_ft", "label": "B", "unit": "ft", "min": 0, "max": 9, "instead_of": "a_m"},
]


def test_one_of_two() -> None:
    figure = record(
        inputs=PAIR,
        outputs=[{"name": "c", "label": "C", "expression": "piecewise(a_m, a_m_given, b_ft * 0.3048)"}],
    )
    assert figure.answer({"a_m": 3}).outputs == {"c": 3}
    assert figure.answer({"b_ft": 1}).outputs == {"c": 0.3048}
    assert refused(figure, {}) == ("a_m or b_ft: missing; give A (from 0 to 9 m) or B (from 0 to 9 ft)",)
    assert refused(figure, {"a_m": 1, "b_ft": 1}) == ("b_ft: given beside a_m; give one of the two",)


def test_inputs_that_go_with_a_word() -> None:
    magnet = {"remanence_t": 0.4, "length_mm": 20, "distance_mm": 10}
    assert refused(SHIPPED["magnet-field"], magnet) == (
        "diameter_mm: missing; give Diameter of the magnet (from 0.5 to 100 mm)",
    )
    assert refused(SHIPPED["magnet-field"], magnet | {"diameter_mm": 5, "width_mm": 5}) == (
        "width_mm: only with shape=bar; leave it out",
    )
    assert ask("magnet-field", **magnet, shape="Bar", width_mm=5, height_mm=5).outputs["field_mt"] == pytest.approx(
        6.615867, rel=1e-6
    )


def test_words_yes_no_whole_numbers_and_lists() -> None:
    wires = {"copper-clad": "Clad", "copper": "Copper"}
    figure = record(
        inputs=[
            {
                "name": "wire",
                "label": "Wire",
                "choices": wires,
                "default": "copper",
            },
            {"name": "wet", "label": "Wet", "yes_no": True, "default": False},
            {"name": "floors", "label": "Floors", "min": 0, "max": 9, "integer": True},
            {"name": "walls_db", "label": "Walls", "unit": "dB", "min": 0, "max": 9, "list": True, "default": []},
        ],
        outputs=[
            {"name": "c", "label": "C", "expression": "piecewise(1, wire_is_copper_clad, 2) + floors + sum(walls_db)"},
            {"name": "dry", "label": "Dry", "expression": "piecewise(floors < 0, wet, floors >= 0)"},
        ],
    )
    assert figure.answer({"floors": "3"}).outputs == {"c": 5, "dry": True}
    assert figure.answer({"floors": 3, "wire": "Copper Clad", "wet": "yes", "walls": "1 2"}).outputs == {
        "c": 7,
        "dry": False,
    }
    assert refused(figure, {"floors": 2.5}) == ("floors: 2.5 is not whole; give a whole number from 0 to 9",)
    assert refused(figure, {"floors": 1, "wire": "coper"}) == (
        'wire: "coper" is not one of copper-clad, copper. Did you mean "copper"?',
    )
    assert refused(figure, {"floors": 1, "wet": "perhaps"}) == (
        'wet: "perhaps" is neither true nor false; it takes true or false',
    )
    assert refused(figure, {"floors": 1, "walls": "1 20"}) == (
        "walls_db: 20 dB is out of range; give numbers from 0 to 9 dB",
    )


# -- answers -------------------------------------------------------------------------------------------------


def test_limits_warn_or_refuse_and_pass_over_what_is_not_given() -> None:
    figure = record(
        inputs=[*record().data["inputs"], {"name": "steel_mm", "label": "Steel", "unit": "mm", "optional": True}],
        values={"most": {"value": 50, "unit": "m", "status": "typical"}},
        valid=[
            {
                "test": "length_m <= most",
                "warn": "Over [[=most]]: see [[term/loop|the loop]], [[term/pair-cable]].",
            },
            {"test": "twice_m <= 180", "refuse": "Too long."},
            {"test": "steel_mm >= 3", "refuse": "Too near."},
        ],
    )
    assert figure.answer({"length_m": 50}).warnings == ()
    assert figure.answer({"length_m": 51}).warnings == ("Over 50 m: see the loop, pair cable.",)
    assert refused(figure, {"length_m": 91}) == ("Too long.",)
    assert refused(figure, {"length_m": 10, "steel_mm": 2}) == ("Too near.",)


def test_no_number_is_refused_or_said() -> None:
    outputs = [{"name": "c", "label": "C", "expression": "1 / (length_m - 1)"}]
    assert refused(record(outputs=outputs), {"length_m": 1}) == ("c: these inputs have no answer",)
    answer = record(outputs=[outputs[0] | {"empty": "No such length."}]).answer({"length_m": 1})
    assert answer.outputs == {"c": None}
    assert answer.warnings == ("No such length.",)


def test_a_record_the_check_refuses_is_not_worked_out() -> None:
    with pytest.raises(ValueError, match=r"made-up: outputs\.0\.expression"):
        record(outputs=[{"name": "c", "label": "C", "expression": "().__class__"}]).answer({"length_m": 1})


def test_formula_is_shown_from_the_expressions() -> None:
    assert record().formula == "twice_m = 2 × length_m"


@pytest.mark.parametrize("id_", SHIPPED)
def test_examples_come_out(id_: str) -> None:
    for example in SHIPPED[id_].data["examples"]:
        answer = SHIPPED[id_].answer(example["inputs"])
        assert set(answer.outputs) == {entry["name"] for entry in SHIPPED[id_].data["outputs"]}
        for name, expected in example["outputs"].items():
            assert agrees(answer.outputs[name], expected, example["tolerance"]), (name, answer.outputs[name])


def test_a_constant_is_the_same_in_every_figure() -> None:
    known: dict[str, tuple[str, Any]] = {}
    for figure in SHIPPED.values():
        for name, value in constants(figure.data).items():
            assert known.setdefault(name, (figure.id, value))[1] == value, (name, figure.id, known[name][0])


NAMED = {
    "cable-resistance": "ohm_per_km loop_ohm diameter_mm",
    "supervised-loop": "loop_v",
    "voltage-drop": "drop_v load_v drop_percent longest_m",
    "cell-life": "years years_without_loss",
    "cell-current": "average_ua",
    "missed-check-in": "tries_per_window chance_per_window false_troubles_per_year worst_delay_h",
    "field-limit": "uv_per_m eirp_dbm",
    "duty": "seconds_per_hour percent within",
    "free-space-loss": "loss_db",
    "indoor-loss": "loss_db floors_db",
    "radio-margin": "loss_db received_dbm margin_db low_margin_db high_margin_db",
    "magnet-field": "field_mt",
    "standby-battery": "ah with_margin_ah next_size_ah",
    "ladder": "setback_m height_m ladder_length_m angle_deg",
}


@pytest.mark.parametrize("id_", NAMED)
def test_names_of_outputs_stay(id_: str) -> None:
    """Other programs call these by name."""
    assert [entry["name"] for entry in SHIPPED[id_].data["outputs"]] == NAMED[id_].split()


def test_a_battery_beyond_the_usual_sizes() -> None:
    answer = ask("standby-battery", standby_a=3, alarm_a=0, standby_h=24, alarm_min=0)
    assert answer.outputs["next_size_ah"] is None
    assert answer.warnings == ("No single battery of the usual sizes is large enough: the largest listed is 65 Ah.",)


def test_a_battery_that_just_fits() -> None:
    assert (
        ask("standby-battery", standby_a=12 / 1.25 / 24, alarm_a=0, standby_h=24, alarm_min=0).outputs["next_size_ah"]
        == 12
    )


@each("tries", range(1, 60))
def test_whole_tries_are_not_lost_to_rounding(tries: int) -> None:
    answer = ask("missed-check-in", check_in_min=7.3, window_h=7.3 * tries / 60, loss_probability=0.5)
    assert answer.outputs["tries_per_window"] == tries


def test_european_bands() -> None:
    assert refused(SHIPPED["field-limit"], {"region": "europe", "frequency_mhz": 868.9})
    assert refused(SHIPPED["field-limit"], {"region": "europe", "frequency_mhz": 315})
    assert ask("field-limit", region="europe", frequency_mhz=868.3).outputs["eirp_dbm"] == pytest.approx(
        16.13, abs=0.01
    )
    assert ask("field-limit", frequency_mhz=915).warnings


def test_the_margin_takes_every_loss_once() -> None:
    path: dict[str, Any] = {"eirp_dbm": 0, "frequency_mhz": 868.3, "distance_m": 20, "sensitivity_dbm": -100}
    bare = ask("radio-margin", **path)
    assert bare.warnings
    full = ask(
        "radio-margin", **path, floors=2, obstacles="3.5; 4", mounting_loss_db=6, crosses_outer_wall="traditional"
    )
    wall = ask("entry-loss", frequency_mhz=868.3, building="traditional", percent=50).outputs["loss_db"]
    assert full.outputs["loss_db"] - bare.outputs["loss_db"] == pytest.approx(8 + 7.5 + 6 + wall, abs=1e-9)
    assert bare.outputs["loss_db"] == pytest.approx(
        ask("free-space-loss", frequency_mhz=868.3, distance_m=20).outputs["loss_db"], abs=1e-12
    )


def test_drop_and_cable_agree() -> None:
    cable: dict[str, Any] = {"length_m": 40, "awg": 20, "temperature_c": 35, "conductor": "tinned"}
    loop = ask("cable-resistance", **cable).outputs["loop_ohm"]
    drop = ask("voltage-drop", supply_v=12, current_a=0.2, **cable).outputs
    assert drop["drop_v"] == pytest.approx(0.2 * loop, rel=1e-12)
    again = ask("voltage-drop", supply_v=12, current_a=0.2, **cable | {"length_m": drop["longest_m"]}).outputs
    assert again["drop_percent"] == pytest.approx(10, rel=1e-12)


# -- what is read and imported -------------------------------------------------------------------------------


def test_only_sound_records_are_in_the_catalogue(tmp_path: Path) -> None:
    folder = tmp_path / "shared" / "formulas"
    folder.mkdir(parents=True)
    (folder / "whole.yaml").write_text("name: Whole\n", "utf-8")
    (folder / "broken.yaml").write_text("name: [\n", "utf-8")
    (folder / "list.yaml").write_text("- name\n", "utf-8")
    assert list(catalogue(tmp_path)) == ["whole"]
    assert catalogue(tmp_path / "nowhere") == {}


def loaded(code: str) -> set[str]:
    """The heavy packages that a fresh Python has loaded after `code`."""
    tail = f"import json; print(json.dumps(sorted({{name.split('.')[0] for name in sys.modules}} & {HEAVY!r})))"
    command = [sys.executable, "-c", f"import sys\n{code}\n{tail}"]
    shown = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    return set(json.loads(shown))


def test_nothing_heavy_is_imported_for_an_expression() -> None:
    code = "from latchside.figures.catalogue import catalogue\n"
    assert loaded(code + "catalogue()['cable-resistance'].answer({'length_m': '30 m', 'awg': 22})") == set()
    with_units = loaded(code + "catalogue()['cable-resistance'].answer({'length_m': '50 m', 'area_mm2': '0.0003 in2'})")
    assert {"pint"} <= with_units <= {"pint", "numpy", "scipy"}  # Pint itself loads the last two where they are there


def test_charts_and_models_need_no_library_of_the_tests() -> None:
    code = (
        "from latchside import charts\nfrom latchside.figures.catalogue import catalogue\nfigures = catalogue()\n"
        "for figure in figures.values():\n    figure.answer(figure.data['examples'][0]['inputs'])\n"
        "for chart in charts.ALL.values():\n    chart.make(figures)\n"
    )
    runs_without(("numpy", "scipy", "magpylib", "eseries", "sympy"), code)
