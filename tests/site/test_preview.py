"""The preview: what was saved is shown, what is wrong stands on top of its page, and nothing dies of it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from http.client import HTTPConnection
from pathlib import Path
from threading import Thread

import lxml.html
import pytest
from lxml.html import HtmlElement

from latchside.root import ROOT
from latchside.site.preview import Preview
from latchside.site.serve import HOST, Server, listen
from tests.site.small import small
from tests.unit.support import change


class Shown:
    """A small project and the server that shows it."""

    def __init__(self, root: Path, port: int, server: Server) -> None:
        self.root, self._port, self.server = root, port, server

    def get(self, path: str) -> tuple[int, str, bytes]:
        """Status, type and body of what stands at a path."""
        connection = HTTPConnection(HOST, self._port, timeout=60)
        connection.request("GET", path)
        answer = connection.getresponse()
        return answer.status, answer.headers.get("Content-Type") or "", answer.read()

    def page(self, path: str) -> HtmlElement:
        """A page that is there."""
        status, kind, body = self.get(path)
        assert (status, kind) == (200, "text/html; charset=utf-8")
        return lxml.html.document_fromstring(body.decode("utf-8"))

    def save(self, file: str, old: str, new: str) -> None:
        """Save a changed record, as an editor does."""
        change(self.root, file, old, new)
        self.server.look()


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shown]:
    root = small(tmp_path_factory.mktemp("preview") / "project")
    server = Server(Preview(root))
    server.check = lambda: None  # type: ignore[method-assign]  # the whole library is checked in a test of its own
    with listen(server, 0) as listening:
        Thread(target=listening.serve_forever, daemon=True).start()
        yield Shown(root, int(listening.server_address[1]), server)
        listening.shutdown()


@pytest.fixture
def fault(shown: Shown) -> tuple[str, str, str]:
    """A fault record: its file, its address and its name."""
    record = shown.server.preview.library.of("fault")[0]
    return record.raw.file, f"/{record.address}", record.name


def findings(page: HtmlElement) -> str:
    return " ".join(page.xpath("//*[@data-ls-preview]")[0].text_content().split())


def test_what_is_saved_is_shown(shown: Shown, fault: tuple[str, str, str]) -> None:
    file, address, name = fault
    assert shown.page(address).xpath("//h1")[0].text_content() == name
    shown.save(file, f"name: {name}", f"name: {name} at night")
    assert shown.page(address).xpath("//h1")[0].text_content() == f"{name} at night"
    assert f"{name} at night" in shown.page("/faults/").text_content()
    shown.save(file, f"name: {name} at night", f"name: {name}")


def test_a_file_that_is_written_is_noticed(shown: Shown, fault: tuple[str, str, str]) -> None:
    file, address, name = fault
    before = shown.server.preview.version
    stop = shown.server.watch()
    change(shown.root, file, f"name: {name}", f"name: {name}, noticed")
    with shown.server.news:
        assert shown.server.news.wait_for(lambda: shown.server.preview.version > before, timeout=120)
    assert shown.page(address).xpath("//h1")[0].text_content() == f"{name}, noticed"
    stop()
    shown.save(file, f"name: {name}, noticed", f"name: {name}")


def test_a_broken_record_shows_what_is_wrong_with_it_until_it_is_right(
    shown: Shown, fault: tuple[str, str, str]
) -> None:
    file, address, name = fault
    line = (shown.root / file).read_text("utf-8").splitlines().index(f"name: {name}") + 1
    shown.save(file, f"name: {name}", f"name: [{name}")
    page = shown.page(address)
    assert f"{file}:{line}" in findings(page) or f"{file}:{line + 1}" in findings(page)
    assert page.xpath("//header"), "the page keeps the frame of the site"
    assert file in findings(shown.page("/")), "every other page says it too"
    shown.save(file, f"name: [{name}", f"name: {name}")
    page = shown.page(address)
    assert file not in findings(page)
    assert page.xpath("//h1")[0].text_content() == name


def test_a_field_that_does_not_fit_is_named_with_its_line(shown: Shown, fault: tuple[str, str, str]) -> None:
    file, address, name = fault
    shown.save(file, f"name: {name}", f"name: {name}\nnamed: twice")
    line = (shown.root / file).read_text("utf-8").splitlines().index("named: twice") + 1
    assert f"{file}:{line}:" in findings(shown.page(address))
    shown.save(file, f"name: {name}\nnamed: twice", f"name: {name}")


def test_a_new_record_has_its_page(shown: Shown) -> None:
    caution = shown.server.preview.library.of("caution")[0]
    text = (shown.root / caution.raw.file).read_text("utf-8").replace(f"id: {caution.id}", "id: brand-new")
    (shown.root / "content/cautions/brand-new.yaml").write_text(text, "utf-8")
    shown.server.look()
    assert shown.page("/cautions/brand-new/").xpath("//h1")
    (shown.root / "content/cautions/brand-new.yaml").unlink()
    shown.server.look()
    assert shown.get("/cautions/brand-new/")[0] == 404


def test_an_unknown_path_has_the_page_for_wrong_addresses(shown: Shown) -> None:
    status, kind, body = shown.get("/no/such/page/")
    assert (status, kind) == (404, "text/html; charset=utf-8")
    assert "404" in body.decode("utf-8")
    assert shown.get("/../mkdocs.yml")[0] == 404


def test_an_address_without_its_slash_leads_to_the_page(shown: Shown, fault: tuple[str, str, str]) -> None:
    assert shown.get(fault[1].removesuffix("/"))[0] == 302


def test_a_preview_is_never_saved(shown: Shown) -> None:
    worker = (ROOT / "scripts/latchside/site/worker/sw-off.js").read_bytes()
    assert shown.get("/sw.js")[2] == worker
    assert json.loads(shown.get("/offline.json")[2]) == {"off": True}


def test_what_belongs_to_the_preview_is_allowed_by_the_policy_of_its_pages(shown: Shown) -> None:
    page = shown.page("/")
    assert "script-src 'self'" in page.xpath('//meta[@http-equiv="Content-Security-Policy"]/@content')[0]
    for address in page.xpath("//article//script/@src | //article//link/@href"):
        assert shown.get(address)[0] == 200


def test_what_the_rules_find_in_the_library_is_shown_when_it_is_known(
    shown: Shown, fault: tuple[str, str, str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(shown.server, "check", lambda: Server.check(shown.server))
    address = fault[1]
    record = shown.server.preview.library.of("caution")[0]
    text = (shown.root / record.raw.file).read_text("utf-8").replace(f"id: {record.id}", "id: other-id")
    (shown.root / "content/cautions/not-this.yaml").write_text(text, "utf-8")
    with shown.server.lock:
        shown.server.preview.look()
    assert "being checked" in findings(shown.page(address))
    shown.server.check()
    region = lxml.html.fragment_fromstring(shown.get(f"/preview/findings?{address[1:]}")[2].decode("utf-8"))
    assert "content/cautions/not-this.yaml:" in region.text_content()
    assert "being checked" not in region.text_content()
    (shown.root / "content/cautions/not-this.yaml").unlink()
    shown.server.look()
