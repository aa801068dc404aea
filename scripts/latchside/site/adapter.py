"""MkDocs' side of the site: hands it the generated pages. Everything that is worked out is worked out elsewhere.

A second adapter, `latchside render`, writes the same pages to a folder without MkDocs.
"""

from __future__ import annotations

import logging
from pathlib import Path

from jinja2 import Environment
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import event_priority
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation

from latchside import report
from latchside.collector import without_collector
from latchside.library import Library
from latchside.pages import render_pages
from latchside.project import check_project
from latchside.root import ROOT
from latchside.site.date import copy_date
from latchside.site.finish import Finished, finish
from latchside.site.written import WrittenPage

_state: dict[str, Library] = {}
_root = {"folder": ROOT}
_previewing = {"serve": False}
_log = logging.getLogger("mkdocs.latchside")
finished: dict[str, Finished] = {}
"""What the last build's saved copy came to, by the folder of the site."""


def library() -> Library:
    """The library of this build; checked once, and refused where an error stands."""
    if "library" not in _state:
        checked = check_project(_root["folder"])
        if checked.errors:
            raise PluginError("Fix these records first:\n\n" + report.as_text(checked.findings))
        _state["library"] = checked.library
    return _state["library"]


def on_startup(command: str, dirty: bool) -> None:
    """Remember whether pages are only previewed while they are written; a preview is never saved on a device."""
    _previewing["serve"] = command == "serve"


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Start a build with a fresh look at the records."""
    _state.clear()
    _root["folder"] = Path(config.docs_dir).parent
    return config


@without_collector()
def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add the generated pages in a fixed order, so that the search index has one too."""
    for file in taken(files, config):
        files.append(file)
    for path, text in render_pages(library(), config.extra.get("edit_base") or "").items():
        files.append(File.generated(config, path, content=text))
    return files


def taken(files: Files, config: MkDocsConfig) -> list[File]:
    """What a project lacks of hand-written pages, styles and scripts: those that came with this package."""
    base, own = ROOT / "content", {file.src_uri for file in files}
    inside = sorted(path.relative_to(base).as_posix() for path in base.rglob("*") if path.is_file())
    return [
        File(name, str(base), config.site_dir, config.use_directory_urls)
        for name in inside
        if name not in own and name.endswith((".md", ".css", ".js", ".png"))
    ]


def on_nav(nav: Navigation, config: MkDocsConfig, files: Files) -> Navigation:
    """Take the generated pages outside the navigation as they stand."""
    named = {page.file for page in nav.pages}
    for file in files.documentation_pages():
        if file.generated_by and file not in named:
            WrittenPage(None, file, config)  # it makes itself known to its file
    return nav


def on_env(env: Environment, config: MkDocsConfig, files: Files) -> Environment:
    """The theme's templates do not change during a build: they need not be looked at again for each page."""
    env.auto_reload = False
    return env


@event_priority(-100)
def on_post_build(config: MkDocsConfig) -> None:
    """Finish the site, after everything else that writes into it."""
    offline = bool(config.extra.get("offline", True)) and not _previewing["serve"]
    done = finish(Path(config.site_dir), library(), copy_date(_root["folder"]), offline=offline)
    finished[config.site_dir] = done
    for path in done.left_out:
        _log.warning("%s does not fit into what the first visit may save, so it is not there without a network", path)
