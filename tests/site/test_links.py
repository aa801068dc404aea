"""Every link of every page leads somewhere, every page is reached, and nothing is fetched from elsewhere."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from posixpath import normpath
from urllib.parse import unquote, urlsplit

from lxml.html import HtmlElement

LINKING = ("href", "src", "srcset", "data", "poster", "action", "formaction", "cite", "background")
FETCHING = {
    ("link", "href"), ("script", "src"), ("img", "src"), ("img", "srcset"), ("source", "src"), ("source", "srcset"),
    ("iframe", "src"), ("embed", "src"), ("object", "data"), ("video", "src"), ("video", "poster"), ("audio", "src"),
    ("track", "src"), ("input", "src"), ("image", "href"), ("use", "href"), ("form", "action"), ("body", "background"),
}  # fmt: skip

# Addresses that stand in the theme's scripts and are never fetched by these pages; the tests below say why.
IN_SCRIPTS = {
    "https://unpkg.com/mermaid@11/dist/mermaid.min.js": "only where a page holds a .mermaid element",
    "https://api.github.com/": "only where mkdocs.yml names a repo_url",
    "https://gitlab.com/": "only where mkdocs.yml names a repo_url",
    "http://www.w3.org/": "names of vocabularies",
    "https://unpkg.com/resize-observer-polyfill": "only in browsers without ResizeObserver, which none of ours is",
}


def _links(page: HtmlElement) -> Iterator[tuple[HtmlElement, str, str]]:
    for element in page.iter():
        if isinstance(element.tag, str):
            for name, value in element.items():
                if name.rpartition("}")[2].removeprefix("xlink:") in LINKING:
                    yield element, name.removeprefix("xlink:"), value


def _resolve(address: str, link: str) -> tuple[str, str]:
    """Path below the site's folder, and fragment."""
    parts = urlsplit(link)
    folder = "/" + (address if address.endswith("/") or not address else address.rpartition("/")[0])
    way = parts.path if parts.path.startswith("/") else f"{folder}/{parts.path}" if parts.path else f"/{address}"
    path = normpath(unquote(way)).lstrip("/")
    is_folder = not parts.path or way.endswith(("/", "/.", "/..")) or "." not in path.rpartition("/")[2]
    page = f"{path}/" if path not in ("", ".") and is_folder else "" if path == "." else path
    return page, unquote(parts.fragment)


def test_every_link_and_anchor_leads_somewhere(site: Path, every_page: dict[str, HtmlElement]) -> None:
    ids = {address: set(page.xpath("//@id")) for address, page in every_page.items()}
    broken = []
    seen = 0
    for address, page in every_page.items():
        for element, name, link in _links(page):
            if urlsplit(link).scheme or link.startswith("//"):
                continue
            seen += 1
            target, fragment = _resolve(address, link)
            if target in ids:
                found = not fragment or fragment in ids[target]
            else:
                found = (site / target).is_file() and not fragment
            if not found:
                broken.append(f"{address}: <{element.tag} {name}={link!r}>")
    assert seen > 10_000
    assert not broken


def test_the_page_for_wrong_addresses_leads_back(site: Path, sources: dict[str, str]) -> None:
    from lxml.html import document_fromstring

    page = document_fromstring(sources["404.html"])
    links = [link for _, _, link in _links(page) if not urlsplit(link).scheme]
    assert links
    for link in links:
        target, _ = _resolve("", link)
        assert (site / target).exists(), link


def test_labels_and_descriptions_point_at_something(every_page: dict[str, HtmlElement]) -> None:
    pointing = ("for", "aria-labelledby", "aria-describedby", "aria-controls", "headers")
    own_menu = "__toc"  # the theme opens its menus by hidden boxes, and leaves out one that it has no use for
    for address, page in every_page.items():
        ids = set(page.xpath("//@id"))
        for name in pointing:
            for value in page.xpath(f"//@{name}"):
                missing = set(value.split()) - ids - {own_menu}
                assert not missing, f"{address}: {name}={value}"


