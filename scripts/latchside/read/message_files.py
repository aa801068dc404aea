"""The message files of a checkout that do not read as Fluent: nothing can be said in their words."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from contextlib import suppress
from pathlib import Path

from latchside.findings import place_after
from latchside.messages import FOLDER, files, unread
from latchside.root import cache_folder

SOUND = "messages-sound"
"""The file of the cache with the digest of the message files that were read last without a fault."""


def broken_messages(root: Path, folder: Path = FOLDER) -> tuple[str, ...]:
    """`file:line:column: reason` for each message that does not read, in words of no message file.

    Nothing where the messages were installed and are not part of `root`, nor where all files are as they were when they
    last read well.
    """
    if not folder.is_relative_to(root):
        return ()
    sources = {path: path.read_bytes() for path in (folder / f"{file}.ftl" for file in files(folder))}
    kept, digest = cache_folder(root), _digest(sources)
    if kept and _read(kept / SOUND) == digest:
        return ()
    broken = tuple(_broken(root, sources))
    if kept and not broken:
        with suppress(OSError):  # where nothing may be written, they are read anew each time
            kept.mkdir(exist_ok=True)
            (kept / SOUND).write_text(digest, "ascii")
    return broken


def _read(path: Path) -> str:
    try:
        return path.read_text("ascii")
    except (OSError, UnicodeDecodeError):
        return ""


def _digest(sources: Mapping[Path, bytes]) -> str:
    total = hashlib.sha256()
    for path, source in sources.items():
        total.update(f"{path.as_posix()} {len(source)} ".encode())
        total.update(source)
    return total.hexdigest()


def _broken(root: Path, sources: Mapping[Path, bytes]) -> Iterator[str]:
    from fluent.syntax import FluentParser

    for path, content in sources.items():
        source = content.decode("utf-8")
        for at, reason in unread(FluentParser().parse(source)):
            place = place_after(source[:at])
            yield f"{path.relative_to(root).as_posix()}:{place.line}:{place.column}: {reason}"
