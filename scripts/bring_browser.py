"""Bring a Chromium for the browser tests, and say which one is used.

One that is on the machine is used as it is. Else, as root on Debian, the `chromium` package is installed;
anywhere else Playwright puts its own into `.browsers/`. `chromium_path()` is also what the tests ask.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
BROWSERS = ROOT / ".browsers"
_NAMES = ("chromium", "chromium-browser")


def chromium_path() -> str | None:
    """The Chromium to use, or None where there is none yet."""
    for name in _NAMES:
        found = shutil.which(name)
        if found:
            return found
    brought = sorted(BROWSERS.glob("chromium-*/chrome-*/chrome")) + sorted(
        BROWSERS.glob("chromium-*/*/Chromium.app/Contents/MacOS/Chromium")
    )
    return str(brought[-1]) if brought else None


def bring() -> str:
    """Install a Chromium where there is none; its path.

    Raises SystemExit with what to do where none can be had.
    """
    path = chromium_path()
    if path:
        return path
    if hasattr(os, "geteuid") and os.geteuid() == 0 and Path("/etc/debian_version").exists():
        quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        subprocess.run(["apt-get", "-qq", "update"], check=True, env=quiet)
        install = ["apt-get", "-qq", "install", "--yes", "--no-install-recommends", "chromium"]
        subprocess.run(install, check=True, env=quiet, stdout=subprocess.DEVNULL)
    else:
        own = {**os.environ, "PLAYWRIGHT_BROWSERS_PATH": str(BROWSERS)}
        subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], check=True, env=own)
    path = chromium_path()
    if not path:
        raise SystemExit("No Chromium could be brought. Install one by hand, then run make test again.")
    return path


if __name__ == "__main__":
    print(f"Browser tests use {bring()}")
