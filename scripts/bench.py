"""Measure the speeds that DEVELOPERS.md promises, and print them as a table. Run by `make bench`; not a test.

Everything is measured in a process of its own, on this project or on copies of it in a temporary folder that hold
generated device profiles. A profile is made from the shipped one of median size, under new ids.
"""

from __future__ import annotations

import gzip
import json
import os
import platform
import re
import shutil
import statistics
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from playwright.sync_api import Response, sync_playwright
from rich.console import Console
from rich.progress import Progress, SpinnerColumn, TextColumn, TimeElapsedColumn
from rich.table import Table

from bring_browser import chromium_path
from served import served

ROOT = Path(__file__).resolve().parents[1]
COPIED = ("content", "checklists", "shared", "schema", "scripts", "mkdocs.yml")

CHECK = """
import json, time
from latchside.project import check_project
from latchside.root import ROOT
start, work = time.perf_counter(), time.process_time()
checked = check_project(ROOT)
seconds, work = time.perf_counter() - start, time.process_time() - work
records = sum(1 for _ in checked.library)
print(json.dumps({"seconds": seconds, "work": work, "records": records, "errors": checked.errors}))
"""
BUILD = """
import json, resource, sys, time
from pathlib import Path
start = time.perf_counter()
from latchside.root import ROOT
from latchside.site.build import build_site
site, warnings = build_site(ROOT, Path(sys.argv[1]), fresh=sys.argv[2:] == ["fresh"])
seconds = time.perf_counter() - start
used = [resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
work = sum(one.ru_utime + one.ru_stime for one in used)
memory = max(one.ru_maxrss for one in used) / 1024
pages = sum(1 for _ in site.rglob("*.html"))
print(json.dumps({"seconds": seconds, "work": work, "pages": pages, "memory": memory}))
"""
PLAIN = """
import json, resource, sys, time
start = time.perf_counter()
from mkdocs.commands.build import build
from mkdocs.config import load_config
config = load_config(sys.argv[1] + "/mkdocs.yml")
config.plugins.on_startup(command="build", dirty=False)
build(config)
used = resource.getrusage(resource.RUSAGE_SELF)
seconds = time.perf_counter() - start
print(json.dumps({"seconds": seconds, "work": used.ru_utime + used.ru_stime}))
"""
PREVIEW = """
import json, sys, time
from pathlib import Path
from latchside.root import ROOT
from latchside.site.preview import Preview
preview = Preview(ROOT)
path, address = ROOT / sys.argv[1], sys.argv[2]
text, seconds = path.read_text("utf-8"), []
for number in range(5):
    start = time.perf_counter()
    path.write_text(text.replace("\\nsummary: ", f"\\nsummary: Number {number}. ", 1), "utf-8")
    preview.look()
    shown = preview.served(address)[1].decode("utf-8")
    assert f"Number {number}. " in shown
    seconds.append(time.perf_counter() - start)
print(json.dumps({"seconds": sorted(seconds)[2], "most": max(seconds)}))
"""
PLAIN_WORDS = "the frame holds a magnet and the contact beside it closes when both stand near enough to be drawn in"


@dataclass(frozen=True)
class Line:
    """One line of the table: what was measured, what came out, the limit, whether it holds, and the work it took.

    `work` is the processor's own time. Where it is much less than what was measured, the machine was busy with
    something else, and the measurement says little.
    """

    what: str
    measured: str
    limit: str
    holds: bool
    work: str = ""


def run(program: str, root: Path, *arguments: str) -> dict[str, Any]:
    """Run a program on the project at `root` and read what it measured."""
    environment = {**os.environ, "PYTHONPATH": str(root / "scripts"), "PYTHONHASHSEED": "0"}
    command = [sys.executable, "-c", program, *arguments]
    done = subprocess.run(command, env=environment, cwd=root, capture_output=True, text=True, check=False)
    if done.returncode:
        raise SystemExit(done.stdout + done.stderr)
    result: dict[str, Any] = json.loads(done.stdout.splitlines()[-1])
    return result


def copy_project(target: Path) -> Path:
    """A copy of what a build needs."""
    for name in COPIED:
        source = ROOT / name
        if source.is_dir():
            shutil.copytree(source, target / name, ignore=shutil.ignore_patterns("__pycache__", "*.egg-info"))
        elif source.is_file():
            shutil.copy(source, target / name)
    return target


