"""A message file that does not read is found by the check, with its line, before anything is said in its words."""

from __future__ import annotations

import shutil
from pathlib import Path

from latchside.messages import FOLDER
from latchside.read.message_files import broken_messages
from latchside.root import ROOT


def test_the_shipped_messages_read() -> None:
    assert not broken_messages(ROOT)


def test_a_broken_message_is_found_at_its_place(tmp_path: Path) -> None:
    folder = tmp_path / "en"
    shutil.copytree(FOLDER / "rules", folder / "rules")
    assert not broken_messages(tmp_path, folder)
    assert not broken_messages(tmp_path, folder), "known to be sound"
    (folder / "rules/rule.ftl").write_text("good = as it should\nbad = open { $value\nnext = again\n", "utf-8")
    for _ in range(2):  # what is broken is never remembered as sound
        assert broken_messages(tmp_path, folder) == ('en/rules/rule.ftl:3:1: Expected token: "}"',)


def test_messages_that_are_not_of_the_project_are_left_alone(tmp_path: Path) -> None:
    assert not broken_messages(tmp_path)
