"""Build the site with MkDocs, strictly, from a command of ours rather than its own."""

from __future__ import annotations

import logging
import os
from pathlib import Path
from typing import Any

os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")  # the theme's yearly notice is for us, not for who builds

from mkdocs.commands.build import build
from mkdocs.commands.serve import serve
from mkdocs.config import load_config
from mkdocs.utils import CountHandler
from mkdocs.utils.yaml import yaml_load

from latchside.root import part
from latchside.site.date import copy_date
from latchside.version import library_version

THEME, HOOK = (Path(__file__).resolve().parent / name for name in ("theme", "hook.py"))


def settings(root: Path, out: Path | None = None) -> dict[str, Any]:
    """What MkDocs is told of a project: its own `mkdocs.yml`, its pages, and the theme and the hook of this package.

    The paths of theme and hook in `mkdocs.yml` hold in a checkout, where `mkdocs build` works too.
    """
    file = part(root, "mkdocs.yml")
    with file.open("rb") as opened:
        theme = yaml_load(opened)["theme"]
    return {
        "config_file": str(file),
        "docs_dir": str((root / "content").resolve()),
        "site_dir": str((out or root / "site").resolve()),
        "theme": {**theme, "custom_dir": str(THEME)},
        "hooks": [str(HOOK)],
    }


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
    config = load_config(**settings(root, out))
    if pocket:
        for name in ("search", "material/search"):
            config.plugins.pop(name, None)
        config.extra["pocket"] = f"version {library_version()}, {copy_date(root)}"
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    config.plugins.on_shutdown()
    return Path(config.site_dir), sum(count for _, count in counter.get_counts())


def serve_site(root: Path) -> None:
    """Show the site of a project on this machine, built again as its files are saved."""
    kept = {name: value for name, value in settings(root).items() if name != "site_dir"}
    watched = [str(root / name) for name in ("checklists", "shared", "schema") if (root / name).is_dir()]
    serve(watch=watched, **kept)
