"""Build the site with MkDocs, strictly, from a command of ours rather than its own."""

from __future__ import annotations

import logging
import os
from pathlib import Path

os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")  # the theme's yearly notice is for us, not for who builds

from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.utils import CountHandler

from latchside.site.date import copy_date
from latchside.version import library_version


def build_site(root: Path, out: Path | None = None, *, pocket: bool = False) -> tuple[Path, int]:
    """Build into `out`, or into `site/`; the folder and the number of warnings.

    With `pocket`, the pages are those of the pocket copy: no search box, and version and date on every page.

    Warnings are counted here and not by MkDocs' own strict switch, because that one raises before all are shown.
    """
    logger = logging.getLogger("mkdocs")
    counter = CountHandler()
    counter.setLevel(logging.WARNING)
    shown = logging.StreamHandler()
    shown.setLevel(logging.WARNING)
    shown.setFormatter(logging.Formatter("%(levelname)s  %(message)s"))
    logger.handlers[:] = [counter, shown]
    logger.propagate = False
    options = {"site_dir": str(out.resolve())} if out else {}
    config = load_config(str(root / "mkdocs.yml"), **options)
    if pocket:
        for name in ("search", "material/search"):
            config.plugins.pop(name, None)
        config.extra["pocket"] = f"version {library_version()}, {copy_date(root)}"
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    config.plugins.on_shutdown()
    return Path(config.site_dir), sum(count for _, count in counter.get_counts())
