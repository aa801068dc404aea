"""Nobody reaches into a panel without the caution for mains, nor with its power on.

Work inside is known by its words: a place in the panel with a verb of the hands, of the meter or of looking. What is
done at keypad or display names no such place, or no such verb. In a group of steps at the panel, terminals are its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.compiled import own_steps
from latchside.library.text import RecordLink, plain, text_parts
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "into-control-unit"
CAUTION = "mains-wiring"
_PLACE = "control-unit"
_NEED = "power-off"
_HANDS = r"\b(?:bridge|disconnect|land|lift|loosen|measure|meter|strip|tap|tighten|tug|warm|withdraw)\b"
_PANEL = r"\b(?:at|in) (?:a|the) panel\b"
_AT_PANEL = re.compile(rf"{_HANDS}.*{_PANEL}", re.IGNORECASE)
_AT_ENDS = re.compile(
    rf"{_HANDS}.*(?:{_PANEL}|\bterminals?\b|\b(?:wires|conductors) off\b|\bwhere it ends\b|\breceiving end\b)"
    r"|\b(?:find|look|remove)\b.*\bterminals?\b"
    r"|\bread (?:it|across)\b.* from the panel\b",
    re.IGNORECASE,
)
_INSIDE = re.compile(
    r"(?<!never in the )(?<!none in the )\bcabinet\b|\bopen\b.*\bcover of the panel\b|\bopen the panel\b", re.IGNORECASE
)
_OWN_TERMINALS = re.compile(r"\bterminals?\b", re.IGNORECASE)
_PUT_ON = re.compile(r"\b(?:land|reconnect)\b[^.]*\b(?:both|wires|conductors|pair)\b", re.IGNORECASE)
_ELSEWHERE = re.compile(r"\b(?:transmitter|sensor|aerial|terminals? of the contact|outside the panel)\b", re.IGNORECASE)
_MEANT = re.compile(r"(?<!outside )the panel\b|\bcabinet\b", re.IGNORECASE)
_DOWN = re.compile(r"\bpower(?:ed)?[- ](?:is )?(?:down|off)\b", re.IGNORECASE)


def check(library: Library) -> Iterator[Finding]:
    """Work inside a panel has the caution for mains before it, and the power off."""
    carry = {one.id for one in library.of("procedure") if CAUTION in _shown(one)}
    for procedure in library.of("procedure"):
        yield from _procedure(procedure, carry)
    for fault in library.of("fault"):
        yield from _checks(fault, carry)
        yield from _remedies(fault, carry)


def _shown(procedure: Record) -> set[str]:
    return set(procedure.listed("safety")).union(*(step.get("cautions", ()) for _, step in own_steps(procedure)))


def _procedure(procedure: Record, carry: set[str]) -> Iterator[Finding]:
    shown = set(procedure.listed("safety"))
    groups = procedure["steps"]
    only_there = all(group.get("at") == _PLACE for group in groups)
    down = _named(procedure["before"])
    for path, step in own_steps(procedure):
        shown |= set(step.get("cautions", ()))
        group = groups[path[1]] if path[0] == "steps" else {}
        down = down or _named((group.get("title", ""), step["do"]))
        text = plain(step["do"])
        there = group.get("at") == _PLACE or (not group and only_there)
        if _INSIDE.search(text) or _AT_PANEL.search(text) or (there and _OWN_TERMINALS.search(text)):
            place = (*path, "do")
            yield from _findings(procedure, place, CAUTION in shown, down or _follows(step["do"], carry))


def _checks(fault: Record, carry: set[str]) -> Iterator[Finding]:
    for number, one in enumerate(fault["checks"]):
        shown = {*fault.listed("cautions"), *one.get("cautions", ())}
        whole = f"{plain(one['do'])} {plain(one.get('measure', {}).get('what', ''))}"
        if _enters(whole) or (_PUT_ON.search(plain(one.get("restore", ""))) and not _away(whole)):
            down = _NEED in one["needs"] or _follows(one["do"], carry)
            yield from _findings(fault, ("checks", number, "do"), CAUTION in shown, down)


def _remedies(fault: Record, carry: set[str]) -> Iterator[Finding]:
    for number, cause in enumerate(fault["causes"]):
        remedy = cause["remedy"]
        shown = {*fault.listed("cautions"), *remedy.get("cautions", ())}
        for line, text in enumerate(remedy["do"]):
            if _enters(plain(text)) and not _follows(text, carry):
                down = _named(remedy["do"][: line + 1])
                yield from _findings(fault, ("causes", number, "remedy", "do", line), CAUTION in shown, down)


def _enters(text: str) -> bool:
    """Whether a text that says its place itself has hands, eyes or probes in what may be a panel."""
    return bool(_INSIDE.search(text) or _AT_ENDS.search(text)) and not _away(text)


def _away(text: str) -> bool:
    """The terminals spoken of are those of another part, and of no panel."""
    return bool(_ELSEWHERE.search(text)) and not _MEANT.search(text)


def _named(texts: Iterable[str]) -> bool:
    return any(_DOWN.search(plain(text)) for text in texts)


def _follows(text: str, carry: set[str]) -> bool:
    """The text hands over to a whole procedure, which has the caution and the way in."""
    return any(
        isinstance(part, RecordLink) and part.kind == "procedure" and not part.step and part.id in carry
        for part in text_parts(text)
    )


def _findings(record: Record, path: tuple[str | int, ...], warned: bool, down: bool) -> Iterator[Finding]:
    if not warned:
        yield record.finding(CODE, path, *message.finding("no-caution", caution=CAUTION))
    if not down:
        where = "check" if path[0] == "checks" else "text"
        yield record.finding(CODE, path, *message.finding("power-on", where=where, need=_NEED))


RULE = Rule(CODE, check)
