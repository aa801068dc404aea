"""Build the site with MkDocs, strictly, from a command of ours rather than its own.

MkDocs makes one page after the other and remembers none. Here pages are made on all cores, and one that was made
before from the same is taken as it was.
"""

from __future__ import annotations

import logging
import os
from pathlib import Path
from typing import Any

os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")  # the theme's yearly notice is for us, not for who builds

# The two that MkDocs keeps to itself make a template of the theme: they run the events of templates, and know where
# the page for wrong addresses links from. Should they go, they are thirty lines to write out here.
from mkdocs.commands.build import _build_template, _build_theme_template
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.utils import CountHandler, clean_directory
from mkdocs.utils.yaml import yaml_load

from latchside.library import Library
from latchside.library.state import State
from latchside.root import part
from latchside.site import adapter
from latchside.site.date import copy_date
from latchside.site.engine import Engine, engine, page_of
from latchside.site.finish import rewrite
from latchside.site.kept import Kept, general, kept_at
from latchside.site.making import Making
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


def build_site(
    root: Path, out: Path | None = None, library: Library | None = None, *, pocket: bool = False, fresh: bool = False
) -> tuple[Path, int]:
    """Build into `out`, or into `site/`; the folder and the number of warnings.

    With `pocket`, the pages are those of the pocket copy: version and date on every page.
    `library` is that of the project where it has been checked already. A `fresh` build takes nothing from an earlier
    one and keeps nothing for a later one.

    Warnings are counted here and not by MkDocs' own strict switch, because that one raises before all are shown.
    """
    counter = _listened()
    config = configured(root, out, pocket=pocket)
    config.plugins.on_startup(command="build", dirty=False)
    _build(config, root, library, counter, None if pocket or fresh else kept_at(root))
    config.plugins.on_shutdown()
    return Path(config.site_dir), _count(counter)


def configured(root: Path, out: Path | None = None, *, pocket: bool = False) -> MkDocsConfig:
    """The configuration of a project, as it is built."""
    config = load_config(**settings(root, out))
    if pocket:
        config.extra["pocket"] = {"version": library_version(), "date": copy_date(root)}
    return config


def _listened() -> CountHandler:
    logger = logging.getLogger("mkdocs")
    counter = CountHandler()
    counter.setLevel(logging.WARNING)
    shown = logging.StreamHandler()
    shown.setLevel(logging.WARNING)
    shown.setFormatter(logging.Formatter("%(levelname)s  %(message)s"))
    logger.handlers[:] = [counter, shown]
    logger.propagate = False
    return counter


def _count(counter: CountHandler) -> int:
    return sum(count for _, count in counter.get_counts())


def _build(config: MkDocsConfig, root: Path, library: Library | None, counter: CountHandler, file: Path | None) -> None:
    """As MkDocs builds, in its order; its events are run for whoever listens to them."""
    site = Path(config.site_dir)
    config = config.plugins.on_config(config)
    config.plugins.on_pre_build(config=config)
    clean_directory(config.site_dir)
    if library:
        adapter.show(library)
    kept = Kept(file, general(root, str(config.extra)), State(adapter.library()))
    adapter.build_with(kept)
    made = engine(config)
    kept.write()
    pages = Making(made, kept)
    made.files.copy_static_files()
    for template in config.theme.static_templates:
        _build_theme_template(template, made.env, made.files, config, made.nav)
    for path in site.glob("*.html"):
        rewrite(path)
    pages.make()
    for one in made.documents:
        page_of(one).validate_anchor_links(files=made.files, log_level=config.validation.links.anchors)
    sound = not _count(counter)  # what is warned of from here on is warned of by every build
    config.plugins.on_post_build(config=config)
    if sound:
        kept.write(whole=True)


def theme_template(name: str, made: Engine) -> str:
    """A page of the theme's own, such as the one for wrong addresses."""
    return _build_template(name, made.env.get_template(name), made.files, made.config, made.nav)
