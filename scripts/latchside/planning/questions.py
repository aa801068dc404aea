"""What has to be asked before the job, found in the plan itself.

For each fact that was not told, its answers are tried one at a time, all else as it is. Where an answer changes what a
reader would notice of the plan, the fact is asked, with what it decides; the question that decides most comes first.
Two facts that change something only together are not found that way. Some are asked all the same, and the question says
so: while the class of an opening is open or could still be ruled out, every fact that its conditions miss; and a fact
of the site or of the control unit that decides something once all others of it are told.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache, partial
from typing import Any

from latchside.figures.catalogue import Figure
from latchside.library.model import Library
from latchside.planning import question_words
from latchside.planning.answers import UNKNOWN, Field, fields
from latchside.planning.conditions import Truth, book_of
from latchside.planning.decides import Effect, effect, of_choice, of_piece, sentence, together
from latchside.planning.house import House
from latchside.planning.looked_at import Kept, Key, told
from latchside.planning.outcomes import OPENING, SITE, UNIT, Chosen, Done, Facts, Outcomes, facts_of
from latchside.planning.plan import Line, Question
from latchside.planning.site_outcomes import SiteOutcomes
from latchside.planning.standing import contenders, standings
from latchside.planning.tried import tried
from latchside.surveys.survey import Survey


def questions(
    survey: Survey, library: Library, figures: Mapping[str, Figure], on: date, house: House
) -> tuple[Question, ...]:
    """The questions in the order of the walk: site, control unit, then each opening; of each, what decides most."""
    outcomes, known = _outcomes(library, _Held(figures), on, house), fields(library)
    facts = [facts_of(one, survey) for one in survey.openings]
    met = {one: _seen(one, outcomes) for one in dict.fromkeys(facts)}
    own = {one: outcomes.asked(one, partial(_of_opening, seen, library, outcomes)) for one, seen in met.items()}
    of_site = SiteOutcomes(survey, [met[one].chosen for one in facts], [met[one].lines for one in facts], outcomes)
    site = _above(SITE, known.site, met.values(), of_site, outcomes)
    unit = _above(UNIT, known.unit, met.values(), of_site, outcomes)
    return (
        *_asked("site", site, library),
        *_asked("control-unit", unit, library),
        *(
            question
            for opening, one in zip(survey.openings, facts, strict=True)
            for question in _asked(opening.id, own[one], library)
        ),
    )


@dataclass(frozen=True, eq=False)
class _Held:
    """Figures as a key: the same only where they are the very same."""

    figures: Mapping[str, Figure]

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Held) and self.figures is other.figures

    def __hash__(self) -> int:
        return id(self.figures)


@lru_cache(maxsize=4)
def _outcomes(library: Library, held: _Held, on: date, house: House) -> Outcomes:
    return Outcomes(library, held.figures, on, house)


@dataclass(frozen=True, eq=False)
class _Seen:
    """An opening's facts, its choice and pieces as they stand, and what each piece looked at."""

    facts: Facts
    truths: tuple[Truth, ...]
    chosen: Chosen
    base: Mapping[str, Any]
    looks: Mapping[str, frozenset[Key]]
    workers: tuple[tuple[Kept[Done], frozenset[Key], Any], ...]
    """Each worker of the lines, with what it looked at and the marks of what it found."""

    @property
    def lines(self) -> tuple[Line, ...]:
        """The figures of the opening."""
        return self.base["figures"].lines  # type: ignore[no-any-return]


def _seen(facts: Facts, outcomes: Outcomes) -> _Seen:
    truths = book_of(outcomes.library).truths(facts[0])
    chosen = outcomes.choice(*facts)
    figures, beside, workers = outcomes.workers(chosen, facts)
    base, looks = {"figures": figures}, {"figures": beside}
    for name, work in outcomes.pieces(chosen).items():
        if isinstance(work, Kept):
            base[name], looks[name] = work(*facts), work.looks_at(*facts)
    known = tuple((one, one.looks_at(*facts), one(*facts).marks) for one in workers)
    return _Seen(facts, truths, chosen, base, looks, known)


def _asked(about: str, found: Iterable[tuple[Field, Effect]], library: Library) -> Iterator[Question]:
    """The same gauge under two names is asked once."""
    listed = sorted(found, key=lambda one: one[1].order)
    names = {field.name for field, _ in listed}
    for field, one in listed:
        if question_words.ASKED_BY.get(field.name) not in names:
            yield Question(about, field.name, question_words.text(field.name), sentence(one, library), one.order)


