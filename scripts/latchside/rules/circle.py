"""Nothing is drawn in by itself."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "circle"


def check(library: Library) -> Iterator[Finding]:
    """No procedure draws itself in, directly or by way of others."""
    for procedure in library.of("procedure"):
        for index, entry in enumerate(procedure["steps"]):
            way = _way_back(library, procedure.id, entry.get("draw"), (procedure.id,))
            if way:
                problem = message.finding("circle", procedures=" → ".join(way))
                yield procedure.finding(CODE, ("steps", index, "draw"), *problem)


def _way_back(library: Library, start: str, id_: str | None, way: tuple[str, ...]) -> tuple[str, ...]:
    if id_ is None:
        return ()
    if id_ == start:
        return (*way, id_)
    drawn = library.find("procedure", id_)
    if drawn is None or id_ in way:
        return ()
    found = (_way_back(library, start, entry.get("draw"), (*way, id_)) for entry in drawn["steps"])
    return next((one for one in found if one), ())


RULE = Rule(CODE, check)
