"""The charts: what they say is what the catalogue answers, and what they draw is readable and always the same."""

from __future__ import annotations

import copy
import hashlib
import os
import re
import subprocess
import sys
from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import combinations, pairwise
from math import atan2, degrees, hypot, pi, sin
from pathlib import Path
from types import MappingProxyType
from typing import Any
from xml.etree import ElementTree as ET

import numpy
import pytest

from latchside import charts
from latchside.charts import cache, loops, magnet, power, radio, site
from latchside.charts.axes import Axes, Scale
from latchside.charts.chart import Chart, Figures, example
from latchside.charts.contour import Spot, areas
from latchside.drawings.canvas import Drawing, Sheet
from latchside.drawings.line import UNSEEN, simplified
from latchside.figures.catalogue import Figure, catalogue
from latchside.figures.models.loop_states import STATES
from latchside.figures.rounding import between, say, short
from latchside.library import Library

SVG = "{http://www.w3.org/2000/svg}"
FIGURES: Figures = catalogue()
MADE = {id_: chart.make(FIGURES) for id_, chart in charts.ALL.items()}
every_chart = pytest.mark.parametrize("id_", list(charts.ALL))


def root(id_: str) -> ET.Element:
    return ET.fromstring(MADE[id_].svg)


# -- every chart -------------------------------------------------------------------------------------------------


def test_the_charts_that_were_promised_are_there(shipped_library: Library) -> None:
    assert {chart.id: chart.figure for chart in charts.ALL.values()} == {
        "reach-parallel": "reed-gap",
        "reach-end-on": "reed-gap",
        "loop-bands": "loop-states",
        "loss-with-distance": "indoor-loss",
        "cell-life-by-check-in": "cell-life",
        "ladder-geometry": "ladder",
        "resistor-bands": "resistor",
        "missed-check-ins": "missed-check-in",
    }
    assert [chart.id for chart in charts.for_figure(shipped_library, "reed-gap")] == ["reach-parallel", "reach-end-on"]
    assert charts.for_figure(shipped_library, "duty") == []


@every_chart
def test_a_chart_names_every_figure_it_uses(id_: str) -> None:
    chart = charts.ALL[id_]
    assert chart.figure in chart.uses
    alone = {name: FIGURES[name] for name in chart.uses}
    assert chart.make(alone).svg == MADE[id_].svg


@every_chart
def test_title_and_message_are_in_the_picture(id_: str) -> None:
    made, svg = MADE[id_], root(id_)
    assert (made.id, made.width) == (id_, 360)
    assert svg.get("viewBox") == f"0 0 {made.width} {made.height}"
    assert (svg.findtext(f"{SVG}title"), svg.findtext(f"{SVG}desc")) == (made.title, made.message)
    assert svg.get("role") == "img"
    assert svg.get("aria-labelledby") == f"{id_}-title {id_}-message"
    assert made.message.endswith(".")
    assert 60 < len(made.message) < 800
    assert not re.search(r"nan|inf\b|None|\{|\}|\[\[", made.message)


NARROW, WIDE = "iljtfr.,:;'|()/ \u00a0", "mwMW%"


def boxes(id_: str) -> Iterator[tuple[str, float, float, float, float]]:
    """Each text with its box, for a wide plain typeface."""
    for text in root(id_).iter(f"{SVG}text"):
        words, size = text.text or "", float(text.get("font-size", 0))
        wide = size * sum(0.36 if char in NARROW else 0.92 if char in WIDE else 0.6 for char in words)
        x, y = float(text.get("x", 0)), float(text.get("y", 0))
        left = x - {"start": 0.0, "middle": wide / 2, "end": wide}[text.get("text-anchor", "start")]
        yield words, left, y - 0.75 * size, left + wide, y + 0.22 * size


