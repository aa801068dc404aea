"""The policy of a page, the finder's index, and the pocket copy."""

from __future__ import annotations

import json
import re
import zipfile
from base64 import b64encode
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path
from typing import Any

import html5lib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.escape import safe
from latchside.kinds import KINDS
from latchside.library import Library
from latchside.pages.finder import finder_index
from latchside.root import ROOT
from latchside.site.csp import policy, with_policy
from latchside.site.lean import lean, lean_page, lean_sheet
from latchside.site.pocket import FOLDER, pocket_files, write_zip

HEAD = '<!doctype html><html><head><meta charset="utf-8">'


def digest(text: str) -> str:
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"


# -- policy --------------------------------------------------------------------------------------------------


def test_inline_scripts_are_named_by_hash_and_nothing_else_is() -> None:
    page = (
        f'{HEAD}<script>a("ü")</script><script src="b.js"></script>'
        '<script id="__config" type="application/json">{"c": 1}</script><script>a("ü")</script><script>\nd\n</script>'
    )
    rules = dict(rule.split(" ", 1) for rule in policy(page).split("; "))
    assert rules["script-src"].split() == ["'self'", digest('a("ü")'), digest("\nd\n")]
    assert rules["default-src"] == rules["base-uri"] == rules["form-action"] == "'none'"
    assert rules["img-src"] == "'self' data:", "photographs too are shown as data"
    assert not [rule for rule in rules.values() if "unsafe" in rule or "http" in rule or "*" in rule]


def test_only_a_page_that_plans_compiles_in_a_worker_of_its_own() -> None:
    rules = dict(rule.split(" ", 1) for rule in policy(f"{HEAD}<div data-ls-plans></div>").split("; "))
    assert rules["script-src"].split() == ["'self'", "'wasm-unsafe-eval'"]
    assert rules["worker-src"].split() == ["'self'", "blob:"]
    assert rules["connect-src"] == "'self'"
    assert "blob:" not in policy(HEAD)


def test_the_policy_stands_before_anything_that_runs() -> None:
    page = with_policy(f"{HEAD}<script>a</script>")
    assert page.index("Content-Security-Policy") < page.index("<script")


@pytest.mark.parametrize("page", ["<html></html>", f"<script>a</script>{HEAD}", f"{HEAD}{HEAD}"])
def test_a_page_without_a_place_for_it_is_refused(page: str) -> None:
    with pytest.raises(ValueError, match="policy"):
        with_policy(page)


# -- scripts -------------------------------------------------------------------------------------------------


def test_a_script_is_served_without_what_only_its_writers_read() -> None:
    script = """/** What it does. @param {string} a */
import { b } from "./b.js"; // goes

// goes
export function a(x) {
  /** @type {any} */
  const y = /** @type {any} */ (x);
  return `${y} // https://a.example/*b*/`;
}
"""
    assert lean(script) == (
        'import{b}from "./b.js";export function a(x){const y=(x);return `${y} // https://a.example/*b*/`;\n}\n'
    )


@pytest.mark.parametrize(
    ("written", "served"),
    [
        ("f(\n  a,\n  b,\n);\ng();\n", "f(a,b);g();\n"),
        ("const a = {\n  b: [1, 2],\n};\n", "const a={b:[1,2]};\n"),
        ("const a = b\n  ? c\n  : -d;\n", "const a=b?c:-d;\n"),
        ("a = b + +c - -d;\n", "a=b + +c - -d;\n"),
        ("a = b\n+c\n", "a=b\n+c\n"),
    ],
)
def test_spaces_and_line_ends_that_mean_nothing_are_not_served(written: str, served: str) -> None:
    assert lean(written).rstrip("\n") == served.rstrip("\n")


@pytest.mark.parametrize(
    "line",
    [
        'a("b , c ; // d ( e");',
        "a(`b , ${c} = d`);",
        "a(`b ${c ? ` , ${d}` : ' = '} e`);",
        "a = /b , c/.test(d);",
        "a = 'b , c';",
    ],
)
def test_a_text_is_served_as_it_was_written(line: str) -> None:
    """What stands between quotation marks, slashes or backticks is the same in what is served."""
    for text in re.findall(r"""("[^"]*"|`.*`|/b , c/|'[^']*')""", line):
        assert text in lean(f"{line}\nb();\n")


def test_a_text_over_several_lines_keeps_them() -> None:
    assert lean("/** a */\nconst a = `b\n  c`;\n") == "\nconst a=`b\n  c`;\n"


def test_markup_over_several_lines_is_served_as_one_and_reads_the_same() -> None:
    script = "a = html`<ul>\n    ${b.map(\n      (c) => html`<li>d = ${c}</li>`, // e\n    )}\n  </ul>`;\nf();\n"
    assert lean(script) == "a=html`<ul> ${b.map( (c) => html`<li>d = ${c}</li>`, )} </ul>`;f();"


def test_a_page_is_served_without_empty_lines_unless_it_shows_text_as_typed() -> None:
    assert lean_page("<p>\n\n   a  \n \n</p>") == "<p>\na\n</p>"
    assert lean_page("<pre>\n\n  a</pre>") == "<pre>\n\n  a</pre>"
    assert lean_page('<link rel="next" href="x">\n<link rel="icon" href="y">') == '<link rel="icon" href="y">'


