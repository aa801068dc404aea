"""A page while it is written: what it needs to turn texts into markup, and what it has mentioned on the way."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from markupsafe import Markup

from latchside import charts
from latchside.escape import safe
from latchside.figures.words import in_both, in_words
from latchside.kinds import KINDS, Kind
from latchside.library import Library, Record
from latchside.library.look_up import LookUp
from latchside.library.quantity import Quantity, quantity
from latchside.library.regions import by_region, told
from latchside.library.text import RecordLink, ValueLink, Words, text_parts
from latchside.messages import listed, messages
from latchside.pages import regional
from latchside.pages.drawn import drawn, figure, seen
from latchside.pages.expected import expected
from latchside.pages.links import relative
from latchside.pages.mentions import mentions
from latchside.pages.shorten import first_sentence

message = messages(__name__)


class Page(LookUp):
    """One page at `address`, about `owner` where it is about one record, and for `device` where one is at hand."""

    def __init__(
        self, library: Library, address: str, owner: Record | None = None, device: Record | None = None
    ) -> None:
        super().__init__(library)
        self.address = address
        self.owner = owner
        self.device = device
        self.terms: dict[str, Record] = {}
        self.values: dict[tuple[str, str, str], tuple[Record, Quantity]] = {}
        self._drawn: set[str] = set()
        self.linked: set[str] = set()
        self._warned: set[str] = set()
        self._told: set[str] = set()

    @property
    def at_hand(self) -> Record | None:
        """The device that the page is for, or about; None where it is for none."""
        return self.device or (self.owner if self.owner and self.owner.kind.id == "device" else None)

    # -- links -----------------------------------------------------------------------------------------------

    def href(self, address: str) -> str:
        """A relative link to another page of the site."""
        return relative(address, self.address)

    def file(self, path: str) -> str:
        """A relative link to a file of the site that is not a page."""
        return relative(path, self.address).removesuffix("/")

    def link(self, record: Record, words: object = None) -> Markup:
        """A link to a record, with its name or other words."""
        return self.anchor(record.address, words if words is not None else record.name)

    def links(self, records: Sequence[Record]) -> Markup:
        """Links to several records, as the language lists them."""
        return Markup(listed([self.link(record) for record in records]))

    def anchor(self, address: str, words: object) -> Markup:
        """A link to an address of the site."""
        return Markup(f'<a href="{safe(self.href(address))}">{safe(words)}</a>')

    def users(self, record: Record) -> list[Record]:
        """The records with a page of their own that refer to a record."""
        kinds = [kind.id for kind in KINDS.values() if kind.own_page]
        return [user for kind in kinds for user in self.library.referring(record.kind.id, record.id, kind)]

    def step_words(self, reference: str) -> Markup:
        """What `procedure/step` says, for a link to it."""
        step = self.step(reference)
        return self.plain(step["do"]) if step else safe(reference)

    def step_link(self, reference: str, words: object) -> Markup:
        """A link to `procedure/step`."""
        procedure, _, step = reference.partition("/")
        return self.anchor(f"procedures/{procedure}/#step-{step}", words)

    # -- texts -----------------------------------------------------------------------------------------------

    def text(self, text: str, owner: Record | None = None) -> Markup:
        """Prose: references resolved, and each term linked to its explanation where it is first used."""
        return self._render(text, owner, terms=True)

    def words(self, text: str, owner: Record | None = None) -> Markup:
        """A command, a state or a title: references resolved, terms noted but not linked."""
        return self._render(text, owner, terms=False)

    def gist(self, term: Record) -> Markup:
        """What a term means in one sentence; the rest is where its name leads."""
        return self.plain(first_sentence(term["meaning"]), term)

    def unexplained(self) -> list[Record]:
        """The terms to be explained at the foot: what is linked leads to its meaning, and everyday words need none."""
        terms = [term for id_, term in sorted(self.terms.items()) if id_ not in self.linked]
        return [term for term in terms if "everyday" not in term.data]

    def warned(self, caution: Record) -> bool:
        """Whether a caution stands on this page already; from now on it does."""
        before = caution.id in self._warned
        self._warned.add(caution.id)
        return before

    def told(self, caution: Record) -> bool:
        """Whether a caution was told in full anywhere on this page; from now on it was."""
        before = caution.id in self._told
        self._told.add(caution.id)
        return before

    def unlinked(self, text: Markup) -> Markup:
        """What `words` made, for a line that is tapped as a whole and can hold no link of its own."""
        return Markup(re.sub(r"</?a\b[^>]*>", "", text))

    def warn_afresh(self) -> None:
        """Tell each caution again from here on: a piece of work of its own begins, and may be all that is read."""
        self._warned.clear()

    def plain(self, text: str, owner: Record | None = None) -> Markup:
        """The text without links, for places that cannot hold one: descriptions and explanations of words."""
        return safe("".join(self._plain(part, owner or self.owner) for part in text_parts(text)))

    def _plain(self, part: Words | RecordLink | ValueLink, owner: Record | None) -> str:
        if isinstance(part, Words):
            return part.text
        if isinstance(part, RecordLink):
            record = self.library.find(part.kind, part.id)
            return told(part, record) or (record.name.lower() if record else part.id.replace("-", " "))
        record = owner if part.owner is None else self.library.find(part.owner[0], part.owner[1] or "")
        data = record.get("values", {}).get(part.name) if record else None
        return in_words(quantity(data)).replace("\u00a0", " ") if data else self.value_label(part.name).lower()

    def _render(self, text: str, owner: Record | None, *, terms: bool) -> Markup:
        out: list[str] = []
        for part in text_parts(text):
            if isinstance(part, Words):
                out.append(self._terms(part.text, linked=terms))
            elif isinstance(part, RecordLink):
                out.append(self._record_link(part))
            else:
                out.append(self._value_link(part, owner or self.owner))
        return Markup("".join(out))

    def _terms(self, text: str, *, linked: bool) -> Markup:
        out: list[str] = []
        end = 0
        for start, stop, term in mentions(self.library, text):
            self.terms.setdefault(term.id, term)
            if linked and term.id not in self.linked and self.address != "terms/":
                self.linked.add(term.id)
                out += [safe(text[end:start]), self.link(term, text[start:stop])]
                end = stop
        return Markup("".join([*out, safe(text[end:])]))

    def _record_link(self, part: RecordLink) -> Markup:
        if part.kind == "card":
            return self.anchor(f"cards/{part.id}/", part.words or part.id.replace("-", " "))
        record = self.library.find(part.kind, part.id) if part.kind in KINDS else None
        if record is None:
            return safe(part.words or f"[[{part.kind}/{part.id}]]")
        if part.kind == "word":
            return self._of_region(record, part.words)
        if part.kind == "term":
            self.terms.setdefault(record.id, record)
            self.linked.add(record.id)
        address = f"{record.address}#step-{part.step}" if part.step else record.address
        name = record.name if part.kind != "term" else record.name.lower()
        return self.anchor(address, part.words or name)

    def _of_region(self, word: Record, asked: str | None) -> Markup:
        """A word as each region says it, the reader's alone in view; all where no region is chosen."""
        term = self.library.find("term", word["term"]) if word.get("term") else None
        if term:
            self.terms.setdefault(term.id, term)
        return regional.words(by_region(word, asked))

    def _value_link(self, part: ValueLink, owner: Record | None) -> Markup:
        record: Record | None
        if part.owner is None:
            record = owner
        elif part.owner == ("device", None):
            record = self.at_hand
            if record is None or part.name not in record.get("values", {}):
                return safe(message("value-on-label", value=self.value_label(part.name).lower()))
        else:
            record = self.library.find(part.owner[0], part.owner[1] or "")
        data = record.get("values", {}).get(part.name) if record else None
        if record is None or data is None:
            return safe(f"[[={part.name}]]")
        shown = self.note_value(record, part.name, quantity(data))
        return Markup('<a class="ls-value" href="#value-{}-{}">{}</a>').format(
            record.id, part.name, regional.figure(in_both(shown))
        )

    # -- numbers ---------------------------------------------------------------------------------------------

    def note_value(self, record: Record, name: str, shown: Quantity) -> Quantity:
        """Remember that a number stands on this page, so that its status and source are listed at the foot."""
        self.values.setdefault((record.kind.id, record.id, name), (record, shown))
        return shown

    def value_label(self, name: str) -> str:
        """What a device value is called; other values go by their own name."""
        return self.library.schemas.words("value-name").get(name, name.replace("-", " ").capitalize())

    def quantity(self, data: Mapping[str, Any]) -> Quantity:
        """The quantity a record states."""
        return quantity(data)

    def shown(self, data: Mapping[str, Any]) -> Markup:
        """A quantity in words."""
        return regional.figure(in_both(quantity(data)))

    def expected(self, measure: Mapping[str, Any], owner: Record, only: tuple[str, ...] | None = None) -> Markup:
        """What a good reading is."""
        return expected(self, measure, owner, only)

    def values_elsewhere(self, record: Record) -> None:
        """Forget the values of `record` that its own page already lists among its ratings."""
        self.values = {key: pair for key, pair in self.values.items() if pair[0] is not record}

    def cell(self, cell: float | str, column: Mapping[str, Any], table: Record) -> Markup:
        """A cell of a table: text, or a number under the column's unit."""
        if isinstance(cell, str):
            return self.words(cell, table)
        return regional.figure(in_both(Quantity(unit=column["unit"], status="computed", value=float(cell))))

    def grouped(self, kind: Kind, records: tuple[Record, ...]) -> list[tuple[str, list[Record]]]:
        """Records under headings: by stage, level, topic or what is seen of a fault, where the kind has one."""
        fields = {"procedure": "stage", "checklist": "stage", "caution": "level", "fault": "group", "formula": "topic"}
        if (field := fields.get(kind.id)) is None:
            return [("", list(records))]
        words = self.library.schemas.words({"fault": "fault-group", "formula": "figure-topic"}.get(kind.id, field))
        groups = [(shown, [one for one in records if one[field] == word]) for word, shown in words.items()]
        return [(shown, of_word) for shown, of_word in groups if of_word]

    def status(self, data: Mapping[str, Any] | Quantity) -> Markup:
        """The status of a figure or fact, with its source where it has one."""
        if isinstance(data, Quantity):
            status, source = data.status, data.source
        else:
            status, source = data["status"], data.get("source")
        words = safe(self.library.schemas.words("status")[status])
        record = self.library.find("source", source) if source else None
        return Markup("{}: {}").format(words, self.link(record)) if record else words

    def vocabulary(self, name: str, word: str) -> str:
        """What a reader sees for a word of a vocabulary."""
        return self.library.schemas.words(name)[word]

    def vocabularies(self, name: str, words: Sequence[str]) -> str:
        """What a reader sees for several words of a vocabulary."""
        return listed([self.vocabulary(name, word) for word in words])

    def drawing(self, id_: str, *, folded: bool = False, apart: bool = False) -> Markup:
        """A drawing, its words `folded` or not; a second time on a page a pointer to the first; `apart` in its file."""
        if (shown := drawn(self.library, id_, self.at_hand)) is None:
            return Markup("")
        if id_ in self._drawn:
            return seen(id_, shown.drawing)
        self._drawn.add(id_)
        for value in shown.values:
            self.note_value(*value)
        return figure(shown.drawing, f"drawing-{id_}", self.file(shown.path) if apart else "", folded=folded)

    def chart(self, id_: str, *, folded: bool = False) -> Markup:
        """A chart worked out from the figures, with its message in words, `folded` or not."""
        return figure(charts.drawing(self.library, id_), f"chart-{id_}", folded=folded)
