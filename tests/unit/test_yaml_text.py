"""YAML text becomes plain values with their places, more strictly than YAML 1.1."""

from __future__ import annotations

import json
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from latchside.findings import Place
from latchside.read.yaml_text import DEEPEST, read_text, scalar

from ..long import tries


def value(text: str) -> Any:
    document = read_text(text, "f.yaml")
    assert document.findings == []
    return document.value


def codes(text: str) -> list[tuple[int, int, str]]:
    return [(one.place.line, one.place.column, one.code) for one in read_text(text, "f.yaml").findings]


# What YAML 1.1 makes of these words; source: YAML 1.1 type repository, yaml.org/type: bool, int (base 60 and base 8),
# and timestamp. A record that says NO means the word.
@pytest.mark.parametrize(
    ("word", "in_yaml_1_1"),
    [
        ("NO", False), ("no", False), ("off", False), ("on", True), ("yes", True), ("True", True),
        ("12:30", 750), ("022", 18), ("0x1F", 31), ("1_000", 1000),
    ],
)  # fmt: skip
def test_words_stay_text(word: str, in_yaml_1_1: object) -> None:
    assert yaml.safe_load(f"a: {word}") == {"a": in_yaml_1_1}
    assert value(f"a: {word}") == {"a": word}


@pytest.mark.parametrize(
    "word", ["2001-01-01", ".nan", ".inf", "-.inf", ".5", "5.", "0b11", "=", "<<", "0o7", "y", "n"]
)
def test_other_odd_words_stay_text(word: str) -> None:
    assert value(f"a: {word}") == {"a": word}


@pytest.mark.parametrize(
    ("word", "number"),
    [("0", 0), ("7", 7), ("-10", -10), ("+5", 5), ("0.25", 0.25), ("-1.5", -1.5), ("1e3", 1000.0), ("1.5E-2", 0.015)],
)
def test_numbers(word: str, number: float) -> None:
    found = value(f"a: {word}")["a"]
    assert found == number
    assert type(found) is type(number)


def test_true_false_and_nothing() -> None:
    """Source: YAML 1.2.2, section 10.2.1.1: `~` and `null` are no text, unless they are quoted."""
    assert value("a: true\nb: false\nc:\n") == {"a": True, "b": False, "c": None}
    assert value("a: ~\nb: null\nc: \"~\"\nd: 'null'\ne: [~]\n") == {
        "a": None, "b": None, "c": "~", "d": "null", "e": [None]
    }  # fmt: skip
    assert codes("~") == [(1, 1, "empty-file")]


def test_quoted_is_always_text() -> None:
    assert value("a: \"1\"\nb: 'true'\nc: ''\nd: |\n  2\ne: >-\n  3\n") == {
        "a": "1",
        "b": "true",
        "c": "",
        "d": "2\n",
        "e": "3",
    }


@pytest.mark.parametrize("word", ["1e999", "1.0e400", "-1e999", "9" * 400, "1." + "0" * 400])
def test_no_number_is_endless(word: str) -> None:
    """A figure beyond what a float holds is not a figure; it stays text, which no figure's schema takes."""
    assert value(f"a: {word}") == {"a": word}


def test_keys_are_text() -> None:
    assert value("1: a\ntrue: b\nNO: c\n? d\n: e\n") == {"1": "a", "true": "b", "NO": "c", "d": "e"}


def test_places() -> None:
    text = "# a comment\nid: é\nlist:\n  - one\n  - {k: two, l: [3]}\nfold: >-\n  four\n  five\n"
    document = read_text(text, "f.yaml")
    assert document.places == {
        (): Place(2, 1),
        ("id",): Place(2, 5),
        ("list",): Place(4, 3),
        ("list", 0): Place(4, 5),
        ("list", 1): Place(5, 5),
        ("list", 1, "k"): Place(5, 9),
        ("list", 1, "l"): Place(5, 17),
        ("list", 1, "l", 0): Place(5, 18),
        ("fold",): Place(6, 7),
    }
    assert document.keys == {
        ("id",): Place(2, 1),
        ("list",): Place(3, 1),
        ("list", 1, "k"): Place(5, 6),
        ("list", 1, "l"): Place(5, 14),
        ("fold",): Place(6, 1),
    }


