"""WebKit by its own driver: the few commands that the tests of a second engine need."""

from __future__ import annotations

import json
import os
import shutil
import socket
import subprocess
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from bring_webkit import browser

PATIENCE = 40.0

_SCRIPT = """const done = arguments[arguments.length - 1], given = [...arguments].slice(0, -1);
(async () => { %s })().then((value) => done({value}), (error) => done({error: String(error)}));"""


class WebKit:
    """One page of the engine. Scripts are bodies of async functions; `given` holds what they are handed."""

    def __init__(self, driver: str) -> None:
        self._driver = driver
        options = {"binary": str(browser()), "args": ["--automation"]}
        wanted = {"capabilities": {"alwaysMatch": {"webkitgtk:browserOptions": options}}}
        self._session = f"/session/{self._ask('POST', '/session', wanted)['sessionId']}"

    def _ask(self, method: str, path: str, body: Any = None) -> Any:
        data = None if body is None else json.dumps(body).encode("utf-8")
        request = urllib.request.Request(self._driver + path, data, {"Content-Type": "application/json"}, method=method)
        try:
            with urllib.request.urlopen(request, timeout=60) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as error:
            with error:
                raise AssertionError(error.read().decode("utf-8", "replace")) from None

    def open(self, address: str) -> None:
        """Go to an address."""
        self._ask("POST", f"{self._session}/url", {"url": address})

    def run(self, body: str, *given: Any) -> Any:
        """What a script gives back."""
        asked = {"script": _SCRIPT % body, "args": list(given)}
        answer = self._ask("POST", f"{self._session}/execute/async", asked)
        assert "error" not in answer, answer["error"]
        return answer.get("value")

    def until(self, body: str, *given: Any) -> Any:
        """What a script gives back once it is true. Fails where it never is."""
        end = time.monotonic() + PATIENCE
        while not (found := self.run(body, *given)) and time.monotonic() < end:
            time.sleep(0.1)
        assert found, f"never true: {body} {self.run('return document.body.innerText')[-600:]}"
        return found

    def close(self) -> None:
        """Close the browser."""
        self._ask("DELETE", self._session)


def _wait(there: Callable[[], bool]) -> None:
    end = time.monotonic() + PATIENCE
    while not there():
        assert time.monotonic() < end, "the driver did not start"
        time.sleep(0.05)


def _answers(port: int) -> bool:
    with socket.socket() as tried:
        return tried.connect_ex(("127.0.0.1", port)) == 0


def _free_port() -> int:
    with socket.socket() as held:
        held.bind(("127.0.0.1", 0))
        return int(held.getsockname()[1])


@contextmanager
def driver(folder: Path) -> Iterator[str]:
    """The driver on a screen that nobody sees, with a home of its own; its address."""
    said, told = os.pipe()
    screen = [
        shutil.which("Xvfb") or "Xvfb",
        "-displayfd",
        str(told),
        "-screen",
        "0",
        "800x1000x24",
        "-nolisten",
        "tcp",
    ]
    with subprocess.Popen(screen, pass_fds=(told,), stderr=subprocess.DEVNULL) as shown:
        os.close(told)
        with os.fdopen(said) as line:
            display = f":{line.readline().strip()}"
        port = _free_port()
        own = {**os.environ, "DISPLAY": display, "HOME": str(folder), "WEBKIT_DISABLE_COMPOSITING_MODE": "1"}
        command = [shutil.which("WebKitWebDriver") or "WebKitWebDriver", f"--port={port}"]
        with subprocess.Popen(command, env=own, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) as running:
            try:
                _wait(lambda: _answers(port))
                yield f"http://127.0.0.1:{port}"
            finally:
                running.terminate()
                shown.terminate()
