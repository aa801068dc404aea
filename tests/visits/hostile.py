"""Files that are no sound record: each is refused by the browser and by the command, and nothing is changed."""

from __future__ import annotations

import json
from typing import Any

from .make import AT, CALENDAR, DOOR, VISIT, entry, full_record, item, record, site, some_id


def _changed(**fields: Any) -> str:
    return json.dumps({**full_record(), **fields})


def _one(**fields: Any) -> str:
    """A record whose only odd entry is an item with these fields; a field of ... is left out."""
    made = {key: value for key, value in {**item(2, 2), **fields}.items() if value is not Ellipsis}
    return json.dumps(record(site(), made))


def _planned(expected: Any) -> str:
    """A record with an opening for which this is planned."""
    fields: dict[str, Any] = {"opening": DOOR, "name": "Back door", "device": None, "removed": False, "after": []}
    return json.dumps(record(site(), entry("opening", 2, 2, **fields, expected=expected)))


def _placed(job: Any) -> str:
    """A record with an opening that says this of the plan."""
    fields: dict[str, Any] = {"opening": DOOR, "name": "Back door", "device": None, "removed": False, "after": []}
    return json.dumps(record(site(), entry("opening", 2, 2, **fields, job=job)))


_GAP = {"words": "4 to 8\u00a0mm", "unit": "mm", "ranges": [{"low": 4, "high": 8}]}

HOSTILE: dict[str, str] = {
    "empty": "",
    "not-json": "This is no record.",
    "cut-short": json.dumps(full_record())[:-200],
    "a-list": "[]",
    "null": "null",
    "a-number": "12",
    "markup": "<html><script>document.title = 'ran'</script></html>",
    "other-json": '{"name": "latchside", "entries": []}',
    "no-entries": _changed(entries=[]),
    "entries-no-list": _changed(entries={"0": {}}),
    "entry-no-object": _changed(entries=[7]),
    "entry-a-list": _changed(entries=[[]]),
    "entry-null": _changed(entries=[None]),
    "newer-version": _changed(version=2),
    "version-text": _changed(version="1"),
    "unknown-field": _changed(extra=1),
    "prototype-field": json.dumps(full_record())[:-1] + ', "__proto__": {"polluted": true}}',
    "prototype-in-an-entry": _one(__proto__={"polluted": True}),
    "constructor-as-kind": _changed(entries=[entry("constructor", 2, 2)]),
    "unknown-kind": _changed(entries=[entry("photo", 2, 2)]),
    "kind-no-text": _changed(entries=[{**site(), "kind": ["visit"]}]),
    "another-visit": json.dumps(record(site(), {**item(2, 2), "visit": some_id(99)})),
    "id-twice": json.dumps(record(site(), item(1, 2))),
    "id-of-another-form": _one(id="../../etc/passwd"),
    "id-with-a-line-break": _one(id=some_id(2) + "\n"),
    "counter-too-high": _one(n=5000),
    "counter-zero": _one(n=0),
    "counter-not-whole": _one(n=1.5),
    "counter-text": _one(n="2"),
    "counter-true": _one(n=True),
    "counter-endless": _one(n=2).replace('"n": 2', '"n": 1e999'),
    "reading-endless": _one(reading={"value": 1, "unit": "mm"}).replace('"value": 1', '"value": 1e400'),
    "reading-nan": _one(reading={"value": 1, "unit": "mm"}).replace('"value": 1', '"value": NaN'),
    "reading-text": _one(reading={"value": "=1+1", "unit": "mm"}),
    "reading-of-nothing": _one(reading={"unit": "mm"}),
    "reading-of-both": _one(reading={"value": 1, "over": True, "unit": "mm"}),
    "judged-without-a-reading": _one(expected={"words": "x", "unit": "mm", "ranges": [{"low": 1}]}),
    "no-limit": _one(reading={"value": 1, "unit": "mm"}, expected={"words": "x", "unit": "mm", "ranges": [{}]}),
    "no-range": _one(reading={"value": 1, "unit": "mm"}, expected={"words": "x", "unit": "mm", "ranges": []}),
    "problem-that-says-nothing": _one(outcome="problem"),
    "no-reason": _one(outcome="not-applicable"),
    "outcome-unknown": _one(outcome="fine"),
    "no-outcome": _one(outcome=...),
    "note-too-long": _one(outcome="problem", note="x" * 501),
    "note-with-a-terminal-sequence": _one(outcome="problem", note="\u001b]0;owned\u0007"),
    "note-that-turns-the-text": _one(outcome="problem", note="safe \u202egnp.exe"),
    "note-half-a-character": _one(outcome="problem", note="x\ud800y"),
    "note-a-mapping": _one(outcome="problem", note={"toString": "x"}),
    "time-with-words": _one(at="yesterday"),
    "time-without-offset": _one(at=AT[:-6]),
    "day-that-is-not": json.dumps(record(site(date="2026-13-01"))),
    "checklist-a-path": _one(checklist="../visits"),
    "after-twice": _one(after=[some_id(1), some_id(1)]),
    "after-too-many": _one(after=[some_id(index) for index in range(51)]),
    "undo-of-nothing": json.dumps(record(site(), entry("undo", 2, 2, undoes=[], reason="undo"))),
    "visit-no-id": _changed(visit="elm-house"),
    "nothing-planned": _planned({}),
    "planned-a-list": _planned([_GAP]),
    "planned-under-no-name": _planned({"../gap": _GAP}),
    "planned-on-the-prototype": _planned({"fit-gap": _GAP}).replace("fit-gap", "__proto__"),
    "planned-too-much": _planned({f"gap-{number}": _GAP for number in range(41)}),
    "planned-without-a-range": _planned({"fit-gap": {**_GAP, "ranges": []}}),
    "planned-for-a-device": _planned({"fit-gap": {**_GAP, "device": "surface-contact"}}),
    "job-without-an-id": json.dumps(record(site(job={}))),
    "job-a-path": json.dumps(record(site(job={"id": "../elm-house"}))),
    "job-with-more": json.dumps(record(site(job={"id": "elm-house", "code": "1"}))),
    "calendar-that-is-none": json.dumps(record(site(job={"id": "elm-house", "calendar": "BEGIN:VCALENDAR"}))),
    "calendar-that-goes-on": json.dumps(record(site(job={"id": "elm-house", "calendar": CALENDAR + "X"}))),
    "calendar-with-an-unseen-sign": json.dumps(
        record(site(job={"id": "elm-house", "calendar": CALENDAR.replace("2.0", "2\u202e0")}))
    ),
    "zone-of-two-lines": _placed({"opening": "back-door", "zone": "W1\nW2"}),
    "place-without-an-opening": _placed({"zone": "W1"}),
    "deep": '{"format": "latchside-visit", "version": 1, "entries": ' + "[" * 50_000 + "]" * 50_000 + "}",
}
"""Name → content."""

