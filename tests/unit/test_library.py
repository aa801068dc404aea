"""Records are immutable, and every reference is known from both its ends."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from latchside.kinds import KINDS
from latchside.library import Library
from latchside.project import Checked

from .support import base_library, change, check, lay


@pytest.fixture
def library(tmp_path: Path) -> Library:
    return base_library(lay(tmp_path))


def both_ways(library: Library) -> None:
    for record in library:
        for link in library.links_from(record):
            assert link.source is record
            if library.find(link.kind, link.id):
                assert record in library.referring(link.kind, link.id, record.kind.id)
        for kind in KINDS:
            for user in library.referring(record.kind.id, record.id, kind):
                assert user.kind.id == kind
                assert record.key in {link.target for link in library.links_from(user)}
    assert sum(len(library.links_from(record)) for record in library) == len(library.links)


def test_links_both_ways(library: Library) -> None:
    both_ways(library)


def test_links_both_ways_in_the_shipped_library(shipped: Checked) -> None:
    both_ways(shipped.library)


def test_links_of_one_procedure(library: Library) -> None:
    """Written by hand from the record, so that no sort of reference is forgotten."""
    procedure = library.find("procedure", "fit-contact")
    assert procedure
    assert {(link.kind, link.id, link.step) for link in library.links_from(procedure)} == {
        ("term", "leaf", None),  # in the summary
        ("tool", "drill", None),
        ("tool", "feeler", None),
        ("caution", "dust-and-eyes", None),
        ("table", "readings", None),  # in a note
        ("fault", "pane-open", None),  # in a measure and where it fails
        ("drawing", "two-ends-of-proof", None),
        ("device", "pane-contact", None),  # only
        ("procedure", "shut-leaf", None),  # drawn in
    }


def test_links_to_steps_and_values(library: Library) -> None:
    links = {(link.source.id, link.kind, link.id, link.step) for link in library.links}
    assert ("fit-list", "procedure", "shut-leaf", "note") in links
    assert ("pane-open", "procedure", "fit-contact", "measure-gap") in links
    assert ("drill", "procedure", "fit-contact", None) in links  # by its value in a text
    assert not any(kind == "device" and not id_ for _, kind, id_, _ in links)  # the device at hand is no record


def test_none_is_no_reference(library: Library) -> None:
    assert not any(link.id == "none" for link in library.links)


def test_referring_names_each_user_once_in_order(library: Library) -> None:
    users = library.referring("source", "bench-notes", "device")
    assert [user.id for user in users] == ["pane-contact"]  # named three times there
    assert [user.id for user in library.referring("caution", "wet-paint", "fault")] == ["pane-quiet"]
    assert library.referring("term", "nobody", "term") == ()


def test_records_in_the_order_of_their_ids(library: Library) -> None:
    for kind in KINDS:
        ids = [record.id for record in library.of(kind)]
        assert ids == sorted(ids)
        assert ids
    assert library.of("no-such-kind") == ()
    assert library.find("term", "no-such-term") is None


def frozen(value: Any) -> bool:
    if isinstance(value, str | int | float | bool | None):
        return True
    if isinstance(value, tuple):
        return all(frozen(below) for below in value)
    if isinstance(value, dict | list):
        return False
    return all(frozen(below) for below in value.values())


def test_data_is_read_only_all_the_way_down(library: Library) -> None:
    assert all(frozen(record.data) for record in library)
    record = library.of("term")[0]
    with pytest.raises(TypeError):
        record.data["name"] = "other"  # type: ignore[index]


def test_listed(library: Library) -> None:
    procedure = library.find("procedure", "shut-leaf")
    assert procedure
    assert procedure.listed("tools") == ()  # the explicit none
    assert procedure.listed("aliases") == ()  # absent
    assert procedure.listed("safety") == ("wet-paint",)


def test_unsound_records_are_out_but_known(tmp_path: Path) -> None:
    root = lay(tmp_path)
    change(root, "shared/terms/leaf.yaml", "version: 1", "version: 0")
    library = check(root).library
    assert library.find("term", "leaf") is None
    assert ("term", "leaf") in library.unsound


def test_addresses(library: Library) -> None:
    assert {record.address for record in library if record.kind.id in ("device", "term", "procedure")} == {
        "devices/pane-contact/", "procedures/fit-contact/", "procedures/shut-leaf/", "terms/#contact", "terms/#leaf",
    }  # fmt: skip
    addresses = [record.address for record in library]
    assert len(addresses) == len(set(addresses))


def test_texts_are_those_a_reader_sees(library: Library) -> None:
    term = library.find("term", "leaf")
    assert term
    assert [(text.path, text.sort) for text in library.texts(term)] == [
        (("name",), "line"),
        (("summary",), "prose"),
        (("values", "usual-thickness", "condition"), "prose"),
        (("meaning",), "prose"),
        (("north_america", 0), "line"),
        (("north_america", 1), "line"),
        (("europe", 0), "line"),
    ]
