"""What is carried instead of the site: the pocket copy and labels. And what scripts weigh."""

from __future__ import annotations

import gzip
import zipfile
from collections.abc import Callable
from pathlib import Path
from posixpath import dirname, join, normpath
from typing import Any
from urllib.parse import unquote, urlsplit

import lxml.html
import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, Page, expect

from latchside.cli import main
from latchside.root import ROOT
from latchside.site.pocket import FOLDER, pocket_files, write_zip

from ..long import LONG
from ..site.small import small
from .test_finder import opened

Visit = Callable[..., Page]


def made(root: Path, out: Path) -> None:
    """The pocket copy of a project, made by the command."""
    done = CliRunner().invoke(main, ["pocket", "--root", str(root), "--out", str(out)])
    assert done.exit_code == 0, done.output


def unpacked(file: Path, folder: Path) -> Path:
    with zipfile.ZipFile(file) as archive:
        archive.extractall(folder)
    return folder / FOLDER


@pytest.fixture(scope="module")
def pocket(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The pocket copy, unpacked: in the long run made by the command, which builds the site anew.

    Else it is made of the site that is built already, whose pages do not bear the version.
    """
    folder = tmp_path_factory.mktemp("pocket")
    if LONG:
        made(ROOT, folder / "pocket.zip")
    else:
        write_zip(pocket_files(site), folder / "pocket.zip")
    return unpacked(folder / "pocket.zip", folder)


def test_the_command_makes_a_copy_that_bears_its_version_on_every_page(tmp_path: Path) -> None:
    made(small(tmp_path / "project"), tmp_path / "pocket.zip")
    pages = [page.read_text("utf-8") for page in unpacked(tmp_path / "pocket.zip", tmp_path).rglob("*.html")]
    assert len(pages) > 20
    assert not [page for page in pages if "Pocket copy: version " not in page]


LOADED = """performance.getEntriesByType('resource').map((one) => new URL(one.name).pathname.slice(1))
  .filter((path) => path.startsWith('assets/js/'))"""


ARTICLE = "//article//a[not(ancestor::*[@class='ls-strip ls-strip-top'])]/@href"


def parsed(root: Path, name: str) -> Any:
    return lxml.html.document_fromstring((root / name).read_text("utf-8"))


def targets(name: str, links: list[Any]) -> list[tuple[str, str]]:
    """The files inside the site that links of a page lead to, as a server finds them, each with its anchor."""
    found = []
    for way in map(urlsplit, map(str, links)):
        if not way.scheme:
            target = normpath(join(dirname(name), unquote(way.path))) if way.path else name
            is_folder = way.path.endswith(("/", ".")) or target == "."
            found.append((normpath(f"{target}/index.html") if is_folder else target, unquote(way.fragment)))
    return found


def test_every_page_is_in_the_pocket_copy_and_every_link_leads_to_a_file(pocket: Path, site: Path) -> None:
    left_out = {"404.html", "offline/index.html", "labels/index.html"}
    files = {path.relative_to(pocket).as_posix() for path in pocket.rglob("*") if path.is_file()}
    pages = {name for name in files if name.endswith(".html")}
    assert pages == {path.relative_to(site).as_posix() for path in site.rglob("*.html")} - left_out
    anchors: dict[str, set[str]] = {}
    links: list[tuple[str, str, str]] = []
    for name in sorted(pages):
        document = parsed(pocket, name)
        assert not document.xpath("//script | //*[@onclick or @onload]"), name
        anchors[name] = {str(one) for one in document.xpath("//@id | //@name")} | {""}
        links += [(name, *to) for to in targets(name, document.xpath("//@href | //@src"))]
        built = [to if to in pages else "index.html" for to, _ in targets(name, parsed(site, name).xpath(ARTICLE))]
        assert [to for to, _ in targets(name, document.xpath(ARTICLE))] == built, name
    assert len(links) > 5000
    assert not [(name, to) for name, to, _ in links if to not in files], "a link has to name the file itself"
    assert not {(name, mark) for name, to, mark in links if to in anchors and mark not in anchors[to]}


def test_the_pocket_copy_is_read_from_a_folder(browser: Browser, pocket: Path) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda said: complaints.append(said.text) if said.type in ("error", "warning") else None)
    page.on("requestfailed", lambda request: complaints.append(request.url))
    page.on("request", lambda asked: None if asked.url.startswith(pocket.as_uri()) else complaints.append(asked.url))
    page.goto((pocket / "index.html").as_uri())
    page.locator(".ls-rows a", has_text="On site").click()
    page.locator(".ls-rows a", has_text="Position").first.click()
    expect(page.locator("article h1")).to_have_text("Position")
    page.locator(".ls-item").first.click()
    expect(page.locator(".ls-item input").first).to_be_checked()
    page.locator(".ls-more summary").first.click()
    page.locator(".ls-how a").first.click()
    expect(page.locator("article h1")).to_contain_text("Position")
    page.locator(".ls-path a").first.click()
    expect(page.locator("article h1")).to_have_text("Intruder-alarm contacts on doors and windows")
    page.locator(".ls-find-open").click()
    expect(page.locator("article h1")).to_have_text("On site")
    page.goto((pocket / "devices" / "surface-contact" / "install" / "index.html").as_uri())
    assert page.evaluate("[...document.images].filter((image) => !image.naturalWidth).length") == 0
    assert page.evaluate("document.fonts.size") == 0
    assert page.pdf().startswith(b"%PDF")
    assert complaints == []
    context.close()


def test_a_sheet_of_labels_prints_several_to_a_page(browser: Browser, tmp_path: Path) -> None:
    out = tmp_path / "labels.html"
    done = CliRunner().invoke(main, ["labels", "--address", "https://field.example/x", "--out", str(out)])
    assert done.exit_code == 0, done.output
    page = browser.new_page(viewport={"width": 794, "height": 1123})
    page.goto(out.as_uri())
    page.emulate_media(media="print")
    labels = page.locator(".ls-label")
    expect(labels.nth(40)).to_be_attached()
    boxes = labels.evaluate_all(
        "all => all.map(e => { const b = e.getBoundingClientRect(); return [b.left, b.top, b.right]; })"
    )
    assert len({round(left) for left, _, _ in boxes}) >= 4
    assert max(right for *_, right in boxes) <= 794
    code = page.locator(".ls-label svg").first
    expect(code).to_be_visible()
    assert code.evaluate("e => e.getBoundingClientRect().width") / 96 * 25.4 >= 30
    expect(labels.first.locator("figcaption")).to_have_text("Recessed contact")
    page.close()
    refused = CliRunner().invoke(main, ["labels", "--address", "nowhere", "--out", str(out)])
    assert refused.exit_code == 1
    assert "no address of a site" in refused.output


def test_without_an_address_the_labels_page_says_what_to_do(visit: Visit) -> None:
    page = visit("labels/", (390, 844))
    expect(page.locator("article")).to_contain_text("latchside labels --address")


def test_our_scripts_on_a_checklist_are_light(visit: Visit, site: Path) -> None:
    """All that a checklist page ever loads of ours: opened and ticked, and then the finder used."""
    page = visit("checklists/proving-each-opening/", (390, 844))
    page.wait_for_selector("html[data-ls-ready=checklist]")

    def within(limit: int) -> None:
        ours = set(page.evaluate(LOADED))
        assert len(ours) > 5
        sizes = {path: len(gzip.compress((site / path).read_bytes(), 6)) for path in ours}
        assert sum(sizes.values()) <= limit, sizes

    page.locator(".ls-item").first.click()
    page.wait_for_selector("[data-item][data-state=done]")
    within(34_900)
    opened(page).fill("reads")
    page.locator(".ls-finder [role=option]").first.wait_for()
    within(51_500)


def test_every_page_carries_its_policy_and_no_handler(site: Path) -> None:
    pages = sorted(site.rglob("*.html"))
    assert len(pages) > 150
    for path in pages:
        document: Any = lxml.html.document_fromstring(path.read_text("utf-8"))
        (policy,) = document.xpath("//head/meta[@http-equiv='Content-Security-Policy']/@content")
        scripts = next(rule for rule in policy.split("; ") if rule.startswith("script-src"))
        plans = path == site / "survey/index.html"  # and compiles Python for that, which came with the site
        named = {"'self'", *(["'wasm-unsafe-eval'"] if plans else [])}
        assert all(word in named or word.startswith("'sha256-") for word in scripts.split()[1:]), path
        handlers = [name for element in document.iter() for name in element.attrib if str(name).startswith("on")]
        assert not handlers, path
        assert not document.xpath("//article//*[@style] | //style"), path
        outside = [
            one for one in document.xpath("//script/@src | //link[@rel='stylesheet']/@href | //img/@src") if "//" in one
        ]
        assert not outside, path
