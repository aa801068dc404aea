"""The pocket copy: one zip that opens from a folder, with no server and no scripts, for reading and printing."""

from __future__ import annotations

import posixpath
import re
from html import escape, unescape
from pathlib import Path

from latchside.archive import archive

FOLDER = "latchside-pocket"
_SCRIPT = re.compile(r"<script\b.*?</script>", re.DOTALL)
_POLICY = re.compile(r'(<meta http-equiv="Content-Security-Policy" content=")[^"]*')
_LINK = re.compile(r'(<[^<>]*?\s(?:href|src)=")([^"]*)(")')
_KEPT = re.compile(r".*\.(?:html|css|svg|png)")
_DROPPED = re.compile(r"404\.html|labels/.*|offline/.*")


def pocket_files(site: Path) -> dict[str, bytes]:
    """The files of the pocket copy of a built site, by path."""
    built = {path.relative_to(site).as_posix(): path for path in sorted(site.rglob("*")) if path.is_file()}
    names = {name for name in built if _KEPT.fullmatch(name) and not _DROPPED.fullmatch(name)}
    return {
        name: _page(name, built[name].read_text("utf-8"), names).encode("utf-8")
        if name.endswith(".html")
        else built[name].read_bytes()
        for name in sorted(names)
    }


def _page(name: str, text: str, names: set[str]) -> str:
    """A page without scripts, whose links name files."""
    text = _SCRIPT.sub("", text)
    text = _POLICY.sub(r"\1script-src 'none'; object-src 'none'; base-uri 'none'; form-action 'none'", text)

    def named(match: re.Match[str]) -> str:
        return match[1] + escape(_file(name, unescape(match[2]), names)) + match[3]

    return _LINK.sub(named, text)


def _file(page: str, link: str, names: set[str]) -> str:
    """A link as a folder needs it: to the file itself. What is not in the copy leads to its beginning."""
    if re.match(r"[a-z][a-z0-9+.-]*:|//|#", link):
        return link
    way, mark, fragment = link.partition("#")
    way = way.partition("?")[0]
    target = posixpath.normpath(posixpath.join(posixpath.dirname(page), way))
    if way == "" or way.endswith("/") or posixpath.basename(way) in (".", ".."):
        target = posixpath.normpath(posixpath.join(target, "index.html")) if way else page
    if target not in names:
        target, mark, fragment = "index.html", "", ""
    return posixpath.relpath(target, posixpath.dirname(page) or ".") + mark + fragment


def write_zip(files: dict[str, bytes], out: Path) -> None:
    """Write the files into one zip; the same files give the same bytes."""
    out.write_bytes(archive(files, FOLDER))
