"""A place to write to: looked at before the work begins, and said in words where it cannot be written."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

import click


def ready(out: Path | None) -> None:
    """Refuse a folder that holds something or cannot be written, before any work is done for it."""
    if out is None:
        return
    with said(out):
        if out.exists() and any(out.iterdir()):
            raise click.ClickException(f"{out} is not empty; nothing was written.")
    writable(out)


def writable(out: Path) -> None:
    """Refuse a place in which nothing can be made: what the system says of rights is not the whole truth."""
    with said(out):
        there = next(path for path in (out, *out.absolute().parents) if path.exists())
        if there.is_file() and there == out:
            there = out.absolute().parent
        if not there.is_dir():
            raise NotADirectoryError(0, f"{there} is a file")
        with TemporaryDirectory(dir=there):
            pass


@contextmanager
def said(out: Path) -> Iterator[None]:
    """What the system refuses while a place is written, in one line and without a traceback."""
    try:
        yield
    except OSError as error:
        raise click.ClickException(cannot(out, error)) from None


def cannot(out: Path, error: OSError) -> str:
    """Why a place cannot be written, and what to do."""
    return f"{out} cannot be written: {error.strerror or error}. Name another place with --out."