def median_device() -> Path:
    """The shipped device record of median size."""
    devices = sorted((ROOT / "content" / "devices").glob("*.yaml"), key=lambda path: (path.stat().st_size, path.name))
    return devices[len(devices) // 2]


def add_devices(root: Path, count: int) -> None:
    """Write generated device records into a copy of the project."""
    pattern = median_device()
    text = pattern.read_text("utf-8")
    for number in range(count):
        id_ = f"{pattern.stem}-{number:04d}"
        own = re.sub(r"(?m)^id: .*$", f"id: {id_}", text, count=1)
        own = re.sub(r"(?m)^name: (.*)$", rf"name: \1 {number}", own, count=1)
        own = own.replace(f"device/{pattern.stem}/", f"device/{id_}/")
        own = own.replace(" position,", "").replace(" fixing,", "")  # lists whose items are for a class by its id
        (root / "content" / "devices" / f"{id_}.yaml").write_text(own, "utf-8")


def plain_project(target: Path, pages: int) -> Path:
    """A project of plain pages of about 400 words for MkDocs and Material alone, outside the navigation as ours are."""
    (target / "docs").mkdir(parents=True)
    (target / "docs" / "index.md").write_text("# Home\n", "utf-8")
    for number in range(pages):
        (target / "docs" / f"page-{number:04d}.md").write_text(plain_page(number, pages), "utf-8")
    config = "site_name: Plain\ntheme: {name: material, font: false}\nnav: [index.md]\nplugins: [search]\n"
    (target / "mkdocs.yml").write_text(f"{config}validation: {{nav: {{omitted_files: ignore}}}}\n", "utf-8")
    return target


def plain_page(number: int, pages: int) -> str:
    """Four parts of two paragraphs and a list."""
    known = PLAIN_WORDS.split()
    lines = [f"# Page {number}\n"]
    for part in range(4):
        lines.append(f"## Part {part + 1}\n")
        for paragraph in range(2):
            words = [known[(number + at * 7 + part * 3 + paragraph) % len(known)] for at in range(45)]
            words[10] = f"**{words[10]}**"
            words[20] = f"[{words[20]}](page-{(number + 1) % pages:04d}.md)"
            lines.append(" ".join(words) + ".\n")
        lines.append("- one of three\n- two of three\n- three of three\n")
    return "\n".join(lines)


def pages_of_one_device(shipped: Path) -> int:
    """How many pages the device that is copied has in the built site."""
    return sum(1 for _ in (shipped / "devices" / median_device().stem).rglob("index.html"))


def megabytes(site: Path) -> float:
    """What a site weighs as it is stored."""
    return sum(path.stat().st_size for path in site.rglob("*") if path.is_file()) / 1e6


def packed(path: Path) -> int:
    """Bytes that travel for a file: packed where servers pack."""
    content = path.read_bytes()
    plain = path.suffix in (".png", ".jpg", ".woff2", ".gz")
    return len(content) if plain else len(gzip.compress(content, 6, mtime=0))


def loaded(site: Path, address: str) -> set[Path]:
    """The files of the site that a browser loads with a page; empty where there is no browser."""
    browser = chromium_path()
    if browser is None:
        return set()
    found: set[Path] = set()
    with served(site) as base, sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=browser, args=["--no-sandbox", "--disable-gpu"])
        page = chromium.new_context(service_workers="block").new_page()

        def note(response: Response) -> None:
            path = site / response.url.removeprefix(base).partition("?")[0]
            found.add(path / "index.html" if path.is_dir() else path)

        page.on("response", note)
        page.goto(base + address, wait_until="networkidle")
        chromium.close()
    return {path for path in found if path.is_file()}


def check_lines(work: Path, say: Callable[[str], None]) -> Iterator[Line]:
    """How fast records are checked."""
    say("checking the shipped library")
    shipped = [run(CHECK, ROOT) for _ in range(3)]
    seconds = statistics.median(one["seconds"] for one in shipped)
    what = f"check of the shipped {shipped[0]['records']} records, after start"
    work_done = statistics.median(one["work"] for one in shipped)
    yield Line(what, f"{seconds:.2f} s", "1 s", seconds < 1, f"{work_done:.2f} s")
    say("checking 500 generated device records")
    many = copy_project(work / "many")
    add_devices(many, 500)
    result = run(CHECK, many)
    what = f"check with 500 generated device records ({result['records']} in all, {result['errors']} errors)"
    holds = result["seconds"] < 5 and not result["errors"]
    yield Line(what, f"{result['seconds']:.2f} s", "5 s", holds, f"{result['work']:.2f} s")
    shutil.rmtree(many)


