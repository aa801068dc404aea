"""A generated page is HTML but for its headings, so it is taken as it stands.

Markdown would read every tag of it twice and change none, which took half of a build. Pages that the navigation names
still go the long way; both ways give the same text.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import Files
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import get_toc

DEEPEST = 3
"""The level down to which headings stand in a page's list of contents; the same as in mkdocs.yml."""

_HEADING = re.compile(r"^(#{1,6}) (.+?) \{: #([\w-]+) \}$", re.MULTILINE)
_LEFT = re.compile(r"^#{1,6} .*", re.MULTILINE)
_WITHIN = ' markdown="block"'
"""Marks an element with a heading in it for Markdown, which takes it away; record text cannot hold it."""
_ID = re.compile(r'<[^<>]*?\sid="([^"]+)"')


class WrittenPage(Page):
    """A generated page outside the navigation."""

    def render(self, config: MkDocsConfig, files: Files) -> None:
        """Turn the headings into HTML and leave all else. Raises ValueError for a heading that has no id."""
        text = (self.markdown or "").replace(_WITHIN, "")
        self.content = _HEADING.sub(_heading, text)
        left = _LEFT.search(self.content)
        if left:
            raise ValueError(f"a heading without an id: {left[0]}")
        self.toc = get_toc(contents((len(marks), id_, words) for marks, words, id_ in _HEADING.findall(text)))
        self.present_anchor_ids = set(_ID.findall(self.content))


def _heading(found: re.Match[str]) -> str:
    level = len(found[1])
    return f'<h{level} id="{found[3]}">{found[2]}</h{level}>'


def contents(headings: Iterable[tuple[int, str, str]]) -> Any:
    """The list of contents: (level, id, words) of each heading as nested entries."""
    top: list[dict[str, Any]] = []
    above: list[dict[str, Any]] = []
    for level, id_, words in headings:
        if level > DEEPEST:
            continue
        while above and above[-1]["level"] >= level:
            above.pop()
        entry = {"level": level, "id": id_, "name": words, "children": []}
        (above[-1]["children"] if above else top).append(entry)
        above.append(entry)
    return top
