"""The command: what it prints, where it stops, and what it never overwrites."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import click
import pytest
import yaml
from click.testing import CliRunner, Result

from latchside.cli import main
from latchside.kinds import KINDS
from latchside.project import Checked
from latchside.root import ROOT

from .support import RECORDS, check, lay, lines

BAD = RECORDS / "bad" / "harmless-notice" / "injury"
HARM = "content/cautions/wet-paint.yaml:10:14 harmless-notice"
KIND_IDS = list(KINDS)


def run(*arguments: str | Path) -> Result:
    result = CliRunner().invoke(main, [str(one) for one in arguments])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return lay(tmp_path / "project")


@pytest.fixture
def broken(tmp_path: Path) -> Path:
    return lay(tmp_path / "broken", BAD)


def content(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


# -- check ---------------------------------------------------------------------------------------------------


def test_check_of_a_clean_project(root: Path) -> None:
    result = run("check", "--root", root)
    assert result.exit_code == 0
    assert result.output == f"{len(list(root.rglob('*.yaml')))} records, nothing found.\n"


def test_check_that_finds(broken: Path) -> None:
    result = run("check", "--root", broken)
    assert result.exit_code == 1
    assert result.output.startswith("content/cautions/wet-paint.yaml:10:14: error harmless-notice\n")
    assert result.output.endswith("1 error, 0 warnings.\n")


def test_check_as_json(root: Path, broken: Path) -> None:
    clean, found = run("check", "--json", "--root", root), run("check", "--root", broken, "--json")
    assert (clean.exit_code, found.exit_code) == (0, 1)
    assert json.loads(clean.output) == []
    assert [one["code"] for one in json.loads(found.output)] == ["harmless-notice"]


def test_check_as_annotations(root: Path, broken: Path) -> None:
    clean, found = run("check", "--github", "--root", root), run("check", "--root", broken, "--github")
    assert (clean.exit_code, found.exit_code) == (0, 1)
    assert clean.output == ""
    assert found.output.startswith(
        "::error file=content/cautions/wet-paint.yaml,line=10,col=14,title=harmless-notice::"
    )
    assert found.output.count("\n") == 1


def test_check_changes_nothing(broken: Path) -> None:
    before = content(broken)
    run("check", "--root", broken)
    assert content(broken) == before


def test_check_of_no_folder(tmp_path: Path) -> None:
    result = run("check", "--root", tmp_path / "nowhere")
    assert result.exit_code == 2
    assert "does not exist" in result.output


# -- new -----------------------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def shipped_copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The shipped records, because a new one refers to some of them, and the pages that show their drawings."""
    root = tmp_path_factory.mktemp("shipped")
    for folder in ("content", *(kind.folder for kind in KINDS.values())):
        shutil.copytree(ROOT / folder, root / folder, dirs_exist_ok=True)
    return root


def test_new_record_has_findings_at_its_blanks_only(shipped_copy: Path, shipped: Checked) -> None:
    """A new record of each kind at once: each has findings, and nothing else has."""
    files = {kind: f"{KINDS[kind].folder}/gate-trial.yaml" for kind in KIND_IDS}
    for kind, file in files.items():
        result = run("new", kind, "gate-trial", "--root", shipped_copy)
        assert result.exit_code == 0
        assert file in result.output
    before = lines(shipped.findings)
    found = [one for one in check(shipped_copy).findings if lines([one]) - before]
    assert {one.file for one in found} == set(files.values()), "a record of blanks only must not pass"
    for one in found:
        blank = (shipped_copy / one.file).read_text("utf-8").split("\n")[one.place.line - 1]
        assert "FILL IN" in blank or "fill-in" in blank, (one, blank)


@pytest.mark.parametrize("kind", KIND_IDS)
def test_new_record_says_what_each_key_is_for(kind: str, root: Path) -> None:
    run("new", kind, "gate-trial", "--root", root)
    path = root / KINDS[kind].folder / "gate-trial.yaml"
    text = path.read_text("utf-8")
    schema = json.loads((ROOT / "schema" / KINDS[kind].schema).read_text("utf-8"))
    written = text.split("\n")
    for key in schema["properties"]:
        line = next(n for n, line in enumerate(written) if line.startswith((f"{key}:", f"# {key}:")))
        assert written[line - 1].startswith("# "), key
    up = "../" * len(Path(KINDS[kind].folder).parts)
    assert written[0] == f"# yaml-language-server: $schema={up}schema/{KINDS[kind].schema}"
    assert max(map(len, written)) < 200


def test_new_makes_the_folder(tmp_path: Path) -> None:
    assert run("new", "term", "first", "--root", tmp_path).exit_code == 0
    assert (tmp_path / "shared/terms/first.yaml").is_file()


def test_new_does_not_overwrite(root: Path) -> None:
    before = content(root)
    result = run("new", "term", "leaf", "--root", root)
    assert result.exit_code == 1
    assert "is there already; nothing was written" in result.output
    assert content(root) == before


@pytest.mark.parametrize(
    "name",
    ["../x", "..", "a/b", "/etc/x", "A", "a_b", "a--b", "-a", "1a", "a.yaml", "a\n", "", " ", "é", "a" * 61, "a\\b"],
)
def test_new_takes_no_other_name_than_an_id(name: str, root: Path, tmp_path: Path) -> None:
    before = content(tmp_path)
    result = run("new", "--root", root, "--", "term", name)
    assert result.exit_code == 1
    assert "is not an id" in result.output
    assert content(tmp_path) == before