@pytest.mark.parametrize("end", ["\n", "\r\n"], ids=["lf", "crlf"])
def test_places_after_either_line_end(end: str) -> None:
    document = read_text(end.join(["a: 1", "b:", "  c: 2", ""]), "f.yaml")
    assert document.value == {"a": 1, "b": {"c": 2}}
    assert document.places["b", "c"] == Place(3, 6)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("", (1, 1, "empty-file")),
        (" \n\t\n", (1, 1, "empty-file")),
        ("# only a comment\n", (1, 1, "empty-file")),
        ("---\n", (1, 1, "empty-file")),
        ("--- # nothing\n...\n", (1, 1, "empty-file")),
        ("a: b: c\n", (1, 5, "broken-yaml")),
        ("a: [1, 2\n", (2, 1, "broken-yaml")),
        ("a: 'x\n", (2, 1, "broken-yaml")),
        ("a: 1\n  b: 2\n", (2, 4, "broken-yaml")),
        ("a:\n\tb: 1\n", (2, 1, "tab-indent")),
        ("a:\n  - b\n\t- c\n", (3, 1, "tab-indent")),
        ("a: 1\nb: 2\na: 3\n", (3, 1, "duplicate-key")),
        ("a: {b: 1, b: [2, {c: 3}]}\n", (1, 11, "duplicate-key")),
        ("a: &x 1\n", (1, 4, "anchor-or-alias")),
        ("a: *x\n", (1, 4, "anchor-or-alias")),
        ("&x a: 1\n", (1, 1, "anchor-or-alias")),
        ("a: !t 1\n", (1, 4, "yaml-tag")),
        ("a: !!str 1\n", (1, 4, "yaml-tag")),
        ("!t\na: 1\n", (1, 1, "yaml-tag")),
        ("!!str a: 1\n", (1, 1, "yaml-tag")),
        ("a: !!python/object/apply:os.getcwd []\n", (1, 4, "yaml-tag")),
        ("? [a]\n: 1\n", (1, 3, "key-not-text")),
        ("{a: 1}: 2\n", (1, 1, "key-not-text")),
        ("a: 1\n---\nb: 2\n", (2, 1, "second-document")),
        ("a: 1\n...\n---\nb: 2\n", (3, 1, "second-document")),
        ("a: x\0y\n", (1, 5, "bad-character")),
        ("a: x\x1by\n", (1, 5, "bad-character")),
        ("é: ü\na: x\x07y\n", (2, 5, "bad-character")),
        ("a: \U0001f6aa x\x07\n", (1, 7, "bad-character")),
        ("%YAML 9.9\n---\na: 1\n", (1, 1, "broken-yaml")),
    ],
)
def test_refused(text: str, found: tuple[int, int, str]) -> None:
    assert codes(text) == [found]


def test_nothing_is_kept_of_refused_text() -> None:
    assert read_text("a: 1\nb: *x\n", "f.yaml").value is None


def test_first_of_a_doubled_key_is_kept() -> None:
    """So that the rest of the record can still be checked."""
    assert read_text("a: 1\nb: 2\na: 3\n", "f.yaml").value == {"a": 1, "b": 2}


def test_depth() -> None:
    """As deep as allowed is read; one deeper is refused at the first value that is too deep."""
    assert codes("[" * (DEEPEST + 1) + "]" * (DEEPEST + 1)) == []
    assert codes("[" * (DEEPEST + 2) + "]" * (DEEPEST + 2)) == [(1, DEEPEST + 2, "too-deep")]


def test_absurd_depth_does_not_exhaust_the_stack() -> None:
    assert len(codes("[" * 100_000)) == 1
    assert len(codes("- " * 100_000)) == 1


def test_many_aliases_do_not_multiply() -> None:
    """Ten lines that would be a thousand million values, were aliases followed."""
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 9)]
    assert codes("\n".join(lines)) == [(1, 5, "anchor-or-alias")]


LIKE_YAML = st.text(alphabet="#-:,.[]{}&*!%?|>'\"@`~<= \n\t\r\0\ufeff\u2028ab01é")


@settings(max_examples=tries(75, 500))
@given(st.text() | LIKE_YAML)
def test_never_raises(text: str) -> None:
    document = read_text(text, "f.yaml")
    assert document.findings or document.value is not None
    last = len(text.splitlines()) + 1
    assert all(1 <= one.place.line <= last and one.place.column >= 1 for one in document.findings)


# Inside the basic plane, because JSON writes what lies beyond as two surrogates, which YAML does not join.
WORDS = st.text(st.characters(max_codepoint=0xD7FF), max_size=30)
FIGURES = st.integers(-(10**14), 10**14) | st.floats(allow_nan=False, allow_infinity=False, width=32)
PLAIN = st.recursive(
    WORDS | FIGURES | st.booleans(),
    lambda below: st.lists(below, max_size=3) | st.dictionaries(WORDS, below, max_size=3),
    max_leaves=8,
)


@given(st.dictionaries(WORDS, PLAIN, min_size=1, max_size=3))
def test_reads_back_what_json_wrote(record: dict[str, Any]) -> None:
    """JSON is YAML too; source: YAML 1.2.2, section 1.2."""
    document = read_text(json.dumps(record), "f.yaml")
    assert document.findings == []
    assert document.value == record


@given(st.text(alphabet="0123456789+-.eE_:xob", max_size=40))
def test_a_scalar_is_itself_or_a_number(text: str) -> None:
    found = scalar(text)
    if isinstance(found, int | float):
        assert float(text) == found
        assert abs(found) != float("inf")
    elif text:
        assert found == text