@every_chart
def test_text_is_large_enough_and_inside_the_sheet(id_: str) -> None:
    for text in root(id_).iter(f"{SVG}text"):
        assert float(text.get("font-size", 0)) >= 13, text.text
    for words, left, top, right, bottom in boxes(id_):
        assert left >= 0, words
        assert top >= 0, words
        assert right <= 360, words
        assert bottom <= MADE[id_].height, words


@every_chart
def test_no_two_texts_lie_on_each_other(id_: str) -> None:
    for one, other in combinations(boxes(id_), 2):
        apart = one[3] <= other[1] or other[3] <= one[1] or one[4] <= other[2] or other[4] <= one[2]
        assert apart, (one[0], other[0])


@every_chart
def test_lines_stay_on_the_sheet(id_: str) -> None:
    for path in root(id_).iter(f"{SVG}path"):
        d = path.get("d", "")
        if "l" in d or (path.get("stroke-width") == "1" and d in ("M0 8 L8 0", "M0 0 L8 8 M0 8 L8 0")):
            continue  # arrow heads, and the patterns of the hatchings
        for x, y in re.findall(r"[ML](-?[\d.]+) (-?[\d.]+)", d):
            assert -1 <= float(x) <= 361, d[:60]
            assert -1 <= float(y) <= MADE[id_].height + 1, d[:60]


@every_chart
def test_axes_name_their_units(id_: str) -> None:
    words = " | ".join(text.text or "" for text in root(id_).iter(f"{SVG}text"))
    wanted = {
        "reach-parallel": ("gap, mm", "to either side, mm"),
        "reach-end-on": ("gap, mm", "to either side, mm"),
        "loop-bands": ("reading of the input, V",),
        "loss-with-distance": ("loss, dB", "distance, m"),
        "cell-life-by-check-in": ("years", "time between check-ins", "1 min", "1 day"),
        "ladder-geometry": ("height, m", "out from the wall, m"),
        "resistor-bands": ("Ω",),
        "missed-check-ins": ("check-ins that are lost, %", "chance"),
    }
    for name in wanted[id_]:
        assert name in words


# -- the same bytes, with and without the cache ------------------------------------------------------------------


def test_another_process_makes_the_same_bytes() -> None:
    code = (
        "import hashlib\nfrom latchside import charts\nfrom latchside.figures.catalogue import catalogue\n"
        "f = catalogue()\nall_ = ''.join(chart.make(f).svg for chart in charts.ALL.values())\n"
        "print(hashlib.sha256(all_.encode()).hexdigest())"
    )
    environment = {**os.environ, "PYTHONHASHSEED": "1"}
    shown = subprocess.run([sys.executable, "-c", code], env=environment, capture_output=True, text=True, check=True)
    here = "".join(made.svg for made in MADE.values())
    assert shown.stdout.strip() == hashlib.sha256(here.encode()).hexdigest()


class Counted:
    """A chart that counts how often it is made."""

    def __init__(self, id_: str = "ladder-geometry") -> None:
        self.made = 0
        self.chart = replace(charts.ALL[id_], make=self._make)

    def _make(self, figures: Figures) -> Drawing:
        self.made += 1
        return charts.ALL[self.chart.id].make(figures)


@every_chart
def test_a_kept_chart_is_the_made_one(id_: str, tmp_path: Path) -> None:
    fresh = cache.finished(charts.ALL[id_], FIGURES, tmp_path / "new" / "folder")
    kept = cache.finished(charts.ALL[id_], FIGURES, tmp_path / "new" / "folder")
    assert fresh == kept == MADE[id_] == cache.finished(charts.ALL[id_], FIGURES, None)


def test_a_chart_is_made_once_and_again_when_its_record_changes(tmp_path: Path) -> None:
    counted = Counted()
    for _ in range(3):
        before = cache.finished(counted.chart, FIGURES, tmp_path)
    assert counted.made == 1
    data: Any = copy.deepcopy(dict(FIGURES["ladder"].data))
    data["examples"][0]["inputs"]["working_length_m"] = 3
    other = {**FIGURES, "ladder": Figure("ladder", MappingProxyType(data))}
    after = cache.finished(counted.chart, other, tmp_path)
    assert counted.made == 2
    assert after.svg != before.svg
    assert say(3, "m") in after.message
    assert len(list(tmp_path.iterdir())) == 1  # the older one is gone


