"""The build itself: no warning, nothing that should not be published, the same bytes every time."""

from __future__ import annotations

import gzip
import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner
from lxml.html import HtmlElement
from mkdocs.config import load_config
from mkdocs.structure.files import Files, get_files

from latchside.cli import main
from latchside.kinds import KINDS
from latchside.library import Library
from latchside.pages import render_pages
from latchside.project import check_project
from latchside.root import ROOT
from latchside.site import adapter
from latchside.site.build import build_site, settings
from latchside.site.saved_copy import BUDGET, chosen
from tests.long import LONG
from tests.site.small import small

PAGES_TO_COUNT_ON = {
    "", "on-site/", "study/", "maintain/", "maintain/rules/", "maintain/components/", "cards/", "devices/",
    "procedures/", "checklists/", "faults/", "cautions/", "terms/", "tools/", "tables/", "sources/",
}  # fmt: skip


def test_the_build_gives_no_warning(build: tuple[Path, int]) -> None:
    assert build[1] == 0


def test_every_record_and_stage_has_its_page(
    shipped_library: Library, every_page: dict[str, HtmlElement], job_stages: tuple[str, ...]
) -> None:
    wanted = set(PAGES_TO_COUNT_ON)
    for kind in ("device", "procedure", "checklist", "fault", "caution", "table"):
        wanted |= {f"{KINDS[kind].plural}/{record.id}/" for record in shipped_library.of(kind)}
    for device in shipped_library.of("device"):
        wanted.add(f"devices/{device.id}/install/")
        done = [stage for stage in job_stages if isinstance(device["procedures"][stage], tuple)]
        wanted |= {f"devices/{device.id}/{stage}/" for stage in done}
    assert not wanted - set(every_page)


def test_terms_tools_and_sources_have_their_anchor(
    shipped_library: Library, every_page: dict[str, HtmlElement]
) -> None:
    for kind in ("term", "tool", "source"):
        page = every_page[f"{kind}s/"]
        missing = [record.id for record in shipped_library.of(kind) if not page.xpath(f'//*[@id="{record.id}"]')]
        assert not missing, kind


def test_a_stage_without_work_has_no_page_and_says_why(
    shipped_library: Library, every_page: dict[str, HtmlElement]
) -> None:
    seen = 0
    for device in shipped_library.of("device"):
        text = every_page[f"devices/{device.id}/"].text_content()
        for stage, listed in device["procedures"].items():
            if not isinstance(listed, tuple):
                seen += 1
                page = every_page.get(f"devices/{device.id}/{stage}/")
                # the work of some stages stands at another one, and their old address leads there
                assert page is None or "has moved" in page.xpath("//h1")[0].text_content()
                assert listed["none"].split("[[")[0].strip() in text
    assert seen


def test_only_what_readers_need_is_published(site: Path) -> None:
    allowed = {".html", ".css", ".js", ".map", ".svg", ".png", ".json", ".xml", ".gz", ".csv", ".ics"}
    odd = {
        path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file() and path.suffix not in allowed
    }
    python = {path for path in odd if path.startswith("assets/js/vendor/pyodide/")}
    assert odd - python == {"planner.zip"}
    assert {path.rpartition(".")[2] for path in python} == {"mjs", "zip", "txt"}


def test_pages_of_records_stand_outside_the_navigation(
    shipped_library: Library, every_page: dict[str, HtmlElement]
) -> None:
    config = (ROOT / "mkdocs.yml").read_text("utf-8")
    named = set(re.findall(r"[\w/-]+\.md", json.dumps(yaml.safe_load(config)["nav"])))
    own = {record.address for record in shipped_library if record.kind.own_page}
    own |= {address for address in every_page if re.fullmatch(r"devices/[a-z-]+/[a-z-]+/", address)}
    assert len(own) > 100
    assert not {f"{address}index.md" for address in own} & named
    for address in own:
        shown = every_page[address].find_class("ls-nav")[0].xpath(".//a")
        assert len(shown) <= 14, f"{address} carries {len(shown)} navigation links, so pages grow with the library"


def test_the_foot_of_a_page_names_each_region_in_its_own_element(every_page: dict[str, HtmlElement]) -> None:
    for address in ("", "faults/", "survey/"):
        (foot,) = every_page[address].xpath('//p[@class="ls-for-region"]')
        named = {one.get("data-of"): one.text for one in foot.xpath('.//span[@class="ls-in"]')}
        assert list(named) == ["north_america", "united_kingdom", "continent"]
        assert foot.text_content() == f"Words and units for {', '.join(named.values())}."


def test_the_finder_leads_only_to_real_places(site: Path, every_page: dict[str, HtmlElement]) -> None:
    data = json.loads((site / "finder.json").read_text("utf-8"))
    places = {address: set(page.xpath("//@id")) for address, page in every_page.items()}
    for kind, id_, *more in data["entries"]:
        address, _, fragment = data["kinds"][kind][2].replace("{id}", id_).partition("#")
        anchors = [line[0] for line in more[3]] if len(more) > 3 else []
        assert {fragment, *anchors} - {""} <= places[address], address


