"""What the profiles state of make and break distances, held against the field of their magnets by magpylib.

The reed is the point of the model: its near end where magnet and reed lie end on, its middle where they lie side by
side. Every field here is asked of magpylib directly. Remanence falls with warmth by the handbook's coefficient, 0.20 %
a kelvin for ferrite (magnetics-handbook), so a magnet at the top of its working temperature makes and breaks nearer.
"""

from __future__ import annotations

from math import cos, hypot, radians, sin
from typing import Any

import pytest

from latchside.library import Library, Record
from latchside.planning.bounds import CORNERED, lever, width_mm
from latchside.planning.house import house_of

from .outside import library as imported

FERRITE_PER_KELVIN, NEODYMIUM_PER_KELVIN = 0.002, 0.0011
"""Relative loss of remanence for each kelvin: ferrite by the handbook, neodymium from memory, a usual grade."""
STRONG_T = 0.6
"""A magnet with more remanence than this is no ferrite."""
ROOM_C = 20.0
CONTACTS = (
    "recessed-contact", "surface-contact", "wide-reach-contact", "steel-door-contact", "wired-surface-contact",
)  # fmt: skip


def device(library: Library, id_: str) -> Record:
    found = library.find("device", id_)
    assert found is not None
    return found


def drilled(record: Record) -> bool:
    return "hole-depth" in record["values"]


def rated(record: Record, name: str) -> float:
    return float(record["values"][name]["value"])


def fields_mt(
    record: Record, gaps: Any, *, sideways: Any = 0.0, remanence: float = 1.0, steel: float | None = None
) -> Any:
    """Field along the reed in mT, at each gap and way to the side; steel as a mirror so far below the axes, in mm."""
    numpy = imported("numpy")
    diameter, length = rated(record, "magnet-diameter"), rated(record, "magnet-length")
    gaps, sideways = numpy.broadcast_arrays(numpy.asarray(gaps, float), numpy.asarray(sideways, float))
    zero = numpy.zeros_like(gaps)
    if drilled(record):
        points = numpy.stack([sideways, zero, length / 2 + gaps], axis=-1)
    else:
        points = numpy.stack([diameter / 2 + gaps, sideways, zero], axis=-1)
    strength = remanence * rated(record, "magnet-remanence")

    def body(pole: float, below: float) -> Any:
        made = imported("magpylib").magnet.Cylinder(polarization=(0, 0, pole), dimension=(diameter, length))
        return made.move((0, -below, 0)).getB(points)[..., 2] * 1000

    found = body(strength, 0.0)
    return abs(found if steel is None else found + body(-strength, 2 * steel))


def farthest(record: Record, threshold: float, **more: Any) -> float:
    """The largest gap in mm at which the field still reaches a threshold, without a break from touching."""
    numpy = imported("numpy")
    gaps = numpy.linspace(0.1, 150, 15000)
    below = fields_mt(record, gaps, **more) < threshold
    return float(gaps[int(numpy.argmax(below))])


@pytest.mark.parametrize("id_", CONTACTS)
def test_make_and_break_are_those_of_the_mount_that_is_stated(id_: str, shipped_library: Library) -> None:
    """Within the tolerance of the label, and within 2 mm, so that no figure of another mount passes."""
    record = device(shipped_library, id_)
    for name, field in (("reach", "operate-field"), ("release", "release-field")):
        found = farthest(record, rated(record, field))
        assert rated(record, name) == pytest.approx(found, rel=0.02), name


def test_the_mount_stands_with_each_distance(shipped_library: Library) -> None:
    for record in shipped_library.of("device"):
        mount = "End on" if drilled(record) else "Side by side"
        for name in {"reach", "release", "fit-gap", "reach-on-steel"} & set(record["values"]):
            assert record["values"][name]["condition"].startswith(mount), (record.id, name)


@pytest.mark.parametrize("id_", ["surface-contact", "wide-reach-contact", "wired-surface-contact"])
def test_flush_on_steel_by_the_mirror_of_an_endless_plate(id_: str, shipped_library: Library) -> None:
    """The image method of textbooks. The axes lie at half the height of the magnet's case."""
    record = device(shipped_library, id_)
    found = farthest(record, rated(record, "operate-field"), steel=rated(record, "magnet-height") / 2)
    assert rated(record, "reach-on-steel") == pytest.approx(found, rel=0.05)