def test_other_records_do_not_matter(tmp_path: Path) -> None:
    chart = charts.ALL["ladder-geometry"]
    assert cache.key(chart, FIGURES) == cache.key(chart, {"ladder": FIGURES["ladder"]})
    keys = {cache.key(chart, FIGURES) for chart in charts.ALL.values()}
    assert len(keys) == len(charts.ALL)


@pytest.mark.parametrize("broken", ["", "<svg", "<svg/>", "\x00"])
def test_a_spoilt_kept_chart_is_made_again(tmp_path: Path, broken: str) -> None:
    counted = Counted()
    cache.finished(counted.chart, FIGURES, tmp_path)
    (kept,) = tmp_path.iterdir()
    kept.write_text(broken, "utf-8")
    assert cache.finished(counted.chart, FIGURES, tmp_path) == MADE["ladder-geometry"]
    assert counted.made == 2


def test_where_nothing_can_be_kept_charts_are_made(tmp_path: Path) -> None:
    file = tmp_path / "file"
    file.write_text("in the way", "utf-8")
    assert cache.finished(charts.ALL["ladder-geometry"], FIGURES, file / "charts") == MADE["ladder-geometry"]


def test_files_of_the_site(shipped_library: Library) -> None:
    files = charts.files(shipped_library)
    assert set(files) == {f"assets/charts/{id_}.svg" for id_ in charts.ALL}
    for id_, made in MADE.items():
        assert files[f"assets/charts/{id_}.svg"] == made.svg + "\n"
        assert charts.drawing(shipped_library, id_) == made


# -- what each chart says and shows ------------------------------------------------------------------------------


def answer(figure: str, **changes: object) -> Mapping[str, Any]:
    return FIGURES[figure].answer(example(FIGURES[figure], **changes)).outputs


@pytest.mark.parametrize("plan", [magnet.PARALLEL, magnet.END_ON], ids=lambda plan: plan.mount)
def test_reach_in_the_message_is_that_of_the_figure(plan: magnet.Plan) -> None:
    message = MADE[f"reach-{plan.mount}"].message
    air = answer("reed-gap", mount=plan.mount)
    steel = answer("reed-gap", mount=plan.mount, steel_mm=magnet.STEEL_MM)
    assert f"closes up to a gap of {say(air['operate_mm'], 'mm')}" in message
    assert f"holds up to {say(air['release_mm'], 'mm')}" in message
    assert f"only up to {say(steel['operate_mm'], 'mm')}, {say(steel['of_label_percent'], '%')} of that" in message
    assert steel["operate_mm"] < air["operate_mm"] < air["release_mm"]


@pytest.mark.parametrize("steel", [None, magnet.STEEL_MM])
@pytest.mark.parametrize("plan", [magnet.PARALLEL, magnet.END_ON], ids=lambda plan: plan.mount)
def test_the_map_reaches_as_far_as_the_figure_says(plan: magnet.Plan, steel: float | None) -> None:
    shape = magnet.closed_map(plan, FIGURES, steel)
    figure = answer("reed-gap", mount=plan.mount, steel_mm=steel)
    (closes,) = shape.closes
    assert max(y for _, y in closes) == pytest.approx(figure["operate_mm"], abs=0.05)
    assert max(y for loop in shape.holds for _, y in loop) == pytest.approx(figure["release_mm"], abs=0.05)
    assert shape.lobes
    for loop in shape.lobes:  # a lobe lies to one side, and no farther out than the reed is meant to work
        assert not min(x for x, _ in loop) < 0 < max(x for x, _ in loop)
        assert max(y for _, y in loop) < figure["operate_mm"]


