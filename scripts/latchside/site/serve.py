"""The preview as a server on this machine alone: it looks again when a file is saved, and tells the open pages.

The one module of the package that opens a port. It binds to 127.0.0.1, and no check and no build imports it.
"""

from __future__ import annotations

import json
import mimetypes
import subprocess
import sys
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Condition, Event, RLock, Thread
from urllib.parse import unquote, urlsplit

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer

from latchside.findings import Finding, Place
from latchside.site.preview import Preview

HOST = "127.0.0.1"
WATCHED = ("content", "checklists", "shared", "schema", "scripts/latchside")
QUIET = 0.03
"""Seconds without a further change after which the files are looked at: an editor writes a file in several goes."""
ALIVE = 15.0
"""Seconds after which a page that waits is sent a sign of life."""
RESTARTS = (".py", ".ftl", ".json", ".md")
"""Changes that are not looked at again in a running preview, beside a page that was there before."""


@dataclass
class Server:
    """A preview, those who wait for news of it, and the check of the whole library beside it."""

    preview: Preview
    lock: RLock = field(default_factory=RLock)
    news: Condition = field(default_factory=Condition)
    findings: int = 0
    changed: Event = field(default_factory=Event)
    again: Event = field(default_factory=Event)
    _check: subprocess.Popen[str] | None = None

    def watch(self) -> Callable[[], None]:
        """Watch the project; what is given back ends it."""
        observer = Observer()
        for name in WATCHED:
            if (self.preview.root / name).is_dir():
                observer.schedule(_Watcher(self), str(self.preview.root / name), recursive=True)
        observer.start()
        Thread(target=self._keep_up, daemon=True).start()
        Thread(target=self.check, daemon=True).start()
        return observer.stop

    def _keep_up(self) -> None:
        while True:
            self.changed.wait()
            while self.changed.is_set():
                self.changed.clear()
                self.changed.wait(QUIET)
            self.look()

    def look(self) -> None:
        """Look at the records again, tell the pages, and check the whole library beside it."""
        with self.lock:
            self.preview.look()
        self._tell()
        Thread(target=self.check, daemon=True).start()

    def check(self) -> None:
        """The rules of the whole library, in another process so that pages are not held up."""
        before, version = self._check, self.preview.version
        if before:
            before.terminate()
        command = [sys.executable, "-m", "latchside.cli", "check", "--json", "--root", str(self.preview.root)]
        self._check = own = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
        told, _ = own.communicate()
        with self.lock:
            if version != self.preview.version:
                return
            try:
                self.preview.elsewhere = tuple(_finding(one) for one in json.loads(told))
            except json.JSONDecodeError:
                self.preview.failed = True
            self.findings += 1
        self._tell()

    def _tell(self) -> None:
        with self.news:
            self.news.notify_all()

    def answer(self, path: str) -> tuple[int, str, bytes]:
        """Status, type and body for a path of the site; the body of a redirection is where it leads."""
        with self.lock:
            found = self.preview.served(path)
            if found:
                return 200, mimetypes.guess_type(found[0])[0] or "application/octet-stream", found[1]
            if path and not path.endswith("/") and self.preview.served(f"{path}/"):
                return 302, "", f"/{path}/".encode()
            return 404, "text/html", self.preview.missing()


class _Watcher(FileSystemEventHandler):
    def __init__(self, server: Server) -> None:
        self._server = server

    def on_any_event(self, event: FileSystemEvent) -> None:
        """A file was written, made, moved or taken away; to look at one is no event."""
        if event.event_type in ("opened", "closed_no_write") or event.is_directory:
            return
        path = Path(str(event.dest_path or event.src_path))
        if path.suffix == ".pyc" or path.name.startswith("."):  # of Python, or of an editor for itself
            return
        if path.suffix in RESTARTS and not (path.suffix == ".md" and event.event_type in ("modified", "closed")):
            self._server.again.set()
        self._server.changed.set()


class _Handler(BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.0"
    server_of_ours: Server

    def do_GET(self) -> None:
        """A page, a file, the findings of a page, or the news as long as the page is open."""
        path = unquote(urlsplit(self.path).path).lstrip("/")
        with suppress(BrokenPipeError, ConnectionResetError):
            if path == "preview/events":
                self._events()
            elif path == "preview/findings":
                with self.server_of_ours.lock:
                    region = self.server_of_ours.preview.region(unquote(urlsplit(self.path).query))
                self._send(200, "text/html", region.encode("utf-8"))
            else:
                self._send(*self.server_of_ours.answer(path))

    def _send(self, status: int, kind: str, body: bytes) -> None:
        self.send_response(status)
        if status == 302:
            self.send_header("Location", body.decode())
            body = b""
        else:
            self.send_header("Content-Type", f"{kind}; charset=utf-8" if kind.startswith("text/") else kind)
        self.send_header("Cache-Control", "no-store")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def _events(self) -> None:
        self.send_response(200)
        self.send_header("Content-Type", "text/event-stream")
        self.send_header("Cache-Control", "no-store")
        self.end_headers()
        ours, told = self.server_of_ours, (0, 0)
        while True:
            now = ours.preview.version, ours.findings
            if now == told:
                self.wfile.write(b": still here\n\n")
            if now[0] != told[0]:
                self.wfile.write(f"event: pages\ndata: {now[0]}\n\n".encode())
            if now[1] != told[1]:
                self.wfile.write(f"event: findings\ndata: {now[1]}\n\n".encode())
            self.wfile.flush()
            told = now
            with ours.news:
                if now == (ours.preview.version, ours.findings):
                    ours.news.wait(ALIVE)

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing of each request."""


def listen(server: Server, port: int) -> ThreadingHTTPServer:
    """A server on this machine alone; port 0 takes a free one."""
    handler = type("Handler", (_Handler,), {"server_of_ours": server})
    made = ThreadingHTTPServer((HOST, port), handler)
    made.daemon_threads = True
    return made


def _finding(said: dict[str, object]) -> Finding:
    place = Place(int(str(said["line"])), int(str(said["column"])))
    words = (str(said[name]) for name in ("file", "code", "found", "expected", "action"))
    file, code, found, expected, action = words
    return Finding(file, place, code, found, expected, action, "error" if said["level"] == "error" else "warning")
