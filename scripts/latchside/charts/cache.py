"""Finished charts kept by their content: what a chart is made from decides whether a kept one still holds.

The key is a hash of the code that draws and works out, of the records of the figures that the chart uses, and of the
versions of the libraries behind them. The folder may be deleted at any time; a chart made afresh has the same bytes.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

from latchside.charts.chart import Chart, Figures
from latchside.drawings.canvas import Drawing
from latchside.messages import LANGUAGE

_SVG = "{http://www.w3.org/2000/svg}"
_PACKAGE = Path(__file__).parents[1]
_CODE = (
    "charts", "drawings", "figures", "library/quantity.py", "library/text.py", f"messages/{LANGUAGE}/charts",
    f"messages/{LANGUAGE}/figures",
)  # fmt: skip
_LIBRARIES = ("pint",)


def finished(chart: Chart, figures: Figures, folder: Path | None) -> Drawing:
    """The chart as a drawing: the kept one where it still holds, else made and kept. No folder: always made."""
    if folder is None:
        return chart.make(figures)
    path = folder / f"{chart.id}.{key(chart, figures)}.svg"
    kept = _read(chart.id, path)
    if kept is not None:
        return kept
    made = chart.make(figures)
    _keep(path, made)
    return made


def key(chart: Chart, figures: Figures) -> str:
    """A hash of all that decides what the chart looks like."""
    records = {id_: _plain(figures[id_].data) for id_ in chart.uses}
    text = json.dumps([chart.id, _code(), records], sort_keys=True, ensure_ascii=True)
    return hashlib.sha256(text.encode("ascii")).hexdigest()[:32]


@cache
def _code() -> str:
    """A hash of the modules that draw and work out, of their messages, and the versions of what they call."""
    total = hashlib.sha256()
    for part in _CODE:
        path = _PACKAGE / part
        files = (file for file in sorted(path.rglob("*")) if file.suffix in (".py", ".ftl"))
        for file in files if path.is_dir() else (path,):
            total.update(file.relative_to(_PACKAGE).as_posix().encode())
            total.update(hashlib.sha256(file.read_bytes()).digest())
    for library in _LIBRARIES:
        total.update(f"{library} {_version(library)}\n".encode())
    return total.hexdigest()


def _version(library: str) -> str:
    try:
        return version(library)
    except PackageNotFoundError:
        return "none"


def _plain(value: Any) -> Any:
    """A record as JSON can hold it, whether it is read-only or not."""
    if isinstance(value, Mapping):
        return {str(name): _plain(below) for name, below in value.items()}
    return [_plain(below) for below in value] if isinstance(value, list | tuple) else value


def _read(id_: str, path: Path) -> Drawing | None:
    """A kept chart; None where there is none, or one that is cut short."""
    try:
        svg = path.read_text("utf-8")
        root = ET.fromstring(svg)
        title, message = root.findtext(f"{_SVG}title"), root.findtext(f"{_SVG}desc")
        size = int(root.attrib["width"]), int(root.attrib["height"])
    except (OSError, ET.ParseError, KeyError, ValueError):
        return None
    return Drawing(id_, title, message, *size, svg) if title and message else None


def _keep(path: Path, made: Drawing) -> None:
    """Keep a chart in place of older ones of the same name; where nothing can be written, nothing is kept."""
    fresh = path.with_suffix(f".{os.getpid()}.new")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        fresh.write_text(made.svg, "utf-8")
        fresh.replace(path)
        for other in path.parent.glob(f"{made.id}.*.svg"):
            if other != path:
                other.unlink(missing_ok=True)
    except OSError:
        return
