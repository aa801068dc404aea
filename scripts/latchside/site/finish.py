"""What is done once the pages stand: lean files, policies, the finder's index, the saved copy's list, the worker last.

The worker holds the digest of the list, and the list the digest of every file, so nothing may be changed afterwards.
"""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from html import unescape
from pathlib import Path
from typing import Any

from markupsafe import Markup

from latchside.all_cores import each
from latchside.in_page.parts import parts
from latchside.kinds import CARDS
from latchside.library import Library
from latchside.messages import messages
from latchside.pages.finder import finder_index
from latchside.pages.page import Page
from latchside.root import cache_folder
from latchside.site.csp import PLANS, with_policy
from latchside.site.lean import lean, lean_page, lean_sheet
from latchside.site.saved_copy import Sizes, chosen, listing, planner_size, stored
from latchside.version import library_version

message = messages(__name__)

WORKER = Path(__file__).parent / "worker"
OFF = '{"off":true}\n'
_TITLE = re.compile(r"<h1[^>]*>(.*?)</h1>", re.DOTALL)
_PLANS = re.compile(PLANS + r'(?:="\d*")?')
_HEADING = re.compile(r'<h[23] id="([^"]+)"[^>]*>(.*?)</h[23]>', re.DOTALL)
_WRITTEN = (
    "on-site/",
    "survey/",
    "visits/",
    "offline/",
    "labels/",
    "study/",
    "maintain/",
    *(f"cards/{id_}/" for id_ in CARDS),
)


@dataclass(frozen=True)
class Finished:
    """What the saved copy came to: bytes and files at once and on request, groups, and what did not fit."""

    first: int = 0
    first_files: int = 0
    rest: int = 0
    groups: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()

    def __str__(self) -> str:
        if not self.first:
            return message("off")
        first, rest = f"{self.first / 1e6:.2f}", f"{self.rest / 1e6:.2f}"
        return message("saved", first=first, files=self.first_files, groups=", ".join(self.groups), rest=rest)


def finish(site: Path, library: Library, date: str, *, offline: bool = True) -> Finished:
    """Finish the built site in `site`. With `offline` false, phones that saved a copy are told to let it go."""
    each(sorted(site.rglob("*.html")), rewrite)
    return close(site, library, date, offline=offline)


def close(site: Path, library: Library, date: str, sizes: Sizes | None = None, *, offline: bool = True) -> Finished:
    """Finish all but the pages themselves; `sizes` knows what files take that were packed before."""
    _drop_unused(site / "assets")
    for path in sorted((site / "assets" / "js").rglob("*.js")):
        if "vendor" not in path.parts:  # a library is served as it came, with its licence
            path.write_text(lean(path.read_text("utf-8")), "utf-8")
    for path in sorted((site / "assets").glob("*.css")):
        path.write_text(lean_sheet(path.read_text("utf-8")), "utf-8")
    (site / "finder.json").write_text(finder_index(library, dict(_written(site))), "utf-8")
    if library.root:
        (site / "planner.zip").write_bytes(parts(library, cache_folder(library.root)))
        _weigh(site)
    switch = (WORKER / "sw-off.js").read_text("utf-8")
    (site / "sw-off.js").write_text(switch, "utf-8")
    if not offline:
        (site / "offline.json").write_text(OFF, "utf-8")
        (site / "sw.js").write_text(switch, "utf-8")
        return Finished()
    return stamp(site, date, corrections(library), sizes)


def stamp(site: Path, date: str, told: Iterable[Mapping[str, Any]], sizes: Sizes | None = None) -> Finished:
    """List the files as they stand and write the worker for that list. Whatever is changed later is not saved."""
    copy = chosen(stored(site), known=sizes)
    text = listing(copy, library_version(), date, told)
    (site / "offline.json").write_text(text, "utf-8")
    worker = (WORKER / "sw.js").read_text("utf-8")
    digest = sha256(text.encode("utf-8")).hexdigest()
    (site / "sw.js").write_text(worker.replace("{{stamp}}", digest), "utf-8")
    size = json.loads(text)["size"]
    return Finished(size["first"], len(copy.first), size["rest"], tuple(copy.groups), tuple(copy.left_out))


def _weigh(site: Path) -> None:
    """Say on the page that plans what its planner weighs."""
    page = site / "survey" / "index.html"
    if page.exists():
        told = f'{PLANS}="{planner_size(stored(site))}"'
        page.write_text(_PLANS.sub(told, page.read_text("utf-8")), "utf-8")


def corrections(library: Library) -> Iterator[dict[str, Any]]:
    """What has to be said to everyone who may have read an earlier version of a record."""
    for record in library:
        correction = record.get("safety_correction")
        if correction:
            page = Page(library, record.address, record)
            yield {
                "key": f"{record.kind.id}/{record.id}/{correction['version']}",
                "address": record.address,
                "name": record.name,
                "text": page.plain(correction["text"], record).unescape(),
            }


def _drop_unused(assets: Path) -> None:
    """Take away what came with the theme and no page ever asks for: maps for debugging, the theme's search."""
    for name in ("lunr", "workers"):
        shutil.rmtree(assets / "javascripts" / name, ignore_errors=True)
    for path in sorted(assets.rglob("*.map")):
        path.unlink()


def finished_page(page: str) -> str:
    """A page as it is served."""
    return with_policy(lean_page(page))


def rewrite(path: Path) -> None:
    """Write a page as it is served in its own place."""
    try:
        path.write_text(finished_page(path.read_text("utf-8")), "utf-8")
    except ValueError as error:
        raise ValueError(f"{path}: {error}") from None


def _written(site: Path) -> Iterator[tuple[str, tuple[str, list[tuple[str, str]]]]]:
    """The hand-written pages that are there: address, title, and headings with their anchors."""
    for address in _WRITTEN:
        page = site / address / "index.html"
        text = page.read_text("utf-8") if page.is_file() else ""
        found = _TITLE.search(text)
        if found:
            headings = [(id_, _words(words)) for id_, words in _HEADING.findall(text)]
            yield address, (_words(found[1]), [(id_, words) for id_, words in headings if words])


def _words(markup: str) -> str:
    return unescape(Markup(markup).striptags())