@given(st.text())
def test_a_page_reads_the_same_with_signs_as_themselves(text: str) -> None:
    """As a browser would read it, in a text and in an attribute, before and after."""
    page = f'<p title="{safe(text)}">{safe(text)}</p>'
    before, after = (html5lib.parseFragment(one, namespaceHTMLElements=False)[0] for one in (page, lean_page(page)))
    assert list(after) == []
    assert after.text == before.text
    assert after.attrib == before.attrib
    assert not re.search("&#(?:35|58|123|125);", lean_page(page))


def test_a_script_keeps_its_signs() -> None:
    page = '<p>a&#58; b</p><script>"a&#58; b"</script>'
    assert lean_page(page) == '<p>a: b</p><script>"a&#58; b"</script>'


# -- finder --------------------------------------------------------------------------------------------------


def test_every_record_that_explains_or_helps_can_be_found(shipped_library: Library) -> None:
    data = json.loads(finder_index(shipped_library, {"cards/meter/": ("What the meter says", [])}))
    found = {(data["kinds"][entry[0]][2], entry[1]) for entry in data["entries"]}
    for kind, records in shipped_library.records.items():
        if kind == "word":
            continue  # the words of a region are found at the terms that explain them
        assert {(KINDS[kind].address, id_) for id_ in records} <= found, kind
    assert ("{id}", "cards/meter/") in found
    assert {("devices/{id}/install/", device.id) for device in shipped_library.of("device")} <= found


def strings(value: Any) -> Iterator[str]:
    """Every text in a value."""
    if isinstance(value, str):
        yield value
    else:
        for one in value:
            yield from strings(one)


def test_both_continents_words_and_what_people_say_are_in_it(shipped_library: Library) -> None:
    data = json.loads(finder_index(shipped_library, {}))
    kinds = [kind for kind, _, _ in data["kinds"]]
    text = {(kinds[entry[0]], entry[1]): "\n".join(strings(entry[2:])) for entry in data["entries"]}
    for term in shipped_library.of("term"):
        for words in (*term["north_america"], *term["europe"]):
            assert words.casefold() in text["term", term.id].casefold(), (term.id, words)
    for fault in shipped_library.of("fault"):
        assert not [words for words in fault["says"] if words not in text["fault", fault.id]]
    assert "[[" not in "".join(text.values())


# -- pocket --------------------------------------------------------------------------------------------------


def test_links_of_the_pocket_copy_name_files_and_nothing_runs(tmp_path: Path) -> None:
    links = '<a href="../../">h</a><a href="../b/#c">b</a><a href="#x">x</a><a href="https://a.example/">o</a>'
    more = (
        '<a href="./">s</a><a href="../../gone/">g</a><a href="?a=1#y">q</a><img src="../../d.svg"><script>run</script>'
    )
    pages = {
        "index.html": '<a href="a/b/">b</a><a href=".">h</a>', "a/x/index.html": links + more, "a/b/index.html": "b",
        "d.svg": "<svg/>", "sw.js": "x", "finder.json": "{}", "404.html": "no",
    }  # fmt: skip
    for path, text in pages.items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_text(with_policy(HEAD + text) if path.endswith(".html") else text, "utf-8")
    files = pocket_files(tmp_path)
    assert set(files) == {"index.html", "a/x/index.html", "a/b/index.html", "d.svg"}
    page = files["a/x/index.html"].decode()
    assert re.findall('(?:href|src)="([^"]*)"', page) == [
        "../../index.html", "../b/index.html#c", "#x", "https://a.example/", "index.html", "../../index.html",
        "index.html#y", "../../d.svg",
    ]  # fmt: skip
    assert "<script" not in page
    assert "script-src 'none'" in page
    assert re.findall('href="([^"]*)"', files["index.html"].decode()) == ["a/b/index.html", "index.html"]


def test_the_zip_is_the_same_every_time(tmp_path: Path) -> None:
    files = {"b/index.html": b"b", "index.html": b"a" * 1000}
    write_zip(files, tmp_path / "one.zip")
    write_zip(dict(reversed(files.items())), tmp_path / "two.zip")
    assert (tmp_path / "one.zip").read_bytes() == (tmp_path / "two.zip").read_bytes()
    with zipfile.ZipFile(tmp_path / "one.zip") as archive:
        assert archive.namelist() == [f"{FOLDER}/b/index.html", f"{FOLDER}/index.html"]
        assert {entry.date_time for entry in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert archive.read(f"{FOLDER}/b/index.html") == b"b"


def test_a_sheet_of_styles_loses_remarks_and_spaces_and_nothing_else() -> None:
    """Without white space, remarks and the last semicolon of a rule each sheet is what it was."""

    def bare(sheet: str) -> str:
        return re.sub(r";(?=\})", "", re.sub(r"\s+", "", re.sub(r"/\*.*?\*/", "", sheet, flags=re.DOTALL)))

    for path in sorted((ROOT / "content" / "assets").glob("*.css")):
        sheet = path.read_text("utf-8")
        served = lean_sheet(sheet)
        assert bare(served) == bare(sheet), path.name
        assert len(served) < 0.9 * len(sheet), path.name
    assert (
        lean_sheet("a >\n  b,\nc {\n  margin: calc(1px + 2px)\n    0;\n}\n") == "a >\nb,c{margin: calc(1px + 2px)\n0}\n"
    )