def _of_opening(seen: _Seen, library: Library, outcomes: Outcomes) -> tuple[tuple[Field, Effect], ...]:
    """The fields of an opening that are asked, each with what it decides."""
    opening = seen.facts[0]
    unknown = {
        one.name: one
        for one in fields(library).opening
        if getattr(opening, one.attribute) in (None, UNKNOWN) and question_words.can_matter(one.name, opening)
    }
    found = {}
    for field in unknown.values():
        key = (OPENING, field.attribute)
        one = _of_choice(field, seen, library, outcomes) or _of_pieces(key, field, seen, outcomes)
        if one is not None:
            found[field.name] = (field, one)
    for name, one in _still_open(seen, library):
        if name in unknown:
            found.setdefault(name, (unknown[name], replace(one, alone=False)))
    return tuple(found.values())


def _of_choice(field: Field, seen: _Seen, library: Library, outcomes: Outcomes) -> Effect | None:
    """What the answers of a field decide of the choice."""
    opening, book, answers = seen.facts[0], book_of(library), tried(field, library)
    met = list[Effect]()
    for value, truths in answers.at(opening):
        other = told(opening, field.attribute, value)
        book.beside(seen.truths, answers.numbers, truths, other)
        found = outcomes.choice(other, *seen.facts[1:])
        met += of_choice(seen.chosen, found)
        if found.device not in (None, seen.chosen.device):
            break
    return together(met)


def _of_pieces(key: Key, field: Field, seen: _Seen, outcomes: Outcomes) -> Effect | None:
    """The first piece that some answer changes, with both ends of a number tried."""
    works, answers = outcomes.pieces(seen.chosen), field.beside(seen.chosen.device, seen.chosen.contact)
    for name, before in seen.base.items():
        workers = [one for one in seen.workers if key in one[1]] if name == "figures" else []
        beside = key in seen.looks[name]
        if not beside and not workers:
            continue
        met: list[Effect] = []
        for number, value in enumerate(answers):
            if met and number > 1:
                break
            facts = _with(seen.facts, key, value)
            if beside or any(one(*facts).marks != marks for one, _, marks in workers):
                after = works[name](*facts)
                met += of_piece(before, after) if after != before else ()
        if met:
            return together(met)
    return None


def _with(facts: Facts, key: Key, value: object) -> Facts:
    place, name = key
    return _put(facts, place, told(facts[place], name, value))


def _put(facts: Facts, place: int, part: Any) -> Facts:
    """Facts with another site, control unit or opening."""
    return tuple(part if place == at else one for at, one in enumerate(facts))  # type: ignore[return-value]


def _still_open(seen: _Seen, library: Library) -> Iterator[tuple[str, Effect]]:
    """Facts that only together with others could settle the class, or still rule it out."""
    opening = seen.facts[0]
    if opening.override is not None:
        return
    found = standings(opening, library)
    rivals = contenders(found) if seen.chosen.device is None else ()
    for one in found:
        chosen = one.profile.id == seen.chosen.device
        if not chosen and one not in rivals:
            continue
        missing = [names for cause, names in one.open_avoid if cause.rules_out or not chosen]
        missing += [names for _, names in one.open_suits if not chosen]
        for name in dict.fromkeys(name for names in missing for name in names):
            yield name, effect("device", "", one.profile.id)


def _above(
    place: int, listed: Sequence[Field], seen: Collection[_Seen], of_site: SiteOutcomes, outcomes: Outcomes
) -> Iterator[tuple[Field, Effect]]:
    """The fields of the site or of the control unit that are asked: each by itself, then with the others told."""
    part = of_site.parts[place]
    unknown = [one for one in listed if getattr(part, one.attribute) in (None, UNKNOWN)]
    asked = set[str]()
    for field in unknown:
        found = _of_part((place, field.attribute), field, seen, of_site, outcomes)
        if found is not None:
            asked.add(field.name)
            yield field, found
    some = {(one.chosen.device, one.chosen.contact): one.facts for one in seen}
    for field in unknown if len(unknown) > 1 else ():
        if field.name not in asked:
            others = {one.attribute: one.usual for one in unknown if one is not field}
            whole = replace(part, **others)
            again = [_seen(_put(one, place, whole), outcomes) for one in some.values()]
            found = _of_part((place, field.attribute), field, again, of_site.beside(place, whole), outcomes)
            if found is not None:
                yield field, replace(found, alone=False)


def _of_part(key: Key, field: Field, seen: Iterable[_Seen], of_site: SiteOutcomes, outcomes: Outcomes) -> Effect | None:
    """What the answers decide of the site, or else at the first opening where they decide anything."""
    found = of_site.effect(key, field.answers)
    if found is not None:
        return found
    return next((found for one in seen if (found := _of_pieces(key, field, one, outcomes)) is not None), None)
