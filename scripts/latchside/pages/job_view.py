"""What the pages of a job show of its plan: names, order, sums and words. Templates only place them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property

from markupsafe import Markup

from latchside.library import Record
from latchside.library.alike import alike
from latchside.messages import Message, messages
from latchside.pages import job_words as words
from latchside.pages.escape import safe
from latchside.pages.job_contacts import Spot, handed_over, spots
from latchside.pages.job_facts import opening_facts, site_facts
from latchside.pages.job_rounds import rounds
from latchside.pages.page import Page
from latchside.planning.asked import Asked, by_part
from latchside.planning.bearing import bearing
from latchside.planning.plan import Item, Line, OpeningPlan, Plan, Problem, Question, Stage, Zone

message = messages(__name__)

PARTS = ("openings", "zones", "van", "work", "service", "test-sheet", "handover")
"""The parts of a pack beside its summary, in order. What is filled in or left comes last."""
SORTS = {"part": "parts", "consumable": "consumables", "tool": "tools"}
"""The sorts of items, each with the anchor of its list."""


def parts() -> dict[str, tuple[Message, Message]]:
    """The title of each part of a pack, and what it holds."""
    return {part: (message(f"part-{part}"), message(f"part-{part}.holds")) for part in PARTS}


class JobView:
    """A plan on one page: a part of the site's pages, or, with `whole`, all parts in one."""

    def __init__(self, plan: Plan, page: Page, *, whole: bool = False, html: bool = False) -> None:
        self.plan = plan
        self.survey = plan.survey
        self.page = page
        self.whole = whole
        self._html = html
        self.words = words

    # -- names and places ------------------------------------------------------------------------------------

    @cached_property
    def _spoken(self) -> dict[str, str]:
        return {one.opening.id: one.spoken for one in self.plan.openings}

    def about(self, id_: str) -> str:
        """What a question, a problem or a piece of work is about, as a reader calls it."""
        return self._spoken.get(id_) or (message(f"about-{id_}") if f"about-{id_}" in message else id_)

    def about_inside(self, id_: str) -> str:
        """The same within a line."""
        return message(f"about-{id_}.inside") if f"about-{id_}" in message else self.about(id_)

    def place(self, id_: str) -> Markup:
        """The same, as a link to its opening sheet where it has one."""
        return self.sheet(id_, self.about(id_)) if id_ in self._spoken else safe(self.about(id_))

    def places(self, ids: Sequence[str]) -> Markup:
        """Several of them; all openings as one word."""
        if len(self._spoken) > 1 and set(ids) >= set(self._spoken):
            return safe(message("every-opening"))
        return Markup(", ").join(self.place(id_) for id_ in ids)

    def sheet(self, id_: str, text: object) -> Markup:
        """A link to the sheet of an opening."""
        return self.spot("openings", f"opening-{id_}", text)

    def spot(self, part: str, anchor: str, text: object) -> Markup:
        """A link to a place in a part of the pack."""
        if self.whole:
            return Markup('<a href="#{}">{}</a>').format(anchor, safe(text))
        return self.page.anchor(f"{self.address(part)}#{anchor}", text)

    def address(self, part: str) -> str:
        """Where a part of the pack stands in the site; the summary is the part without a name."""
        return f"jobs/{self.survey.id}/{part}/" if part else f"jobs/{self.survey.id}/"

    def heading(self, level: int, text: object, anchor: str) -> Markup:
        """A heading below the title of the page; one deeper where all parts stand on one page."""
        depth = level + self.whole
        if self._html:
            return Markup('<h{0} id="{1}">{2}</h{0}>').format(depth, anchor, safe(text))
        return Markup("\n\n{} {} {{: #{} }}\n\n").format(Markup("#" * depth), safe(text), anchor)

    def device(self, id_: str | None) -> Markup:
        """A device class by name, linked."""
        record = self.page.library.find("device", id_) if id_ else None
        return self.page.link(record) if record else safe(id_ or message("no-device"))

    @staticmethod
    def passed_over(one: OpeningPlan) -> list[tuple[list[str], bool, tuple[str, ...]]]:
        """The devices passed over, whether they are ruled out, and why; those for the same reasons together."""
        groups = alike(one.choice.passed_over, lambda other: (other.ruled_out, tuple(other.why)))
        return [([other.device for other in others], *reason) for reason, others in groups.items()]

    def linked(self, kind: str, id_: str) -> Markup:
        """A record by name, linked; its id where there is no such record."""
        record = self.page.library.find(kind, id_)
        return self.page.link(record) if record else safe(id_)

    def tool(self, item: Item) -> Markup:
        """What an item is called, linked to its record where it has one."""
        kind, _, id_ = (item.record or "").rpartition("/")
        kinds = () if not id_ else (kind,) if kind else ("tool", "device")
        record = next((record for one in kinds if (record := self.page.library.find(one, id_))), None)
        return self.page.link(record, item.name) if record else safe(item.name)

    def caution_ids(self) -> list[str]:
        """The cautions of the job; with all parts in one, those of the site: each opening sheet warns of its own."""
        return [one.caution for one in self.plan.cautions if not self.whole or "site" in one.about]

    # -- what stands open ------------------------------------------------------------------------------------

    def questions(self, about: str) -> list[Question]:
        """The open questions about an opening, the site or the control unit."""
        return [one for one in self.plan.questions if one.about == about]

    def asked(self) -> list[tuple[str, bool, tuple[Asked, ...]]]:
        """All questions under the site, the control unit and the openings; whether it is said which openings."""
        return [
            (self.about(part) if part else message("openings"), not part, questions)
            for part, questions in by_part(self.plan.questions).items()
            if questions
        ]

    def problems(self, about: str) -> list[Problem]:
        """The problems of an opening, the site or the control unit."""
        return [one for one in self.plan.problems if one.concerns(about)]

    def verdict(self, one: OpeningPlan) -> str:
        """The worst of an opening: no device, a problem to settle before the day, or the worst of its figures."""
        return bearing(self.plan, one)

    def bears(self, line: Line) -> str:
        """The verdict of a figure."""
        return "told-only" if line.verdict == "none" else line.verdict.replace(" ", "-")

    def open_words(self, id_: str) -> str:
        """How much stands open about an opening."""
        problems, questions = len(self.problems(id_)), len(self.questions(id_))
        if problems and questions:
            return message("problems-and-questions", problems=problems, questions=questions)
        if problems:
            return message("problems", problems=problems)
        return message("questions", questions=questions) if questions else message("nothing-open")

    @staticmethod
    def verdict_words(verdict: str) -> str:
        """A verdict as a reader sees it."""
        return message(f"verdict-{verdict}")

    @staticmethod
    def style(verdict: str) -> str:
        """The style of a verdict: its frame says the same as its word, and no colour does."""
        return f"ls-bears ls-bears-{verdict}"

    # -- facts -----------------------------------------------------------------------------------------------

    def facts(self) -> Iterator[tuple[str, str]]:
        """What the survey says about the site, with what it leaves out said too."""
        return site_facts(self.plan, self.page.vocabulary)

    def opening_facts(self, one: OpeningPlan) -> Iterator[tuple[str, str]]:
        """What the survey says about an opening."""
        return opening_facts(one, self.page.vocabulary)

    # -- sums ------------------------------------------------------------------------------------------------

    def rounds(self) -> list[tuple[str, str, list[Stage]]]:
        """The order of work in its days and openings: anchor, title with its time, and pieces of each."""
        return rounds(self.plan.work, self.about, self.about_inside)

    def whole_day(self) -> str:
        """Time of all the work, at best, as a rule and at worst."""
        return words.between(self.plan.work)

    def items(self) -> list[tuple[str, str, list[Item]]]:
        """What goes on the van, under the title of its sort, with its anchor."""
        groups = ((sort, [one for one in self.plan.items if one.sort == sort]) for sort in SORTS)
        return [(message(f"sort-{sort}"), SORTS[sort], items) for sort, items in groups if items]

    def entry_names(self) -> str:
        """The zones that give time to unset, by name."""
        return self._names(zone for zone in self.plan.zones if words.response(zone) == "delayed")

    def chimes(self) -> str:
        """The zones that chime while unset, by name."""
        return self._names(zone for zone in self.plan.zones if zone.chime)

    def _names(self, zones: Iterator[Zone]) -> str:
        return ", ".join(dict.fromkeys(zone.spoken for zone in zones))

    def radio(self) -> bool:
        """Whether any contact has a cell."""
        return any(zone.link == "radio" for zone in self.plan.zones)

    def magnets(self) -> bool:
        """Whether any contact has, or may have, a magnet."""
        fitted = [one for one in self.plan.openings if one.choice.device is not None]
        return any(one.fixing is None or one.fixing.magnet for one in fitted)

    def without(self) -> list[OpeningPlan]:
        """The openings that no device is planned for, or no position is free for."""
        return [one for one in self.plan.openings if one.choice.device is None or one.choice.lacks]

    def contacts(self) -> list[Spot]:
        """Every contact that is fitted or kept, each by itself, also where two share a zone."""
        return list(spots(self.plan))

    def zone_rows(self) -> list[tuple[Zone, str]]:
        """The zone schedule with an anchor at each zone; a tamper line has none, because it is no zone of its own."""
        return [(zone, "" if self.tamper(zone) else f"zone-{zone.position.lower()}") for zone in self.plan.zones]

    @staticmethod
    def tamper(zone: Zone) -> bool:
        """It is the tamper line of the zone above it."""
        return words.response(zone) == "always-on"

    def watched(self) -> list[Zone]:
        """The zones that watch an opening, without the tampers of their devices."""
        return [zone for zone in self.plan.zones if not self.tamper(zone)]

    def handed_over(self) -> list[tuple[Spot, Zone]]:
        """Each contact that is watched from now on, with its zone."""
        return list(handed_over(self.contacts(), self.watched()))

    def zone_of(self, one: OpeningPlan) -> list[Zone]:
        """The zones of an opening."""
        return [zone for zone in self.watched() if zone.opening == one.opening.id]

    def kinds(self) -> list[str]:
        """The kinds of opening of this job, each once."""
        return list(dict.fromkeys(one.opening.kind for one in self.plan.openings))

    # -- words that come from a record -----------------------------------------------------------------------

    def figure_name(self, line: Line) -> Markup:
        """What a figure is, linked to how it is worked."""
        record = self.page.library.find("formula", line.figure)
        return self.page.link(record, line.name) if record else safe(line.name)

    def input_name(self, device: str | None, input_: str | None) -> str:
        """The name of an input of a device class."""
        record = self.page.library.find("device", device) if device else None
        inputs = {entry["id"]: str(entry["name"]) for entry in (record["inputs"] if record else ())}
        return inputs.get(input_ or "", input_ or "")

    def procedures(self, one: OpeningPlan) -> list[Record]:
        """The procedures of an opening's work, each once."""
        ids = dict.fromkeys(id_ for stage in one.stages for id_ in stage.procedures)
        return self.page.records("procedure", list(ids))

    unit = staticmethod(words.unit)

    def proofs(self, spot: Spot) -> list[tuple[str, str]]:
        """What is written when a contact is proved, beside its readings."""
        return list(words.proofs(self.page, spot.plan, spot.shown))