def test_every_page_is_reached_from_home(every_page: dict[str, HtmlElement]) -> None:
    reached, open_ = {""}, [""]
    while open_:
        address = open_.pop()
        for element, _, link in _links(every_page[address]):
            if element.tag == "a" and not urlsplit(link).scheme:
                target, _ = _resolve(address, link)
                if target in every_page and target not in reached:
                    reached.add(target)
                    open_.append(target)
    assert not sorted(set(every_page) - reached)


def test_every_generated_page_is_reached_without_the_navigation(
    every_page: dict[str, HtmlElement], generated: dict[str, str]
) -> None:
    """Our own links alone suffice, so that no page hangs on a menu that a phone hides."""
    reached, open_ = {""}, [""]
    while open_:
        address = open_.pop()
        for link in every_page[address].xpath("//article//a/@href"):
            target, _ = _resolve(address, link)
            if not urlsplit(link).scheme and target in every_page and target not in reached:
                reached.add(target)
                open_.append(target)
    assert not sorted(set(generated) - reached)


def test_pages_fetch_from_this_host_alone(sources: dict[str, str], every_page: dict[str, HtmlElement]) -> None:
    for address, page in every_page.items():
        for element, name, link in _links(page):
            if (element.tag, name) in FETCHING:
                assert not urlsplit(link).netloc, f"{address}: <{element.tag} {name}={link!r}>"
                assert urlsplit(link).scheme in ("", "data"), f"{address}: <{element.tag} {name}={link!r}>"
        for style in (*page.xpath("//style/text()"), *page.xpath("//@style")):
            assert not re.search(r"url\(\s*[\"']?\s*(?:https?:)?//|@import", style), address
        for script in page.xpath("//script[not(@src)]/text()"):
            assert "//" not in script.replace("://www.w3.org", ""), f"{address}: {script[:200]}"
        assert not page.xpath('//meta[translate(@http-equiv, "REFSH", "refsh") = "refresh"]'), address
        assert not page.xpath('//link[@rel="preconnect" or @rel="dns-prefetch" or @rel="prefetch"]'), address
    assert len(sources) == len(every_page) + 1


def test_style_sheets_fetch_what_is_there(site: Path) -> None:
    seen = 0
    for sheet in site.rglob("*.css"):
        text = sheet.read_text("utf-8")
        assert "@import" not in text, sheet.name
        for link in re.findall(r"""url\(\s*["']?([^"')]+)""", text):
            seen += 1
            if not link.startswith("data:"):
                assert not urlsplit(link).netloc, link
                assert (sheet.parent / urlsplit(link).path).is_file(), link
    assert seen


def test_drawings_stand_by_themselves(site: Path) -> None:
    drawings = list((site / "assets").rglob("*.svg"))
    for drawing in drawings:
        text = drawing.read_text("utf-8").replace('xmlns="http://www.w3.org/2000/svg"', "")
        assert not re.search(r"https?:|<script|<foreignObject|<image|@import|url\((?!#)|\bon\w+=", text), drawing.name


def test_scripts_name_no_host_but_those_explained(site: Path, every_page: dict[str, HtmlElement]) -> None:
    strange = []
    for script in site.rglob("*.js"):
        for link in re.findall(r"""(?:https?:|(?<=["'`]))//[a-z0-9-]+\.[^\s"'`)\\]*""", _without_comments(script)):
            if not any(link.startswith(known) for known in IN_SCRIPTS):
                strange.append(f"{script.name}: {link}")
    assert not strange
    for address, page in every_page.items():
        assert not page.xpath('//*[contains(@class, "mermaid")]'), address
        assert not page.xpath('//*[@data-md-component="source"]'), address


def _without_comments(script: Path) -> str:
    return re.sub(r"/\*.*?\*/|^\s*//.*$", "", script.read_text("utf-8"), flags=re.DOTALL | re.MULTILINE)
