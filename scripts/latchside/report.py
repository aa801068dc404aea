"""Findings for people and for machines: text, JSON, and annotations for a code host's checks."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable

from latchside.findings import Finding
from latchside.messages import messages

message = messages(__name__)


def as_text(findings: Iterable[Finding]) -> str:
    """A paragraph for each finding: where and what, what is expected, what to do next."""
    return "\n\n".join(
        f"{_line(one.file)}:{one.place.line}:{one.place.column}: {one.level} {one.code}\n"
        f"  {message('found', found=_line(one.found))}\n  {message('expected', expected=_line(one.expected))}\n"
        f"  {message('next', action=_line(one.action))}"
        for one in findings
    )


def as_json(findings: Iterable[Finding]) -> str:
    """A JSON list, one object a finding."""
    return json.dumps(
        [
            {
                "file": one.file, "line": one.place.line, "column": one.place.column, "code": one.code,
                "level": one.level, "found": one.found, "expected": one.expected, "action": one.action,
            }
            for one in findings
        ],
        ensure_ascii=False,
        indent=2,
    )  # fmt: skip


def as_annotations(findings: Iterable[Finding]) -> str:
    """One workflow command a finding (`::error file=…`), as code hosts show beside the changed line."""
    return "\n".join(
        f"::{one.level} file={_property(one.file)},line={one.place.line},col={one.place.column},"
        f"title={_property(one.code)}::{_sentences(one)}"
        for one in findings
    )


def summary(findings: Iterable[Finding], records: int) -> str:
    """One closing line."""
    count = Counter(one.level for one in findings)
    if not count:
        return message("nothing-found", records=records)
    return message("summary", records=records, errors=count["error"], warnings=count["warning"])


def _sentences(one: Finding) -> str:
    """The whole of a finding, as a workflow command holds it."""
    return _escaped(message("annotation", found=one.found, expected=one.expected, action=one.action))


def _line(text: str) -> str:
    """Text from a file as one harmless line: a terminal would obey its control characters."""
    return "".join(sign if sign.isprintable() else "\ufffd" for sign in " ".join(text.split()))


def _escaped(text: str) -> str:
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(text: str) -> str:
    return _escaped(text).replace(":", "%3A").replace(",", "%2C")
