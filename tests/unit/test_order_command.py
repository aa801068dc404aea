"""`latchside fault-order`: a list or a record, for people or as JSON, and one clear finding for each mistake."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from latchside.cli import main
from latchside.order.listing import SUM_WITHIN
from latchside.root import ROOT

from .support import BASE, change, lay

LIST = """\
- {cause: magnet, probability: 0.3, minutes: 60}
- {cause: cell, probability: 0.7, minutes: 60}
"""


def run(*arguments: str | Path) -> Result:
    result = CliRunner().invoke(main, ["fault-order", *(str(one) for one in arguments)])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def written(tmp_path: Path, text: str, name: str = "list.yaml") -> Path:
    path = tmp_path / name
    path.write_text(text, "utf-8")
    return path


def test_a_list_as_text(tmp_path: Path) -> None:
    result = run(written(tmp_path, LIST))
    assert result.exit_code == 0
    assert "Expected minutes: 78" in result.output
    assert result.output.index("cell") < result.output.index("magnet")
    for words in ("by frequency alone  78", "by time alone       102", "in the worst order  102"):
        assert words in result.output


@pytest.mark.parametrize("text", [LIST, json.dumps([
    {"cause": "magnet", "probability": 0.3, "minutes": 60}, {"cause": "cell", "probability": 0.7, "minutes": 60},
], indent="\t")], ids=["YAML", "JSON"])  # fmt: skip
def test_a_list_as_json(text: str, tmp_path: Path) -> None:
    result = run(written(tmp_path, text, "list.json"), "--json")
    data = json.loads(result.output)
    assert (data["order"], data["expected_minutes"]) == (["cell", "magnet"], 78)
    assert data["compared"] == {"by_frequency": 78, "by_time": 102, "worst_order": 102}
    assert data["steps"][1] == {"cause": "magnet", "probability": 0.3, "minutes": 60, "left": 0.3, "expected": 60}
    assert data["tree"] is None


@pytest.mark.parametrize(
    ("old", "new", "line", "code", "says"),
    [
        ("0.7", "0.6", 1, "probability-sum", "add up to 0.9"),
        ("0.7", "0.71", 1, "probability-sum", "add up to 1.01"),
        ("0.7, minutes: 60", "0.7, minutes: -1", 2, "negative-number", "-1 for minutes"),
        ("0.7", "-0.7", 2, "negative-number", "-0.7 for probability"),
        ("0.7", "a lot", 2, "wrong-type", '"a lot" for probability'),
        ("cause: cell, ", "", 2, "missing-key", 'without "cause"'),
        ("cause: cell", "casue: cell, cause: cell", 2, "unknown-key", '"casue"'),
        ("cause: cell", "cause: magnet", 2, "repeated-id", '"magnet" a second time'),
        ("cause: cell", "cause: 7", 2, "wrong-type", "7 for cause"),
        ("cause: cell", 'cause: "\\e[31mcell"', 2, "wrong-type", "for cause"),
        ("- {cause: cell, probability: 0.7, minutes: 60}", "- cell", 2, "wrong-type", '"cell"'),
    ],
)
def test_one_clear_finding(old: str, new: str, line: int, code: str, says: str, tmp_path: Path) -> None:
    assert LIST.count(old) == 1
    path = written(tmp_path, LIST.replace(old, new))
    result = run(path, "--json")
    assert result.exit_code == 1
    assert result.stdout == ""
    assert result.stderr.count("error ") == 1
    assert f"{path}:{line}:" in result.stderr
    assert f"error {code}" in result.stderr
    assert says in result.stderr


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("[]", "not-a-list"), ('{"causes": []}', "not-a-list"), ("seven", "not-a-list"), ("", "empty-file"),
        ("- {", "broken-yaml"),
    ],
)  # fmt: skip
def test_a_file_that_is_no_list(text: str, code: str, tmp_path: Path) -> None:
    result = run(written(tmp_path, text))
    assert result.exit_code == 1
    assert f"error {code}" in result.stderr


def test_numbers_that_are_none_are_refused(tmp_path: Path) -> None:
    result = run(written(tmp_path, '\t[{"cause": "a", "probability": NaN, "minutes": Infinity}]', "list.json"))
    assert result.exit_code == 1
    assert result.stderr.count("error wrong-type") == 2


def test_thirds_written_with_six_digits_add_up(tmp_path: Path) -> None:
    entries = "".join(f"- {{cause: {name}, probability: 0.333333, minutes: 5}}\n" for name in "abc")
    assert SUM_WITHIN > 1 - 3 * 0.333333
    assert run(written(tmp_path, entries)).exit_code == 0


def test_a_long_list(tmp_path: Path) -> None:
    entries = "".join(f"- {{cause: c{i}, probability: 0.0005, minutes: {i % 7}}}\n" for i in range(2000))
    data = json.loads(run(written(tmp_path, entries), "--json").output)
    assert len(data["order"]) == 2000
    assert data["order"][:2] == ["c0", "c7"]


def test_a_list_knows_no_devices(tmp_path: Path) -> None:
    result = run(written(tmp_path, LIST), "--device", "recessed-contact")
    assert result.exit_code == 1
    assert "knows no devices" in result.stderr


# -- faults of the library -------------------------------------------------------------------------------------


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return lay(tmp_path / "project")


def test_a_fault_of_the_library(root: Path) -> None:
    result = run("pane-open", "--root", root)
    assert result.exit_code == 0
    assert result.output.startswith("Pane shows open when shut\n")
    assert "Fix: The magnet moved" in result.output  # it is likelier and cheaper than a look is worth
    assert "Fix: The reed broke" in result.output
    assert run("fault/pane-open", "--root", root).output == result.output


def test_a_fault_for_a_device(root: Path) -> None:
    assert run("pane-open", "--root", root, "--device", "pane-contact").output.startswith(
        "Pane shows open when shut, on: Pane contact\n"
    )
    data = json.loads(run("pane-open", "--root", root, "--device", "pane-contact", "--json").output)
    assert (data["fault"], data["device"]) == ("pane-open", "pane-contact")
    assert data["order"] == ["moved", "broken"]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("pane-opne",), 'There is no fault pane-opne. Did you mean "pane-open"?'),
        (("pane-open", "--device", "pane-contcat"), 'Did you mean "pane-contact"?'),
        (("missing.yaml",), "There is no file missing.yaml"),
    ],
)
def test_what_is_not_there(arguments: tuple[str, ...], says: str, root: Path) -> None:
    result = run(*arguments, "--root", root)
    assert result.exit_code == 1
    assert says in result.stderr


def test_a_device_that_does_not_list_the_fault(root: Path) -> None:
    change(root, "content/devices/pane-contact.yaml", "faults: [pane-open, pane-quiet]", "faults: [pane-open]")
    result = run("pane-quiet", "--root", root, "--device", "pane-contact")
    assert result.exit_code == 1
    assert "pane-contact does not list the fault pane-quiet" in result.stderr


def test_a_fault_with_an_error_is_not_planned(root: Path) -> None:
    change(root, "content/faults/pane-open.yaml", "leaves: [moved]", "leaves: [moved, gone]")
    result = run("pane-open", "--root", root)
    assert result.exit_code == 1
    assert result.stderr.count("error ") == 1
    assert "error dead-end" in result.stderr


# -- a record in a file of its own -----------------------------------------------------------------------------

PANE_QUIET = BASE / "content" / "faults" / "pane-quiet.yaml"


def test_a_record_in_a_file(tmp_path: Path) -> None:
    data = json.loads(run(written(tmp_path, PANE_QUIET.read_text("utf-8"), "mine.yaml"), "--json").output)
    assert (data["fault"], data["tree"]["id"]) == ("pane-quiet", "listen")


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("minutes: 1\n", "minutes: -1\n", "out-of-range"),
        ("leaves: [slow]", "leaves: []", "wrong-count"),
        ("leaves: [slow]", "leaves: [slow], likelihood: {slow: 0.5}", "overlapping-results"),
        ("leaves: [slow]", "leaves: [slow], likelihood: {flat: 0.5}", "overlapping-results"),
        ("needs: [nothing]", "needs: [cover-open]", "put-back"),
        ("Nothing is sent without power.", "Power.\n    after: [slwo]", "mended-after"),
        ("Nothing is sent without power.", "Power.\n    after: [flat]", "mended-after"),
    ],
)
def test_a_record_in_a_file_with_a_mistake(old: str, new: str, code: str, tmp_path: Path) -> None:
    text = PANE_QUIET.read_text("utf-8")
    assert text.count(old) == 1
    result = run(written(tmp_path, text.replace(old, new)))
    assert result.exit_code == 1
    assert result.stderr.count("error ") == 1
    assert f"error {code}" in result.stderr


def test_a_check_that_leaves_no_cause(tmp_path: Path) -> None:
    text = PANE_QUIET.read_text("utf-8")
    results = "[{id: a, shows: A., escalate: true}, {id: b, shows: B., escalate: true}]"
    idle = f"  - {{id: idle, do: Look., minutes: 1, needs: [nothing], expect: Seen., results: {results}}}\n"
    result = run(written(tmp_path, text.replace("causes:\n", idle + "causes:\n")))
    assert result.exit_code == 1
    assert result.stderr.count("error ") == 1
    assert "error no-cause-left" in result.stderr


def test_the_shipped_library_is_the_default() -> None:
    fault = sorted((ROOT / "content" / "faults").glob("*.yaml"))[0].stem
    assert run(fault).exit_code == 0
