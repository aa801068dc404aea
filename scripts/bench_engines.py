"""Build the same pages with other site generators: whether they can, how long it takes, what comes out otherwise.

Run with `make bench-engines`, which installs the generators into an environment of their own. The pages are those of
`latchside render`, with none of our hooks, macros and theme files: what is left is a measure of the generator alone.
"""

from __future__ import annotations

import html
import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

SETTINGS = """\
site_name: Latchside
docs_dir: docs
site_dir: {out}
theme: {{name: material, font: false}}
nav: [index.md]
markdown_extensions: [attr_list, md_in_html, tables, {{toc: {{permalink: false, toc_depth: 3}}}}]
plugins: []
"""
ENGINES = {
    "mkdocs": ["mkdocs", "build", "-q", "-f"],
    "properdocs": ["properdocs", "build", "-q", "-f"],
    "zensical": ["zensical", "build", "-f"],
}


def main(programs: Path) -> None:
    """Build with every generator in the folder `programs`, and print a line for each."""
    with TemporaryDirectory() as name:
        work = Path(name)
        subprocess.run([sys.executable, "-m", "latchside.cli", "render", "--out", work / "docs"], check=True)
        (work / "docs" / "index.md").write_text("# Home\n", "utf-8")
        for engine, command in ENGINES.items():
            out = work / engine
            settings = work / f"{engine}.yml"
            settings.write_text(SETTINGS.format(out=engine), "utf-8")
            taken = _seconds([str(programs / command[0]), *command[1:], str(settings)], work)
            other = sum(1 for _ in _differing(work / "mkdocs", out))
            size = sum(path.stat().st_size for path in out.rglob("*") if path.is_file())
            print(f"{engine}: {taken:.1f} s of processor time, {size / 1e6:.1f} MB, {other} pages read otherwise")
            shutil.rmtree(work / ".cache", ignore_errors=True)


def _seconds(command: list[str], folder: Path) -> float:
    """Processor time of a command and what it starts, in seconds. Raises CalledProcessError where it fails."""
    before = os.times()
    started = time.monotonic()
    subprocess.run(command, cwd=folder, check=True, env={**os.environ, "NO_MKDOCS_2_WARNING": "1"})
    after = os.times()
    print(f"{command[0]}: {time.monotonic() - started:.1f} s")
    return after.children_user + after.children_system - before.children_user - before.children_system


def _differing(one: Path, other: Path) -> Iterator[Path]:
    """The pages of `one` that `other` lacks, or of which a reader sees another text there."""
    for page in one.rglob("index.html"):
        same = other / page.relative_to(one)
        if not same.exists() or _text(page) != _text(same):
            yield page


def _text(page: Path) -> str:
    found = re.search(r"<article[^>]*>(.*?)</article>", page.read_text("utf-8"), re.DOTALL)
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", found[1] if found else "")).split())


if __name__ == "__main__":
    main(Path(sys.argv[1]))
