"""A generated page is HTML but for its headings, so it is taken as it stands.

Markdown would read every tag of it twice, which took half of a build, and read the attributes of what is in a fold
once too often.
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
"""The level down to which headings stand in a page's list of contents; the same as in mkdocs.yml.

A page says less with `toc_depth` at its head.
"""

_HEADING = re.compile(r"^(#{1,6}) (.+?) \{: #([\w-]+) \}$", re.MULTILINE)
_LEFT = re.compile(r"^#{1,6} .*", re.MULTILINE)
_WITHIN = ' markdown="block"'
"""Marks an element with a heading in it for Markdown, which takes it away; record text cannot hold it."""
_ID = re.compile(r'\sid="([^"]+)"')
"""Only an attribute holds a quotation mark: in texts it is escaped."""


class WrittenPage(Page):
    """A generated page."""

    def render(self, config: MkDocsConfig, files: Files) -> None:
        """Turn the headings into HTML and leave all else. Raises ValueError for a heading that has no id."""
        text = (self.markdown or "").replace(_WITHIN, "")
        headings: list[tuple[int, str, str]] = []

        def heading(found: re.Match[str]) -> str:
            level, words, id_ = len(found[1]), found[2], found[3]
            headings.append((level, id_, words))
            return f'<h{level} id="{id_}">{words}</h{level}>'

        self.content = _HEADING.sub(heading, text)
        left = _LEFT.search(self.content)
        if left:
            raise ValueError(f"a heading without an id: {left[0]}")
        self.toc = get_toc(contents(headings, int(self.meta.get("toc_depth", DEEPEST))))
        self.present_anchor_ids = set(_ID.findall(self.content))


def contents(headings: Iterable[tuple[int, str, str]], deepest: int = DEEPEST) -> Any:
    """The list of contents: (level, id, words) of each heading as nested entries."""
    top: list[dict[str, Any]] = []
    above: list[dict[str, Any]] = []
    for level, id_, words in headings:
        if level > deepest:
            continue
        while above and above[-1]["level"] >= level:
            above.pop()
        entry = {"level": level, "id": id_, "name": words, "children": []}
        (above[-1]["children"] if above else top).append(entry)
        above.append(entry)
    return top
