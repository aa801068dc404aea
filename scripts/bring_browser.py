"""Bring a Chromium for the browser tests, and say which one is used.

Tests take the Chromium without windows where it is: it does a test's work in less than half the time. As root on
Debian its package is installed; anywhere else a Chromium on the machine is used as it is, or Playwright puts one into
`.browsers/`. `headless_path()` is what the tests ask, `chromium_path()` what measures a page as a reader has it.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
BROWSERS = ROOT / ".browsers"
# The program itself: the script of this name in /usr/bin keeps a shell between a test and the browser it may kill.
DEBIAN_HEADLESS = Path("/usr/lib/chromium/chromium-headless-shell")
_NAMES = ("chromium", "chromium-browser")


def chromium_path() -> str | None:
    """The Chromium that readers have, or else the one without windows; None where there is neither."""
    for name in _NAMES:
        found = shutil.which(name)
        if found:
            return found
    return _brought("chromium-*/chrome-*/chrome", "chromium-*/*/Chromium.app/Contents/MacOS/Chromium") or _headless()


def headless_path() -> str | None:
    """The Chromium without windows, or else the one that readers have; None where there is neither."""
    return _headless() or chromium_path()


def _headless() -> str | None:
    if DEBIAN_HEADLESS.exists():
        return str(DEBIAN_HEADLESS)
    return _brought("chromium_headless_shell-*/*/*headless?shell")


def _brought(*patterns: str) -> str | None:
    brought = [path for pattern in patterns for path in sorted(BROWSERS.glob(pattern))]
    return str(brought[-1]) if brought else None


def bring() -> str:
    """Install what is missing, where that can be done; the path of the Chromium that tests use.

    Raises SystemExit with what to do where none can be had.
    """
    if _headless():
        return str(_headless())
    if hasattr(os, "geteuid") and os.geteuid() == 0 and Path("/etc/debian_version").exists():
        quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        subprocess.run(["apt-get", "-qq", "update"], check=False, env=quiet)
        for package in ("chromium-headless-shell", "chromium"):
            install = ["apt-get", "-qq", "install", "--yes", "--no-install-recommends", package]
            subprocess.run(install, check=False, env=quiet, stdout=subprocess.DEVNULL)
            if headless_path():
                break
    elif not chromium_path():
        own = {**os.environ, "PLAYWRIGHT_BROWSERS_PATH": str(BROWSERS)}
        install = [sys.executable, "-m", "playwright", "install", "--only-shell", "chromium"]
        subprocess.run(install, check=True, env=own)
    path = headless_path()
    if not path:
        raise SystemExit("No Chromium could be brought. Install one by hand, then run make test again.")
    return path


if __name__ == "__main__":
    print(f"Browser tests use {bring()}")
