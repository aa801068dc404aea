"""Bring a second engine for the browser tests: WebKit, its driver, and a screen that nobody sees.

As root on Debian the packages are installed; anywhere else they are used where they are there already. The tests that
need them are skipped where they are not, and say why.
"""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

PACKAGES = ("webkit2gtk-driver", "xvfb")


def missing() -> str:
    """Why there is no second engine here, or nothing."""
    programs = [name for name in ("WebKitWebDriver", "Xvfb") if not shutil.which(name)]
    if programs:
        return f"{' and '.join(programs)} not found; on Debian they are in {' and '.join(PACKAGES)}"
    return "" if browser() else "WebKit's driver is here, the browser it drives is not"


def browser() -> Path | None:
    """The small browser that comes with the engine."""
    return next(iter(sorted(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))), None)


def bring() -> str:
    """Install what is missing, where that can be done; why it is still missing, or nothing."""
    if missing() and hasattr(os, "geteuid") and os.geteuid() == 0 and Path("/etc/debian_version").exists():
        quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        install = ["apt-get", "-qq", "install", "--yes", "--no-install-recommends", *PACKAGES]
        for command in (["apt-get", "-qq", "update"], install):
            if subprocess.run(command, check=False, env=quiet, stdout=subprocess.DEVNULL).returncode:
                break
    return missing()


if __name__ == "__main__":
    print(f"Second engine: {bring() or browser()}")
