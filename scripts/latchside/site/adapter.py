"""MkDocs' side of the site: hands it the generated pages. Everything that is worked out is worked out elsewhere.

A second adapter, `latchside render`, writes the same pages to a folder without MkDocs.
"""

from __future__ import annotations

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File, Files

from latchside import report
from latchside.library import Library
from latchside.pages import render_pages
from latchside.project import check_project

_state: dict[str, Library] = {}


def library() -> Library:
    """The library of this build; checked once, and refused where an error stands."""
    if "library" not in _state:
        checked = check_project()
        if checked.errors:
            raise PluginError("Records need mending first:\n\n" + report.as_text(checked.findings))
        _state["library"] = checked.library
    return _state["library"]


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Start a build with a fresh look at the records."""
    _state.clear()
    return config


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Add the generated pages in a fixed order, so that the search index has one too."""
    for path, text in render_pages(library(), config.extra.get("edit_base") or "").items():
        files.append(File.generated(config, path, content=text))
    return files
