"""Where the project stands that this package belongs to: its records, schemas and pages."""

from __future__ import annotations

from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def schema_folder(root: Path) -> Path:
    """The schemas of a project; those of this one where it has none of its own."""
    own = root / "schema"
    return own if own.is_dir() else ROOT / "schema"
