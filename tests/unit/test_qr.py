"""Codes on labels and on the sheets of a pack, read back by a reader that has nothing in common with what drew them."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ElementTree

import html5lib
import numpy as np
import pytest
import zxingcpp

from latchside.library import Library
from latchside.packs.document import render_document
from latchside.pages.labels import labels
from latchside.qr import sound_base
from latchside.root import ROOT

from ..node import Node
from .pack_plans import PLAN

BASE = "https://field.example/library/"
DOT = 4
"""Pixels of a module."""


def read(code: str) -> str:
    """What a phone reads from a drawn code: its dark modules, as pixels."""
    drawn = ElementTree.fromstring(code)
    side = int(drawn.attrib["viewBox"].split()[-1])
    picture = np.full((side, side), 255, dtype=np.uint8)
    x = y = 0.0
    path = next(one for one in drawn.iter() if one.tag.endswith("path")).attrib["d"]
    for letter, numbers in re.findall(r"([Mmh])([-\d. ]*)", path):
        values = [float(value) for value in numbers.split()]
        if letter == "h":
            picture[int(y), int(x) : int(x + values[0])] = 0
            x += values[0]
        else:
            x, y = (values[0], values[1]) if letter == "M" else (x + values[0], y + values[1])
    (found,) = zxingcpp.read_barcodes(picture.repeat(DOT, 0).repeat(DOT, 1))
    return str(found.text)


def test_each_label_holds_the_address_of_its_page(shipped_library: Library) -> None:
    made = [label for _, group in labels(shipped_library, BASE) for label in group]
    wanted = {BASE + one.address for kind in ("device", "checklist", "fault") for one in shipped_library.of(kind)}
    assert {label.address for label in made} == wanted
    assert {read(label.code) for label in made} == wanted
    assert not any("style=" in label.code for label in made)


def test_each_sheet_of_a_pack_opens_its_work_its_proof_and_its_faults(shipped_library: Library) -> None:
    document = html5lib.parse(render_document(PLAN, shipped_library, "", BASE), namespaceHTMLElements=False)
    sheets = [one for one in document.iter("section") if "ls-sheet" in one.get("class", "")]
    for sheet, one in zip(sheets, PLAN.openings, strict=True):
        codes = [code for code in sheet.iter("figure") if "ls-code" in code.get("class", "")]
        told = {"".join(code.itertext()).strip(): read(_drawing(code)) for code in codes}
        of_class = f"{BASE}devices/{one.choice.device}/"
        proof = f"{BASE}checklists/proving-each-opening/"
        wanted = {"Fitting": f"{of_class}install/", "Proof": proof, "Faults": f"{of_class}find-faults/"}
        assert told == (wanted if one.choice.device else {})


def _drawing(figure: ElementTree.Element) -> str:
    drawn = next(one for one in figure.iter() if one.tag.endswith("svg"))
    return ElementTree.tostring(drawn, encoding="unicode")


def test_a_pack_without_an_address_has_no_codes(shipped_library: Library) -> None:
    assert "ls-code" not in render_document(PLAN, shipped_library, "")


@pytest.mark.parametrize(
    ("given", "base"),
    [("https://a.example", "https://a.example/"), ("http://10.0.0.2:8000/x/", "http://10.0.0.2:8000/x/")],
)
def test_an_address_is_taken(given: str, base: str) -> None:
    assert sound_base(given) == base


@pytest.mark.parametrize(
    "given", ["", "a.example", "ftp://a", "https://", "javascript:1", "https://a/?b", 'https://a"b', "https://a b"]
)
def test_what_is_no_address_is_refused(given: str) -> None:
    with pytest.raises(ValueError, match="address"):
        sound_base(given)


@pytest.mark.parametrize(
    ("host", "told"),
    [
        ("https://field.example/library/", "https://field.example/library/"),
        ("http://10.0.0.2:8000/", "http://10.0.0.2:8000/"),
        ("http://localhost:8000/", ""),
        ("http://127.0.0.1/x/", ""),
        ("http://[::1]:8000/", ""),
        ("file:///C:/library/", ""),
    ],
)
def test_a_page_tells_an_address_that_another_phone_can_open(node: Node, host: str, told: str) -> None:
    script = {"module": (ROOT / "content/assets/js/plan/site.js").as_uri(), "page": f"{host}assets/js/plan/packing.js"}
    assert node.evaluate("async ({ module, page }) => (await import(module)).siteOf(page)", script) == told
