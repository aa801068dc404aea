"""What is pure about photographs, under node: the ZIP, as Python reads it; scaling, room, names."""

from __future__ import annotations

import zlib
from base64 import b64decode, b64encode
from io import BytesIO
from typing import Any
from zipfile import ZIP_STORED, ZipFile

import pytest

from latchside.root import ROOT

from ..node import Node

JS = (ROOT / "content/assets/js").as_uri()
ZIPPED = """async ([js, files]) => {
  const { zipped } = await import(`${js}/core/zip.js`);
  const read = ({ name, at, data }) => ({ name, at, bytes: new Uint8Array(Buffer.from(data, "base64")) });
  return Buffer.concat(zipped(files.map(read))).toString("base64");
}"""
SUM = """async ([js, data]) => (await import(`${js}/core/zip.js`)).crc32(Buffer.from(data, "base64"))"""
MEASURE = """async ([js, name, given]) => (await import(`${js}/photo/measure.js`))[name](...given)"""


def written(node: Node, *files: tuple[str, str, bytes]) -> ZipFile:
    """A ZIP of files, each with its name, moment and content, as the page writes it and Python reads it."""
    given = [{"name": name, "at": at, "data": b64encode(data).decode()} for name, at, data in files]
    return ZipFile(BytesIO(b64decode(node.evaluate(ZIPPED, [JS, given]))))


def measure(node: Node, name: str, *given: Any) -> Any:
    return node.evaluate(MEASURE, [JS, name, given])


def test_python_reads_the_zip_and_every_check_sum_holds(node: Node) -> None:
    files = {"visit-2026-11-25-élm.json": '{"a": "é"}\n'.encode(), "photographs/x-1-label.jpg": bytes(range(256)) * 700}
    found = written(
        node, *((name, "2026-11-25T14:05:31.000+01:00", data) for name, data in files.items()), ("e", "", b"")
    )
    assert found.testzip() is None
    assert found.namelist() == [*files, "e"]
    for name, data in files.items():
        assert found.read(name) == data
        assert found.getinfo(name).compress_type == ZIP_STORED
        assert found.getinfo(name).date_time == (2026, 11, 25, 14, 5, 30)
    assert found.read("e") == b""
    assert found.getinfo("e").date_time == (1980, 1, 1, 0, 0, 0)


def test_a_zip_of_nothing_is_one(node: Node) -> None:
    assert written(node).namelist() == []


@pytest.mark.parametrize("data", [b"", b"a", b"123456789", bytes(range(256)) * 9])
def test_the_check_sum_is_that_of_zlib(node: Node, data: bytes) -> None:
    assert node.evaluate(SUM, [JS, b64encode(data).decode()]) == zlib.crc32(data)


@pytest.mark.parametrize(
    ("size", "scaled"),
    [
        ((4000, 3000), (1600, 1200)),
        ((3000, 4000), (1200, 1600)),
        ((1600, 900), (1600, 900)),
        ((640, 480), (640, 480)),  # never made larger
        ((12000, 2), (1600, 1)),  # never made nothing
    ],
)
def test_a_picture_is_scaled_by_its_longer_side(node: Node, size: tuple[int, int], scaled: tuple[int, int]) -> None:
    assert measure(node, "fitted", *size, 1600) == {"width": scaled[0], "height": scaled[1]}


def test_room_is_left_for_the_record_itself(node: Node) -> None:
    """2 MB stay free; what is over is counted in photographs as large as those that are here, or in 0.5 MB."""
    ten = {"usage": 1_000_000, "quota": 13_000_000}
    assert measure(node, "roomOf", ten) == 10_000_000
    assert measure(node, "roomFor", ten, []) == 20
    assert measure(node, "roomFor", ten, [300_000, 500_000]) == 25
    assert measure(node, "roomFor", {"usage": 12_000_000, "quota": 13_000_000}, []) == 0
    assert measure(node, "roomOf", {"usage": 9, "quota": 5}) == 0
    assert measure(node, "roomFor", {}, []) is None


def test_a_file_is_called_by_opening_number_and_what_it_shows(node: Node) -> None:
    name = measure(node, "fileOf", {"opening": "0a1b", "number": 3, "what": "loop"})
    assert name == "photographs/0a1b-3-loop.jpg"