@pytest.mark.parametrize("id_", CONTACTS)
def test_warm_and_cold_stay_within_the_drift_that_is_stated(id_: str, shipped_library: Library) -> None:
    """Over the whole working temperature; what is stated is at most one and a half times what is worked."""
    record = device(shipped_library, id_)
    strong = rated(record, "magnet-remanence") > STRONG_T
    per_kelvin = NEODYMIUM_PER_KELVIN if strong else FERRITE_PER_KELVIN
    heat = record["values"]["operating-temperature"]
    stated = rated(record, "temperature-drift") / 100
    changes = []
    for field in ("operate-field", "release-field"):
        usual = farthest(record, rated(record, field))
        for degrees in (heat["min"], heat["max"]):
            remanence = 1 - per_kelvin * (degrees - ROOM_C)
            changes.append(abs(farthest(record, rated(record, field), remanence=remanence) / usual - 1))
    assert max(changes) <= stated + 0.0005
    assert stated < 1.5 * max(changes)


@pytest.mark.parametrize("id_", CONTACTS)
def test_the_travel_to_the_trip_is_the_longer_of_two_ways(id_: str, shipped_library: Library) -> None:
    """Straight away, and across the set as a hinged leaf carries it, both from the least gap to fit to."""
    numpy = imported("numpy")
    record = device(shipped_library, id_)
    release, least = rated(record, "release-field"), float(record["values"]["fit-gap"]["min"])
    straight = farthest(record, release) - least
    ways = numpy.linspace(0, 150, 15001)
    across = float(ways[int(numpy.argmax(fields_mt(record, least, sideways=ways) < release))])
    assert rated(record, "break-travel") == pytest.approx(max(straight, across), rel=0.02)


@pytest.mark.parametrize("id_", ["recessed-contact", "steel-door-contact"])
def test_across_two_barrels_the_offset_of_the_label_is_inside_what_the_reed_holds(
    id_: str, shipped_library: Library
) -> None:
    """A hinged leaf plays across the barrels: offset and sag stay below the way at which the reed lets go."""
    numpy = imported("numpy")
    record = device(shipped_library, id_)
    ways = numpy.linspace(0, 40, 4001)
    low, high = record["values"]["fit-gap"]["min"], record["values"]["fit-gap"]["max"]
    for gap in (float(low), 5.0, float(high)):
        held = float(ways[int(numpy.argmax(fields_mt(record, gap, sideways=ways) < rated(record, "operate-field")))])
        assert record["values"]["side-offset"]["max"] + 2 < 0.9 * 0.96 * held


def test_along_the_set_a_reed_closes_again(shipped_library: Library) -> None:
    """Slid along its own length, a magnet closes the reed again in its side lobe, far past the first trip.

    So a set never lies along the way of a sliding sash, and a wider gap inside the gap to fit to does not cure it.
    """
    numpy = imported("numpy")
    record = device(shipped_library, "surface-contact")
    magnet = imported("magpylib").magnet.Cylinder(polarization=(0, 0, 0.4), dimension=(5, 20))
    ways = numpy.linspace(0, 60, 6001)
    for gap in (3.0, 9.0):
        points = numpy.stack([numpy.full_like(ways, 2.5 + gap), numpy.zeros_like(ways), ways], axis=-1)
        field = abs(magnet.getB(points)[..., 2] * 1000)
        first = int(numpy.argmax(field < rated(record, "release-field")))
        again = numpy.flatnonzero(field[first:] >= rated(record, "operate-field"))
        assert 10 < ways[first] < 12
        assert again.size > 0
        assert ways[first + int(again[-1])] > 20


@pytest.mark.parametrize("kind", sorted(CORNERED))
@pytest.mark.parametrize("from_edge", [50.0, 150.0])
def test_a_hinged_leaf_turns_as_one_piece(kind: str, from_edge: float, shipped_library: Library) -> None:
    """Two points turned about the hinge by plain trigonometry: their ways go by their distances from it."""
    house = house_of(shipped_library)
    width = width_mm(kind, house)
    for angle in (1.0, 4.0, 30.0):
        ways = [
            hypot(radius - radius * cos(radians(angle)), radius * sin(radians(angle)))
            for radius in (width, width - from_edge)
        ]
        assert ways[0] / ways[1] == pytest.approx(lever(kind, from_edge, width), rel=1e-9)


def test_a_sliding_leaf_moves_as_far_as_its_contact(shipped_library: Library) -> None:
    for kind in ("sliding", "lift-and-slide", "double-hung", "roller-door"):
        assert lever(kind, 150.0, 700.0) == 1.0


def test_limits_for_the_trip(shipped_library: Library) -> None:
    """Doors: 2 in, training material in North America. Windows: 6 in (152 mm), UL 1641:2015, read in an extract."""
    values = house_of(shipped_library).values
    assert values["trip-door-north-america"]["value"] == pytest.approx(2 * 25.4)
    assert values["trip-door-north-america"]["status"] == "common practice"
    assert values["trip-window-north-america"]["value"] == pytest.approx(6 * 25.4)
    assert values["trip-window-north-america"]["source"] == "ul-1641"
    for name in ("trip-door", "trip-window", "trip-heavy", "trip-hand"):
        assert values[name]["status"] == "common practice"
        assert "target of the house" in values[name]["condition"]
