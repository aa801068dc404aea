"""An address at which nothing stands, as a host answers it: what happened, the finder, ways in, at any depth."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect


class _Host(SimpleHTTPRequestHandler):
    """Hosts answer every wrong address with the site's own page for it."""

    def send_error(self, code: int, *_: object, **__: object) -> None:
        body = (Path(self.directory) / "404.html").read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", "text/html")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        pass


@pytest.fixture(scope="module")
def host(site: Path) -> Iterator[str]:
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(_Host, directory=str(site))) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}/"
        server.shutdown()


@pytest.mark.parametrize("scripts", [True, False], ids=["scripts", "no-scripts"])
def test_a_wrong_address_deep_in_the_site_helps_on(browser: Browser, host: str, scripts: bool) -> None:
    context = browser.new_context(
        viewport={"width": 390, "height": 844}, service_workers="block", java_script_enabled=scripts
    )
    page = context.new_page()
    page.goto(f"{host}faults/loop/reads-hihg/?x=<b>#none")
    expect(page.get_by_role("heading", level=1)).to_have_text("No page here")
    assert page.evaluate("getComputedStyle(document.querySelector('.ls-rows')).listStyleType") == "none"
    expect(page.locator(".ls-rows a")).to_have_count(4)
    if scripts:
        field = page.locator("#ls-find-here")
        expect(field).to_have_value("loop reads hihg")
        expect(field).not_to_be_focused()
        page.get_by_role("option", name="The loop reads high").first.click()
        page.wait_for_url(f"{host}faults/reads-high/**")
    else:
        page.get_by_role("link", name="Find a fault").click()
        page.wait_for_url(f"{host}faults/")
    context.close()