def test_nothing_of_the_theme_search_is_left(site: Path) -> None:
    names = {path.relative_to(site).as_posix() for path in site.rglob("*search*")}
    assert names == {"assets/js/vendor/minisearch.js"}


def test_the_shipped_site_keeps_to_the_budget_with_nothing_left_out(site: Path) -> None:
    files = {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}
    copy = chosen(files)
    assert copy.left_out == []
    assert copy.size(copy.first) <= BUDGET
    assert "terms/index.html" in copy.first


def elsewhere(*arguments: str | Path) -> str:
    """What a command says in another process, with another hash seed and in another time zone."""
    other = {**os.environ, "PYTHONHASHSEED": "4711", "TZ": "Pacific/Auckland"}
    command = [sys.executable, "-m", "latchside.cli", *map(str, arguments)]
    done = subprocess.run(command, env=other, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stderr


def test_another_process_writes_the_same_pages(rendered: dict[str, str], tmp_path: Path) -> None:
    elsewhere("render", "--out", tmp_path / "again")
    assert {name: content.decode("utf-8") for name, content in _files(tmp_path / "again").items()} == rendered


def test_another_build_gives_the_same_bytes(request: pytest.FixtureRequest, tmp_path: Path) -> None:
    """Built from nothing by the command: a small project, in the long run the whole site."""
    root = ROOT if LONG else small(tmp_path / "project")
    site = request.getfixturevalue("site") if LONG else build_site(root, tmp_path / "site", fresh=True)[0]
    again = tmp_path / "again"
    assert "\x1b[" not in elsewhere("site", "--root", root, "--fresh", "--out", again)
    first, second = _files(site), _files(again)
    assert first.keys() == second.keys()
    assert not [name for name, content in first.items() if second[name] != content]


def _files(folder: Path) -> dict[str, bytes]:
    """Path → content; what is compressed is compared open, because the wrapping holds the time."""
    files = {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
    return {name: gzip.decompress(content) if name.endswith(".gz") else content for name, content in files.items()}


def test_the_render_command_writes_what_mkdocs_is_handed(tmp_path: Path) -> None:
    out, root = tmp_path / "pages", small(tmp_path / "project")
    done = CliRunner().invoke(main, ["render", "--out", str(out), "--root", str(root)])
    assert done.exit_code == 0, done.output
    config = adapter.on_config(load_config(**settings(root)))
    files: Files = config.plugins.run_event("files", Files([]), config=config)
    handed = {file.src_uri: file.content_string for file in files if file.generated_by}
    written = {
        path.relative_to(out).as_posix(): path.read_bytes().decode("utf-8") for path in out.rglob("*") if path.is_file()
    }
    assert written == handed
    assert f"{len(written)} " in done.stdout


def test_a_project_of_records_alone_takes_pages_and_styles_from_the_package(tmp_path: Path) -> None:
    (tmp_path / "content" / "cards").mkdir(parents=True)
    (tmp_path / "content" / "cards" / "meter.md").write_text("# Ours\n", "utf-8")
    config = load_config(**settings(tmp_path))
    names = {file.src_uri for file in adapter.taken(get_files(config), config)}
    assert {"index.md", "on-site/index.md", "assets/latchside.css", "assets/js/latchside.js"} <= names
    assert "cards/meter.md" not in names
    assert not [name for name in names if name.endswith((".yaml", ".svg", ".d.ts"))]
    assert adapter.taken(get_files(own := load_config(**settings(ROOT))), own) == []


def test_the_render_command_leaves_a_full_folder_alone(tmp_path: Path) -> None:
    (tmp_path / "mine.txt").write_text("mine", "utf-8")
    assert CliRunner().invoke(main, ["render", "--out", str(tmp_path)]).exit_code == 1
    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]


@pytest.mark.parametrize("base", ["https://git.example/library/edit/main", "https://git.example/library/edit/main/"])
def test_edit_links_lead_to_the_record_where_its_place_is_known(tmp_path: Path, base: str) -> None:
    library = check_project(small(tmp_path / "project")).library
    pages = render_pages(library, edit_base=base)
    for kind in ("device", "procedure", "checklist", "fault", "caution", "table"):
        records = list(library.of(kind))
        assert records
        for record in records:
            page = pages[f"{record.address}index.md"]
            place = _escaped(f"{base.rstrip('/')}/{record.raw.file}")
            assert re.findall(r'class="ls-edit" href="([^"]*)"', page) == [place]
            assert (tmp_path / "project" / record.raw.file).is_file()


def _escaped(text: str) -> str:
    """The address as a page may hold it: every sign but the plainest as a numeric reference, or as it stands."""
    return re.sub(r"[:_]", lambda match: f"&#{ord(match[0])};", text)


def test_edit_links_lead_to_the_guide_where_it_is_not(
    shipped_library: Library, every_page: dict[str, HtmlElement]
) -> None:
    for kind in ("device", "procedure", "checklist", "fault", "caution", "table"):
        for record in shipped_library.of(kind):
            page = every_page[record.address]
            up = "../" * record.address.count("/")
            assert page.xpath('//a[@class="ls-edit"]/@href') == [f"{up}maintain/#edit-a-record"]
            assert record.raw.file in page.xpath('//*[@class="ls-origin"]')[0].text_content()
