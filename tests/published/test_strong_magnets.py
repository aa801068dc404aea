"""The ratings of the contacts for steel and for swaying doors against the field of their own magnets.

The field is that of the figures, held against a general library and handbook formulas in `test_magnetics.py`. Steel is
the image method of textbook magnetostatics, held against outside values in `magnet.py`. The ratings are typical; a
label states its distance with the mount: recessed halves end on, surface halves side by side. EN 50131-2-6 treats steel
apart (scope, read in a catalogue entry).
"""

from __future__ import annotations

from typing import Any

import pytest

from latchside.figures.for_device.worked import Ratings
from latchside.figures.models.reed_gap import compute
from latchside.library import Library

END_ON, SIDE_BY_SIDE = "end-on", "parallel"
MOUNTS = {"steel-door-contact": END_ON, "wired-surface-contact": SIDE_BY_SIDE, "wide-reach-contact": SIDE_BY_SIDE}
HAND_MM = 40.0
"""A hand's width, the target of the house in prove-opening: common practice."""


def ratings_of(library: Library, device: str) -> Ratings:
    record = library.find("device", device)
    assert record is not None
    return Ratings(record["values"])


def worked(ratings: Ratings, mount: str, steel_mm: float | None = None) -> dict[str, Any]:
    return compute(
        shape="cylinder", remanence_t=ratings.most("magnet-remanence", "T"),
        diameter_mm=ratings.most("magnet-diameter", "mm"), length_mm=ratings.most("magnet-length", "mm"), mount=mount,
        operate_mt=ratings.most("operate-field", "mT"), release_mt=ratings.most("release-field", "mT"),
        steel_mm=steel_mm,
    )  # fmt: skip


@pytest.mark.parametrize(("device", "mount"), MOUNTS.items())
def test_the_distances_in_air_are_those_of_the_mount(device: str, mount: str, shipped_library: Library) -> None:
    ratings = ratings_of(shipped_library, device)
    field = worked(ratings, mount)
    for name, of_field in (("reach", "operate_mm"), ("release", "release_mm")):
        assert ratings.floor(name, "mm") <= field[of_field] <= ratings.limit(name, "mm")


@pytest.mark.parametrize("device", [one for one, mount in MOUNTS.items() if mount == SIDE_BY_SIDE])
def test_flush_on_steel_a_surface_set_keeps_what_the_image_method_leaves(device: str, shipped_library: Library) -> None:
    ratings = ratings_of(shipped_library, device)
    flush = worked(ratings, SIDE_BY_SIDE, ratings.most("magnet-height", "mm") / 2)["operate_mm"]
    assert ratings.floor("reach-on-steel", "mm") <= flush <= ratings.limit("reach-on-steel", "mm")


def test_steel_all_round_a_sleeve_takes_more_than_steel_at_one_side(shipped_library: Library) -> None:
    """The model has no steel all round. An endless plate at one side of the sleeve is the most that may be left."""
    ratings = ratings_of(shipped_library, "steel-door-contact")
    one_side = worked(ratings, END_ON, ratings.most("body-width", "mm") / 2)["operate_mm"]
    assert ratings.limit("reach-on-steel", "mm") < one_side


def test_a_sleeve_keeps_more_in_steel_than_a_bare_barrel_and_a_spacer_wins_reach_back(shipped_library: Library) -> None:
    plain, sleeved = (ratings_of(shipped_library, one) for one in ("recessed-contact", "steel-door-contact"))
    assert sleeved.floor("reach-on-steel", "mm") > plain.limit("reach-on-steel", "mm")
    surface = ratings_of(shipped_library, "wired-surface-contact")
    flush = surface.most("magnet-height", "mm") / 2
    heights = [flush + count * surface.most("spacer", "mm") for count in range(3)]
    left = [worked(surface, SIDE_BY_SIDE, height)["operate_mm"] for height in heights]
    assert left == sorted(left)
    assert left[2] > 0.85 * surface.most("reach", "mm")


@pytest.mark.parametrize("device", ["steel-door-contact", "wired-surface-contact"])
def test_a_strong_magnet_lets_go_before_a_hand_passes(device: str, shipped_library: Library) -> None:
    """At the least gap to fit to and the latest release that its tolerance allows, off steel, at the contact itself."""
    ratings = ratings_of(shipped_library, device)
    assert ratings.limit("release", "mm") - ratings.least("fit-gap", "mm") < HAND_MM


@pytest.mark.parametrize("device", ["steel-door-contact", "wired-surface-contact"])
def test_on_steel_it_is_fitted_to_half_of_what_steel_leaves(device: str, shipped_library: Library) -> None:
    """Common practice: the other half is kept for sag, play and a warm magnet."""
    ratings = ratings_of(shipped_library, device)
    assert ratings.most("reach-on-steel", "mm") / 2 > 2 * ratings.least("fit-gap", "mm")
    where = "reach-on-steel" if MOUNTS[device] == END_ON else "reach"
    assert ratings.most("fit-gap", "mm") == pytest.approx(ratings.most(where, "mm") / 2)
