"""Files in one ZIP: in the order of their names and all of one date, so the same files give the same bytes."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping

_FIRST_DAY = (1980, 1, 1, 0, 0, 0)


def archive(files: Mapping[str, bytes], folder: str) -> bytes:
    """A ZIP of the files, under a folder."""
    written = io.BytesIO()
    with zipfile.ZipFile(written, "w") as made:
        for name, content in sorted(files.items()):
            entry = zipfile.ZipInfo(f"{folder}/{name}", _FIRST_DAY)
            entry.external_attr = 0o644 << 16
            entry.create_system = 3
            made.writestr(entry, content, zipfile.ZIP_DEFLATED, 9)
    return written.getvalue()
