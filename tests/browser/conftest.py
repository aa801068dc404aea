"""The built site, served on this host alone, and a Chromium that reports what should not happen."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, ExitStack, contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page, Playwright, Request, Response, sync_playwright

from ..chromium import launch
from .contexts import Contexts, page_of
from .field import complaints
from .host import Host, Phone, Server, phone, standing, with_few_pages

Visit = Callable[..., Page]
Watch = Callable[[], AbstractContextManager[Visit]]


class _Quiet(SimpleHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True  # else a file waits behind its header until the browser has answered for that

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "max-age=3600")  # what is served here never changes
        super().end_headers()

    def log_message(self, format: str, *args: Any) -> None:
        pass


@contextmanager
def _served(folder: Path) -> Iterator[str]:
    with Server(("127.0.0.1", 0), partial(_Quiet, directory=str(folder))) as server:
        thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05})
        thread.start()
        try:
            yield f"http://127.0.0.1:{server.server_address[1]}/"
        finally:
            server.shutdown()
            thread.join()


@pytest.fixture(autouse=True)
def no_complaints() -> Iterator[None]:
    """A test in whose pages an error occurred fails."""
    complaints.clear()
    yield
    assert not complaints


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """The driver of browsers; a thread can hold only one."""
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    launched = launch(playwright)
    yield launched
    launched.close()


@pytest.fixture(scope="session")
def base(site: Path) -> Iterator[str]:
    """Where the site is served as it is built, at the root of a host."""
    with _served(site) as address:
        yield address


@pytest.fixture(scope="session")
def deeper_base(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Where the site is served below a path."""
    root = tmp_path_factory.mktemp("host")
    (root / "field").mkdir()
    (root / "field" / "library").symlink_to(site, target_is_directory=True)
    with _served(root) as address:
        yield f"{address}field/library/"


@pytest.fixture(scope="session")
def few_pages(site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The site with few of its pages, for scenes with a saved copy; two tests save that of the whole site."""
    return with_few_pages(site, tmp_path_factory.mktemp("few") / "site")


@pytest.fixture(scope="session")
def one_host(few_pages: Path) -> Iterator[Host]:
    """The one host at whose address the saved copies of the tests belong."""
    made = Host(few_pages)
    yield made
    made.stop()


@pytest.fixture
def host(one_host: Host, few_pages: Path) -> Host:
    """A host that serves few pages of the site, and does with them what a test wants."""
    one_host.anew(few_pages)
    return one_host


@pytest.fixture
def hand(playwright: Playwright, tmp_path: Path) -> Iterator[Phone]:
    """A phone that was never at the site."""
    with phone(playwright, tmp_path / "profile") as made:
        yield made


@pytest.fixture(scope="session")
def profile(playwright: Playwright, one_host: Host, few_pages: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What is on a phone that was at the site once and has saved the first copy."""
    one_host.anew(few_pages)
    folder = tmp_path_factory.mktemp("phone") / "profile"
    with phone(playwright, folder) as made:
        page = made.on()
        page.goto(one_host.base)
        standing(page, "saved")
    return folder


@pytest.fixture
def saver(playwright: Playwright, host: Host, profile: Path, tmp_path: Path) -> Iterator[Phone]:
    """A phone with the first copy saved, switched off."""
    unwanted = shutil.ignore_patterns("Singleton*", "*ShaderCache", "GPUCache", "*GraphiteCache", "Cache", "Code Cache")
    shutil.copytree(profile, tmp_path / "profile", symlinks=True, ignore=unwanted)
    with phone(playwright, tmp_path / "profile") as made:
        yield made


@pytest.fixture(scope="session")
def every_address(site: Path) -> list[str]:
    """The address of every page."""
    return sorted(path.parent.relative_to(site).as_posix() + "/" for path in site.glob("*/**/index.html"))


@pytest.fixture(scope="session")
def large_text_browser(playwright: Playwright) -> Iterator[Browser]:
    """A browser whose reader has doubled the size of text in its settings."""
    launched = launch(playwright, "--blink-settings=defaultFontSize=32")
    yield launched
    launched.close()


@pytest.fixture(scope="session")
def contexts() -> Contexts:
    """Contexts that tests have one after another."""
    return Contexts()


@pytest.fixture(scope="session")
def watch(browser: Browser, base: str, contexts: Contexts) -> Watch:
    """Opens pages of the site: `visit(address, size, in_browser=…, at=…, **context options)`.

    When the visits are over, none may have asked another host, missed a file or said an error.
    """

    @contextmanager
    def watched() -> Iterator[Visit]:
        lent = ExitStack()
        complaints: list[str] = []

        def asked(request: Request) -> None:
            if urlsplit(request.url).hostname != "127.0.0.1" and urlsplit(request.url).scheme not in ("data", "blob"):
                complaints.append(f"asked another host: {request.url}")

        def answered(response: Response) -> None:
            if response.status >= 400:
                complaints.append(f"{response.status}: {response.url}")

        def failed(request: Request) -> None:
            # Broken off because the next page was opened; or a script that a page without scripts may not fetch. What
            # a policy refuses to a page with scripts is said as an error too.
            if request.failure not in ("net::ERR_ABORTED", "csp"):
                complaints.append(f"failed: {request.url} {request.failure}")

        listeners: dict[str, Callable[[Any], None]] = {
            "request": asked,
            "response": answered,
            "requestfailed": failed,
            "console": lambda message: complaints.append(message.text) if message.type == "error" else None,
            "weberror": lambda error: complaints.append(f"error: {error.error}"),
        }

        def open_page(
            address: str,
            size: tuple[int, int],
            *,
            in_browser: Browser = browser,
            at: str = "",
            **options: Any,
        ) -> Page:
            width, height = size
            # The copy that a phone saves has tests of its own; here it would only be fetched again for every page.
            options.setdefault("service_workers", "block")
            viewport = {"width": width, "height": height}
            context = lent.enter_context(contexts.lent(in_browser, viewport=viewport, **options))
            for event, listener in listeners.items():
                context.on(event, listener)  # type: ignore[call-overload]
                lent.callback(context.remove_listener, event, listener)
            page = page_of(context)
            page.goto((at or base) + address, wait_until="load")
            if options.get("java_script_enabled", True):
                page.wait_for_selector("html.js")  # the theme comes last of all
            return page

        with lent:
            yield open_page
        assert not complaints

    return watched


@pytest.fixture
def visit(watch: Watch) -> Iterator[Visit]:
    with watch() as open_page:
        yield open_page