def build_lines(work: Path, say: Callable[[str], None]) -> Iterator[Line]:
    """How fast sites are built, how large they are, and how the time grows."""
    say("building the shipped site")
    shipped = work / "shipped"
    result = run(BUILD, ROOT, str(shipped), "fresh")
    what = f"shipped site, {result['pages']} pages"
    yield Line(what, f"{result['seconds']:.1f} s", "15 s", result["seconds"] < 15, f"{result['work']:.1f} s")
    each = pages_of_one_device(shipped)
    per_page: dict[int, float] = {}
    yield from beside_plain("the shipped site", ROOT, work, say)
    for pages in (500, 1000, 5000):
        say(f"building {pages} pages of generated devices")
        project = copy_project(work / f"pages-{pages}")
        add_devices(project, -(-pages // each))
        site = work / "site"
        grown = run(BUILD, project, str(site))
        made = sum(1 for _ in (site / "devices").rglob(f"{median_device().stem}-[0-9]*/**/index.html"))
        per_page[pages] = grown["work"] / grown["pages"]
        if pages == 1000:
            yield from beside_plain(f"{made} pages of generated devices", project, work, say)
            size = megabytes(site)
            what = f"{made} pages of generated devices ({grown['pages']} in all)"
            yield Line(what, f"{grown['seconds']:.1f} s", "15 s", grown["seconds"] < 15, f"{grown['work']:.1f} s")
            yield Line("  the same, as stored", f"{size:.0f} MB", "60 MB", size < 60)
        shutil.rmtree(site)
        shutil.rmtree(project)
    ratio = per_page[5000] / per_page[500]
    few, many = (f"{per_page[pages] * 1000:.1f} ms" for pages in (500, 5000))
    yield Line(f"work for a page at 5,000 ({many}) over that at 500 ({few})", f"{ratio:.2f}", "1.15", ratio <= 1.15)
    yield from page_lines(shipped)


def beside_plain(what: str, project: Path, work: Path, say: Callable[[str], None]) -> Iterator[Line]:
    """A project cold, warm and changed, beside a plain site of as many pages, one after the other."""
    say(f"{what}: beside a plain site")
    root, site = copy_project(work / "beside"), work / "beside-site"
    shutil.rmtree(root / "content")
    shutil.copytree(project / "content", root / "content")
    cold = run(BUILD, root, str(site))
    plain = run(PLAIN, root, str(plain_project(work / "plain", cold["pages"])))
    record = root / "content" / "devices" / median_device().name
    text = record.read_text("utf-8")
    record.write_text(text.replace("\nsummary: ", "\nsummary: Changed. ", 1), "utf-8")
    warm = run(BUILD, root, str(site))
    for name, built, limit in (("cold", cold, 1.0), ("one record changed", warm, 0.15)):
        ratio = built["seconds"] / plain["seconds"]
        words = f"{built['seconds']:.1f} s / {plain['seconds']:.1f} s = {ratio:.2f}"
        done = f"{built['work']:.1f} s / {plain['work']:.1f} s"
        yield Line(f"{what}, {name}, over as many plain pages", words, f"{limit:.2f}", ratio <= limit, done)
    yield Line(
        f"  the same, most memory of one process, {what}", f"{cold['memory']:.0f} MB", "225 MB", cold["memory"] <= 225
    )
    seen = run(PREVIEW, root, f"content/devices/{record.name}", f"devices/{record.stem}/")
    words = f"{seen['seconds']:.2f} s, longest {seen['most']:.2f} s"
    yield Line(f"  from save to page in the preview, {what}", words, "1 s", seen["seconds"] < 1)
    for path in (root, site, work / "plain"):
        shutil.rmtree(path)


def page_lines(site: Path) -> Iterator[Line]:
    """How much travels to a phone that opens a checklist: the largest of all, with an empty store."""
    page = max((site / "checklists").glob("*/index.html"), key=packed)
    name, html = page.parent.name, packed(page)
    yield Line(f"checklist page, HTML packed ({name}, the largest)", f"{html / 1000:.1f} KB", "15 KB", html <= 15_000)
    files = loaded(site, f"checklists/{name}/")
    if not files:
        yield Line("checklist page with all it needs", "no browser", "120 KB", False)
        return
    whole = sum(packed(path) for path in files)
    what = f"checklist page with all it needs, packed ({len(files)} files)"
    yield Line(what, f"{whole / 1000:.0f} KB", "120 KB", whole <= 120_000)


def main() -> None:
    """Measure, and print the table."""
    console = Console()
    notes = Console(stderr=True)
    lines: list[Line] = []
    columns = (SpinnerColumn(), TextColumn("{task.description}"), TimeElapsedColumn())
    with (
        TemporaryDirectory(prefix="latchside-bench-") as folder,
        Progress(*columns, console=notes, transient=True, disable=not notes.is_terminal) as progress,
    ):
        task = progress.add_task("starting", total=None)

        def say(words: str) -> None:
            progress.update(task, description=words)

        for measured in (check_lines, build_lines):
            lines.extend(measured(Path(folder), say))
    table = Table(title=f"{os.cpu_count()} cores, Python {platform.python_version()}", title_justify="left")
    table.add_column("what")
    table.add_column("measured", justify="right")
    table.add_column("limit", justify="right")
    table.add_column("holds")
    table.add_column("work", justify="right")
    for line in lines:
        table.add_row(line.what, line.measured, line.limit, "yes" if line.holds else "NO", line.work)
    console.print(table)


if __name__ == "__main__":
    main()
