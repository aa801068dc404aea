"""The text that tells of an error on a page, and the letter that holds it, under node."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest

from latchside.messages.javascript import scripts
from latchside.root import ROOT

NODE = Path(sys.executable).parent / "node"
ATTACK = "<script>alert(1)</script>&body=x&bcc=a@b.example?#\u202e%0D%0Aq"
FACTS = {
    "title": f"Reads high {ATTACK}",
    "address": "https://field.example/library/faults/reads-high/",
    "version": "2.1",
    "date": "2026-11-27",
    "region": "UK",
}
RUN = """
import { readFileSync } from "node:fs";
const [name, ...given] = JSON.parse(readFileSync(0, "utf8"));
const it = await import("./assets/js/report/text.js");
process.stdout.write(JSON.stringify(it[name](...given)));
"""


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("scripts")
    (folder / "package.json").write_text('{"type": "module"}', "utf-8")
    for path, text in scripts().items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, "utf-8")
    for name in ("report/text.js", "core/message.js"):
        target = folder / "assets/js" / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes((ROOT / "content/assets/js" / name).read_bytes())
    return folder


def call(site: Path, *given: Any) -> str:
    done = subprocess.run(
        [str(NODE), "--input-type=module", "--eval", RUN],
        cwd=site, input=json.dumps(given), capture_output=True, encoding="utf-8", check=True,
    )  # fmt: skip
    return str(json.loads(done.stdout))


def test_the_text_says_which_page_of_which_content_and_keeps_what_was_typed(site: Path) -> None:
    lines = call(site, "report", FACTS, " It is 3 mm.\n\tNot 9 mm. ").split("\n")
    assert lines[0] == f"Page: Reads high {ATTACK}".replace("\u202e", " ")
    assert lines[1:4] == [f"Address: {FACTS['address']}", "Content: version 2.1, 2026-11-27", "Region: UK"]
    assert lines[-2:] == ["It is 3 mm.", "Not 9 mm."]
    assert "version not known" in call(site, "report", {**FACTS, "version": ""}, "")


def test_a_letter_holds_all_of_it_and_nothing_breaks_out(site: Path) -> None:
    letter = urlsplit(call(site, "letter", "library@firm.example", FACTS, ATTACK))
    asked = parse_qs(letter.query, strict_parsing=True)
    assert (letter.scheme, letter.path, letter.fragment) == ("mailto", "library@firm.example", "")
    assert set(asked) == {"subject", "body"}
    assert "\n" not in asked["subject"][0]
    shown = ATTACK.replace("\u202e", " ")
    assert asked["body"][0].replace("\r\n", "\n").endswith(shown)
    assert "\n" not in asked["body"][0].replace("\r\n", "")
