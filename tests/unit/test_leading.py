"""The figures that a device page opens with: those of its traits, in the shortest form."""

from __future__ import annotations

import pytest

from latchside.figures.brief import Brief, brief
from latchside.library import Library
from latchside.library.quantity import quantity
from latchside.pages.leading import leading, own_cautions


@pytest.mark.parametrize(
    ("stated", "shown"),
    [
        (
            {"value": 18.5, "unit": "mm", "tolerance": {"percent": 10}},
            Brief("18.5", "mm", "±10\u00a0%", Brief("0.73", "in", "±10\u00a0%", imperial=True)),
        ),
        (
            {"value": 35, "unit": "mm", "tolerance": {"plus_minus": 2}},
            Brief("35", "mm", "±2\u00a0mm", Brief("1.38", "in", "±0.08\u00a0in", imperial=True)),
        ),
        ({"min": 3, "max": 9, "unit": "mm"}, Brief("3–9", "mm", "", Brief("0.12–0.35", "in", imperial=True))),
        ({"max": 6, "unit": "year"}, Brief("≤ 6", "years")),
        ({"min": 1_000_000, "unit": "ohm"}, Brief("≥ 1", "MΩ")),
        ({"one_of": [2200, 4700, 10000], "unit": "ohm"}, Brief("2.2–10", "kΩ", "one of 3")),
        (
            {"one_of": [10, 20], "unit": "mm"},
            Brief("10–20", "mm", "one of 2", Brief("0.39–0.79", "in", "one of 2", imperial=True)),
        ),
    ],
)
def test_a_figure_in_its_shortest_form(stated: dict[str, object], shown: Brief) -> None:
    assert brief(quantity({**stated, "status": "typical"})) == shown


def _names(library: Library, id_: str) -> list[str]:
    device = library.find("device", id_)
    assert device is not None
    return [one.name for one in leading(device)]


def test_a_device_opens_with_the_figures_of_its_traits(shipped_library: Library) -> None:
    by_radio = _names(shipped_library, "surface-contact")  # its record states the readings of its terminals too
    assert by_radio == ["reach", "release", "fit-gap", "reach-on-steel", "cell-life", "check-in"]
    drilled = _names(shipped_library, "recessed-contact")
    assert drilled == ["reach", "release", "fit-gap", "reach-on-steel", "hole-diameter", "loop-shut"]
    loop_by_radio = _names(shipped_library, "wired-input-transmitter")
    assert loop_by_radio[:2] == ["loop-shut", "loop-open"]
    assert {"cell-life", "check-in"} <= set(loop_by_radio)
    for device in shipped_library.of("device"):
        assert all(one.label and one.shown.figure for one in leading(device)), device.id


def test_a_device_opens_with_its_dangers_and_the_cautions_of_its_traits(shipped_library: Library) -> None:
    surface, wired = (shipped_library.find("device", id_) for id_ in ("surface-contact", "wired-surface-contact"))
    assert surface is not None
    assert wired is not None
    assert {"lithium-cells", "swallowed-cells"} <= set(own_cautions(shipped_library, surface))
    assert "mains-wiring" in own_cautions(shipped_library, wired)
    assert "lithium-cells" not in own_cautions(shipped_library, wired)
