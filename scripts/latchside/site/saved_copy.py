"""Which files a phone saves at once, which on request, and how large they are: the list behind the saved copy."""

from __future__ import annotations

import gzip
import json
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from hashlib import sha256
from typing import Any

from latchside.all_cores import each

BUDGET = 1_500_000
"""Bytes that the first visit may transfer for the saved copy."""

FILLED = 1_400_000
"""Up to so many it is filled with what is only welcome; the rest of the budget is room for what is needed to grow."""

_INSTALL = r"devices/[^/]+/install/index\.html"
_NEEDED: tuple[tuple[str, str], ...] = (
    ("the frame of every page", r"assets/[^/]+\.css|assets/(?:js|images|stylesheets|javascripts)/.+|finder\.json"),
    ("home, on site, visits, surveys", r"index\.html|(?:on-site|visits|survey|offline)/index\.html"),
    ("checklists", r"checklists/.*"),
    ("faults", r"faults/.*"),
    ("cautions", r"cautions/.*"),
    ("figures", r"figures/.*"),
    ("terms", r"terms/.*"),
    ("installing", _INSTALL),
    ("procedures", r"procedures/.*"),
)
# Not wanted by any page as it is read: what only search engines, hosts and printers read.
_NEVER = re.compile(r"sitemap\.xml(?:\.gz)?|404\.html|offline\.json|sw(?:-off)?\.js|labels/.*")
_PACKED = (".html", ".css", ".js", ".json", ".svg", ".xml")
_IMAGE = re.compile(rb'<img[^>]*\ssrc="([^":]+)"')

Files = Mapping[str, bytes]


@dataclass
class Copy:
    """What is saved at once (`first`), what on request (`rest`), and what of the needed did not fit (`left_out`)."""

    first: dict[str, bytes] = field(default_factory=dict)
    rest: dict[str, bytes] = field(default_factory=dict)
    groups: list[str] = field(default_factory=list)
    left_out: list[str] = field(default_factory=list)
    sizes: dict[str, int] = field(default_factory=dict)

    def size(self, files: Files) -> int:
        """Bytes transferred for some files."""
        return sum(self.sizes[path] for path in files)


def transferred(path: str, content: bytes) -> int:
    """Bytes that travel for a file: packed where servers pack."""
    return len(gzip.compress(content, 6, mtime=0)) if path.endswith(_PACKED) else len(content)


def chosen(files: Files, budget: int = BUDGET) -> Copy:
    """Share out the files. The order of the groups above is the order in which they get their room.

    What of the needed does not fit is left out and named. The page of a procedure that stands whole on the page of an
    installation is only welcome: it comes last, and never fills the copy further than `FILLED`. All else comes on
    request.
    """
    wanted = {path: content for path, content in sorted(files.items()) if not _NEVER.fullmatch(path)}
    sizes = dict(zip(wanted, each(list(wanted.items()), lambda file: transferred(*file)), strict=True))
    copy, room, twice = Copy(sizes=sizes), budget, _told_twice(wanted)
    for name, pattern in _NEEDED:
        copy.groups.append(name)
        for path in sorted(_matching(wanted, pattern), key=lambda one: one in twice):
            parts = _with_images(path, wanted) - copy.first.keys()
            cost = sum(sizes[part] for part in parts)
            if cost <= (room - max(0, budget - FILLED) if path in twice else room):
                room -= cost
                copy.first.update((part, wanted[part]) for part in sorted(parts))
            elif path in twice:
                copy.groups[-1] = f"{name} as far as they fit"
            else:
                copy.left_out.append(path)
    copy.first = dict(sorted(copy.first.items()))
    copy.rest = {path: content for path, content in wanted.items() if path not in copy.first}
    return copy


def _matching(files: Files, pattern: str) -> list[str]:
    return [path for path in files if re.fullmatch(pattern, path)]


def _told_twice(files: Files) -> set[str]:
    """Pages of procedures that an installation page holds whole, under a section with the procedure's id."""
    whole = b"".join(files[path] for path in _matching(files, _INSTALL))
    told = {found.decode("utf-8") for found in re.findall(rb'\sid="([a-z0-9-]+)"', whole)}
    return {path for path in _matching(files, r"procedures/.+") if path.split("/")[1] in told}


def _with_images(path: str, files: Files) -> set[str]:
    """A page and the drawings it shows."""
    if not path.endswith(".html"):
        return {path}
    shown = {_joined(path, source.decode("utf-8")) for source in _IMAGE.findall(files[path])}
    return {path, *(image for image in shown if image in files)}


def _joined(page: str, source: str) -> str:
    parts = page.split("/")[:-1]
    for part in source.split("/"):
        if part == "..":
            parts = parts[:-1]
        elif part != ".":
            parts.append(part)
    return "/".join(parts)


def listing(copy: Copy, version: str, date: str, corrections: Iterable[Mapping[str, Any]]) -> str:
    """`offline.json`: what the worker saves and what the pages say about it."""
    first, rest = _digests(copy.first), _digests(copy.rest)
    told = list(corrections)
    id_ = sha256(json.dumps([version, date, first, rest, told]).encode("utf-8")).hexdigest()[:16]
    data = {
        "id": id_,
        "version": f"{version}-{id_[:7]}",
        "date": date,
        "groups": copy.groups,
        "size": {"first": copy.size(copy.first), "rest": copy.size(copy.rest)},
        "corrections": told,
        "first": first,
        "rest": rest,
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n"


def _digests(files: Files) -> dict[str, str]:
    return {path: sha256(content).hexdigest()[:16] for path, content in files.items()}