TWICE = json.dumps(full_record()).replace('"version": 1', '"version": 1, "version": 1')
"""A field twice: the command refuses it; a browser's own reader cannot see it."""

INJECTION = '<img src=x onerror="window.ran=1"><script>window.ran=1</script>\'"`${window.ran=1}</textarea></title>'

FORMULAS = ("=1+1", "+1", "-1+1", "@SUM(A1)", "\uff1d1+1", " =1+1", "'=1+1", '"=1+1')


def injecting_record() -> dict[str, Any]:
    """A sound record whose every text tries to be markup, or a formula."""
    return record(
        site(site=INJECTION[:120], who=INJECTION[:60], by="<b>Eve</b>"),
        entry("opening", 2, 2, opening=VISIT, name=INJECTION[:80], device=None, removed=False, after=[],
              job={"opening": "door", "zone": "<b>W1</b>"}),
        item(3, 3, opening=VISIT, words=INJECTION, list_name=INJECTION[:120], outcome="problem", note=INJECTION),
        item(4, 4, opening=None, item="gap", words=INJECTION, reading={"value": 1, "unit": "<b>"},
             expected={"words": INJECTION, "unit": "<b>", "ranges": [{"low": 2}]}),
        entry("note", 5, 5, opening=VISIT, note=INJECTION),
        *(entry("note", 6 + index, 6 + index, opening=None, note=text) for index, text in enumerate(FORMULAS)),
    )  # fmt: skip
