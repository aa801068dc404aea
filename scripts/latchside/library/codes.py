"""Codes never stand in a text: what looks as if it held one, and where in it.

Little is taken for a code, so that room numbers, years, streets and the names of parts pass: four to eight digits
right beside a word for a code, or after words such as *opens with*, and a password that is told. The script of the
pages, `core/words.js`, has the same patterns; `tests/visits/cases.json` holds both to the same answers.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

_DIGITS = re.compile(
    r"[0-9]{1,2}(?:,? (?:left|right),? [0-9]{1,2})+|[0-9]{4,}|[0-9](?:[ -][0-9])+|[0-9]{2}[ -][0-9]{2}", re.IGNORECASE
)
_DIALLED = re.compile(r"[0-9](?:[ -][0-9]){3,}")
_LOCK = re.compile(r"(?:^|[^A-Za-z])(?:combination|safe|padlock|lock)(?![A-Za-z])", re.IGNORECASE)
"""Single digits in a row after one of these are what its wheels are set to."""
_LONGEST = 8
_NEAR = 80
"""How far round digits is looked."""
_WORD = r"(?:codes?|pins?|pin ?codes?|pass ?codes?|pass ?words?|combinations?|combos?|key ?safes?|key ?box|lock ?box)"
_JOINT = (
    r"(?:[ \u00a0]*(?:is|was|are|reads|number|no\.?|new|old|now|still|[:=#\u2013\u2014-]))*[ \u00a0\"'\u201c\u2018(]*"
)
_FOR = r"(?: (?:for|of|to|at|on|by|in|with)(?: [\w']+){1,4}?(?: is| was| ?[:=\u2013\u2014]| -) ?)"
_BEFORE = re.compile(rf"(?:^|[^A-Za-z]){_WORD}(?:{_JOINT}|{_FOR})\Z", re.IGNORECASE | re.ASCII)
_AFTER = re.compile(
    r"#|[\"'\u201d\u2019]?,?(?: (?:is|was))?(?: ?[=\u2013\u2014(-])?(?: the| a| our)?(?: ?(?:alarm|door|gate|user))?"
    rf" ?{_WORD}"
    r"(?= ?\Z|[.,;:)!?\"'\u201d\u2019]| (?:for|to|of|at|on)(?![A-Za-z]))",
    re.IGNORECASE | re.ASCII,
)
_OPENS = re.compile(
    r"(?:^|[^A-Za-z])(?:(?:opens?|unlocks?|disarms?|unsets?) (?:it )?with|key ?pads? takes?"
    r"|(?:enter|type in|key in|punch in)) \Z",
    re.IGNORECASE,
)
_PLAIN = re.compile(
    r"(?:^|[^A-Za-z])(?:(?:area|zip|post|postal|diall?ing|country|colou?r|date|error|fault|event|product|part|order|item"
    r"|bar|batch|model|stock|type)[ -]?codes?|(?:hinge|roll|split|dowel|drive|cotter|guide|cent(?:re|er))[ -]?pins?)"
    rf"{_JOINT}\Z",
    re.IGNORECASE,
)
"""Codes that tell no secret, and pins that are none."""
_RULES = re.compile(
    r"(?:^|[^A-Za-z])(?:building|fire|electrical|wiring|energy|safety|local|state|city|national) codes?[ \u00a0:]*\Z",
    re.IGNORECASE,
)
_YEAR = re.compile(r"(?:19|20)[0-9]{2}\Z")
_PART_OF_MORE = re.compile(r"[0-9_][.,:/-]?\Z")
_GOES_ON = re.compile(
    r"[0-9A-Za-z_]|[.,:/-][0-9]"
    r"|[ \u00a0]?(?:mm|cm|m|km|ft|in|ohms?|[kM]?\u03a9|V|mV|MHz|h|s|min)(?![A-Za-z0-9])",
    re.ASCII,
)
_ROOM = re.compile(r"(?:room|flat|suite|unit|office|no|number|house|apartment|apt|ward|bay)\.? ?\Z", re.IGNORECASE)
_TOLD = re.compile(
    r"(?:^|[^A-Za-z])(?:pass|code) ?(?:words?|phrases?)(?: (?:is|was)| ?[:=])+ *[\"'\u201c\u2018]?"
    r"(?!(?:not|never|known|unknown|asked|given|kept|held|needed|required|wanted|with|in|on|at|the|a|an|to|by|for|from"
    r"|set|changed|said|told|used|written|agreed|new|old|still|missing|there|lost|no|only)(?![A-Za-z]))[A-Za-z0-9].*",
    re.IGNORECASE | re.DOTALL,
)


def looks_like_code(text: str) -> bool:
    """Whether a text looks as if it held somebody's code."""
    return bool(_spans(text))


def confirmed(survey: Mapping[str, Any], path: tuple[str | int, ...]) -> bool:
    """Whether a survey says of its own text at a path that it is no code: in its `no_codes`, or the opening's own."""
    in_opening = path[:1] == ("openings",) and len(path) > 1
    owner: Any = survey["openings"][path[1]] if in_opening else survey
    name = ".".join(part for part in path[2 if in_opening else 0 :] if isinstance(part, str))
    return name in owner.get("no_codes", ())


def masked(text: str) -> str:
    """The text with an ellipsis in the place of each thing in it that looks like a code."""
    for start, end in reversed(_spans(text)):
        text = f"{text[:start]}\u2026{text[end:]}"
    return text


def _spans(text: str) -> list[tuple[int, int]]:
    """Where the things that look like codes stand, from start to end."""
    found = [
        run.span()
        for run in _DIGITS.finditer(text)
        if _is_code(text[max(0, run.start() - _NEAR) : run.start()], run[0], text[run.end() :][:_NEAR])
    ]
    told = _TOLD.search(text)
    return [*(span for span in found if span[1] <= told.start()), told.span()] if told else found


def _is_code(before: str, digits: str, after: str) -> bool:
    """Whether digits between what stands before and after them are taken for a code."""
    if not 4 <= sum(sign.isdigit() for sign in digits) <= _LONGEST:
        return False
    if _PART_OF_MORE.search(before) or _GOES_ON.match(after) or _PLAIN.search(before):
        return False
    if _RULES.search(before) and _YEAR.match(digits):
        return False
    if _BEFORE.search(before) or _OPENS.search(before) or (_DIALLED.fullmatch(digits) and _LOCK.search(before)):
        return True
    return not re.search(r"[A-Za-z]\Z", before) and not _ROOM.search(before) and bool(_AFTER.match(after))
