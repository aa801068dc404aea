"""A browser that dies in the middle of things: on a profile of its own, killed by signal with all its processes."""

from __future__ import annotations

import contextlib
import os
import signal
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import BrowserContext, Error, Page, Playwright

from bring_browser import headless_path

from ..chromium import ARGUMENTS
from .field import PHONE, ready

TICK = """item => new Promise(resolve => {
  const row = document.getElementById(`item-${item}`);
  const seen = new MutationObserver(() => {
    if (row.dataset.state !== 'done') return;
    seen.disconnect();
    requestAnimationFrame(() => requestAnimationFrame(resolve));
  });
  seen.observe(row, {attributes: true});
  row.querySelector('.ls-item').click();
})"""
"""Tap an item; over as soon as a frame that shows it as done has been painted."""


@contextmanager
def doomed(playwright: Playwright, profile: Path, address: str) -> Iterator[Page]:
    """A page in a browser on this profile; when the block ends, the browser is killed without a word."""
    context = playwright.chromium.launch_persistent_context(
        profile, executable_path=headless_path(), args=ARGUMENTS, viewport=PHONE, service_workers="block"
    )  # fmt: skip
    try:
        page = context.pages[0]
        page.goto(address)
        yield ready(page)
    finally:
        kill(profile)
        _forget(context)


def kill(profile: Path) -> None:
    """SIGKILL to the browser on this profile, and to every process it started."""
    for pid in _browsers(profile):
        assert os.getpgid(pid) == pid, "the browser does not lead a group of its own"
        os.killpg(pid, signal.SIGKILL)


def _browsers(profile: Path) -> list[int]:
    """The processes that run a browser on this profile: those, and nobody else's."""
    found = []
    for folder in Path("/proc").iterdir():
        if folder.name.isdigit():
            with contextlib.suppress(OSError):
                words = (folder / "cmdline").read_bytes().decode("utf-8", "replace").split("\0")
                if f"--user-data-dir={profile}" in words and not any(word.startswith("--type=") for word in words):
                    found.append(int(folder.name))
    return found


def _forget(context: BrowserContext) -> None:
    with contextlib.suppress(Error):
        context.close()
