"""A new project: a copy of the one that came with this package, one's own from then on."""

from __future__ import annotations

import shutil
from pathlib import Path

from latchside.root import PARTS, ROOT

_NOT_KEPT = "/site/\n/.cache/\n/surveys/\n/packs/\n"
"""What git passes over: what is built, and real surveys and packs."""


def write_project(folder: Path) -> None:
    """Write a project into a new or empty folder. Raises FileExistsError where the folder holds something."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise FileExistsError(0, "not empty", str(folder))
    folder.mkdir(parents=True, exist_ok=True)
    for name in PARTS:
        if (ROOT / name).is_dir():
            shutil.copytree(ROOT / name, folder / name)
        else:
            shutil.copy(ROOT / name, folder / name)
    (folder / ".gitignore").write_text(_NOT_KEPT, "utf-8")
