"""Charts: pictures of figures, made by the build. `ALL` maps each chart's id to the chart.

A chart stands on the page of its figure, as `assets/charts/<id>.svg`. Charts know figures and the sheet that
drawings are made on, and nothing of pages.
"""

from __future__ import annotations

from functools import lru_cache

from latchside.charts import loops, magnet, power, radio, site
from latchside.charts.cache import finished
from latchside.charts.chart import Chart, Figures
from latchside.drawings.canvas import Drawing
from latchside.figures.catalogue import catalogue
from latchside.kinds import KINDS
from latchside.root import ROOT

__all__ = ["ALL", "Chart", "drawing", "files", "for_figure"]

Stamp = tuple[tuple[str, int], ...]

ALL: dict[str, Chart] = {chart.id: chart for module in (magnet, loops, radio, power, site) for chart in module.CHARTS}


def for_figure(id_: str) -> list[Chart]:
    """The charts that stand on the page of a figure, in the order in which they are shown."""
    return [chart for chart in ALL.values() if chart.figure == id_]


def drawing(id_: str) -> Drawing:
    """A chart of the project's own figures, finished: title, message, size and SVG."""
    return _drawing(id_, _stamp())


def files() -> dict[str, str]:
    """Every chart as a file of the site: `assets/charts/<id>.svg` and its text."""
    return {f"assets/charts/{id_}.svg": drawing(id_).svg + "\n" for id_ in ALL}


def _stamp() -> Stamp:
    """When the records of the figures were last written, so that a server that watches them shows the new chart."""
    folder = ROOT / KINDS["formula"].folder
    return tuple((path.name, path.stat().st_mtime_ns) for path in sorted(folder.glob("*.yaml")))


@lru_cache(maxsize=64)
def _drawing(id_: str, stamp: Stamp) -> Drawing:
    return finished(ALL[id_], _figures(stamp))


@lru_cache(maxsize=2)
def _figures(stamp: Stamp) -> Figures:
    return catalogue()
