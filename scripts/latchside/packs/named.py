"""How openings, devices and parts of a pack are named and linked on its pages."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

from markupsafe import Markup

from latchside.escape import safe
from latchside.messages import messages, within
from latchside.packs.paper import Paper
from latchside.packs.sheets import Sheets
from latchside.packs.system import in_system_of, is_imperial
from latchside.planning.plan import Item, Line, Plan

message = messages(__name__)


class Named:
    """The names of a plan on one page: a part of the site's pages, or, with `whole`, all parts in one."""

    def __init__(self, plan: Plan, page: Paper, *, whole: bool = False, html: bool = False) -> None:
        self.plan = in_system_of(plan)
        self.survey = plan.survey
        self.imperial = is_imperial(plan)
        self.page = page
        self.whole = whole
        self.html = html

    @cached_property
    def _spoken(self) -> dict[str, str]:
        return {one.opening.id: one.spoken for one in self.plan.openings}

    def word(self, id_: str, form: str = "") -> Markup:
        """A word that differs by region, in one of its forms as any region says it; without one, in its first."""
        return self.page.words(f"[[word/{id_}|{form}]]" if form else f"[[word/{id_}]]")

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
        if self.html:
            return Markup('<h{0} id="{1}">{2}</h{0}>').format(depth, anchor, safe(text))
        return Markup("\n\n{} {} {{: #{} }}\n\n").format(Markup("#" * depth), safe(text), anchor)

    def device(self, id_: str | None) -> Markup:
        """A device class by name, linked."""
        record = self.page.library.find("device", id_) if id_ else None
        return self.page.link(record) if record else safe(id_ or message("no-device"))

    def device_name(self, id_: str) -> str:
        """The name of a device class within a line."""
        record = self.page.library.find("device", id_)
        return within(record.name) if record else id_

    @cached_property
    def sheets(self) -> Sheets:
        """What the sheets of the openings show."""
        return Sheets(self.plan, self.page, imperial=self.imperial)

    def numbers(self, ids: Sequence[str]) -> Markup:
        """Openings by their numbers along the walk, linked; all of them as one word."""
        known = sorted((id_ for id_ in ids if id_ in self._spoken), key=self.sheets.numbers.__getitem__)
        if len(self._spoken) > 1 and set(known) >= set(self._spoken):
            return safe(message("every-opening"))
        return Markup(", ").join(self.sheet(id_, str(self.sheets.numbers[id_])) for id_ in known)

    def linked(self, kind: str, id_: str) -> Markup:
        """A record by name, linked; its id where there is no such record."""
        record = self.page.library.find(kind, id_)
        return self.page.link(record) if record else safe(id_)

    def tool(self, item: Item) -> Markup:
        """What an item is called, linked to its record where it has one."""
        kind, _, id_ = (item.record or "").rpartition("/")
        kinds = () if not id_ else (kind,) if kind else ("tool", "device")
        record = next((record for one in kinds if (record := self.page.library.find(one, id_))), None)
        name = self.page.named(item.name)
        return self.page.link(record, name) if record else safe(name)

    def figure_name(self, line: Line) -> Markup:
        """What a figure is, linked to how it is worked."""
        record = self.page.library.find("formula", line.figure)
        return self.page.link(record, line.name) if record else safe(line.name)

    def input_name(self, device: str | None, input_: str | None) -> str:
        """The name of an input of a device class."""
        record = self.page.library.find("device", device) if device else None
        inputs = {entry["id"]: str(entry["name"]) for entry in (record["inputs"] if record else ())}
        return inputs.get(input_ or "", input_ or "")
