"""`latchside tally`: causes that saved visits found are counted, nothing of a site is told, bad files are refused."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from latchside.cli import main
from latchside.visits.state import view
from latchside.visits.tally import Names, as_rows, as_text, tally

from ..visits.hostile import HOSTILE
from ..visits.make import DOOR, Entry, entry, item, record, site

NAMES = Names({"reads-high": ["corroded-joint", "worn-reed"]}, ["recessed-contact"])
PLACE = {"fault": "reads-high", "device": "recessed-contact"}
SECRETS = ("Elm House", "Back door", "Anna", "2026-11-25", "neighbour", "4.5", "inside the gap")


def outcome(number: int, what: str, came: str = "done", *, fault: str = "reads-high", **fields: Any) -> Entry:
    """What a guided run wrote."""
    about = {"checklist": f"fault-run-{fault}", "list_name": "Fault: reads high", "item": what, "outcome": came}
    return item(number, number, **about, **({"note": "for the neighbour"} if came != "done" else {}), **fields)


def door(device: str | None = "recessed-contact") -> Entry:
    return entry("opening", 2, 2, opening=DOOR, name="Back door", device=device, removed=False, after=[])


def visit(number: int, *entries: Entry) -> dict[str, Any]:
    """A record of one of several visits."""
    id_ = f"00000000-0000-4000-8000-{number:012}"
    return record(*({**one, "visit": id_} for one in (site(), door(), *entries)), visit=id_)


def saved(folder: Path, *records: Any) -> list[Path]:
    paths = [folder / f"visit-{number}.json" for number, _ in enumerate(records)]
    for path, data in zip(paths, records, strict=True):
        path.write_text(data if isinstance(data, str) else json.dumps(data), "utf-8", "surrogatepass")
    return paths


def run(*arguments: str | Path) -> tuple[int, str, str]:
    done = CliRunner().invoke(main, ["tally", *map(str, arguments)])
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done.exit_code, done.stdout, done.stderr


def test_the_causes_of_several_files_are_counted_without_the_site(tmp_path: Path) -> None:
    reading = {"value": 4.5, "unit": "mm"}
    first = visit(
        1, outcome(3, "check-meter-loop-shut", reading=reading), outcome(4, "cause-corroded-joint", "not-applicable"),
        outcome(5, "cause-worn-reed"),
    )  # fmt: skip
    second = visit(2, outcome(3, "cause-worn-reed"), outcome(4, "cause-thin-cable", opening=None))
    third = visit(3, outcome(3, "cause-corroded-joint", "problem"), outcome(4, "passed-on", "problem"))
    code, out, err = run("--json", *saved(tmp_path, first, second, third))
    assert (code, err) == (0, "")
    assert json.loads(out) == [
        PLACE | {"cause": "corroded-joint", "found": 0, "mended_in_vain": 1},
        PLACE | {"cause": "thin-cable", "device": None, "found": 1, "mended_in_vain": 0},
        PLACE | {"cause": "worn-reed", "found": 2, "mended_in_vain": 0},
        {"fault": "reads-high", "passed_on": 1},
    ]
    code, told, _ = run(*saved(tmp_path, first, second, third))
    assert code == 0
    assert "2        0  reads-high / worn-reed (recessed-contact)" in told
    assert "1           reads-high: passed on" in told
    assert not [words for words in SECRETS if words in out + told]


def test_two_copies_of_one_visit_count_once(tmp_path: Path) -> None:
    one = visit(1, outcome(3, "cause-worn-reed"))
    _, out, _ = run("--json", *saved(tmp_path, one, one))
    assert json.loads(out) == [PLACE | {"cause": "worn-reed", "found": 1, "mended_in_vain": 0}]


def test_words_where_a_name_belongs_are_never_told(tmp_path: Path) -> None:
    entries = (
        outcome(3, "cause-elm-house"), outcome(4, "cause-anna", fault="back-door-of-elm-house"),
        outcome(5, "cause-worn-reed"), outcome(6, "passed-on", "problem", fault="elm-house"),
    )  # fmt: skip
    made = visit(1, *entries)
    made["entries"][1]["device"] = "elm-house-back-door"
    for arguments in (("--json",), ()):
        code, out, _ = run(*arguments, *saved(tmp_path, made))
        assert code == 0
        assert not [words for words in ("elm", "anna", "back") if words in out.lower()]
    assert "3           faults or causes that this library does not hold" in " ".join(out.splitlines())


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_is_refused_and_nothing_is_counted(name: str, tmp_path: Path) -> None:
    sound = visit(1, outcome(3, "cause-worn-reed"))
    code, out, err = run(*saved(tmp_path, sound, HOSTILE[name]))
    assert (code, out) == (1, "")
    assert "found" in err


def test_an_altered_copy_is_refused(tmp_path: Path) -> None:
    one, other = visit(1, outcome(3, "cause-worn-reed")), visit(1, outcome(3, "cause-corroded-joint"))
    code, out, err = run(*saved(tmp_path, one, other))
    assert (code, out) == (1, "")
    assert "one of them was altered" in err


def test_what_was_taken_back_is_not_counted() -> None:
    done = outcome(3, "cause-worn-reed")
    undone = entry("undo", 4, 4, undoes=[done["id"]], reason="undo")
    assert as_rows(tally([view([done, undone])], NAMES)) == []
    assert as_text(tally([], NAMES)) == "These records hold no guided run of a fault."


def test_no_other_list_is_counted() -> None:
    assert as_rows(tally([view([item(3, 3, item="cause-worn-reed")])], NAMES)) == []