@pytest.mark.parametrize("plan", [magnet.PARALLEL, magnet.END_ON], ids=lambda plan: plan.mount)
def test_steel_takes_area_from_the_map(plan: magnet.Plan) -> None:
    air, steel = (magnet.closed_map(plan, FIGURES, height) for height in (None, magnet.STEEL_MM))
    for part in ("closes", "lobes", "holds"):
        assert sum(map(size, getattr(steel, part))) < sum(map(size, getattr(air, part)))
    assert sum(map(size, air.closes)) < sum(map(size, air.holds))


@pytest.mark.parametrize("steel", [None, magnet.STEEL_MM])
def test_beside_the_reed_it_closes_in_a_side_lobe_alone(steel: float | None) -> None:
    """With the magnet past the end of the reed and beside it, the field runs the other way, up to the magnet's side."""
    shape = magnet.closed_map(magnet.END_ON, FIGURES, steel)
    radius = FIGURES["reed-gap"].answer(example(FIGURES["reed-gap"])).inputs["diameter_mm"] / 2
    assert min(y for loop in shape.closes for _, y in loop) > -1
    for loop in shape.lobes:
        assert min(abs(x) for x, _ in loop) < radius


def size(loop: list[Spot]) -> float:
    turned = [*loop[1:], loop[0]]
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in zip(loop, turned, strict=True))) / 2


def test_the_side_lobe_of_the_message_is_one_for_the_figure_too() -> None:
    plan = magnet.PARALLEL
    seen = magnet.aside(plan, FIGURES)
    assert seen.closed < seen.lobe < seen.end

    def state(offset: float) -> str:
        found = answer("reed-gap", mount=plan.mount, offset_mm=offset)
        if found["least_mm"] <= plan.looked_at <= found["operate_mm"]:
            return "closed"
        inside = any(lobe["from_mm"] <= plan.looked_at <= lobe["to_mm"] for lobe in found["lobes"])
        return "lobe" if inside else "open"

    assert state(seen.closed - 0.2) == "closed"
    assert state((seen.closed + seen.lobe) / 2) == "open"
    assert state(seen.lobe + 0.2) == state(seen.end - 0.2) == "lobe"
    assert state(seen.end + 0.2) == "open"
    message = MADE["reach-parallel"].message
    assert f"opens at {say(seen.closed, 'mm')}" in message
    assert f"from {say(seen.lobe, 'mm')} to {say(seen.end, 'mm')}" in message


def bands(layout: str) -> list[tuple[str, float, float]]:
    states = answer("loop-states", layout=layout)["states"]
    return [(state, states[state]["low_v"], states[state]["high_v"]) for state in STATES]


@pytest.mark.parametrize("layout", list(loops.LAYOUTS))
def test_bands_overlap_only_where_states_read_the_same(layout: str) -> None:
    found = answer("loop-states", layout=layout)
    alike = [set(group) for group in found["same_reading"]]
    for (one, low, high), (other, least, most) in combinations(bands(layout), 2):
        meet = low <= most and least <= high
        assert meet == any({one, other} <= group for group in alike), (one, other)
    assert f"{say(found['smallest_gap_v'], 'V')}" in MADE["loop-bands"].message


@pytest.mark.parametrize("layout", list(loops.LAYOUTS))
def test_bands_are_drawn_where_they_read(layout: str) -> None:
    svg = root("loop-bands")
    top = list(loops.LAYOUTS).index(layout)
    drawn = [
        (float(r.get("x", 0)), float(r.get("x", 0)) + float(r.get("width", 0)))
        for r in svg.iter(f"{SVG}rect")
        if r.get("fill") == "url(#loop-bands-leaf)"
    ][top * len(STATES) : (top + 1) * len(STATES)]
    supply = FIGURES["loop-states"].answer(example(FIGURES["loop-states"])).inputs["supply_v"]
    by_state = {state: (low, high) for state, low, high in bands(layout)}
    for (left, right), state in zip(drawn, loops.STATES, strict=True):
        low, high = (84 + 252 * volt / supply for volt in by_state[state])
        assert left <= low + 0.01
        assert right >= high - 0.01
        assert right - left < high - low + 6.1
    words = [text.text for text in svg.iter(f"{SVG}text")]
    for low, high in by_state.values():
        assert between(low, high, "V") in words


