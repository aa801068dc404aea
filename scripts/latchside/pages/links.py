"""Addresses of pages, seen from each other."""

from __future__ import annotations

import re
from functools import lru_cache
from posixpath import relpath


@lru_cache(maxsize=100_000)
def relative(address: str, from_page: str) -> str:
    """A relative link from the page at `from_page` to `address`; both as the site shows them: `a/b/` or `a/#b`."""
    page, mark, fragment = address.partition("#")
    if page == from_page:
        return mark + fragment if mark else "./"
    way = relpath(page or ".", from_page or ".")
    return ("./" if way == "." else way + "/") + mark + fragment


def slug(words: str) -> str:
    """The anchor of a heading, from its words: `Set up the zone` is at `#set-up-the-zone`."""
    return re.sub(r"[\s-]+", "-", re.sub(r"[^\w\s-]", "", words).strip().lower())


def file_of(address: str) -> str:
    """The Markdown file that becomes the page at `address`."""
    return f"{address}index.md"
