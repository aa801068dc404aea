"""The service plan as a calendar (RFC 5545): all-day events whose ids stay the same when a date moves."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta

from icalendar import Calendar, Event

from latchside.messages import messages
from latchside.packs.ids import id_of
from latchside.planning.plan import Plan

message = messages(__name__)
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f\ud800-\udfff]")
_NEW_LINE = re.compile(r"\r\n?|[\u2028\u2029\x85]")


def service_ics(plan: Plan) -> str:
    """The calendar; empty where nothing falls due, because a calendar holds at least one event."""
    calendar = Calendar()
    calendar.add("version", "2.0")
    calendar.add("prodid", "-//Latchside//Job pack//EN")
    calendar.add("calscale", "GREGORIAN")
    for event in _events(plan):
        calendar.add_component(event)
    return calendar.to_ical(sorted=False).decode("utf-8") if calendar.subcomponents else ""


def _events(plan: Plan) -> Iterator[Event]:
    named = {one.opening.id: one.spoken for one in plan.openings}
    times: Counter[tuple[str, str]] = Counter()
    for due in plan.service:
        key = (due.about, due.words)
        times[key] += 1
        place: str = plan.survey.name
        if due.about in named:
            place = message("place", site=place, opening=named[due.about])
        event = Event()
        event.add("uid", id_of("service", plan.survey.id, *key, str(times[key])))
        event.add("dtstamp", datetime(plan.on.year, plan.on.month, plan.on.day, tzinfo=UTC))
        event.add("dtstart", due.due)
        event.add("dtend", due.due + timedelta(days=1) if due.due < date.max else due.due)
        event.add("summary", plain(due.words))
        event.add("description", plain(place))
        event.add("transp", "TRANSPARENT")
        yield event


def plain(text: str) -> str:
    """A text without characters that no calendar may hold."""
    return _CONTROL.sub("", _NEW_LINE.sub("\n", text))
