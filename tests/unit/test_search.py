"""The search, under node, over the documents of the shipped records: what people type, and what has to come first."""

from __future__ import annotations

import gzip
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml

from latchside.library import Library
from latchside.pages.finder import finder_index
from latchside.root import ROOT

NODE = Path(sys.executable).parent / "node"
SCRIPTS = ROOT / "content/assets/js"
QUERIES: list[dict[str, str]] = yaml.safe_load((Path(__file__).parent / "queries.yaml").read_text("utf-8"))
CAP = 150_000
"""Bytes, packed, of the documents and of all that searches them."""

FIND = """
const { prepare } = await import(`${scripts}/finder/index.js`);
const { addressOf, find, marked } = await import(`${scripts}/finder/rank.js`);
const index = await prepare(data);
const shown = (found) => ({
  page: found.thing.address,
  address: addressOf(found),
  line: found.line.text,
  marked: marked(found.line.text, found.hits),
});
answer(queries.map((query) => find(index, query).map(shown)));
"""


def run(tmp_path: Path, code: str, **given: Any) -> Any:
    """What code answers under node, with some values given."""
    (tmp_path / "package.json").write_text('{"type": "module"}', "utf-8")
    (tmp_path / "given.json").write_text(json.dumps({"scripts": SCRIPTS.as_uri(), **given}), "utf-8")
    head = f"""import {{ readFileSync }} from "node:fs";
    const {{ {", ".join(["scripts", *given])} }} = JSON.parse(readFileSync("given.json", "utf8"));
    const answer = (value) => process.stdout.write(JSON.stringify(value));"""
    (tmp_path / "run.js").write_text(head + code, "utf-8")
    done = subprocess.run([NODE, "run.js"], cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


@pytest.fixture(scope="module")
def documents(shipped_library: Library) -> str:
    return finder_index(shipped_library, {"cards/meter/": ("What the meter says", [("none", "No resistor")])})


@pytest.fixture(scope="module")
def found(documents: str, tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[dict[str, Any]]]:
    """What is found for each query of the table."""
    typed = [one["types"] for one in QUERIES]
    answers = run(tmp_path_factory.mktemp("search"), FIND, data=json.loads(documents), queries=typed)
    return dict(zip(typed, answers, strict=True))


def test_what_people_type_leads_where_it_has_to(found: dict[str, list[dict[str, Any]]]) -> None:
    wrong = {}
    for one in QUERIES:
        pages = [answer["page"] for answer in found[one["types"]]]
        wanted, room = (one["first"], 1) if "first" in one else (one["three"], 3)
        if wanted not in pages[:room]:
            wrong[one["types"]] = (wanted, pages[:room])
    assert not wrong


def test_the_table_is_of_many_mouths() -> None:
    assert len({one["types"] for one in QUERIES}) == len(QUERIES) >= 60
    assert {"new hire", "lead", "old hand", "US", "UK", "misspelled", "in a hurry"} <= {one["who"] for one in QUERIES}
    assert all(("first" in one) != ("three" in one) for one in QUERIES)


def test_a_line_is_shown_whole_with_what_fits_marked(found: dict[str, list[dict[str, Any]]]) -> None:
    for query, answers in found.items():
        for one in answers:
            assert "".join(piece["text"] for piece in one["marked"]) == one["line"]
            assert any(piece["hit"] for piece in one["marked"]), (query, one)


def test_a_line_of_a_page_leads_to_its_own_place(documents: str, tmp_path: Path) -> None:
    queries = ["Hold a test magnet at the mark on the sensor", "screw and pad clear of drains", "no resistor"]
    magnet, item, heading = run(tmp_path, FIND, data=json.loads(documents), queries=queries)
    assert "faults/shows-open-when-shut/#check-test-magnet" in [one["address"] for one in magnet]
    assert item[0]["address"] == "checklists/position/#item-surface-screws"
    assert "cards/meter/#none" in [one["address"] for one in heading]


def test_every_thing_is_found_by_its_own_name(documents: str, tmp_path: Path) -> None:
    data = json.loads(documents)
    names = [entry[2] for entry in data["entries"]]
    own = [data["kinds"][entry[0]][2].replace("{id}", entry[1]) for entry in data["entries"]]
    answers = run(tmp_path, FIND, data=data, queries=names)
    pairs = zip(names, own, answers, strict=True)
    missed = [name for name, address, list_ in pairs if address not in [one["page"] for one in list_[:4]]]
    assert not missed


def test_nonsense_finds_nothing_and_harms_nothing(documents: str, tmp_path: Path) -> None:
    queries = ["", "   ", "qwertyuiop", "\u0000\u202e", "!!!", "x" * 5000, "__proto__", "constructor", "the", "%"]
    answers = run(tmp_path, FIND, data=json.loads(documents), queries=queries)
    assert [answers[at] for at in (0, 1, 2, 3, 4, 6)] == [[]] * 6
    assert all(len(list_) <= 12 for list_ in answers)


ALIKE = [
    ["2k2", "2.2 kΩ", "2.2 kohm", "2,2k ohms"],
    ["38mm", "38 mm", "38 millimetres"],
    ["enrolled", "enroll", "enrolling", "enrols"],
    ["colour coded", "color coded"],
    ["aluminium", "aluminum"],
    ["metallised", "metalized", "metallized"],
    ["shut", "closed", "closes", "closing"],
    ["won't", "cannot", "does not"],
    ["batteries", "battery"],
    ["the door", "door", "doors"],
]
APART = [
    ["open", "shut"],
    ["arm", "disarm"],
    ["opening", "open"],
    ["set", "unset"],
    ["2.2 kΩ", "22 kΩ"],
    ["5 m", "5 mm"],
]
WORDS = """
const { words } = await import(`${scripts}/finder/text.js`);
answer(groups.map((group) => group.map((text) => words(text).map(({ word }) => word).join(" "))));
"""


def test_other_ways_of_writing_come_out_alike_and_opposites_do_not(tmp_path: Path) -> None:
    written = run(tmp_path, WORDS, groups=[*ALIKE, *APART])
    for texts, words in zip(ALIKE, written, strict=False):
        assert len(set(words)) == 1, (texts, words)
    for texts, words in zip(APART, written[len(ALIKE) :], strict=True):
        assert len(set(words)) == 2, (texts, words)


STATES = """
const { states } = await import(`${scripts}/finder/states.js`);
const { words } = await import(`${scripts}/finder/text.js`);
answer(texts.map((text) => states(words(text).map(({ word }) => word))));
"""


def test_what_is_shown_is_told_from_what_is_so(tmp_path: Path) -> None:
    said = {
        "Zone shows open, leaf is shut": {"sign": "open", "thing": "shut"},
        "zone shows shut when the door is open": {"sign": "shut", "thing": "open"},
        "the door is closed and the keypad still reads open": {"thing": "shut", "sign": "open"},
        "shows open when closed": {"sign": "open", "thing": "shut"},
        "zone won't close": {"sign": "open"},
        "an open window": {"thing": "open"},
        "an opening": {},
    }
    assert run(tmp_path, STATES, texts=list(said)) == list(said.values())


def test_what_travels_for_the_search_stays_small(documents: str) -> None:
    scripts = [*(SCRIPTS / "finder").glob("*.js"), SCRIPTS / "vendor/minisearch.js"]
    packed = [gzip.compress(text, 6) for text in (documents.encode(), *(path.read_bytes() for path in scripts))]
    assert sum(map(len, packed)) <= CAP


@pytest.mark.parametrize(
    ("address", "words"),
    [
        ("faults/reads-hihg/", "reads hihg"),
        ("devices/surface-contact/fixing/", "surface contact fixing"),
        ("terms.html", "terms"),
        ("deep/er/still/position", "er still position"),
        ("checklists/two%20words+more/", "two words more"),
        ("faults/%E0%A4%A/", ""),
        ("404.html", ""),
        ("", ""),
    ],
)
def test_a_wrong_address_is_read_for_words_to_look_for(tmp_path: Path, address: str, words: str) -> None:
    code = "const { wordsOf } = await import(`${scripts}/finder/address.js`); answer(wordsOf(address));"
    assert run(tmp_path, code, address=address) == words
