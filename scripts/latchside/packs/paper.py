"""What the parts of a pack ask of the page that they stand on, and that page where it is a document by itself.

The pages of the site answer it too (`pages/page.py`). This one needs no site: it knows the region of the job, and shows
the words and the units of that region alone.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Protocol

from markupsafe import Markup

from latchside.drawings.file import finished
from latchside.drawings.inline import inlined
from latchside.escape import safe
from latchside.figures.one_system import quantity_in
from latchside.library import Library, Record
from latchside.library.look_up import LookUp
from latchside.library.quantity import quantity
from latchside.library.regions import by_region, named_in, told
from latchside.library.text import RecordLink, ValueLink, Words, text_parts
from latchside.qr import code


class Paper(Protocol):
    """A page that parts of a pack stand on."""

    @property
    def library(self) -> Library:
        """The records that the page names."""

    def anchor(self, address: str, words: object) -> Markup:
        """A link to an address of the site."""

    def link(self, record: Record, words: object = None) -> Markup:
        """A link to a record, with its name or other words."""

    def records(self, kind: str, ids: Any) -> list[Record]:
        """The sound records among `ids`, in the order given."""

    def by_level(self, ids: Any) -> list[tuple[str, list[Record]]]:
        """Cautions under their signal words, the worst first."""

    def vocabulary(self, name: str, word: str) -> str:
        """What a reader sees for a word of a vocabulary."""

    def named(self, name: str) -> str:
        """A whole name, such as that of a tool, as the region of the job says it where the page has one."""

    def words(self, text: str, owner: Record | None = None) -> Markup:
        """A command, a state or a title, its references resolved."""

    def step(self, reference: str) -> Mapping[str, Any]:
        """The step that `procedure/step` names; empty where there is none."""

    def sketch(self, id_: str, name: str) -> Markup:
        """A drawing without its words, under a name that no other on the page has; empty where there is none."""

    def code(self, address: str) -> Markup:
        """A QR code that opens an address of the site from paper; empty where that is not known."""


class Document(LookUp):
    """A page that stands by itself: links lead into the site where its address is known, and are words elsewhere."""

    def __init__(self, library: Library, region: str | None = None, site: str = "") -> None:
        super().__init__(library)
        self._region = region
        self._site = site

    def anchor(self, address: str, words: object) -> Markup:
        """A link, or the words alone."""
        if not self._site:
            return safe(words)
        return Markup('<a href="{}">{}</a>').format(safe(self._site + address), safe(words))

    def link(self, record: Record, words: object = None) -> Markup:
        """A link to a record, with its name or other words."""
        return self.anchor(record.address, words if words is not None else self.named(record.name))

    def vocabulary(self, name: str, word: str) -> str:
        """What a reader sees for a word of a vocabulary."""
        return self.named(self.library.schemas.words(name)[word])

    def named(self, name: str) -> str:
        """A whole name as the region of the job says it."""
        return named_in(name, self.library.of("word"), self._region)

    def words(self, text: str, owner: Record | None = None) -> Markup:
        """The text as the region of the job says it."""
        return Markup("").join(self._part(part, owner) for part in text_parts(text))

    def sketch(self, id_: str, name: str) -> Markup:
        """A drawing of the library, in the document itself."""
        return sketch(self.library, id_, name)

    def code(self, address: str) -> Markup:
        """A code to scan from paper."""
        return code(self._site + address, "l") if self._site else Markup("")

    def _part(self, part: Words | RecordLink | ValueLink, owner: Record | None) -> Markup:
        if isinstance(part, Words):
            return safe(part.text)
        if isinstance(part, ValueLink):
            return safe(self._value(part, owner))
        record = self.library.find(part.kind, part.id)
        if record is None:
            return safe(part.words or part.id.replace("-", " "))
        if part.kind == "word":
            return safe(self._of_region(part, record))
        name = record.name.lower() if part.kind == "term" else record.name
        return self.anchor(f"{record.address}#step-{part.step}" if part.step else record.address, part.words or name)

    def _of_region(self, part: RecordLink, word: Record) -> str:
        here = (text for text, regions in by_region(word, part.words) if self._region in regions)
        return next(here, told(part, word))

    def _value(self, part: ValueLink, owner: Record | None) -> str:
        record = owner if part.owner is None else self.library.find(part.owner[0], part.owner[1] or "")
        data = record.get("values", {}).get(part.name) if record else None
        if data is None:
            return self.library.schemas.words("value-name").get(part.name, part.name.replace("-", " ")).lower()
        return quantity_in(quantity(data), imperial=self._region == "north_america")


def sketch(library: Library, id_: str, name: str) -> Markup:
    """A drawing in the page itself, under a name that no other on the page has; empty where there is none."""
    picture = library.pictures.get(id_)
    return inlined(finished(replace(picture, id=name))) if picture else Markup("")
