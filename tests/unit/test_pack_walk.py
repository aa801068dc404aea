"""The walk as sketches, and where each thing on the van goes."""

from __future__ import annotations

from dataclasses import replace
from xml.etree import ElementTree as ET

from latchside.library import Library
from latchside.packs.loading import goes_to
from latchside.packs.walk import in_page, walk
from latchside.planning.plan import Item, Plan

from .pack_plans import HATCH, OPENINGS, PLAN


def on_sides(*sides: str) -> Plan:
    openings = (
        replace(one, opening=replace(one.opening, side=side)) for one, side in zip(OPENINGS, sides, strict=True)
    )
    return replace(PLAN, openings=tuple(openings))


def texts(svg: str) -> list[str]:
    return [" ".join(text.itertext()) for text in ET.fromstring(svg).iter() if text.tag.endswith("text")]


def test_each_side_has_a_sketch_of_its_openings_in_the_order_of_the_walk(library: Library) -> None:
    first, second = walk(on_sides("street", "rear", "Street "), library)
    assert texts(first.svg)[0] == "Street"
    assert [text for text in texts(first.svg) if text.isdigit()] == ["1", "3"]
    assert {"W1", "Recessed", "contact"} <= set(texts(first.svg))
    assert [text for text in texts(second.svg) if text.isdigit()] == ["2"]
    assert {"R1", "Surface", "contact"} <= set(texts(second.svg))
    assert "1 Shop street door" in first.message


def test_a_survey_without_sides_has_no_sketch(library: Library) -> None:
    assert not list(walk(on_sides("", " ", ""), library))


def test_a_side_of_many_openings_goes_on_in_a_second_row(library: Library) -> None:
    many = replace(PLAN, openings=OPENINGS[:1] * 9)
    (sketch,) = walk(many, library)
    assert sketch.width < 380
    (short,) = walk(replace(PLAN, openings=OPENINGS[:1] * 4), library)
    assert sketch.height > 2 * short.height


def test_a_name_of_a_side_is_only_text(library: Library) -> None:
    one = replace(OPENINGS[2], opening=replace(HATCH, side="[[x]] {{ 1 }} <b>"))
    (sketch,) = walk(replace(PLAN, openings=(one,)), library)
    shown = in_page(sketch)
    assert "[[" not in shown
    assert "{{" not in shown
    assert "<b>" not in shown
    assert "<b>" in texts(f"<svg>{shown.split('>', 1)[1]}")[0]


def test_a_thing_goes_to_the_openings_of_its_class(library: Library) -> None:
    def of(**change: object) -> list[int]:
        plain = Item("part", "Thing", 1, 0, "piece", "")
        return goes_to(replace(plain, **change), PLAN, library)  # type: ignore[arg-type]

    assert of(record="device/surface-contact") == [2]
    assert of(name="Screws, surface contact") == [2]
    assert of(used_for="For Shop street door.") == [1]
    assert of(record="tool/drill") == []
