"""Remedies that wait for others can all be done."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding, did_you_mean
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "mended-after"
MOST = 10
"""Causes that hang together by `after`: all their orders are tried."""

Waits = Mapping[str, tuple[str, ...]]


def check(library: Library) -> Iterator[Finding]:
    """What `after` names is a cause of the same fault, is repaired here, and waits for neither this one nor many."""
    for fault in library.of("fault"):
        causes = {cause["id"]: cause for cause in fault["causes"]}
        waits = {id_: tuple(one for one in cause.get("after", ()) if one in causes) for id_, cause in causes.items()}
        for index, cause in enumerate(fault["causes"]):
            for number, id_ in enumerate(cause.get("after", ())):
                yield from _named(fault, causes, id_, ("causes", index, "after", number))
            yield from _circle(fault, waits, index, cause["id"])
        yield from _many(fault, waits)


def _named(
    fault: Record, causes: Mapping[str, Mapping[str, Any]], id_: str, path: tuple[str | int, ...]
) -> Iterator[Finding]:
    if id_ not in causes:
        yield fault.finding(CODE, path, *message.finding("no-such-cause", cause=id_, hint=did_you_mean(id_, causes)))
    elif causes[id_]["remedy"]["who"] == "electrician":
        yield fault.finding(CODE, path, *message.finding("for-an-electrician", cause=id_))


def _circle(fault: Record, waits: Waits, index: int, id_: str) -> Iterator[Finding]:
    way = _way_back(waits, id_, id_, (id_,))
    order = list(waits)
    if way and order.index(id_) == min(order.index(one) for one in way):  # a circle is told once
        yield fault.finding(CODE, ("causes", index, "after"), *message.finding("circle", causes=" → ".join(way)))


def _way_back(waits: Waits, start: str, id_: str, way: tuple[str, ...]) -> tuple[str, ...]:
    for one in waits[id_]:
        if one == start:
            return (*way, one)
        if one not in way and (found := _way_back(waits, start, one, (*way, one))):
            return found
    return ()


def _many(fault: Record, waits: Waits) -> Iterator[Finding]:
    rest = set(waits)
    while rest:
        group, grown = set[str](), {min(rest)}
        while grown != group:
            group = grown
            grown = group | {one for id_ in group for one in waits[id_]}
            grown |= {id_ for id_, named in waits.items() if group & set(named)}
        rest -= group
        if len(group) > MOST:
            yield fault.finding(CODE, ("causes",), *message.finding("too-many", count=len(group), most=MOST))


RULE = Rule(CODE, check)
