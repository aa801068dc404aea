"""The pages of a build: made on all cores, or taken as they were made before from the same."""

from __future__ import annotations

import gzip
import json
import logging
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import partial
from hashlib import sha256
from pathlib import Path
from typing import Any

from mkdocs.structure.files import File

from latchside.all_cores import PARTS, all_cores
from latchside.reads import Read, noted
from latchside.site.engine import Engine, Warnings, page_of
from latchside.site.finish import finished_page
from latchside.site.kept import Kept
from latchside.site.written import WrittenPage

_log = logging.getLogger("mkdocs.latchside")


@dataclass(frozen=True)
class Made:
    """A page as it is kept: its HTML packed, and what the rest of the build asks of it.

    `anchors` are the ids on the page, `leads` the anchors of other files that it links to, by the source of the file.
    """

    packed: bytes
    anchors: list[str]
    leads: dict[str, dict[str, str]]

    def as_bytes(self) -> bytes:
        """For keeping."""
        return json.dumps([self.anchors, self.leads]).encode("ascii") + b"\n" + self.packed


def made_of(kept: bytes) -> Made:
    """A page that was kept."""
    head, _, packed = kept.partition(b"\n")
    return Made(packed, *json.loads(head))


@dataclass
class Making:
    """All pages of a site."""

    engine: Engine
    kept: Kept
    _reads: dict[str, set[Read]] = field(default_factory=dict)
    _from: dict[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Find out what the navigation calls its pages, since it stands on each."""
        every = _hash(file.src_uri for file in self.engine.documents)
        own = {file.src_uri: _hash([file.content_string]) for file in self.engine.documents}
        unread = [page.file for page in self.engine.nav.pages if page.title is None]
        titles = self.kept.find({f"title {file.src_uri}": own[file.src_uri] + every for file in unread})
        for file in unread:
            name = f"title {file.src_uri}"
            if name in titles:
                page_of(file).title = titles[name].decode("utf-8")
                continue
            self._read(file)
            title = page_of(file).title = str(page_of(file).title)  # it stays when the text is let go
            self.kept.keep(name, own[file.src_uri] + every, self._reads[file.src_uri], title.encode("utf-8"))
        shown = self.engine.titles
        for file in self.engine.documents:
            beside = "" if isinstance(file.page, WrittenPage) else every
            self._from[file.src_uri] = _hash([shown, own[file.src_uri], beside])

    def _read(self, file: File) -> None:
        if page_of(file).content is None:
            with noted() as reads:
                self.engine.read(file)
            self._reads[file.src_uri] = reads

    def make(self) -> None:
        """Write every page into the site, and let each say which anchors it has and leads to."""
        known = self.kept.find({_name(file): self._from[file.src_uri] for file in self.engine.documents})
        old = {name: made_of(value) for name, value in known.items()}
        fresh = [file for file in self.engine.documents if _name(file) not in old]
        done = {**old, **self._made(fresh, [file for file in self.engine.documents if _name(file) in old], old)}
        for file in self.engine.documents:
            made, page = done[_name(file)], page_of(file)
            page.present_anchor_ids = set(made.anchors)
            files = {self.engine.files.get_file_from_path(to): leads for to, leads in made.leads.items()}
            page.links_to_anchors = {to: leads for to, leads in files.items() if to}

    def _made(self, fresh: list[File], same: list[File], old: Mapping[str, Made]) -> dict[str, Made]:
        """Make the fresh pages and write the others, on all cores."""
        tasks: list[Callable[[], list[_Done]]] = [partial(self._make_all, part) for part in _parts(fresh)]
        tasks += [partial(_write_all, [(file, old[_name(file)].packed) for file in part]) for part in _parts(same)]
        found: dict[str, Made] = {}
        for part in all_cores(tasks):
            for source, made, reads, said in part:
                for level, words in said:
                    _log.log(level, words)
                found[f"page {source}"] = made
                self.kept.keep(f"page {source}", self._from[source], reads, made.as_bytes())
        return found

    def _make_all(self, files: list[File]) -> list[_Done]:
        listening = Warnings()
        logger = logging.getLogger("mkdocs")
        logger.handlers[:], handlers = [listening], logger.handlers[:]
        try:
            return [self._make(file, listening) for file in files]
        finally:
            logger.handlers[:] = handlers

    def _make(self, file: File, listening: Warnings) -> _Done:
        listening.said.clear()
        self._read(file)
        page = page_of(file)
        html = finished_page(self.engine.framed(page)).encode("utf-8", "xmlcharrefreplace")
        _write(file, html)
        leads = {to.src_uri: found for to, found in (page.links_to_anchors or {}).items()}
        made = Made(gzip.compress(html, 6, mtime=0), sorted(page.present_anchor_ids or ()), leads)
        page.markdown = page.content = None
        page.toc = None  # type: ignore[assignment]
        return file.src_uri, made, self._reads[file.src_uri], list(listening.said)


_Done = tuple[str, Made, set[Read], list[tuple[int, str]]]


def _write_all(files: list[tuple[File, bytes]]) -> list[_Done]:
    for file, packed in files:
        _write(file, gzip.decompress(packed))
    return []


def _write(file: File, html: bytes) -> None:
    target = Path(file.abs_dest_path)
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(html)


def _name(file: File) -> str:
    return f"page {file.src_uri}"


def _parts(files: list[File]) -> list[list[File]]:
    return [part for start in range(PARTS) if (part := files[start::PARTS])]


def _hash(texts: Any) -> str:
    return sha256("\0".join(texts).encode("utf-8")).hexdigest()
