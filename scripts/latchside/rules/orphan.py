"""Nothing stands alone."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

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
                yield record.finding(
                    CODE, ("id",), f"{kind}/{record.id}, which nothing refers to",
                    f"a reference from a {' or '.join(users)}",
                    f"Refer to it as {kind}/{record.id}, or delete it.",
                )  # fmt: skip


RULE = Rule(CODE, check)
