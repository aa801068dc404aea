"""A new record is named by the device that it is for: where a blank proposed it, or beside the others."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

from latchside.blanks import BLANK
from latchside.kinds import KINDS
from latchside.new.like import end_of

WORK_TIMES = "shared/tables/work-times.yaml"
_LISTS = {"procedure": "procedures", "checklist": "checklists", "drawing": "drawings"}


def device_file(root: Path, device: str) -> Path:
    """The file of a device. Raises ValueError where there is none."""
    path = root / KINDS["device"].folder / f"{device}.yaml"
    if not path.is_file():
        raise ValueError(f"there is no device {device}: no file {path.relative_to(root)}")
    return path


def link(root: Path, kind: str, id_: str, device: str, stage: str = "") -> str:
    """Name `id_` in the record of a device, and return the stage under which a procedure stands there.

    Raises ValueError where nothing says at which stage a procedure is done.
    """
    path = device_file(root, device)
    text = path.read_text("utf-8").replace(f"{BLANK} {id_}", id_)
    listed = _under(yaml.compose(text, Loader=yaml.SafeLoader), _LISTS[kind])
    if kind == "procedure":
        stages = {key.value: value for key, value in listed.value} if listed else {}
        there = next((name for name, value in stages.items() if _holds(value, id_)), "")
        if not there and stage not in stages:
            raise ValueError(f"{device} does not say when {id_} is done: add --stage with one of {', '.join(stages)}")
        stage, listed = there or stage, stages[there or stage]
    if listed is None:
        text = f"{text.rstrip()}\n{_LISTS[kind]}: [{id_}]\n"
    elif not _holds(listed, id_):
        text = _with(text, listed, id_)
    path.write_text(text, "utf-8")
    return stage


def add_work_time(root: Path, procedure: str) -> None:
    """A row of blanks for the minutes of a procedure, where the project has the table of them and no such row."""
    path = root / WORK_TIMES
    if not path.is_file():
        return
    text = path.read_text("utf-8")
    rows = _under(yaml.compose(text, Loader=yaml.SafeLoader), "rows")
    if rows is None or any(_under(row, "id").value == procedure for row in rows.value):
        return
    column = rows.start_mark.column
    row = (
        f"- id: {procedure}",
        f'  cells: {{work: "[[procedure/{procedure}]]", low: {BLANK}, usual: {BLANK}, high: {BLANK}, waiting: 0, '
        f"why: {BLANK}}}",
        "  status: common practice",
    )
    at = end_of(rows)
    added = "".join(f"\n{' ' * column}{line}" for line in row)
    path.write_text(text[:at] + added + text[at:], "utf-8")


def _under(node: Any, name: str) -> Any:
    return next((value for key, value in node.value if key.value == name), None)


def _holds(node: Any, id_: str) -> bool:
    return isinstance(node, yaml.SequenceNode) and any(one.value == id_ for one in node.value)


def _with(text: str, listed: Any, id_: str) -> str:
    """The text with one more id in a list, or a list in the place of `none`."""
    start, end = listed.start_mark.index, end_of(listed)
    if not isinstance(listed, yaml.SequenceNode):
        return f"{text[:start]}[{id_}]{text[end:]}"
    if listed.flow_style:
        return f"{text[: end - 1]}{', ' if listed.value else ''}{id_}{text[end - 1 :]}"
    return f"{text[:end]}\n{' ' * listed.start_mark.column}- {id_}{text[end:]}"
