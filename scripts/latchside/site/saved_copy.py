"""Which files a phone saves at once, which on request, and how large they are: the list behind the saved copy.

The planner is in neither: a phone keeps it once a plan was asked for.
"""

from __future__ import annotations

import gzip
import json
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

from latchside.all_cores import each
from latchside.messages import messages
from latchside.pages.stage_pages import INSTALL

message = messages(__name__)

BUDGET = 1_500_000
"""Bytes that the first visit may transfer for the saved copy."""

FILLED = 1_400_000
"""Up to so many it is filled with what is only welcome; the rest of the budget is room for what is needed to grow."""

_STAGE = rf"devices/[^/]+/(?:{'|'.join(INSTALL)})/index\.html"
_NEEDED: tuple[tuple[str, str], ...] = (  # the message that names a group, and the paths of its files
    ("frame", r"assets/[^/]+\.css|assets/(?:js|images|stylesheets|javascripts)/.+|finder\.json"),
    ("own-pages", r"index\.html|(?:on-site|visits|survey|offline)/index\.html"),
    ("checklists", r"checklists/.*"),
    ("faults", r"faults/.*"),
    ("cautions", r"cautions/.*"),
    ("figures", r"figures/.*"),
    ("terms", r"terms/.*"),
    ("installing", r"devices/[^/]+/install/index\.html"),
    ("procedures", r"procedures/.*"),
    ("stages", _STAGE),
)
# Not wanted by any page as it is read: what only search engines, hosts and printers read.
_NEVER = re.compile(r"sitemap\.xml(?:\.gz)?|404\.html|offline\.json|sw(?:-off)?\.js|labels/.*")
_PLANNER = re.compile(r"planner\.zip|assets/js/vendor/pyodide/.*")
_PACKED = (".html", ".css", ".js", ".mjs", ".json", ".svg", ".xml")
_SAID = "assets/trees/"
"""Drawings of what the page says in words beside them, which come on request."""
_IMAGE = re.compile(rb'<img[^>]*\ssrc="([^":]+)"')

Files = Mapping[str, bytes]
Sizes = dict[str, int]
"""Bytes transferred for a file, by the SHA-256 of its content and its ending."""


class Some(Mapping[str, bytes]):
    """Some files of many: each is read when it is asked for, so that they need not be in memory together."""

    def __init__(self, paths: Iterable[str], read: Callable[[str], bytes]) -> None:
        self._paths = dict.fromkeys(sorted(paths))
        self._read = read

    def __getitem__(self, path: str) -> bytes:
        if path not in self._paths:
            raise KeyError(path)
        return self._read(path)

    def __contains__(self, path: object) -> bool:
        return path in self._paths

    def __iter__(self) -> Iterator[str]:
        return iter(self._paths)

    def __len__(self) -> int:
        return len(self._paths)


def stored(folder: Path) -> Files:
    """The files of a folder, by their path in it."""
    paths = (path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file())
    return Some(paths, lambda path: (folder / path).read_bytes())


@dataclass
class Copy:
    """What is saved at once (`first`), what on request (`rest`), and what of the needed did not fit (`left_out`).

    `planner` is kept once it was used. `sizes` are the bytes transferred for each file, `digests` the first part of
    the hash of its content.
    """

    first: Files
    rest: Files
    planner: Files
    groups: list[str]
    left_out: list[str]
    sizes: dict[str, int]
    digests: dict[str, str]

    def size(self, files: Iterable[str]) -> int:
        """Bytes transferred for some files."""
        return sum(self.sizes[path] for path in files)


def transferred(path: str, content: bytes) -> int:
    """Bytes that travel for a file: packed where servers pack."""
    return len(gzip.compress(content, 6, mtime=0)) if path.endswith(_PACKED) else len(content)


def planner_size(files: Files) -> int:
    """Bytes that travel for the planner."""
    return sum(transferred(path, files[path]) for path in files if _PLANNER.fullmatch(path))


def chosen(files: Files, budget: int = BUDGET, known: Sizes | None = None) -> Copy:
    """Share out the files. The order of the groups above is the order in which they get their room.

    What of the needed does not fit is left out and named. The stages of an installation are only welcome, for each of
    their steps is saved on the page of its procedure: they come last, and never fill the copy further than `FILLED`.
    All else comes on request. `known` are sizes from an earlier build, which are added to.
    """
    wanted = Some((path for path in files if not _NEVER.fullmatch(path)), files.__getitem__)
    sizes, digests = _measured(wanted, {} if known is None else known)
    planner = {path for path in wanted if _PLANNER.fullmatch(path)}
    room, twice = budget, set(_matching(wanted, _STAGE))
    first: set[str] = set()
    groups: list[str] = []
    left_out: list[str] = []
    for name, pattern in _NEEDED:
        groups.append(message(name))
        for path in sorted(set(_matching(wanted, pattern)) - planner, key=lambda one: (one in twice, one)):
            parts = _with_images(path, wanted) - first
            cost = sum(sizes[part] for part in parts)
            if cost <= (room - max(0, budget - FILLED) if path in twice else room):
                room -= cost
                first |= parts
            elif path in twice:
                groups[-1] = message("as-far-as-fit", group=message(name))
            else:
                left_out.append(path)
    at_once, rest, kept = (Some(some, files.__getitem__) for some in (first, wanted.keys() - first - planner, planner))
    return Copy(at_once, rest, kept, groups, left_out, sizes, digests)


def _measured(files: Files, known: Sizes) -> tuple[dict[str, int], dict[str, str]]:
    """What each file takes, and the first part of its digest."""

    def measured(path: str) -> tuple[str, int]:
        content = files[path]
        digest = sha256(content).hexdigest()
        size = known.get(f"{digest}{Path(path).suffix}")
        return digest, transferred(path, content) if size is None else size

    found = dict(zip(files, each(list(files), measured), strict=True))
    known.update((f"{digest}{Path(path).suffix}", size) for path, (digest, size) in found.items())
    return {path: size for path, (_, size) in found.items()}, {path: one[:16] for path, (one, _) in found.items()}


def _matching(files: Files, pattern: str) -> list[str]:
    return [path for path in files if re.fullmatch(pattern, path)]


def _with_images(path: str, files: Files) -> set[str]:
    """A page and the drawings it shows."""
    if not path.endswith(".html"):
        return {path}
    shown = {_joined(path, source.decode("utf-8")) for source in _IMAGE.findall(files[path])}
    return {path, *(image for image in shown if image in files and not image.startswith(_SAID))}


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
    parts = {"first": copy.first, "rest": copy.rest, "planner": copy.planner}
    digests = {name: {path: copy.digests[path] for path in files} for name, files in parts.items()}
    told = list(corrections)
    id_ = sha256(json.dumps([version, date, digests, told]).encode("utf-8")).hexdigest()[:16]
    data = {
        "id": id_,
        "version": f"{version}-{id_[:7]}",
        "date": date,
        "groups": copy.groups,
        "size": {name: copy.size(files) for name, files in parts.items()},
        "corrections": told,
        **digests,
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n"
