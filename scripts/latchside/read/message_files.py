"""The message files of a checkout that do not read as Fluent: nothing can be said in their words."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from latchside.findings import place_after
from latchside.messages import FOLDER, files, unread


def broken_messages(root: Path, folder: Path = FOLDER) -> Iterator[str]:
    """`file:line:column: reason` for each message that does not read, in words of no message file.

    Nothing where the messages were installed and are not part of `root`.
    """
    if not folder.is_relative_to(root):
        return
    from fluent.syntax import FluentParser

    for file in files(folder):
        path = folder / f"{file}.ftl"
        source = path.read_text("utf-8")
        for at, reason in unread(FluentParser().parse(source)):
            place = place_after(source[:at])
            yield f"{path.relative_to(root).as_posix()}:{place.line}:{place.column}: {reason}"
