"""Findings as people and as machines read them."""

from __future__ import annotations

import json
import re

from hypothesis import given
from hypothesis import strategies as st

from latchside.findings import Finding, Place, did_you_mean, one_of, quoted
from latchside.report import as_annotations, as_json, as_text, summary

ONE = Finding(
    "content/devices/gate-contact.yaml", Place(12, 5), "unknown-key", '"sumary" in the record',
    'one of: id, name, summary. Did you mean "summary"?', "Correct the key, or delete it.",
)  # fmt: skip
WARNING = Finding("a,b: c%.yaml", Place(1, 1), "some-code", "50 % of\r\nit", "all: of it.", "Mend it.", "warning")
HOSTILE = Finding("f.yaml", Place(1, 1), "code", "a\nb\x1b[2Jc\r\x07", "x\x9b31m\u2028y", "z\x00")


def test_text() -> None:
    assert as_text([ONE]) == (
        "content/devices/gate-contact.yaml:12:5: error unknown-key\n"
        '  found     "sumary" in the record\n'
        '  expected  one of: id, name, summary. Did you mean "summary"?\n'
        "  next      Correct the key, or delete it."
    )


def test_text_of_several_and_of_none() -> None:
    assert as_text([]) == ""
    assert as_text([ONE, ONE]) == f"{as_text([ONE])}\n\n{as_text([ONE])}"


def test_text_of_hostile_words_stays_in_its_lines() -> None:
    """A record's words reach a maintainer's terminal: they neither move the cursor nor write lines of their own."""
    text = as_text([HOSTILE])
    assert len(text.splitlines()) == 4
    assert not re.search(r"[\x00-\x09\x0b-\x1f\x7f-\x9f]", text)


def test_json() -> None:
    assert json.loads(as_json([ONE])) == [
        {
            "file": "content/devices/gate-contact.yaml", "line": 12, "column": 5,
            "code": "unknown-key", "level": "error", "found": '"sumary" in the record',
            "expected": 'one of: id, name, summary. Did you mean "summary"?',
            "action": "Correct the key, or delete it.",
        }
    ]  # fmt: skip
    assert json.loads(as_json([])) == []


TEXTS = st.text(max_size=30)
FINDINGS = st.builds(
    Finding, TEXTS, st.builds(Place, st.integers(1, 999), st.integers(1, 999)), TEXTS, TEXTS, TEXTS, TEXTS,
    st.sampled_from(["error", "warning"]),
)  # fmt: skip


@given(st.lists(FINDINGS, max_size=3))
def test_json_keeps_any_words(findings: list[Finding]) -> None:
    read = json.loads(as_json(findings))
    assert [(one["file"], one["found"], one["expected"], one["action"]) for one in read] == [
        (one.file, one.found, one.expected, one.action) for one in findings
    ]


def test_annotation() -> None:
    assert as_annotations([ONE]) == (
        "::error file=content/devices/gate-contact.yaml,line=12,col=5,title=unknown-key::"
        '"sumary" in the record. Expected: one of: id, name, summary. Did you mean "summary"? '
        "Correct the key, or delete it."
    )


def test_annotation_escapes() -> None:
    """Per cent, line breaks, colon and comma mean something in a workflow command, so they are written as %XX."""
    assert as_annotations([WARNING]) == (
        "::warning file=a%2Cb%3A c%25.yaml,line=1,col=1,title=some-code::"
        "50 %25 of%0D%0Ait. Expected: all: of it. Mend it."
    )


@given(st.lists(FINDINGS, min_size=1, max_size=3))
def test_each_annotation_is_one_command(findings: list[Finding]) -> None:
    lines = as_annotations(findings).split("\n")
    assert len(lines) == len(findings)
    for line in lines:
        assert re.match(r"::(error|warning) file=[^:,\r]*,line=\d+,col=\d+,title=[^:,\r]*::[^\r]*\Z", line, re.DOTALL)


def test_summary() -> None:
    assert summary([], 12) == "12 records, nothing found."
    assert summary([ONE, ONE, WARNING], 12) == "12 records: 2 errors, 1 warning."


def test_findings_sort_by_file_and_place() -> None:
    later = Finding("a.yaml", Place(10, 1), "a", "", "", "")
    first = Finding("a.yaml", Place(9, 80), "b", "", "", "")
    other = Finding("b.yaml", Place(1, 1), "a", "", "", "")
    assert sorted([other, later, first]) == [first, later, other]


def test_did_you_mean() -> None:
    assert did_you_mean("sumary", ["name", "summary"]) == ' Did you mean "summary"?'
    assert did_you_mean("sumary", []) == ""
    assert did_you_mean("zzz", ["name", "summary"]) == ""


def test_shown() -> None:
    assert quoted("a\n  b") == '"a b"'
    assert quoted(None) == "nothing"
    assert quoted(5) == "5"
    assert quoted("") == '""'
    assert len(quoted("x" * 500)) == 60
    assert quoted("x" * 500).endswith("…")


def test_one_of() -> None:
    assert one_of(["a", "b"]) == "one of: a, b"
    assert one_of([str(n) for n in range(20)], limit=2) == "one of: 0, 1, … (20 in all)"