def test_resistors_are_told_by_the_names_of_their_bands() -> None:
    words = [text.text for text in root("resistor-bands").iter(f"{SVG}text")]
    for ohm in loops.RESISTORS:
        found = answer("resistor", ohm=ohm)
        assert found["nearest_ohm"] == ohm
        assert f"{say(ohm, 'ohm')}: {', '.join(found['bands'])}" in MADE["resistor-bands"].message
        at = words.index(say(ohm, "ohm"))
        assert words[at + 1 : at + 5] == found["bands"]


def test_life_grows_with_the_time_between_check_ins_and_with_the_cell() -> None:
    times = [1, 2, 5, 10, 30, 60, 240, 1440]
    for _, capacity in power.CELLS:
        lives = [power.life(FIGURES, capacity, at) for at in times]
        assert all(less < more for less, more in pairwise(lives))  # so it falls as check-ins grow more frequent
    most_first = [power.life(FIGURES, capacity, 60) for _, capacity in power.CELLS]
    assert most_first == sorted(most_first, reverse=True)
    for _, capacity in power.CELLS:
        years = say(power.life(FIGURES, capacity, 60), "year")
        assert f" of {say(capacity, 'mAh', 4)} lasts" in MADE["cell-life-by-check-in"].message
        assert f"{years} at one hour" in MADE["cell-life-by-check-in"].message


def test_loss_grows_with_distance_walls_and_floors() -> None:
    for loss in (radio.walls, radio.floors):
        assert loss(FIGURES, 10, 0) < loss(FIGURES, 20, 0)
        assert loss(FIGURES, 10, 0) < loss(FIGURES, 10, 1) < loss(FIGURES, 10, 2)
    message = MADE["loss-with-distance"].message
    assert say(answer("indoor-loss", distance_m=30)["loss_db"], "dB") in message
    frequency = FIGURES["indoor-loss"].data["examples"][0]["inputs"]["frequency_mhz"]
    free = FIGURES["free-space-loss"].answer({"frequency_mhz": frequency, "distance_m": 30}).outputs["loss_db"]
    wall = FIGURES["slab-loss"].answer({"material": "brick", "thickness_mm": 100, "frequency_mhz": frequency})
    assert f"{say(free, 'dB')} at 30\u00a0m" in message
    assert f"adds {say(wall.outputs['loss_db'], 'dB')}" in message


def test_a_longer_window_is_missed_less_often() -> None:
    for share in (0.05, 0.3, 0.5, 0.9):
        chances = [radio.chance(FIGURES, window, share) for window in radio.WINDOWS_H]
        assert chances == sorted(chances, reverse=True)
        for window, chance in zip(radio.WINDOWS_H, chances, strict=True):
            assert chance == pytest.approx(share ** radio.tries(FIGURES, window))
    for window in radio.WINDOWS_H:
        once = say(1 / radio.chance(FIGURES, window, 0.5), "count")
        assert f"{once} with a window of {say(window, 'h')}" in MADE["missed-check-ins"].message


def test_ladder_is_drawn_to_scale() -> None:
    wall, landing = site.against_wall(FIGURES), site.onto_landing(FIGURES)
    for found in (wall, landing):
        for name in ("setback_m", "height_m", "ladder_length_m"):
            assert say(found[name], "m") in MADE["ladder-geometry"].message
        assert short(found["angle_deg"], "deg") in MADE["ladder-geometry"].svg
    rails = [
        path.get("d", "") for path in root("ladder-geometry").iter(f"{SVG}path") if path.get("stroke-width") == "2.5"
    ]
    for rail, found in ((rails[0], wall), (rails[2], landing)):
        (x1, y1), (x2, y2) = ((float(x), float(y)) for x, y in re.findall(r"([\d.]+) ([\d.]+)", rail))
        across, up = abs(x2 - x1), abs(y2 - y1)
        assert hypot(across, up) / 52 == pytest.approx(found["ladder_length_m"], abs=0.01)
        assert degrees(atan2(up, across)) == pytest.approx(found["angle_deg"], abs=0.1)


