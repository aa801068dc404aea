"""Path and id agree."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "id-not-path"


def check(library: Library) -> Iterator[Finding]:
    """The id inside a record is its file name without `.yaml`."""
    for record in library:
        if record["id"] != record.id:
            yield record.finding(
                CODE, ("id",), f'"{record["id"]}" in {record.raw.file}', f'"{record.id}", as the file is named',
                "Rename the file or correct the id; after a rename add the old id under aliases.",
            )  # fmt: skip


RULE = Rule(CODE, check)