def test_new_device_is_given_the_traits_that_are_named(root: Path) -> None:
    traits = {"senses": "tilt", "reports": "radio", "mounts": "drilled"}
    options = [word for trait, value in traits.items() for word in (f"--{trait}", value)]
    assert run("new", "device", "gate-trial", *options, "--root", root).exit_code == 0
    record = yaml.safe_load((root / "content/devices/gate-trial.yaml").read_text("utf-8"))
    assert record["traits"] == traits


def test_a_trait_that_nobody_named_is_a_blank_and_no_guess(root: Path) -> None:
    """All else of a device follows from its traits, so none is taken for granted."""
    assert run("new", "device", "gate-trial", "--senses", "tilt", "--root", root).exit_code == 0
    record = yaml.safe_load((root / "content/devices/gate-trial.yaml").read_text("utf-8"))
    assert record["traits"] == {"senses": "tilt", "reports": "FILL IN", "mounts": "FILL IN"}
    told = run("check", "--root", root)
    assert told.exit_code == 1
    assert sum("blank-left" in line and "gate-trial" in line for line in told.output.splitlines()) >= 2


def test_new_knows_the_traits_of_the_project_at_hand(root: Path, tmp_path: Path) -> None:
    """A kind of sensing that the project has added to its list is offered there, and nowhere else."""
    vocabulary = "schema/vocabulary.schema.json"
    (tmp_path / "schema").mkdir()
    for path in (ROOT / "schema").glob("*.json"):
        text = path.read_text("utf-8")
        more = text.replace('"tilt": "tilt",', '"tilt": "tilt", "light": "light",')
        (tmp_path / "schema" / path.name).write_text(more if path.name in vocabulary else text, "utf-8")
    words = ("new", "device", "gate-trial", "--senses", "light")
    assert run(*words, "--root", tmp_path).exit_code == 0
    refused = run(*words, "--root", root)
    assert refused.exit_code == 2
    assert "'light' is not one of 'reed-and-magnet', 'loop'" in refused.output
    assert "--senses [reed-and-magnet|loop|" in run("new", "--root", root, "--help").output


@pytest.mark.parametrize(("kind", "like"), [("device", ["--like", "recessed-contact"]), ("term", [])])
def test_new_takes_traits_only_where_they_are_asked(kind: str, like: list[str], root: Path) -> None:
    result = run("new", kind, "gate-trial", *like, "--reports", "radio", "--root", root)
    assert result.exit_code == 1
    assert "--reports: only for a device without --like" in result.output


def test_new_of_no_kind(root: Path) -> None:
    result = run("new", "thing", "x", "--root", root)
    assert result.exit_code == 2
    assert "'thing' is not one of" in result.output


# -- render --------------------------------------------------------------------------------------------------


def test_render_writes_the_same_bytes_twice(root: Path, tmp_path: Path) -> None:
    first, second = tmp_path / "a", tmp_path / "b"
    result = run("render", "--root", root, "--out", first)
    assert result.exit_code == 0
    assert run("render", "--root", root, "--out", second).exit_code == 0
    pages = content(first)
    assert pages == content(second)
    assert f"{len(pages)} pages" in result.output
    assert "devices/pane-contact/index.md" in pages
    assert "devices/old-pane-contact/index.md" in pages  # its old address leads on
    assert "devices/pane-contact/install/index.md" in pages
    assert "terms/index.md" in pages


def test_render_depends_on_nothing_but_the_records(root: Path, tmp_path: Path) -> None:
    """Not on where the project lies, nor on when its files were written."""
    moved = lay(tmp_path / "elsewhere" / "deep" / "below")
    for path in moved.rglob("*.yaml"):
        path.touch()
    assert run("render", "--root", root, "--out", tmp_path / "a").exit_code == 0
    assert run("render", "--root", moved, "--out", tmp_path / "b").exit_code == 0
    pages = content(tmp_path / "a")
    assert pages == content(tmp_path / "b")
    assert not [path for path, text in pages.items() if str(tmp_path).encode() in text]


def test_render_into_an_empty_folder(root: Path, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    assert run("render", "--root", root, "--out", tmp_path / "out").exit_code == 0


def test_render_refuses_a_folder_that_holds_something(root: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "kept.txt").write_text("mine", "utf-8")
    result = run("render", "--root", root, "--out", out)
    assert result.exit_code == 1
    assert "not empty; nothing was written" in result.output
    assert content(out) == {"kept.txt": b"mine"}


def test_render_refuses_records_with_errors(broken: Path, tmp_path: Path) -> None:
    result = run("render", "--root", broken, "--out", tmp_path / "out")
    assert result.exit_code == 1
    assert "harmless-notice" in result.output
    assert not (tmp_path / "out").exists()


# -- help ----------------------------------------------------------------------------------------------------


COMMANDS = main.list_commands(click.Context(main))


@pytest.mark.parametrize(
    "command", [(), *((name,) for name in COMMANDS)], ids=lambda command: " ".join(command) or "latchside"
)
@pytest.mark.parametrize("flag", ["-h", "--help"])
def test_help(command: tuple[str, ...], flag: str) -> None:
    result = run(*command, flag)
    assert result.exit_code == 0
    assert result.output.startswith("Usage:")


def test_every_option_is_explained() -> None:
    for name in COMMANDS:
        command = main.get_command(click.Context(main), name)
        assert command
        for option in command.params:
            assert not isinstance(option, click.Option) or option.help, f"{command.name} {option.name}"
