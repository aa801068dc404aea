"""Every built page, parsed; and what its record says it must hold, worked out from the record alone."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import lxml.html
import pytest
import yaml
from lxml.html import HtmlElement

from latchside.library import Library, Record
from latchside.pages.render import render_pages
from latchside.root import ROOT

from ..conftest import Once

Step = tuple[Record, Mapping[str, Any]]


@pytest.fixture(scope="session")
def sources(site: Path) -> dict[str, str]:
    """Address → HTML of every page; the page for wrong addresses is `404.html`."""
    return {
        path.relative_to(site).as_posix().removesuffix("index.html"): path.read_text("utf-8")
        for path in sorted(site.rglob("*.html"))
    }


@pytest.fixture(scope="session")
def every_page(sources: dict[str, str]) -> dict[str, HtmlElement]:
    """Address → document of every page that has an address of its own."""
    return {address: lxml.html.document_fromstring(text) for address, text in sources.items() if address != "404.html"}


@pytest.fixture(scope="session")
def articles(every_page: dict[str, HtmlElement]) -> dict[str, HtmlElement]:
    """Address → what is ours on the page."""
    return {address: page.xpath("//article")[0] for address, page in every_page.items()}


@pytest.fixture(scope="session")
def rendered(shipped_library: Library, once: Once) -> dict[str, str]:
    """Path → text of every generated file."""
    pages: dict[str, str] = once("rendered", lambda: render_pages(shipped_library))
    return pages


@pytest.fixture(scope="session")
def generated(rendered: dict[str, str]) -> dict[str, str]:
    """Address → text of every generated page. Drawings and other files that are not pages are left out."""
    return {path.removesuffix("index.md"): text for path, text in rendered.items() if path.endswith("index.md")}


@pytest.fixture(scope="session")
def written() -> dict[str, str]:
    """Address → Markdown of every page written by hand."""
    folder = ROOT / "content"
    return {_address(path.relative_to(folder)): path.read_text("utf-8") for path in sorted(folder.rglob("*.md"))}


def _address(path: Path) -> str:
    return (
        path.with_suffix("").as_posix().removesuffix("index").rstrip("/") + "/"
        if path.stem != "index" or (path.parent.name)
        else ""
    )


@pytest.fixture(scope="session")
def front_matter(generated: dict[str, str], written: dict[str, str]) -> dict[str, dict[str, Any]]:
    """Address → the front matter of the page."""
    return {
        address: yaml.safe_load(text.split("---\n")[1].replace("{{", "").replace("}}", ""))
        for address, text in {**generated, **written}.items()
    }


@pytest.fixture(scope="session")
def job_stages(shipped_library: Library) -> tuple[str, ...]:
    """The stages of the job in order, as the vocabulary lists them."""
    return tuple(shipped_library.schemas.words("stage"))


@pytest.fixture(scope="session")
def steps_of(shipped_library: Library) -> Callable[[Record, Record | None], list[Step]]:
    """The steps that a page must hold for a procedure and, where it is compiled for one, a device.

    This reads the records by itself, so that a fault in how the library compiles them is seen.
    """

    def meant(entry: Mapping[str, Any], device: Record | None) -> bool:
        return device is None or "only" not in entry or device.id in entry["only"]

    def walk(procedure: Record, device: Record | None) -> Iterator[Step]:
        for group in procedure["steps"]:
            if "draw" in group:
                drawn = shipped_library.find("procedure", group["draw"])
                assert drawn is not None
                yield from walk(drawn, device)
            elif meant(group, device):
                yield from ((procedure, step) for step in group["do"] if meant(step, device))

    def steps(procedure: Record, device: Record | None = None) -> list[Step]:
        found = list(walk(procedure, device))
        for section in ("prove", "close_up"):
            if procedure[section] != "none":
                found += [(procedure, step) for step in procedure[section] if meant(step, device)]
        return found

    return steps


@pytest.fixture(scope="session")
def step_pages(shipped_library: Library) -> list[tuple[str, Record | None, list[Record]]]:
    """Every page that holds steps: its address, the device it is compiled for, and its procedures in order."""
    pages: list[tuple[str, Record | None, list[Record]]] = [
        (f"procedures/{procedure.id}/", None, [procedure]) for procedure in shipped_library.of("procedure")
    ]
    for device in shipped_library.of("device"):
        for stage, listed in device["procedures"].items():
            if isinstance(listed, tuple):
                found = [shipped_library.find("procedure", id_) for id_ in listed]
                pages.append((f"devices/{device.id}/{stage}/", device, [procedure for procedure in found if procedure]))
    return pages
