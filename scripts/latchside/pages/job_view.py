"""What the pages of a job show of its plan: names, order, sums and words. Templates only place them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property

from markupsafe import Markup

from latchside.library import Record
from latchside.library.alike import alike
from latchside.pages import job_words as words
from latchside.pages.escape import safe
from latchside.pages.job_contacts import Spot, handed_over, spots
from latchside.pages.job_rounds import rounds
from latchside.pages.page import Page
from latchside.planning.asked import Asked, by_part
from latchside.planning.plan import Item, Line, OpeningPlan, Plan, Problem, Question, Stage, Verdict, Zone
from latchside.planning.zones import contact_names

PARTS = {
    "openings": ("Opening sheets", "Which device, why, where and how it is fixed, and what it should read"),
    "zones": ("Zone schedule", "Position, spoken name, response and reports of each zone"),
    "van": ("What goes on the van", "Parts, consumables and tools, with spares"),
    "work": ("Order of work", "One opening after the other, with minutes"),
    "service": ("Service plan", "What falls due, and when"),
    "test-sheet": ("Test sheet", "What each reading should be, and room for what it is"),
    "handover": ("Handover sheet", "In plain words, for the people on site"),
}
"""The parts of a pack beside its summary, in order: title, and what it holds. What is filled in or left comes last."""

SORTS = {"part": "Parts", "consumable": "Consumables", "tool": "Tools"}
_WORST: tuple[Verdict, ...] = ("test on site", "good")
PROBLEM = "problem"
"""The worst that an opening can be: something has to be ordered, changed or settled before the day."""


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
        return self._spoken.get(id_, {"site": "The site", "control-unit": "The control unit"}.get(id_, id_))

    def place(self, id_: str) -> Markup:
        """The same, as a link to its opening sheet where it has one."""
        return self.sheet(id_, self.about(id_)) if id_ in self._spoken else safe(self.about(id_))

    def places(self, ids: Sequence[str]) -> Markup:
        """Several of them; all openings as one word."""
        if len(self._spoken) > 1 and set(ids) >= set(self._spoken):
            return safe("Every opening")
        return Markup(", ").join(self.place(id_) for id_ in ids)

    def sheet(self, id_: str, said: object) -> Markup:
        """A link to the sheet of an opening."""
        return self.spot("openings", f"opening-{id_}", said)

    def spot(self, part: str, anchor: str, said: object) -> Markup:
        """A link to a place in a part of the pack."""
        if self.whole:
            return Markup('<a href="#{}">{}</a>').format(anchor, safe(said))
        return self.page.anchor(f"{self.address(part)}#{anchor}", said)

    def address(self, part: str) -> str:
        """Where a part of the pack stands in the site; the summary is the part without a name."""
        return f"jobs/{self.survey.id}/{part}/" if part else f"jobs/{self.survey.id}/"

    def heading(self, level: int, said: object, anchor: str) -> Markup:
        """A heading below the title of the page; one deeper where all parts stand on one page."""
        depth = level + self.whole
        if self._html:
            return Markup('<h{0} id="{1}">{2}</h{0}>').format(depth, anchor, safe(said))
        return Markup("\n\n{} {} {{: #{} }}\n\n").format(Markup("#" * depth), safe(said), anchor)

    def device(self, id_: str | None) -> Markup:
        """A device class by name, linked."""
        record = self.page.library.find("device", id_) if id_ else None
        return self.page.link(record) if record else safe(id_ or "not chosen")

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
        found = [self.page.library.find(one, id_) for one in ([kind] if kind else ["tool", "device"])] if id_ else []
        record: Record | None = next((one for one in found if one), None)
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
        listed = by_part(self.plan.questions).items()
        return [(self.about(part) if part else "Openings", not part, found) for part, found in listed if found]

    def problems(self, about: str) -> list[Problem]:
        """The problems of an opening, the site or the control unit."""
        return [one for one in self.plan.problems if one.concerns(about)]

    def verdict(self, one: OpeningPlan) -> str:
        """A problem where there is one, else the worst verdict of its figures; or that it has no device."""
        if one.choice.device is None:
            return "no device yet"
        if self.problems(one.opening.id) or any(line.verdict == "poor" for line in one.figures):
            return PROBLEM
        found = {line.verdict for line in one.figures}
        return next((verdict for verdict in _WORST if verdict in found), "no verdict")

    def bears(self, line: Line) -> str:
        """The verdict word of a figure."""
        return "told only" if line.verdict == "none" else line.verdict

    def open_words(self, id_: str) -> str:
        """How much stands open about an opening."""
        parts = [
            words.counted(len(found), word)
            for found, word in ((self.problems(id_), "problem"), (self.questions(id_), "question"))
            if found
        ]
        return ", ".join(parts) or "nothing"

    def style(self, verdict: str) -> str:
        """The style of a verdict word: its frame says the same as the word, and no colour does."""
        return f"ls-bears ls-bears-{verdict.replace(' ', '-')}"

    # -- facts -----------------------------------------------------------------------------------------------

    def facts(self) -> Iterator[tuple[str, str]]:
        """What the survey says about the site, with what it leaves out said too."""
        site, unit = self.survey.site, self.survey.control_unit
        yield "Surveyed", words.day(self.survey.surveyed) if self.survey.surveyed else "no date given"
        yield "Planned for", words.day(self.plan.on)
        yield "Region", self.page.vocabulary("region", site.region) if site.region else "not known"
        yield "Built", str(site.year_built) if site.year_built else "not known"
        yield "Kind of building", self._word("building", site.building)
        yield "Listed", words.yes_no(site.listed)
        yield "Consent of the owner", self._word("consent", site.consent)
        yield "Occupied during the job", words.yes_no(site.occupied)
        yield "Monitored", words.yes_no(site.monitored)
        yield "Somebody with a key arranged", words.yes_no(site.keyholder_arranged)
        yield "Grade", self._word("grade", site.grade)
        if site.insurer:
            yield "The insurer asks for", site.insurer
        yield "Owner of the panel", self._word("panel-owner", unit.owner)
        yield "Installer code known and allowed", words.yes_no(unit.installer_access)
        yield "Free positions, wired", "not known" if unit.wired_positions is None else str(unit.wired_positions)
        yield "Free positions, radio", "not known" if unit.radio_positions is None else str(unit.radio_positions)
        yield "Zones there already", ", ".join(unit.zones_in_use) or "none named"
        yield "Library", f"version {self.plan.library}"

    def _word(self, vocabulary: str, word: str | None) -> str:
        return self.page.vocabulary(vocabulary, word) if word else "not known"

    def opening_facts(self, one: OpeningPlan) -> Iterator[tuple[str, str]]:
        """What the survey says about an opening, in words."""
        opening = one.opening
        yield "Where", ", ".join(filter(None, (opening.place, opening.side)))
        yield "Kind", self.page.vocabulary("opening", opening.kind)
        yield "Use", self.page.vocabulary("use", opening.use) if opening.use else "not known"
        yield "Fire-rated", words.yes_no(opening.fire_rated)
        yield "Escape way", words.yes_no(opening.escape)
        if one.contacts > 1:
            yield "Contacts", f"{one.contacts}: {', '.join(contact_names(one))}"
        if one.choice.shared and one.choice.moved:
            yield "One zone for both", one.choice.moved
        if opening.powered:
            yield "Powered", words.yes_no(opening.powered)
        if opening.hardware:
            yield "Hardware", ", ".join(self.page.vocabulary("door-hardware", fitted) for fitted in opening.hardware)
        if opening.notes:
            yield "Note of the survey", opening.notes

    # -- sums ------------------------------------------------------------------------------------------------

    def rounds(self) -> list[tuple[str, str, str, list[Stage]]]:
        """The order of work in its days and openings: anchor, title, time and pieces of each."""
        return rounds(self.plan.work, self.about)

    def whole_day(self) -> str:
        """Time of all the work, at best, as a rule and at worst."""
        return words.between(self.plan.work)

    def technicians(self) -> str:
        """How many technicians the survey plans with."""
        return words.counted(self.survey.rules.technicians or 1, "technician")

    def items(self) -> list[tuple[str, list[Item]]]:
        """What goes on the van, under the title of its sort."""
        groups = [(title, [one for one in self.plan.items if one.sort == sort]) for sort, title in SORTS.items()]
        return [(title, items) for title, items in groups if items]

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
