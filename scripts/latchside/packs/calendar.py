"""The service plan as a calendar (RFC 5545): all-day events whose ids stay the same when a date moves."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from datetime import date, timedelta

from latchside.packs.ids import id_of
from latchside.planning.plan import Plan

_LONGEST = 75  # octets of a line, without its end
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")
_ESCAPED = {"\\": "\\\\", ";": "\\;", ",": "\\,", "\n": "\\n"}


def service_ics(plan: Plan) -> str:
    """The calendar; empty where nothing falls due, because a calendar holds at least one event."""
    events = list(_events(plan))
    if not events:
        return ""
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Latchside//Job pack//EN", "CALSCALE:GREGORIAN", *events]
    return "".join(f"{folded(line)}\r\n" for line in (*lines, "END:VCALENDAR"))


def _events(plan: Plan) -> Iterator[str]:
    named = {one.opening.id: one.spoken for one in plan.openings}
    times: Counter[tuple[str, str]] = Counter()
    for due in plan.service:
        key = (due.about, due.words)
        times[key] += 1
        place = f"{plan.survey.name}: {named[due.about]}" if due.about in named else plan.survey.name
        yield from (
            "BEGIN:VEVENT",
            f"UID:{id_of('service', plan.survey.id, *key, str(times[key]))}",
            f"DTSTAMP:{_day(plan.on)}T000000Z",
            f"DTSTART;VALUE=DATE:{_day(due.due)}",
            f"DTEND;VALUE=DATE:{_next(due.due)}",
            f"SUMMARY:{escaped(due.words)}",
            f"DESCRIPTION:{escaped(place)}",
            "TRANSP:TRANSPARENT",
            "END:VEVENT",
        )


def escaped(text: str) -> str:
    """A text as a property may hold it."""
    plain = _CONTROL.sub("", re.sub(r"\r\n?|[\u2028\u2029\x85]", "\n", text))
    return "".join(_ESCAPED.get(sign, sign) for sign in plain)


def folded(line: str) -> str:
    """A line in pieces of at most 75 octets, never split inside a character."""
    pieces, piece, size = [], "", 0
    for sign in line:
        octets = len(sign.encode("utf-8", "replace"))
        if size + octets > _LONGEST:
            pieces.append(piece)
            piece, size = " ", 1
        piece, size = piece + sign, size + octets
    return "\r\n".join((*pieces, piece))


def _day(day: date) -> str:
    return f"{day.year:04}{day.month:02}{day.day:02}"


def _next(day: date) -> str:
    return _day(day + timedelta(days=1)) if day < date.max else _day(day)
