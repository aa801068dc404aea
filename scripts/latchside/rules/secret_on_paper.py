"""No text asks for a password or a code to be written down."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import plain
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "secret-on-paper"
_SECRET = re.compile(
    r"\b(pass(?:word|code|phrase)s?|code ?words?|pins?|words? that opens?"
    r"|(?:user|alarm|entry|installation|programming|owner'?s|their|your) codes?|codes? for (?:programming|setting))\b",
    re.IGNORECASE,
)
_WRITES = re.compile(
    r"\b(write|writes|note|notes|record|records|copy|photograph|list|mark)\b"
    r"|\b(?:on|in) (?:the|a|their|your|its) (?:job |record |survey )?"
    r"(?:sheet|list|plan|report|label|card|paper|record)\b",
    re.IGNORECASE,
)
_DENIED = re.compile(r"\b(no|not|never|none|nobody|nowhere|without|unwritten|strike|destroy)\b", re.IGNORECASE)
_SENTENCE = re.compile(r"(?<=[.!?:]) +")
_PAST = "safety_correction"


def check(library: Library) -> Iterator[Finding]:
    """No sentence puts a password or a code of the owner on paper. What was wrong once may be told."""
    for record in library:
        if record.kind.id in ("job", "source"):
            continue  # a job's notes have a rule of their own
        for path, text, _ in library.texts(record):
            if _PAST not in path and any(_on_paper(sentence) for sentence in _SENTENCE.split(plain(text))):
                yield record.finding(CODE, path, *message.finding("on-paper"))


def _on_paper(sentence: str) -> bool:
    return bool(_SECRET.search(sentence) and _WRITES.search(sentence) and not _DENIED.search(sentence))


RULE = Rule(CODE, check)
