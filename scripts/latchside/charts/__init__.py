"""Charts: pictures of figures, made by the build. `ALL` maps each chart's id to the chart.

A chart stands on the page of its figure, as `assets/charts/<id>.svg`. Charts know figures and the sheet that
drawings are made on, and nothing of pages.
"""

from __future__ import annotations

from pathlib import Path

from latchside.charts import loops, magnet, power, radio, site
from latchside.charts.cache import finished
from latchside.charts.chart import Chart
from latchside.drawings.canvas import Drawing
from latchside.figures.catalogue import figures_of
from latchside.library import Library
from latchside.reads import EVERY, noted_instead
from latchside.root import cache_folder

__all__ = ["ALL", "Chart", "drawing", "files", "for_figure"]

ALL: dict[str, Chart] = {chart.id: chart for module in (magnet, loops, radio, power, site) for chart in module.CHARTS}


def for_figure(library: Library, id_: str) -> list[Chart]:
    """The charts that stand on the page of a figure, in the order in which they are shown."""
    return [chart for chart in _drawn(library) if chart.figure == id_]


def drawing(library: Library, id_: str) -> Drawing:
    """A chart of the figures of a library, finished: title, message, size and SVG."""
    with noted_instead(*(("formula", used, EVERY) for used in ALL[id_].uses)):
        return finished(ALL[id_], figures_of(library), _kept_in(library))


def files(library: Library) -> dict[str, str]:
    """Every chart as a file of the site: `assets/charts/<id>.svg` and its text."""
    return {f"assets/charts/{chart.id}.svg": drawing(library, chart.id).svg + "\n" for chart in _drawn(library)}


def _drawn(library: Library) -> list[Chart]:
    """The charts whose figures the library has, all of them."""
    return [chart for chart in ALL.values() if all(library.find("formula", id_) for id_ in chart.uses)]


def _kept_in(library: Library) -> Path | None:
    """Where finished charts are kept: with the project that they belong to, but for one inside an installed package."""
    folder = cache_folder(library.root) if library.root else None
    return folder / "charts" if folder else None
