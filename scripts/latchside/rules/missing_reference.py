"""References resolve."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from latchside.drawings import COMPUTED
from latchside.findings import Finding, did_you_mean
from latchside.kinds import CARDS, KINDS
from latchside.library import Library, Link
from latchside.library.compiled import own_steps
from latchside.library.regions import form_of
from latchside.library.text import RecordLink, ValueLink, text_parts
from latchside.messages import listed, messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "missing-reference"


def check(library: Library) -> Iterator[Finding]:
    """Every id names a record, a step, a drawing or a card that exists."""
    for link in library.links:
        known = _known(library, link.kind)
        reference = f"{link.kind}/{link.id}"
        if known is None:
            kinds, hint = listed([*KINDS, "card"], "or"), did_you_mean(link.kind, KINDS)
            yield _finding(link, *message.finding("no-such-kind", reference=reference, kinds=kinds, hint=hint))
        elif link.id not in known and link.target not in library.unsound:
            hint = did_you_mean(link.id, known)
            yield _finding(link, *message.finding("no-such-record", reference=reference, kind=link.kind, hint=hint))
        elif link.step and (procedure := library.find(link.kind, link.id)):
            steps = {step["id"] for _, step in own_steps(procedure)} if link.kind == "procedure" else set()
            if link.step not in steps:
                hint = did_you_mean(link.step, steps)
                yield _finding(link, *message.finding("no-such-step", reference=reference, step=link.step, hint=hint))
    yield from _values(library)
    yield from _forms(library)


def _forms(library: Library) -> Iterator[Finding]:
    """The form that a text asks of a word by region."""
    for record in library:
        for path, text, _ in library.texts(record):
            for part in text_parts(text):
                if isinstance(part, RecordLink) and part.kind == "word":
                    word = library.find("word", part.id)
                    if word and form_of(word, part.words) is None:
                        forms = listed([form["north_america"] for form in word["forms"]], "or")
                        problem = message.finding("no-such-form", form=part.words or "", forms=forms)
                        yield record.finding(CODE, path, *problem)


def _known(library: Library, kind: str) -> Iterable[str] | None:
    if kind == "drawing":
        return [*COMPUTED, *library.pictures]
    if kind == "card":
        return CARDS
    return library.records.get(kind)


def _finding(link: Link, found: str, expected: str, action: str) -> Finding:
    return link.source.finding(CODE, link.path, found, expected, action)


def _values(library: Library) -> Iterator[Finding]:
    device_names = library.schemas.words("value-name")
    for record in library:
        for path, text, sort in library.texts(record):
            for part in text_parts(text) if sort == "prose" else ():
                if not isinstance(part, ValueLink):
                    continue
                if part.owner == ("device", None):
                    known: Iterable[str] = device_names
                elif part.owner is None:
                    known = record.get("values", {})
                elif part.owner[1] is None:
                    known = ()  # [[=term/name]]: a kind alone owns nothing
                else:
                    owner = library.find(part.owner[0], part.owner[1] or "")
                    if owner is None:
                        continue  # the owner itself is reported above
                    known = owner.get("values", {})
                if part.name not in known:
                    of_device = part.owner is None and part.name in device_names
                    hint = message("of-device", value=part.name) if of_device else did_you_mean(part.name, known)
                    problem = message.finding("no-such-value", value=part.name, hint=hint)
                    yield record.finding(CODE, path, *problem)


RULE = Rule(CODE, check)
