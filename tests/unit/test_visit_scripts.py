"""What scripts make of entries, under node: where to go on, what is finished, what a visit takes along."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from latchside.messages.javascript import scripts
from latchside.root import ROOT
from latchside.visits.state import view

from ..visits.make import DOOR, VISIT, Entry, entry, item, site, some_id

NODE = Path(sys.executable).parent / "node"
LOOSE = "00000000-0000-4000-8000-00000000010a"
RUN = """
import { readFileSync } from "node:fs";
const { module, call, given } = JSON.parse(readFileSync(0, "utf8"));
const visit = (name) => import(`./assets/js/visit/${name}.js`);
const [{ view }, it] = [await visit("entries"), await visit(module)];
const calls = {
  lastWork: (entries, loose) => it.lastWork(entries, loose),
  isFinished: (entries, lists) => it.isFinished(view(entries), lists),
  adopted: (entries, checklist, to, opening, ids) =>
    it.adopted(it.loosely(view(entries), checklist), to, opening, () => ids.shift()),
};
process.stdout.write(JSON.stringify(calls[call](...given)));
"""

Call = Callable[..., Any]


@pytest.fixture(scope="module")
def call(tmp_path_factory: pytest.TempPathFactory) -> Call:
    """A function that calls one of the scripts' under node."""
    folder = tmp_path_factory.mktemp("site")
    source = ROOT / "content"
    texts = {str(path.relative_to(source)): path.read_text("utf-8") for path in (source / "assets/js").rglob("*.js")}
    for path, text in {**texts, **scripts(), "package.json": '{"type": "module"}', "run.js": RUN}.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, "utf-8")

    def called(module: str, name: str, *given: Any) -> Any:
        asked = json.dumps({"module": module, "call": name, "given": given})
        made = subprocess.run([NODE, "run.js"], cwd=folder, input=asked, stdout=subprocess.PIPE, text=True, check=True)
        return json.loads(made.stdout)

    return called


def door() -> Entry:
    return entry("opening", 2, 2, opening=DOOR, name="Back door", device="surface-contact", removed=False, after=[])


def complete(number: int, n: int) -> Entry:
    run = {"checklist": "position", "list_name": "Position", "list_version": 1, "opening": DOOR}
    return entry("complete", number, n, **run, words="It sits.", after=[])


def test_one_goes_on_where_the_last_answer_was_given(call: Call) -> None:
    entries = [site(), door(), item(3, 3), item(4, 4, item="look")]
    assert call("last-work", "lastWork", entries, False) == {
        "path": f"checklists/position/?visit={VISIT}&opening={DOOR}",
        "list": "Position",
        "opening": "Back door",
        "site": "Elm House",
        "answers": 2,
    }
    fault = item(5, 5, checklist="fault-run-reads-high", list_name="The loop reads high")
    found = call("last-work", "lastWork", [*entries, fault], False)
    assert found["path"] == f"faults/reads-high/?visit={VISIT}&opening={DOOR}"


def test_what_is_complete_or_archived_is_not_gone_on_with(call: Call) -> None:
    entries = [site(), door(), item(3, 3), complete(4, 4)]
    assert call("last-work", "lastWork", entries, False)["path"] == f"visits/#v={VISIT}"
    assert call("last-work", "lastWork", [*entries, entry("state", 5, 5, state="archived", after=[])], False) is None
    assert call("last-work", "lastWork", [], False) is None


def test_a_list_without_a_visit_is_gone_on_with(call: Call) -> None:
    found = call("last-work", "lastWork", [item(1, 1, opening=None)], True)
    assert (found["path"], found["site"]) == ("checklists/position/", "")


def test_a_visit_is_finished_once_every_list_begun_is_complete(call: Call) -> None:
    lists = [{"id": "position", "items": [{"id": "gap", "words": item(1, 1)["words"]}]}]
    begun = [site(), door(), item(3, 3)]
    assert call("sheet", "isFinished", [site(), door()], lists) is False
    assert call("sheet", "isFinished", begun, lists) is False
    assert call("sheet", "isFinished", [*begun, complete(4, 4)], lists) is True


def test_a_visit_takes_along_what_was_answered_before_it(call: Call) -> None:
    """The same answers, made when and by whom they were made; what two entries give differently stays."""
    reading = {"reading": {"value": 4.5, "unit": "mm"}}
    loose = [
        {**one, "visit": LOOSE, "opening": None}
        for one in (
            item(1, 1, outcome="problem", note="Too wide"),
            item(2, 2, after=[some_id(1)], at="2026-11-24T17:00:00.000+00:00", **reading),
            item(3, 3, item="look"),
            item(4, 3, item="look", outcome="problem", note="Loose", by="Ben"),
            item(5, 4, item="latch", checklist="fixing"),
        )
    ]
    (draft,) = call("adopt", "adopted", loose, "position", VISIT, DOOR, [some_id(90)])
    kept = {key: value for key, value in loose[1].items() if key != "n"}
    assert draft == {**kept, "id": some_id(90), "visit": VISIT, "opening": DOOR, "after": []}
    run = view([site(), {**draft, "n": 2}]).runs[f"position|{DOOR}"]
    assert run.outcome("gap") == "done"
