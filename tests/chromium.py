"""The Chromium that tests drive: the one on the machine, or the one that `make test` brought."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Playwright

from bring_browser import headless_path

# No name but this host's own is resolved, so a page that asks elsewhere fails here as it would in a cellar.
ARGUMENTS = ["--no-sandbox", "--disable-gpu", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"]


def launch(playwright: Playwright, *arguments: str) -> Browser:
    """A browser of its own; a test fails where there is none."""
    path = headless_path()
    if path is None:
        pytest.fail("There is no Chromium; `make test` brings one.")
    return playwright.chromium.launch(executable_path=path, args=[*ARGUMENTS, *arguments])
