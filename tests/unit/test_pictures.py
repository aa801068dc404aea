"""What reviewers are shown: a picture of every type of page, and icons of one set."""

from __future__ import annotations

import re

from latchside.kinds import KINDS
from latchside.library import Library
from latchside.packs.view import PARTS
from latchside.pages.icons import icon
from latchside.pages.stage_pages import INSTALL
from latchside.root import ROOT
from pictures import PAGES, sheet


def test_there_is_a_picture_of_every_kind_of_page(library: Library) -> None:
    """The list of each kind, and the page of a record that is there."""
    addresses = set(PAGES.values())
    for kind in KINDS.values():
        assert kind.index in addresses, kind.id
        records = {record.address for record in library.of(kind.id)}
        assert not kind.own_page or records & addresses, kind.id
    assert any(re.fullmatch(r"devices/[^/]+/install/", one) for one in addresses)
    assert any(re.fullmatch(rf"devices/[^/]+/(?:{'|'.join(INSTALL)})/", one) for one in addresses)
    assert any(re.fullmatch(rf"jobs/[^/]+/(?:{'|'.join(PARTS)})/", one) for one in addresses)


def test_there_is_a_picture_of_every_page_written_by_hand() -> None:
    folder = ROOT / "content"
    written = {path.relative_to(folder).as_posix() for path in folder.rglob("*.md")}
    addresses = {re.sub(r"(?:(?<=/)|^)index/$", "", path.removesuffix(".md") + "/") for path in written}
    kinds = {re.sub(r"[^/]+/$", "", one) for one in PAGES.values()}
    assert not {one for one in addresses if one not in PAGES.values() and re.sub(r"[^/]+/$", "", one) not in kinds}


def test_the_sheet_shows_each_page_by_day_by_night_and_in_print() -> None:
    shown = sheet(["home", "fault"])
    for name in ("home", "fault"):
        for file in ("phone-light", "phone-dark", "desk-light", "desk-dark", "print"):
            assert f'<img src="{name}-{file}.png"' in shown


def test_icons_in_the_sheets_are_those_of_the_theme() -> None:
    """There a phone saves them once; the levels of cautions differ in shape, for their tint tells nothing alone."""
    sheets = ROOT / "content" / "assets"
    frame = (sheets / "offline.css").read_text("utf-8")
    (glass,) = re.findall(r"mask: url\('data:image/svg\+xml,.*?<path d=\"([^\"]+)\"", frame)
    signs = re.findall(r'--ls-sign: path\("([^"]+)"\)', (sheets / "latchside.css").read_text("utf-8"))
    names = ("magnify", "alert-outline", "alert-octagon", "alert", "information-outline")
    for shape, name in zip((glass, *signs), names, strict=True):
        assert f'd="{shape}"' in icon(name)
    assert len(set(signs)) == len(signs)


def test_an_icon_is_silent_beside_its_word() -> None:
    assert 'aria-hidden="true"' in icon("hammer-wrench")
