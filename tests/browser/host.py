"""A host that can be stopped, started again, changed, and made to break off; and a phone that can be switched off."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, Playwright, expect

from bring_browser import headless_path
from latchside.site.finish import stamp

ARGUMENTS = ["--no-sandbox", "--disable-gpu"]
PHONE = {"width": 390, "height": 844}
PATIENCE = 60_000

expect.set_options(timeout=PATIENCE)  # saving is work, and these tests wait for what it leads to


class Server(ThreadingHTTPServer):
    """One that keeps none of the many requests of a page waiting."""

    daemon_threads = True
    request_queue_size = 128  # of five, the sixth that comes at once is tried again after a second


class Host:
    """Serves a folder at one address. `folder` may be changed while it serves; `breaks_after` drops the line."""

    def __init__(self, folder: Path, prefix: str = "") -> None:
        self.folder = folder
        self.prefix = prefix
        self.breaks_after: int | None = None
        self.asked: list[str] = []
        self._port = 0
        self._server: Server | None = None
        self._thread: threading.Thread | None = None
        self.start()

    @property
    def base(self) -> str:
        """The address of the site."""
        return f"http://127.0.0.1:{self._port}/{self.prefix}"

    def anew(self, folder: Path) -> None:
        """As it was made: serve this folder, whole, with nothing asked yet."""
        self.folder, self.breaks_after = folder, None
        self.asked.clear()
        if self._server is None:
            self.start()

    def start(self) -> None:
        """Serve, at the address it had before."""
        self._server = Server(("127.0.0.1", self._port), partial(_Handler, self))
        self._port = self._server.server_address[1]
        self._thread = threading.Thread(target=self._server.serve_forever, kwargs={"poll_interval": 0.02})
        self._thread.start()

    def stop(self) -> None:
        """Be gone: nothing answers at the address any more."""
        if self._server and self._thread:
            self._server.shutdown()
            self._thread.join()
            self._server.server_close()
        self._server = None

    def drops(self, path: str) -> bool:
        """Whether this request gets no answer."""
        self.asked.append(path)
        return self.breaks_after is not None and len(self.asked) > self.breaks_after


class _Handler(SimpleHTTPRequestHandler):
    def __init__(self, host: Host, *arguments: Any) -> None:
        self.host = host
        super().__init__(*arguments, directory=str(host.folder))

    def do_GET(self) -> None:
        prefix = f"/{self.host.prefix}"
        if self.host.drops(self.path) or not self.path.startswith(prefix):
            self.close_connection = True
            return
        self.path = "/" + self.path[len(prefix) :]
        del self.headers["If-Modified-Since"]  # a folder that is exchanged may hold older files
        super().do_GET()

    def do_HEAD(self) -> None:
        self.do_GET()

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-cache")  # what opens with no server is what was saved, nothing else
        super().end_headers()

    def log_message(self, format: str, *args: Any) -> None:
        pass


class Phone:
    """One browser with one profile, which outlives its being closed."""

    def __init__(self, playwright: Playwright, profile: Path) -> None:
        self._playwright = playwright
        self._profile = profile
        self._context: BrowserContext | None = None
        self.complaints: list[str] = []

    def on(self) -> Page:
        """Switch it on, or off and on again: a cold start with an empty page."""
        self.off()
        path = headless_path()
        assert path, "There is no Chromium; `make test` brings one."
        self._context = self._playwright.chromium.launch_persistent_context(
            str(self._profile), executable_path=path, args=ARGUMENTS, viewport=PHONE  # type: ignore[arg-type]
        )  # fmt: skip
        return self.watched(self._context.pages[0])

    def another_page(self) -> Page:
        """Another page of the same browser."""
        assert self._context
        return self.watched(self._context.new_page())

    def watched(self, page: Page) -> Page:
        """The page, whose complaints are kept."""
        page.on("console", lambda said: self.complaints.append(said.text) if said.type == "error" else None)
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        return page

    def off(self) -> None:
        """Close the browser."""
        if self._context:
            self._context.close()
        self._context = None


@contextmanager
def phone(playwright: Playwright, profile: Path) -> Iterator[Phone]:
    """A phone that is switched off in the end."""
    made = Phone(playwright, profile)
    try:
        yield made
    finally:
        made.off()


def standing(page: Page, state: str) -> None:
    """Wait until the page says how its saved copy stands: saved, ready, saving or none."""
    expect(page.locator(f"html[data-ls-copy={state}]")).to_be_attached(timeout=PATIENCE)


def words(page: Page) -> str:
    """What the strip says of the saved copy."""
    return page.locator(".ls-strip-state").inner_text()


FEW = (
    "", "on-site/", "visits/", "survey/", "offline/", "checklists/position/", "checklists/proving-each-opening/",
    "faults/", "faults/find/", "faults/reads-high/", "faults/adhesive-let-go/", "faults/shows-open-when-shut/",
    "cautions/", "cautions/ladders/", "figures/", "figures/loop-states/", "devices/surface-contact/",
)  # fmt: skip
"""The pages that scenes with a saved copy open: of each group of the first copy some, and of what comes on request."""


def with_few_pages(site: Path, folder: Path) -> Path:
    """A copy of the built site with few of its pages, listed anew as the build does. It is saved in a moment."""
    kept = {f"{address}index.html" for address in FEW}

    def others(at: str, names: list[str]) -> list[str]:
        place = Path(at).relative_to(site)
        return [name for name in names if name.endswith(".html") and (place / name).as_posix() not in kept]

    shutil.copytree(site, folder, ignore=others)
    assert kept == {path.relative_to(folder).as_posix() for path in folder.rglob("*.html")}
    stamp(folder, "2031-02-02", [])
    return folder


def changed(site: Path, folder: Path, change: Callable[[Path], None], told: list[dict[str, Any]] | None = None) -> Path:
    """A copy of a site with something changed, listed anew as the build does."""
    shutil.copytree(site, folder)
    change(folder)
    stamp(folder, "2031-02-03", told or [])
    return folder


def reword(folder: Path, address: str, old: str, new: str) -> None:
    """Replace words in a page."""
    page = folder / address / "index.html"
    text = page.read_text("utf-8")
    assert old in text
    page.write_text(text.replace(old, new), "utf-8")
