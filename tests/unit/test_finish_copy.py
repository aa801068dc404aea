"""What is saved at once, what on request, the list that says so, and its date."""

from __future__ import annotations

import gzip
import json
import subprocess
from hashlib import sha256
from pathlib import Path
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.site.date import UNDATED, copy_date, day
from latchside.site.finish import OFF, WORKER, finish, stamp
from latchside.site.saved_copy import BUDGET, chosen, listing, transferred

from .support import base_library, change, lay


def noise(size: int, seed: int = 1) -> bytes:
    """Bytes that do not pack."""
    return Random(seed).randbytes(size)


SMALL = {
    "index.html": b"home", "on-site/index.html": b"on site", "offline/index.html": b"copy", "404.html": b"no",
    "assets/latchside.css": b"css", "assets/js/latchside.js": b"js", "assets/javascripts/bundle.1.min.js": b"theme",
    "assets/drawings/gap.svg": b"<svg/>", "assets/drawings/other.svg": b"<svg></svg>", "finder.json": b"{}",
    "checklists/position/index.html": b'<img class="d" src="../../assets/drawings/gap.svg" alt="">',
    "faults/a/index.html": b"a", "faults/b/index.html": b"b", "devices/x/install/index.html": b"install",
    "devices/x/index.html": b"device", "devices/x/fix/index.html": b"fix", "cautions/c/index.html": b"c",
    "figures/f/index.html": b"f", "procedures/p/index.html": b"p", "cards/c/index.html": b"c",
    "labels/index.html": b"labels", "sitemap.xml": b"x", "offline.json": b"x", "sw.js": b"x", "sw-off.js": b"x",
}  # fmt: skip


def test_what_is_needed_comes_at_once_and_the_rest_on_request() -> None:
    copy = chosen(SMALL)
    assert set(copy.rest) == {
        "devices/x/index.html", "cards/c/index.html", "assets/drawings/other.svg",
    }  # fmt: skip
    assert "assets/drawings/gap.svg" in copy.first
    assert not copy.left_out
    left = set(SMALL) - set(copy.first) - set(copy.rest)
    assert left == {
        "404.html", "labels/index.html", "sitemap.xml", "offline.json", "sw.js", "sw-off.js",
    }  # fmt: skip


def test_the_planner_is_neither_saved_at_once_nor_with_all_the_rest() -> None:
    planner = {"planner.zip": noise(90), "assets/js/vendor/pyodide/core.wasm.gz": noise(80)}
    copy = chosen({**SMALL, **planner, "assets/js/plan/worker.js": b"js"})
    assert dict(copy.planner) == planner
    assert not {*copy.first, *copy.rest} & set(planner)
    assert "assets/js/plan/worker.js" in copy.first
    told = json.loads(listing(copy, "1", "2026-01-01", []))
    assert set(told["planner"]) == set(planner)
    assert told["size"]["planner"] == 170


def test_the_last_of_what_is_needed_gives_way_first_and_is_named() -> None:
    big = {"cautions/c": noise(700), "figures/f": noise(700, 2), "procedures/p": noise(700, 3)}
    files = {**SMALL, **{f"{address}/index.html": content for address, content in big.items()}}
    room = sum(transferred(path, content) for path, content in chosen(files).first.items())
    copy = chosen(files, room - 300)
    assert copy.left_out == ["procedures/p/index.html"]
    assert "figures/f/index.html" in copy.first
    copy = chosen(files, room - 1000)
    assert copy.left_out == ["figures/f/index.html", "procedures/p/index.html"]
    assert "cautions/c/index.html" in copy.first


def test_a_stage_gives_way_to_the_procedure_that_holds_its_steps() -> None:
    """Nothing that is read on a ladder is lost: its steps are saved on the page of the procedure."""
    told = {"devices/x/fix/index.html": noise(700), "procedures/fix-it/index.html": noise(700, 2)}
    files = {**SMALL, **told}
    whole = chosen(files)
    assert whole.groups[-1] == "stages of installing"
    copy = chosen(files, whole.size(whole.first) - 300)
    assert copy.left_out == []
    assert "devices/x/fix/index.html" in copy.rest
    assert "procedures/fix-it/index.html" in copy.first
    assert copy.groups[-1] == "stages of installing as far as they fit"


@given(st.integers(0, 60_000), st.integers(0, 2**32))
def test_the_budget_is_never_passed(budget: int, seed: int) -> None:
    chance = Random(seed)
    files = {path: chance.randbytes(chance.randrange(4000)) for path in SMALL}
    copy = chosen(files, budget)
    assert copy.size(copy.first) <= budget
    assert not set(copy.first) & set(copy.rest)
    assert set(copy.left_out) <= set(copy.rest)


def test_what_is_only_welcome_leaves_room_for_what_is_needed() -> None:
    """A stage, whose steps stand on the pages of procedures, fills nothing beyond 1.4 MB; a procedure may."""
    told = {"devices/x/fix/index.html": noise(9000), "procedures/fix-it/index.html": noise(9000, 2)}
    copy = chosen({**SMALL, **told, "faults/large/index.html": noise(1_395_000, 3)})
    assert "devices/x/fix/index.html" in copy.rest
    assert "procedures/fix-it/index.html" in copy.first


def test_the_words_are_saved_because_pages_lead_to_them() -> None:
    assert "terms/index.html" in chosen({**SMALL, "terms/index.html": noise(500)}).first


def test_the_size_is_what_travels() -> None:
    text = b"the same again " * 500
    assert transferred("a/index.html", text) == len(gzip.compress(text, 6))
    assert transferred("favicon.png", text) == len(text)
    assert BUDGET == 1_500_000


