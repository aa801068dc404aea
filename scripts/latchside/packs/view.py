"""What the pages of a job show of its plan: names, order, sums and words. Templates only place them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from markupsafe import Markup

from latchside.library.alike import alike
from latchside.messages import Message, listed, messages
from latchside.packs import proving, words
from latchside.packs.agreed import limit
from latchside.packs.contacts import Spot, handed_over, spots
from latchside.packs.facts import opening_facts, site_facts
from latchside.packs.keypad import Keypad, keypad
from latchside.packs.loading import goes_to
from latchside.packs.named import Named
from latchside.packs.quote import Hours, paid, quote
from latchside.packs.rounds import rounds
from latchside.packs.system import region_of
from latchside.packs.walk import in_page, walk
from latchside.planning.asked import Asked, by_part
from latchside.planning.bearing import bearing
from latchside.planning.figures_for.places import sort_of
from latchside.planning.plan import Item, Line, OpeningPlan, Problem, Question, Stage, Zone
from latchside.planning.zones import INSTANT
from latchside.read.forms import BARE, CONTACTS

message = messages(__name__)

PARTS = ("openings", "zones", "van", "work", "service", "test-sheet", "handover", "annex")
"""The parts of a pack beside its summary, in order. What is filled in or left comes last, before what a lead keeps."""
SORTS = {"part": "parts", "consumable": "consumables", "tool": "tools"}
"""The sorts of items, each with the anchor of its list."""
_OUTER = frozenset({"gate", "up-and-over", "roller-door"})
"""Kinds through which people come and go without entering the house: common practice asks what they set off."""


def parts() -> dict[str, tuple[Message, Message]]:
    """The title of each part of a pack, and what it holds."""
    return {part: (message(f"part-{part}"), message(f"part-{part}.holds")) for part in PARTS}


class JobView(Named):
    """A plan on one page."""

    words = words

    def walk(self) -> Markup:
        """The walk as sketches, where the survey names sides."""
        return Markup("").join(in_page(one) for one in walk(self.plan, self.page.library))

    def sketch(self, one: OpeningPlan) -> Markup:
        """The sort of an opening, drawn with its contacts as they are fixed."""
        sort, contacts = f"opening-{sort_of(one.opening)}", CONTACTS[one.contacts > 1]
        forms = [f"{sort}-{fixing}" for fixing in (one.fixing.drawn if one.fixing else BARE, BARE)]
        ids = (id_ for form in forms for id_ in (f"{form}-{contacts}", form))
        drawing = next((id_ for id_ in ids if id_ in self.page.library.pictures), sort)
        return self.page.sketch(drawing, f"drawn-{one.opening.id}")

    def tests(self) -> list[proving.Table]:
        """The tables of the test sheet."""
        return list(proving.tables(self.plan, self.page, imperial=self.imperial))

    @cached_property
    def keypad(self) -> Keypad:
        """The names of the zones as the keypad shows them."""
        return keypad(self.plan, self.page.library)

    def agreed(self) -> list[tuple[Markup, Message]]:
        """The times to agree with the customer, as the region calls them, with what each is held to."""
        region, library = region_of(self.plan), self.page.library
        return [
            (self.word("entry-delay", message("entry-time")), limit("entry", region, library)),
            (self.word("exit-delay", message("exit-time")), limit("exit", region, library)),
        ]

    def outer(self) -> str:
        """The zones of gates, garage and roller doors that alarm at once: their positions, in a row."""
        kinds = {one.opening.id: one.opening.kind for one in self.plan.openings}
        outer = [zone for zone in self.watched() if kinds[zone.opening] in _OUTER and zone.response == INSTANT]
        return listed([zone.position for zone in outer])

    def supervisions(self) -> list[tuple[str, str]]:
        """How the zones are watched, and which: those alike together."""
        groups = alike(self.plan.zones, lambda zone: zone.supervision)
        return [(listed(list(dict.fromkeys(zone.position for zone in zones))), how) for how, zones in groups.items()]

    def goes_to(self, item: Item) -> str:
        """The numbers of the openings that an item goes to."""
        return ", ".join(map(str, goes_to(item, self.plan, self.page.library)))

    @staticmethod
    def passed_over(one: OpeningPlan) -> list[tuple[list[str], bool, tuple[str, ...]]]:
        """The devices passed over, whether they are ruled out, and why; those for the same reasons together."""
        groups = alike(one.choice.passed_over, lambda other: (other.ruled_out, tuple(other.why)))
        return [([other.device for other in others], *reason) for reason, others in groups.items()]

    def caution_ids(self) -> list[str]:
        """The cautions of the job; with all parts in one, those of the site: each opening sheet warns of its own."""
        return [one.caution for one in self.plan.cautions if not self.whole or "site" in one.about]

    def amount(self, value: float, unit: str) -> str:
        """A quantity of what goes on the van."""
        return words.amount(value, unit, imperial=self.imperial)

    # -- what stands open ------------------------------------------------------------------------------------

    def questions(self, about: str) -> list[Question]:
        """The open questions about an opening, the site or the control unit."""
        return [one for one in self.plan.questions if one.about == about]

    @staticmethod
    def asked_of(one: Asked) -> list[str]:
        """The ids of all that a question is asked of."""
        return list(dict.fromkeys(id_ for _, ids in one.decides for id_ in ids))

    def asked(self) -> list[tuple[str, bool, tuple[Asked, ...]]]:
        """All questions under the site, the control unit and the openings; whether it is said which openings."""
        return [
            (self.about(part) if part else message("openings"), not part, questions)
            for part, questions in by_part(self.plan.questions).items()
            if questions
        ]

    def asked_count(self) -> int:
        """How many questions that is, each counted once however many openings it is asked of."""
        return sum(len(questions) for _, _, questions in self.asked())

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
        return opening_facts(one, self.page.vocabulary, imperial=self.imperial)

    # -- sums ------------------------------------------------------------------------------------------------

    def comes_back(self) -> list[tuple[str, str]]:
        """What falls due, in the words of a customer: the same at several days once, and a year's batteries once."""
        mine, batteries = [], dict[int, list[str]]()
        for one in self.plan.service:
            if one.about in self.sheets.numbers:
                batteries.setdefault(one.due.year, []).append(one.about)
            else:
                mine.append(one)
        groups = alike(mine, lambda one: one.words)
        return [
            *((listed([words.day(one.due) for one in due]), what) for what, due in groups.items()),
            *((str(year), self._batteries(ids)) for year, ids in sorted(batteries.items())),
        ]

    def falls_due(self) -> list[tuple[str, Markup, str]]:
        """What falls due, for the firm: the day, the openings by number, and what; batteries of one day once."""
        numbers = self.sheets.numbers
        groups = alike(self.plan.service, lambda one: (one.due, "" if one.about in numbers else one.words))
        return [
            (words.day(due), self.numbers([one.about for one in alike_ones]), what or message("change-batteries"))
            for (due, what), alike_ones in groups.items()
        ]

    def _batteries(self, ids: list[str]) -> str:
        return message("batteries", openings=listed([self.about(id_) for id_ in dict.fromkeys(ids)]))

    def rounds(self) -> list[tuple[str, str, list[Stage]]]:
        """The order of work in its days and openings: anchor, title with its time, and pieces of each."""
        return rounds(self.plan.work, self.about, self.about_inside)

    def plainly(self, zone: Zone) -> Markup:
        """What happens when a zone's opening is opened, for the people on site."""
        by_region = {"unset": self.word("disarm", "disarm"), "centre": self.word("central-station")}
        return words.plainly(zone, self.survey.site.monitored, **by_region)

    def whole_day(self) -> str:
        """Usual time of the whole job, that of each technician added up."""
        return paid(self.plan)

    def quote(self) -> list[Hours]:
        """The hours of the job, for a quote."""
        return list(quote(self.plan))

    def on_site(self) -> str:
        """Usual time on site, from arriving to leaving, over all days."""
        return words.minutes(sum(one.minutes for one in self.plan.days))

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

    def lacks(self, zone: Zone) -> bool:
        """The panel has no position for it yet."""
        return any(one.choice.lacks for one in self.plan.openings if one.opening.id == zone.opening)

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