# -- the tools ---------------------------------------------------------------------------------------------------


def test_outline_of_a_disc_has_its_size() -> None:
    xs = ys = [step / 4 for step in range(-40, 41)]
    field = [[6.0 - hypot(x, y) for x in xs] for y in ys]
    (loop,) = areas(xs, ys, field, 0.0)
    assert size(loop) == pytest.approx(pi * 36, rel=0.01)
    assert {round(hypot(x, y), 1) for x, y in loop} == {6.0}


def test_an_area_at_the_edge_is_closed_along_it() -> None:
    xs, ys = [0.0, 1.0, 2.0, 3.0, 4.0], [0.0, 1.0, 2.0, 3.0]
    (loop,) = areas(xs, ys, [[1.0] * 5] * 4, 0.0)
    assert size(loop) == pytest.approx(12, abs=1e-6)
    assert areas(xs, ys, [[-1.0] * 5] * 4, 0.0) == []


def test_two_areas_that_touch_at_a_corner_stay_two_or_become_one() -> None:
    xs = ys = [0.0, 1.0]
    apart = areas(xs, ys, [[1.0, -3.0], [-3.0, 1.0]], 0.0)
    joined = areas(xs, ys, [[3.0, -1.0], [-1.0, 3.0]], 0.0)
    assert (len(apart), len(joined)) == (2, 1)


def test_scales() -> None:
    assert Scale(0, 10, 40, 340).at(5) == 190
    assert Scale(1, 100, 0, 200, log=True).at(10) == pytest.approx(100)
    assert Scale(0, 1, 200, 0).at(0.25) == 150
    assert Scale(1, 100, 0, 1, log=True).steps(3) == pytest.approx([1, 10, 100])
    assert Scale(0, 4, 0, 1).steps(5) == pytest.approx([0, 1, 2, 3, 4])


def test_a_curve_does_not_write_one_spot_twice() -> None:
    sheet = Sheet("x", "T", "M.", 100)
    axes = Axes(sheet, Scale(0, 1, 0, 100), Scale(0, 1, 100, 0))
    axes.curve([(0, 0), (0.0001, 0.0001), (1, 1)])
    assert 'd="M0 100 L100 0"' in ET.tostring(sheet.root, encoding="unicode")


def test_a_chart_without_a_figure_of_its_own_is_refused_by_name() -> None:
    with pytest.raises(KeyError, match="ladder"):
        Chart("x", "ladder", ("ladder",), site.ladder_geometry).make({})


def test_a_simplified_line_passes_every_point_and_keeps_its_ends() -> None:
    wave = [(x / 10, 20 * sin(x / 100)) for x in range(2000)]
    line = simplified(wave)
    assert line[0] == wave[0]
    assert line[-1] == wave[-1]
    assert len(line) < len(wave) / 20
    steepest = 2  # of the wave: so much farther than beside it a point may lie above the line
    between_ends = numpy.interp([x for x, _ in wave], [x for x, _ in line], [y for _, y in line])
    assert max(abs(between_ends - [y for _, y in wave])) <= UNSEEN * hypot(1, steepest) + 1e-9


def test_a_closed_line_and_a_straight_one_are_simplified_too() -> None:
    square = [(0.0, 0.0), (5.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0), (0.0, 0.0)]
    assert simplified(square) == [spot for spot in square if spot != (5.0, 0.0)]
    assert simplified([(0.0, 0.0), (1.0, 1.0)]) == [(0.0, 0.0), (1.0, 1.0)]
