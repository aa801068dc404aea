"""One survey planned and written, in whichever process: what `latchside plan` hands to its workers."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from pathlib import Path
from typing import Any

import click

from latchside import out as place
from latchside import report
from latchside.cli.screen import Outcome
from latchside.findings import START, Finding
from latchside.messages import messages
from latchside.planning import summary
from latchside.planning.plan import Plan
from latchside.surveys.sheet import DAY, consequence
from latchside.surveys.text import visible

message = messages(__name__)
_LONGEST = 300


@dataclass(frozen=True)
class Order:
    """What is asked of every survey, and the project whose records plan it.

    `stamp` is the fingerprint of those records where a worker may read others, and empty where it reads these. `own`
    are the firm's own figures for house rules, by name.
    """

    root: Path
    on: date | None
    out: Path | None
    as_json: bool
    pdf: bool
    address: str
    several: bool
    stamp: str
    own: tuple[tuple[str, float], ...] = ()


def planned(order: Order, piece: tuple[int, Path]) -> Outcome:
    """One survey read, planned and, where an order says so, written. Runs in any process.

    Whatever goes wrong with it is a finding of this survey, and never costs another.
    """
    _, path = piece
    try:
        return _planned(order, piece)
    except click.ClickException:
        raise  # concerns all surveys alike: the records, or the folder that packs are written to
    except Exception as error:
        found, expected, action = message.finding("unexpected", error=f"{type(error).__name__}: {error}")
        finding = Finding(str(path), START, "cannot-plan", visible(found[:_LONGEST]), expected, action)
    return Outcome(report.as_text([finding]), 1)


def lost(piece: tuple[int, Path]) -> Outcome:
    """What came of a survey whose worker was lost twice: a finding."""
    return Outcome(report.as_text([Finding(str(piece[1]), START, "cannot-plan", *message.finding("lost"))]), 1)


def _planned(order: Order, piece: tuple[int, Path]) -> Outcome:
    number, path = piece
    read, findings = _read(path, order)
    errors = sum(one.level == "error" for one in findings)
    text = report.as_text(findings)
    if read is None:
        return Outcome(text, errors)
    folder = None
    if order.out:
        folder = order.out / f".part-{number}" if order.several else order.out
        _write(read, folder, order)
    shown = ""
    if order.as_json:
        from latchside.packs.data import plan_json

        shown = plan_json(read).rstrip("\n")
    if order.several and not shown:
        shown = summary.heading(read)
    alone = None if order.several else read
    problems, questions = len(read.problems), len(read.questions)
    return Outcome(text, errors, problems, questions, read.survey.id, shown, alone, folder)


def _read(path: Path, order: Order) -> tuple[Plan | None, list[Finding]]:
    from latchside.planning.make import make_plan
    from latchside.planning.unread import with_unread
    from latchside.surveys.read import read_survey

    library, figures = _equipped(order.root, order.stamp, order.own)
    survey, found = read_survey(path, library.schemas)
    findings = list(found)
    if survey is None:
        return None, findings
    day = order.on or survey.surveyed
    if day is None and any(one.action.endswith(consequence((DAY,))) for one in found):
        return None, findings  # why there is none is said already
    if day is None:
        findings.append(Finding(str(path), START, "no-date", *message.finding("no-date")))
        return None, findings
    made = make_plan(survey, library, figures, day)
    return with_unread(made, found), findings


@lru_cache(maxsize=1)
def tools(root: Path, stamp: str) -> tuple[Any, Any]:
    """The library and the figures, made once a process for records of one fingerprint."""
    from latchside.figures.catalogue import figures_of
    from latchside.project import check_project, fingerprint

    if stamp and stamp != fingerprint(root):
        raise click.ClickException(message("other-records", folder=str(root)))
    checked = check_project(root)
    if checked.errors:
        click.echo(report.as_text(checked.findings), err=True)
        raise click.ClickException(message("records-not-sound", command="latchside check"))
    return checked.library, figures_of(checked.library)


def made_ready(order: Order) -> None:
    """Read the records before the first survey comes."""
    _equipped(order.root, order.stamp, order.own)


def own_rules(file: Path | None, root: Path) -> tuple[tuple[str, float], ...]:
    """The firm's own figures in a file of house rules, for an order. Raises ClickException where it is not sound."""
    from latchside.planning.own_rules import read_own

    if file is None:
        return ()
    try:
        text = file.read_text("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise click.ClickException(message("house-unread", file=str(file), error=str(error))) from None
    own, findings = read_own(text, str(file), tools(root, "")[0])
    if findings:
        click.echo(report.as_text(findings), err=True)
        raise click.ClickException(message("house-not-sound", file=str(file)))
    return tuple(sorted(own.items()))


@lru_cache(maxsize=1)
def _equipped(root: Path, stamp: str, own: tuple[tuple[str, float], ...]) -> tuple[Any, Any]:
    """The same tools for a firm with figures of its own."""
    from latchside.figures.catalogue import figures_of
    from latchside.planning.own_rules import with_own

    if not own:
        return tools(root, stamp)
    library = with_own(tools(root, stamp)[0], dict(own))
    return library, figures_of(library)


def _write(made: Plan, folder: Path, order: Order) -> None:
    from latchside.packs.pack import pack

    files = pack(made, _equipped(order.root, order.stamp, order.own)[0], site=order.address, with_pdf=order.pdf)
    with place.said(order.out or folder):
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in files.items():
            (folder / name).write_bytes(content)
