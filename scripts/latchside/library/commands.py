"""A command as a person reads it: a condition first where there is one, then the verb."""

from __future__ import annotations

import re

from latchside.library.text import plain

_CONDITION = re.compile(
    r"(?:If|When|Where|On|At|With|For|In|Before|After|Once|While|Without|From|To|Until|Outside|Inside)\b[^,]*, *"
)
_WORD = re.compile(r"[\w'’-]+")


def verb_of(text: str) -> str:
    """The verb a command begins with, in lower case; of "never open it", the verb that is forbidden."""
    words = _words(text)
    if words[:2] == ["do", "not"]:
        words = words[2:]
    elif words[:1] in (["never"], ["always"], ["only"]):
        words = words[1:]
    return words[0] if words else ""


def forbids(text: str) -> bool:
    """Whether a command says what not to do."""
    words = _words(text)
    return words[:2] == ["do", "not"] or words[:1] == ["never"]


def _words(text: str) -> list[str]:
    read = plain(text)
    condition = _CONDITION.match(read)
    return [word.lower() for word in _WORD.findall(read[condition.end() :] if condition else read)]
