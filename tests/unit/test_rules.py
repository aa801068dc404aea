"""Every rule finds what it is for, at the right place, and leaves its near misses alone.

The records are under `tests/records/`; its README says how to add one.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from latchside.figures.units import symbol
from latchside.rules import all_rules

from ..each import each
from .support import BASE, Expected, case_id, cases, check, lay, schemas


def test_base_project_is_clean(tmp_path: Path) -> None:
    assert check(lay(tmp_path)).findings == ()


@pytest.mark.parametrize("case", cases("bad"), ids=case_id)
def test_finds(case: Path, tmp_path: Path) -> None:
    Expected(case).compare(check(lay(tmp_path, case)).findings)


@pytest.mark.parametrize("case", cases("good"), ids=case_id)
def test_leaves_alone(case: Path, tmp_path: Path) -> None:
    assert check(lay(tmp_path, case)).findings == ()


@pytest.mark.parametrize("top", ["good", "bad"])
def test_every_rule_has_records_and_every_folder_a_rule(top: str) -> None:
    folders = {case.parent.name for case in cases(top)}
    assert folders == {rule.code for rule in all_rules()}


@each("case", cases("bad"), ids=case_id)
def test_bad_records_are_for_the_rule_of_their_folder(case: Path) -> None:
    assert {line.rpartition(" ")[2] for line in Expected(case).lines} == {case.parent.name}


def after_first_line(path: Path) -> str:
    return path.read_text("utf-8").partition("\n")[2]


@each("case", [*cases("good"), *cases("bad")], ids=case_id)
def test_overlay_changes_something(case: Path) -> None:
    """A near miss that is the base project word for word would show nothing."""
    files = [path for path in case.rglob("*.*") if path.suffix in (".yaml", ".svg")]
    assert files
    for path in files:
        same = BASE / path.relative_to(case)
        # the first line differs anyway: it names the schema from where the file lies
        assert not same.exists() or after_first_line(same) != after_first_line(path)


def test_rules_are_stated_and_in_order() -> None:
    rules = all_rules()
    assert [rule.code for rule in rules] == sorted({rule.code for rule in rules})
    for rule in rules:
        assert rule.sentence.endswith("."), rule.code
        assert rule.sentence[0].isupper(), rule.code


def test_every_unit_of_the_vocabulary_is_known_to_typed_number(tmp_path: Path) -> None:
    """A unit that a value may have, typed in a text by its sign or its word, is found like any other."""
    root = lay(tmp_path)
    like = (BASE / "shared/terms/contact.yaml").read_text("utf-8").partition("instead_of")[0]
    typed: dict[str, str] = {}
    for unit, word in schemas().words("unit").items():
        forms = [symbol(unit)]
        if word.isalpha():
            forms += [word, word if word.endswith("z") else "feet" if word == "foot" else f"{word}s"]
        # "in" is a word of every sentence; a rate such as 1/d is no unit after digits
        for form in forms if unit != "in" and not unit.startswith("1/") and symbol(unit) else ():
            typed[f"unit-{len(typed)}"] = f"It is 5 {form} wide."
    for id_, text in typed.items():
        record = like.replace("id: contact", f"id: {id_}").replace("name: Contact", f"name: {id_}")
        record = record.replace("meaning: A reed and", f"meaning: {text} A reed and")
        (root / f"shared/terms/{id_}.yaml").write_text(record, "utf-8")
    found = {Path(one.file).stem for one in check(root).findings if one.code == "typed-number"}
    assert [text for id_, text in typed.items() if id_ not in found] == []
