"""The commands `latchside figure` and `latchside figures`: what they print, where they stop, and how long they take."""

from __future__ import annotations

import json
import subprocess
import sys
from typing import Any

import pytest
from click.testing import CliRunner, Result

from latchside.cli import main
from latchside.figures.catalogue import catalogue
from latchside.root import ROOT


def run(*arguments: str) -> Result:
    result = CliRunner().invoke(main, list(arguments))
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def answer(*arguments: str) -> dict[str, Any]:
    result = run("figure", *arguments, "--json")
    assert result.exit_code == 0, result.output
    found: dict[str, Any] = json.loads(result.stdout)
    return found


def test_outputs_are_at_the_top_of_the_json() -> None:
    found = answer("cable-resistance", "length_m=30", "awg=22")
    assert found["loop_ohm"] == pytest.approx(3.178, abs=0.001)
    assert found["units"] == {"ohm_per_km": "ohm/km", "loop_ohm": "ohm", "diameter_mm": "mm"}
    assert found["inputs"]["temperature_c"] == 20
    assert found["inputs"]["area_mm2"] is None
    assert found["warnings"] == []
    assert found["formula"].startswith("R = ")
    assert {"status", "source", "name", "note"} <= set(found["sources"][0])


@pytest.mark.parametrize(
    "length", ["length_m=15.24", "length=50ft", "length_m=50 ft", "length=15,24", "length=0.01524km"]
)
def test_the_same_length_in_many_ways(length: str) -> None:
    assert answer("cable-resistance", length, "awg=22")["loop_ohm"] == pytest.approx(1.61429, abs=1e-4)


def test_text_says_what_went_in_and_where_it_comes_from() -> None:
    shown = run("figure", "cable-resistance", "length=30", "awg=22").stdout
    assert "  length_m = 30 m\n" in shown
    assert "  temperature_c = 20 °C  (default)\n" in shown
    assert "  loop_ohm = 3.178 Ω  Resistance of the run, both conductors\n" in shown
    assert "Formula\n  R = 2 × length" in shown
    assert "NBS Handbook 100, Copper Wire Tables – handbook or official guidance" in shown


def test_text_says_what_is_from_memory() -> None:
    shown = run("figure", "field-limit", "frequency=915").stdout
    assert "\n! Above the main band of 260 to 470 MHz the limit is from memory: check your edition." in shown
    assert "from memory – check your edition" in shown


def test_states_are_shown_one_a_line() -> None:
    given = ["supply_v=5", "pull_up=4.7k", "layout=double", "end_ohm=4k7", "contact_ohm=4k7", "tolerance_percent=1"]
    result = run("figure", "loop-states", *given, "cable_ohm=10", "leakage_ohm=1M")
    assert result.exit_code == 0, result.output
    assert "    shut: low_v 2.4" in result.stdout


LENGTH = "from 0.1 to 2,000 m"
GAUGE = "a whole number from 10 to 30 AWG"


@pytest.mark.parametrize(
    ("arguments", "lines"),
    [
        (
            ["cable-resistance"],
            [
                f"length_m: missing; give Length of the cable, one way ({LENGTH})",
                f"awg or area_mm2: missing; give Gauge ({GAUGE}) or Area of one conductor (from 0.05 to 10 mm²)",
            ],
        ),
        (
            ["cable-resistance", "length=9km", "awg=22.5"],
            [
                f"length_m: 9,000 m is out of range; give {LENGTH}",
                f"awg: 22.5 AWG is not whole; give {GAUGE}",
            ],
        ),
        (["cable-resistance", "awg"], ["awg: write it as name=value"]),
        (["cable-resistance", "awg=22", "awg=20"], ["awg: given twice"]),
        (
            ["cable-resistence"],
            ['cable-resistence: no such figure. Did you mean "cable-resistance"? All of them: latchside figures'],
        ),
    ],
)
def test_wrong_inputs_give_lines_and_nothing_else(arguments: list[str], lines: list[str]) -> None:
    result = run("figure", *arguments)
    assert result.exit_code == 2
    assert result.stdout == ""
    assert sorted(result.stderr.splitlines()) == sorted(lines)
    as_json = run("figure", *arguments, "--json")
    assert as_json.exit_code == 2
    assert sorted(json.loads(as_json.stdout)["errors"]) == sorted(lines)


def test_list_names_every_figure() -> None:
    shown = run("figures").stdout
    for figure in catalogue(ROOT).values():
        assert f"{figure.id}: {figure.name}\n" in shown
    listed = json.loads(run("figures", "--json").stdout)
    assert [one["id"] for one in listed] == list(catalogue(ROOT))
    assert all(one["inputs"] and one["outputs"] for one in listed)


@pytest.mark.parametrize("id_", catalogue(ROOT))
def test_every_example_is_answered_as_json(id_: str) -> None:
    for example in catalogue(ROOT)[id_].data["examples"]:
        given = [f"{name}={_typed(value)}" for name, value in example["inputs"].items()]
        assert set(example["outputs"]) <= set(answer(id_, *given))


def _typed(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    return ";".join(map(str, value)) if isinstance(value, list) else str(value)


def test_a_figure_waits_for_nothing_that_it_does_not_need() -> None:
    """What makes a start slow, validators and the generator of the site, is not loaded to work out a figure."""
    asked = [
        ["cable-resistance", "length_m=30", "awg=22"],
        ["cable-resistance", "length=50ft", "awg=22"],
        ["reed-gap", "operate_mt=1"],
        ["resistor", "ohm=4700", "series=E24"],
    ]
    code = (
        f"import sys\nfrom latchside.cli import main\nfor asked in {asked!r}:\n"
        "    main(['figure', *asked], standalone_mode=False)\n"
        "print('loaded', {name.split('.')[0] for name in sys.modules} & {'mkdocs', 'markdown', 'jsonschema'})"
    )
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
    assert shown.splitlines()[-1] == "loaded set()"