def test_the_list_names_every_file_by_its_content_and_itself_by_all_of_them() -> None:
    copy = chosen(SMALL)
    first = json.loads(listing(copy, "1.2", "2031-02-03", []))
    assert first["first"]["faults/a/index.html"] == sha256(b"a").hexdigest()[:16]
    assert set(first["first"]) == set(copy.first)
    assert first["version"].startswith("1.2-")
    assert first["size"] == {"first": copy.size(copy.first), "rest": copy.size(copy.rest), "planner": 0}
    other = json.loads(listing(chosen({**SMALL, "devices/x/fix/index.html": b"fixed"}), "1.2", "2031-02-03", []))
    assert other["id"] != first["id"]
    assert json.loads(listing(copy, "1.2", "2031-02-03", [])) == first


def test_the_worker_is_stamped_last(tmp_path: Path) -> None:
    for path, content in SMALL.items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_bytes(content)
    done = stamp(tmp_path, "2031-02-03", [])
    text = (tmp_path / "offline.json").read_bytes()
    assert f'const STAMP = "{sha256(text).hexdigest()}";' in (tmp_path / "sw.js").read_text("utf-8")
    assert "{{" not in (tmp_path / "sw.js").read_text("utf-8")
    assert done.first_files == len(json.loads(text)["first"])
    again = (tmp_path / "sw.js").read_bytes()
    stamp(tmp_path, "2031-02-03", [])
    assert (tmp_path / "sw.js").read_bytes() == again


PAGE = '<!doctype html><html><head><meta charset="utf-8"><title>x</title></head><body><h1>On site</h1></body></html>'


def small_site(root: Path) -> Path:
    (root / "on-site").mkdir(parents=True)
    (root / "index.html").write_text(PAGE, "utf-8")
    (root / "on-site" / "index.html").write_text(PAGE, "utf-8")
    return root


def test_a_site_is_finished_and_can_be_switched_off(tmp_path: Path) -> None:
    library = base_library(lay(tmp_path / "project"))
    site = small_site(tmp_path / "site")
    done = finish(site, library, UNDATED)
    assert done.first_files
    assert "MB" in str(done)
    assert all("Content-Security-Policy" in path.read_text("utf-8") for path in site.rglob("*.html"))
    assert json.loads((site / "offline.json").read_text("utf-8"))["date"] == UNDATED
    finder = json.loads((site / "finder.json").read_text("utf-8"))
    assert "on-site/" in [id_ for kind, id_, *_ in finder["entries"] if finder["kinds"][kind][0] == "page"]
    assert (site / "sw-off.js").read_bytes() == (WORKER / "sw-off.js").read_bytes()

    off = small_site(tmp_path / "off")
    assert "switched off" in str(finish(off, library, UNDATED, offline=False))
    assert (off / "sw.js").read_bytes() == (WORKER / "sw-off.js").read_bytes()
    assert (off / "offline.json").read_text("utf-8") == OFF


def test_what_no_page_asks_for_is_not_served(tmp_path: Path) -> None:
    site = small_site(tmp_path / "lunr" / "site")  # wherever the site itself may lie
    theme = site / "assets" / "javascripts"
    (theme / "lunr" / "min").mkdir(parents=True)
    gone = [theme / "bundle.1.min.js.map", theme / "lunr" / "tinyseg.js", theme / "lunr" / "min" / "lunr.de.min.js"]
    for path in (*gone, theme / "bundle.1.min.js"):
        path.write_text("x", "utf-8")
    finish(site, base_library(lay(tmp_path / "project")), UNDATED)
    assert (theme / "bundle.1.min.js").is_file()
    assert (site / "on-site" / "index.html").is_file()
    assert not any(path.exists() for path in gone)


def test_a_safety_correction_of_a_record_reaches_the_list(tmp_path: Path) -> None:
    root = lay(tmp_path / "project")
    record = next((root / "content" / "faults").glob("*.yaml"))
    text = record.read_text("utf-8")
    correction = "safety_correction: {version: 2, text: 'Isolate the <supply> first; see [[term/reed|the reed]].'}\n"
    change(root, f"content/faults/{record.name}", text, f"{text}{correction}")
    site = small_site(tmp_path / "site")
    from .support import check

    finish(site, check(root).library, UNDATED)
    (told,) = json.loads((site / "offline.json").read_text("utf-8"))["corrections"]
    assert told["key"] == f"fault/{record.stem}/2"
    assert told["address"] == f"faults/{record.stem}/"
    assert told["text"].startswith("Isolate the <supply> first; see the reed")


# -- the date ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("seconds", "written"),
    [(0, "1970-01-01"), (86_399, "1970-01-01"), (951_782_400, "2000-02-29"), (4_107_542_400, "2100-03-01")],
)
def test_a_day_is_the_calendars(seconds: int, written: str) -> None:
    """Worked by hand: 2000 has a leap day, 2100 has none (Gregorian calendar, ISO 8601)."""
    assert day(seconds) == written


def test_the_date_is_given_or_that_of_the_last_commit_or_none(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "86400")
    assert copy_date(tmp_path) == "1970-01-02"
    monkeypatch.delenv("SOURCE_DATE_EPOCH")
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    assert copy_date(tmp_path) == UNDATED
    monkeypatch.setenv("GIT_COMMITTER_DATE", "2030-05-06T12:00:00+0000")
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", "/dev/null")
    names = ["-c", "user.name=A", "-c", "user.email=a@example.org"]
    for words in (["init", "-q"], [*names, "commit", "-q", "--allow-empty", "-m", "x"]):
        subprocess.run(["git", "-C", str(tmp_path), *words], check=True)
    assert copy_date(tmp_path) == "2030-05-06"
    monkeypatch.setenv("PATH", "")
    assert copy_date(tmp_path) == UNDATED
