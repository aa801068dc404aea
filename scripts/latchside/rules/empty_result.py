"""A result says a value or a state."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import plain
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "empty-result"
_LEAD = re.compile(r"\A(?:it )?is ")


def check(library: Library) -> Iterator[Finding]:
    """No result, state, expectation or proof is only a word such as OK."""
    empty = set(library.schemas.documents[VOCABULARY]["$defs"]["empty-result"]["enum"])
    for record in library:
        for path, text, _ in library.texts(record):
            if path[-1] not in ("result", "state", "expect", "proof", "shows"):
                continue
            word = plain(text).strip(" .!").lower()
            if _LEAD.sub("", word) in empty:
                yield record.finding(CODE, path, *message.finding("empty", text=text, field=str(path[-1])))


RULE = Rule(CODE, check)
