"""How what was read stands now: a text for each read, which is another as soon as something in it has changed."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache, cached_property
from hashlib import sha256

from latchside.library.model import REFERRING, Library, Record
from latchside.reads import EVERY, Read, noted_instead


class State:
    """A library as it stands. Whether a record is there at all is in none of the reads but in `records`."""

    def __init__(self, library: Library) -> None:
        self._library = library
        self._of = cache(self._text)

    @cached_property
    def records(self) -> str:
        """A hash of which records there are."""
        return _hash(f"{kind}/{id_}" for kind, records in self._library.records.items() for id_ in records)

    def of(self, reads: Iterable[Read]) -> str:
        """A hash of all that was read, as it stands."""
        with noted_instead():
            return _hash(self._of(read) for read in sorted(reads))

    def _text(self, read: Read) -> str:
        kind, id_, name = read
        if kind == EVERY:
            return _hash(_field(record, EVERY) for record in self._library)
        if id_ == EVERY:
            return _hash(_field(record, name) for record in self._library.of(kind))
        if name.startswith(REFERRING):
            return ",".join(one.id for one in self._library.referring(kind, id_, name.removeprefix(REFERRING)))
        record = self._library.find(kind, id_)
        return _hash([_field(record, name)]) if record else ""


def _field(record: Record, name: str) -> str:
    return repr(record.data) if name == EVERY else repr(record.get(name))


def _hash(texts: Iterable[str]) -> str:
    total = sha256()
    for text in texts:
        total.update(text.encode("utf-8", "surrogatepass"))
        total.update(b"\0")
    return total.hexdigest()[:32]
