"""The record of a visit as a file: what is sound passes the schema, what is not is told in words, with no traceback."""

from __future__ import annotations

import copy
import json
import subprocess
import sys
from pathlib import Path
from random import Random
from typing import Any

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from latchside.cli import main
from latchside.visits.file import parse_visit

from ..visits.hostile import HOSTILE, INJECTION, TWICE, injecting_record
from ..visits.make import SCHEMA, full_record, history, item, record, site, some_id

VALIDATOR = Draft202012Validator(json.loads(SCHEMA.read_text("utf-8")))


def run(*files: Path) -> tuple[int, str, str]:
    done = CliRunner().invoke(main, ["record", *map(str, files)])
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done.exit_code, done.stdout, done.stderr


def saved(folder: Path, data: Any, name: str = "visit.json") -> Path:
    path = folder / name
    path.write_text(data if isinstance(data, str) else json.dumps(data), "utf-8", "surrogatepass")
    return path


def test_a_record_with_everything_fits_its_schema() -> None:
    assert not list(VALIDATOR.iter_errors(full_record()))
    found, faults = parse_visit(json.dumps(full_record()), SCHEMA)
    assert not faults
    assert found is not None
    assert len(found.entries) == len(full_record()["entries"])


@given(st.integers(0, 10**6))
def test_any_history_fits_the_schema(seed: int) -> None:
    for entries in history(Random(seed)):
        assert not list(VALIDATOR.iter_errors(record(*entries)))


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_is_refused_in_words(name: str, tmp_path: Path) -> None:
    code, out, err = run(saved(tmp_path, HOSTILE[name]))
    assert code == 1
    assert out == ""
    assert "found" in err
    assert "next" in err
    assert "Traceback" not in err
    assert "\x1b" not in err


@pytest.mark.parametrize("content", [b"\xff\xfe\x00", b"\x00" * 100, TWICE.encode()], ids=["utf-16", "zeros", "twice"])
def test_bytes_that_are_no_record_are_refused(content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "visit.json"
    path.write_bytes(content)
    assert run(path)[0] == 1


def test_what_is_no_file_is_refused(tmp_path: Path) -> None:
    assert run(tmp_path)[0] == 1
    assert run(tmp_path / "missing.json")[0] == 1


def test_the_fault_is_told_where_it_is(tmp_path: Path) -> None:
    bad = record(site(), item(2, 2, outcome="fine"), item(3, 3, note=7))
    err = run(saved(tmp_path, bad))[2]
    assert "entry 2, outcome" in err
    assert '"fine" is none of' in err
    assert "entry 3, note" in err
    assert "is no string" in err


def test_the_table_says_what_was_done(tmp_path: Path) -> None:
    code, out, err = run(saved(tmp_path, full_record()))
    assert (code, err) == (0, "")
    for words in (
        "Elm House, 2026-11-25", "Back door", "Position: Back door (version 1)", "inside: expected 3 to 10", "PROBLEM",
        "Hinge is loose", "not applicable", "No latch here", "over range", "Key with the neighbour", "1 taken back",
    ):  # fmt: skip
        assert words in " ".join(out.split()), words


def test_texts_are_never_markup_in_the_table(tmp_path: Path) -> None:
    data = record(site(site="[bold red]Elm[/] :skull: [link=file:///x]y[/link]"))
    out = run(saved(tmp_path, data))[1]
    assert "[bold red]Elm[/] :skull: [link=file:///x]y[/link], 2026-11-25" in out
    out = "".join(run(saved(tmp_path, injecting_record()))[1].split())
    assert "".join(INJECTION[:60].split()) in out


def test_a_note_that_looks_like_a_code_is_warned_of(tmp_path: Path) -> None:
    code, _, err = run(saved(tmp_path, record(site(), item(2, 2, outcome="problem", note="Keypad takes 4711"))))
    assert code == 0
    assert some_id(2) in err
    assert "code" in err


def test_two_records_of_one_visit_are_put_together(tmp_path: Path) -> None:
    anna = saved(tmp_path, record(site(), item(2, 2)), "anna.json")
    ben = saved(tmp_path, record(site(), item(3, 2, item="look", by="Ben")), "ben.json")
    code, out, _ = run(anna, ben)
    assert code == 0
    assert "3 entries by Anna, Ben" in out
    assert run(ben, anna)[1] == out


def test_an_altered_copy_is_not_put_together(tmp_path: Path) -> None:
    one = saved(tmp_path, record(site(), item(2, 2)), "one.json")
    two = saved(tmp_path, record(site(), item(2, 2, outcome="problem", note="x")), "two.json")
    code, _, err = run(one, two)
    assert code == 1
    assert some_id(2) in err


def test_different_visits_are_not_put_together(tmp_path: Path) -> None:
    other = some_id(77)
    strangers = [{**one, "visit": other} for one in record(site())["entries"]]
    one, two = saved(tmp_path, record(site()), "one.json"), saved(tmp_path, record(*strangers, visit=other), "two.json")
    assert run(one, two)[0] == 1


def test_the_command_as_it_is_called(tmp_path: Path) -> None:
    """In a pipe there are no colours, and a broken file ends in 1 without a traceback."""
    command = [sys.executable, "-m", "latchside.cli", "record"]
    good = subprocess.run([*command, str(saved(tmp_path, full_record()))], capture_output=True, check=False)
    assert good.returncode == 0
    assert b"\x1b" not in good.stdout
    bad = subprocess.run([*command, str(saved(tmp_path, HOSTILE["deep"]))], capture_output=True, check=False)
    assert bad.returncode == 1
    assert b"Traceback" not in bad.stderr


SPOILT: list[Any] = [None, True, False, 0, -1, 1.5, 10**30, "", "x", "x" * 600, "\u202e", [], [[]], {}, {"a": 1}]


def spoil(data: dict[str, Any], chance: Random) -> str:
    """The record with one thing in it changed, taken away or added."""
    spoilt = copy.deepcopy(data)
    at: Any = spoilt
    while True:
        key = chance.choice(list(at) if isinstance(at, dict) else range(len(at))) if at else None
        if key is None or not isinstance(at[key], dict | list) or not at[key] or chance.random() < 0.2:
            break
        at = at[key]
    if key is None or (isinstance(at, dict) and chance.random() < 0.2):
        at["odd"] = chance.choice(SPOILT)
    elif chance.random() < 0.3:
        del at[key]
    else:
        at[key] = chance.choice(SPOILT)
    return json.dumps(spoilt)


@given(st.integers(0, 10**6))
def test_a_spoilt_record_is_read_or_refused(seed: int) -> None:
    text = spoil(full_record(), Random(seed))
    found, faults = parse_visit(text, SCHEMA)
    assert (found is None) == bool(faults)
    if found:
        assert VALIDATOR.is_valid(json.loads(text))


@given(st.binary(max_size=200))
def test_any_bytes_are_refused(content: bytes) -> None:
    assert parse_visit(content.decode("utf-8", "replace"), SCHEMA)[0] is None
