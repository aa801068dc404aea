"""Nothing stands alone."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import listed, messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "orphan"
_USED_BY = {
    "procedure": ("device", "procedure"),
    "checklist": ("device",),
    "fault": ("device",),
    "caution": ("device", "procedure", "checklist", "fault"),
    "tool": ("procedure", "fault", "checklist"),
    "source": ("device", "procedure", "checklist", "fault", "caution", "term", "tool", "table", "formula"),
    "table": ("device", "procedure", "checklist", "fault", "caution", "term", "tool", "formula"),
}


def check(library: Library) -> Iterator[Finding]:
    """Every record that is there to be used is used by another.

    Nothing is said while some file cannot be read: who knows what that one refers to.
    """
    if library.unread:
        return
    for kind, users in _USED_BY.items():
        for record in library.of(kind):
            used = record.key in library.mentioned or any(
                user is not record for by in users for user in library.referring(kind, record.id, by)
            )
            if not used:
                problem = message.finding("not-used", record=f"{kind}/{record.id}", users=listed(list(users), "or"))
                yield record.finding(CODE, ("id",), *problem)


RULE = Rule(CODE, check)
