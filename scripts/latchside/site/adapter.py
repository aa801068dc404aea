"""MkDocs' side of the site: hands it the generated pages. Everything that is worked out is worked out elsewhere.

A second adapter, `latchside render`, writes the same pages to a folder without MkDocs.
"""

from __future__ import annotations

import logging
import re
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import Environment
from markupsafe import Markup
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation

from latchside import report
from latchside.collector import without_collector
from latchside.library import Library
from latchside.markup import page_messages
from latchside.messages import messages
from latchside.pages import render_pages
from latchside.pages.render import done_now
from latchside.project import check_project
from latchside.root import ROOT
from latchside.site.date import copy_date
from latchside.site.finish import Finished, close, finish
from latchside.site.kept import Kept, done_or_kept, sizes
from latchside.site.written import WrittenPage

message = messages(__name__)
LABELS = "labels.md"
"""The page that holds nothing where the site does not know its address."""

Pages = dict[str, str]

_state: dict[str, Any] = {}
_root = {"folder": ROOT}
_previewing = {"serve": False}
_ADDRESS = re.compile(r"[\w.+-]+@[\w-]+(?:\.[\w-]+)+", re.ASCII)
_log = logging.getLogger("mkdocs.latchside")
finished: dict[str, Finished] = {}
"""What the last build's saved copy came to, by the folder of the site."""


def library() -> Library:
    """The library of this build; checked once, and refused where an error stands."""
    if "library" not in _state:
        checked = check_project(_root["folder"])
        if checked.errors:
            raise PluginError(f"{message('not-sound')}\n\n{report.as_text(checked.findings)}")
        _state["library"] = checked.library
    found: Library = _state["library"]
    return found


def build_with(kept: Kept) -> None:
    """Take from what was kept; the pages of this build are finished one by one, as they are made."""
    _state["kept"] = kept


def show(library: Library, pages: Pages | None = None) -> None:
    """Show a library that was checked elsewhere, or one that need not be sound with the pages that it came to."""
    _state.update(library=library, pages=pages)


def on_startup(command: str, dirty: bool) -> None:
    """Remember whether pages are only previewed while they are written; a preview is never saved on a device."""
    _previewing["serve"] = command == "serve"


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Start a build with a fresh look at the records. Raises PluginError where `report_to` is no address."""
    _state.clear()
    to = config.extra.get("report_to") or ""
    if to and not _ADDRESS.fullmatch(to):
        raise PluginError(message("report-to", address=to))
    _root["folder"] = Path(config.docs_dir).parent
    if config.nav and not config.site_url:
        config.nav = _without(config.nav, LABELS)
    return config


def _without(nav: Any, path: str) -> Any:
    """The navigation without a page."""
    if isinstance(nav, dict):
        return {name: _without(below, path) for name, below in nav.items()}
    if isinstance(nav, list):
        return [_without(one, path) for one in nav if one != path and path not in _paths(one)]
    return nav


def _paths(one: Any) -> list[Any]:
    return [below for below in one.values() if isinstance(below, str)] if isinstance(one, dict) else []


def on_nav(nav: Navigation, config: MkDocsConfig, files: Files) -> Navigation:
    """Put the pages outside the navigation into the section of the list that they stand under."""
    sections = {page.url: page.parent for page in nav.pages if page.parent}
    for file in files.documentation_pages():
        page = file.page
        if page and not page.parent and page not in nav.pages:
            above = (page.url[: end.start() + 1] for end in reversed(list(re.finditer("/", page.url))))
            page.parent = next((sections[url] for url in above if url in sections), None)
    return nav


@without_collector()
def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add the generated pages in a fixed order."""
    done = partial(done_or_kept, kept=_state["kept"]) if "kept" in _state else done_now
    for own in taken(files, config):
        files.append(own)
    titles = dict(_named(config.nav))
    pages = _state.get("pages") or render_pages(library(), config.extra.get("edit_base") or "", done=done)
    for path, text in pages.items():
        files.append(file := File.generated(config, path, content=text))
        if file.is_documentation_page():
            WrittenPage(titles.get(path), file, config)  # it makes itself known to its file
    return files


def taken(files: Files, config: MkDocsConfig) -> list[File]:
    """What a project lacks of hand-written pages, styles and scripts: those that came with this package."""
    base, own = ROOT / "content", {file.src_uri for file in files}
    inside = sorted(path.relative_to(base).as_posix() for path in base.rglob("*") if path.is_file())
    return [
        File(name, str(base), config.site_dir, config.use_directory_urls)
        for name in inside
        if name not in own and _served(name)
    ]


def _served(name: str) -> bool:
    """Whether a file of the package is one that readers need."""
    python = name.startswith("assets/js/vendor/pyodide/") and not name.endswith(".d.mts")
    return python or name.endswith((".md", ".css", ".js", ".png"))


def _named(nav: Any, title: str | None = None) -> Iterator[tuple[str, str | None]]:
    """The path of each page that the navigation names, and the title that it has there."""
    if isinstance(nav, str):
        yield nav, title
    elif isinstance(nav, dict):
        for name, below in nav.items():
            yield from _named(below, name)
    else:
        for below in nav or ():
            yield from _named(below)


def on_env(env: Environment, config: MkDocsConfig, files: Files) -> Environment:
    """Give the theme our words. Its templates do not change in a build: they need not be looked at for each page."""
    env.auto_reload = False
    env.globals["messages"] = page_messages
    env.filters["markup"] = Markup
    return env


@event_priority(-100)
def on_post_build(config: MkDocsConfig) -> None:
    """Finish the site, after everything else that writes into it."""
    offline = bool(config.extra.get("offline", True)) and not _previewing["serve"]
    given = Path(config.site_dir), library(), copy_date(_root["folder"])
    if "kept" in _state:
        with sizes(_state["kept"]) as known:
            done = close(*given, known, offline=offline)
    else:
        done = finish(*given, offline=offline)
    finished[config.site_dir] = done
    for path in done.left_out:
        _log.warning("%s", message("left-out", file=path))
