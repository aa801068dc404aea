"""What stands on the sheets of a PDF, as a reader would type it."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

from pypdf import PdfReader

_LIGATURES = str.maketrans({"\ufb00": "ff", "\ufb01": "fi", "\ufb02": "fl", "\ufb03": "ffi", "\ufb04": "ffl"})
"""Signs that some fonts print for two or three letters."""


def sheets(pdf: bytes | Path, after: int = 0) -> list[str]:
    """The text of each sheet, `after` so many that are not read."""
    reader = PdfReader(BytesIO(pdf) if isinstance(pdf, bytes) else pdf)
    return [sheet.extract_text().translate(_LIGATURES) for sheet in reader.pages[after:]]
