"""A build that takes from the last one gives the same bytes as one that starts with nothing."""

from __future__ import annotations

import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from latchside.kinds import KINDS
from latchside.library import Library
from latchside.library.state import State
from latchside.pages.render import Task, Writer, render_pages
from latchside.reads import EVERYTHING, noted
from latchside.site.build import build_site
from latchside.site.kept import Kept, done_or_kept, kept_at
from tests.site.small import small
from tests.unit.support import check, lay


def files(folder: Path) -> dict[str, bytes]:
    """Path and content of every file of a site; the wrapping of what is compressed holds the time."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and path.suffix != ".gz"
    }


def _kept(root: Path) -> Path:
    file = kept_at(root)
    assert file
    return file


@pytest.fixture
def library(tmp_path: Path) -> Library:
    return check(lay(tmp_path / "laid")).library


@pytest.fixture
def project(tmp_path: Path) -> Path:
    return small(tmp_path / "project")


def test_a_warm_build_after_a_change_is_the_cold_build_of_what_stands_there(project: Path, tmp_path: Path) -> None:
    first, warnings = build_site(project, tmp_path / "first")
    assert not warnings  # with one, no pages would be kept
    fault = next((project / "content" / "faults").glob("*.yaml"))
    fault.write_text(fault.read_text("utf-8").replace("\nname: ", "\nname: Changed, ", 1), "utf-8")
    warm, _ = build_site(project, tmp_path / "warm")
    assert _kept(project).is_file()
    elsewhere = tmp_path / "elsewhere"
    shutil.copytree(project, elsewhere, ignore=shutil.ignore_patterns(".cache"))
    cold, _ = build_site(elsewhere, tmp_path / "cold")
    before, after, expected = files(first), files(warm), files(cold)
    assert after.keys() == expected.keys()
    assert not [path for path, content in expected.items() if after[path] != content]
    changed = {path for path, content in after.items() if before.get(path) != content}
    assert f"faults/{fault.stem}/index.html" in changed
    assert "faults/index.html" in changed


def _cut_short(file: Path) -> None:
    file.write_bytes(file.read_bytes()[: file.stat().st_size // 2])


def _another_file(file: Path) -> None:
    file.write_bytes(b"no such file" * 1000)


def _of_another_form(file: Path) -> None:
    file.unlink()
    with closing(sqlite3.connect(file)) as made:
        made.execute("CREATE TABLE made (name TEXT PRIMARY KEY, value BLOB)")
        made.commit()


def _changed_by_the_disk(file: Path) -> None:
    with closing(sqlite3.connect(file)) as made:
        made.execute("UPDATE made SET value = CAST(substr(value, 1, 40) AS BLOB)")
        made.commit()


@pytest.mark.parametrize("spoil", [_cut_short, _another_file, _of_another_form, _changed_by_the_disk])
def test_what_cannot_be_read_of_an_earlier_build_is_made_again(
    spoil: Callable[[Path], None], tmp_path: Path, library: Library
) -> None:
    file = tmp_path / "kept.sqlite"
    tasks: dict[str, Task] = {"one": lambda: [("a.md", "as it was")], "two": lambda: [("b.md", "b" * 20_000)]}
    for _ in range(2):
        memory = Kept(file, "", State(library))
        expected = [list(part) for part in done_or_kept(tasks, memory)]
        memory.write(whole=True)
    spoil(file)
    for _ in range(2):  # the file is begun again, and used again
        memory = Kept(file, "", State(library))
        assert [list(map(tuple, part)) for part in done_or_kept(tasks, memory)] == expected
        memory.write(whole=True)
    assert Kept(file, "", State(library)).find({"task one": "", "task two": ""}).keys() == {"task one", "task two"}


def test_a_warning_is_given_again_until_it_is_seen_to(project: Path, tmp_path: Path) -> None:
    (project / "content" / "index.md").write_text("# Home\n\n[Nowhere](nowhere.md)\n", "utf-8")
    assert [build_site(project, tmp_path / name)[1] for name in ("one", "two")] == [1, 1]
    (project / "content" / "index.md").write_text("# Home\n", "utf-8")
    assert build_site(project, tmp_path / "three")[1] == 0


@pytest.mark.parametrize("kind", KINDS)
def test_pages_follow_each_kind_of_record_that_they_read(kind: str, tmp_path: Path) -> None:
    root = lay(tmp_path / "project")
    file = tmp_path / "kept.sqlite"

    def pages(kept: Path | None) -> dict[str, str]:
        library = check(root).library
        memory = Kept(kept, "", State(library))
        made = render_pages(library, done=lambda tasks: done_or_kept(tasks, memory))
        memory.write()
        return made

    before = pages(file)
    record = next((root / KINDS[kind].folder).glob("*.yaml"))
    text = record.read_text("utf-8")
    record.write_text(text.replace("\nname: ", "\nname: Changed ", 1), "utf-8")
    after = pages(file)
    assert after == pages(None)
    assert after != before or kind in ("job", "word")  # what those who wrote a job or a word call it stands on no page


def test_what_a_page_reads_does_not_rest_on_what_was_made_before_it(tmp_path: Path) -> None:
    """What is remembered from one page to the next counts as read by each of them."""
    library = check(lay(tmp_path / "project")).library

    def reads(task: Task) -> set[tuple[str, str, str]]:
        with noted() as found:
            task()
        return found

    tasks: dict[str, Task] = dict(Writer(library).tasks())
    first = {name: reads(task) for name, task in tasks.items()}
    again = {name: reads(task) for name, task in reversed(tasks.items())}
    assert {name for name in first if first[name] != again[name]} == set()
    assert any(first.values())
    assert EVERYTHING not in first["jobs"]
