"""Where projects stand: the one that came with this package, and the parts that any project takes from it."""

from __future__ import annotations

from pathlib import Path

_INSIDE = Path(__file__).resolve().parent / "base"
INSTALLED = _INSIDE.is_dir()
"""Whether this package was installed from a wheel, which holds its project within; else it stands in a checkout."""
ROOT = _INSIDE if INSTALLED else Path(__file__).resolve().parents[2]
"""The project that came with this package. From a wheel it is only read, never written to."""

PARTS = ("schema", "content", "checklists", "shared", "mkdocs.yml")
"""What a project is made of."""


def here() -> Path:
    """The project that a command works on where none is named.

    In a checkout it is the checkout; from a wheel the project that one stands in, and outside any the one that came
    with the package.
    """
    if not INSTALLED:
        return ROOT
    folder = Path.cwd()
    return next((one for one in (folder, *folder.parents) if all((one / name).exists() for name in PARTS[1:])), ROOT)


def part(root: Path, name: str) -> Path:
    """A file or folder of a project that is no record; that of `ROOT` where the project has none of its own."""
    own = root / name
    return own if own.exists() else ROOT / name


def schema_folder(root: Path) -> Path:
    """The schemas of a project; those of `ROOT` where it has none of its own."""
    return part(root, "schema")


def cache_folder(root: Path) -> Path | None:
    """Where work on a project is kept; None for the project inside an installed package, which is only read."""
    return None if INSTALLED and root == ROOT else root / ".cache"
