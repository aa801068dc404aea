"""`latchside plan`: from a survey, or a folder of them, to what the job needs, shown or written as a pack."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from functools import cache, partial
from pathlib import Path
from shutil import rmtree
from typing import Any

import click

from latchside import many, report
from latchside import out as place
from latchside.cli.options import root_option
from latchside.cli.screen import Outcome, Screen
from latchside.findings import START, Finding
from latchside.planning import summary
from latchside.planning.plan import Plan, Problem
from latchside.surveys.codes import CODES
from latchside.surveys.sheet import NO_DAY
from latchside.surveys.text import visible

ENDINGS = (".yaml", ".yml", ".json", ".csv", ".tsv", ".xlsx")
"""Files of these names are surveys, where a folder is given."""


_DAY = re.compile(r"20[0-9]{2}-[0-9]{2}-[0-9]{2}")
"""A day in the years that a survey may bear too, so that all that falls due after it has a date."""
_LONGEST = 300


@dataclass(frozen=True)
class Order:
    """What is asked of every survey, and the project whose records plan it."""

    root: Path
    on: date | None
    out: Path | None
    as_json: bool
    pdf: bool
    address: str
    several: bool


@click.command()
@click.argument("surveys", metavar="SURVEY...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "--out", type=click.Path(file_okay=False, path_type=Path), help="Write the pack here: a new or empty folder."
)
@click.option("--date", "on", metavar="YYYY-MM-DD", help="The day it is planned for; by default that of the survey.")
@click.option("--json", "as_json", is_flag=True, help="Print the whole plan as JSON; of several, a list.")
@click.option("--pdf", is_flag=True, help="With --out: write the document as a PDF too. Needs WeasyPrint.")
@click.option("--address", default="", help="With --out: where the site is served, so that the document links into it.")
@root_option
def plan(
    surveys: tuple[Path, ...], out: Path | None, on: str | None, as_json: bool, pdf: bool, address: str, root: Path
) -> None:  # fmt: skip
    """Plan the job of a survey; a folder stands for all surveys in it.

    Shows which device goes on which opening, what stands open, and with --out writes the pack. Exit 1 where an error
    or a problem stands.
    """
    files = _files(surveys)
    several = len(files) > 1 or any(path.is_dir() for path in surveys)
    order = Order(root, _day(on), out, as_json, _pdf(pdf, out), _address(address), several)
    place.ready(out)
    bad = False
    try:
        with Screen(len(files), several=several, as_json=as_json) as screen:
            for path, done in zip(files, _outcomes(files, order), strict=True):
                if several and out:
                    with place.said(out):
                        done = _kept(path, done, out)
                screen.show(done)
                bad = bad or bool(done.errors or done.problems)
    finally:
        for part in out.glob(".part-*") if several and out else ():
            rmtree(part, ignore_errors=True)
    sys.exit(1 if bad else 0)


def _outcomes(files: list[Path], order: Order) -> Iterator[Outcome]:
    _tools(order.root)  # records with errors are said once, and here
    pieces = list(enumerate(files))
    return many.each(pieces, partial(planned, order), partial(_tools_ready, order.root))


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
        found = f"what the planner did not expect: {type(error).__name__}: {error}"
        expected, action = (
            "a survey that can be planned",
            "Look for a value that is out of the ordinary, and report it.",
        )
        finding = Finding(str(path), START, "cannot-plan", visible(found[:_LONGEST]), expected, action)
    return Outcome(report.as_text([finding]), 1)


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
    from latchside.surveys.read import read_survey

    library, figures, _ = _tools(order.root)
    survey, found = read_survey(path, library.schemas)
    findings = list(found)
    if survey is None:
        return None, findings
    day = order.on or survey.surveyed
    if day is None and any(one.action.endswith(NO_DAY) for one in found):
        return None, findings  # why there is none is said already
    if day is None:
        expected, action = "the day the job is planned for", "Give it with --date YYYY-MM-DD, or write `surveyed`."
        findings.append(Finding(str(path), START, "no-date", "a survey without a day", expected, action))
        return None, findings
    made = make_plan(survey, library, figures, day)
    unread = [one for one in found if one.level == "error" or one.code in CODES]
    return replace(made, problems=(*map(_unread, unread), *made.problems)), findings


def _unread(one: Finding) -> Problem:
    """What could not be read of a survey, for the pack: nothing that is left out of it goes unsaid."""
    where = f"Line {one.place.line} of the survey"
    if one.code in CODES:
        return Problem("site", one.code, f"{where}: {one.found}.", one.action)
    found = f"{where} could not be read: {one.found}"
    return Problem("site", "not-read", f"{found}.", "Correct the survey and plan again.")


@cache
def _tools(root: Path) -> tuple[Any, Any, Any]:
    """The library, the figures and the writer of pages, made once a process."""
    from latchside.figures.catalogue import catalogue
    from latchside.pages.render import Writer
    from latchside.project import check_project

    checked = check_project(root)
    if checked.errors:
        click.echo(report.as_text(checked.findings), err=True)
        raise click.ClickException("The records have errors. Fix them first: latchside check")
    return checked.library, catalogue(root), Writer(checked.library)


def _tools_ready(root: Path) -> None:
    _tools(root)


def _write(made: Plan, folder: Path, order: Order) -> None:
    from latchside.pages.job_pack import pack

    files = pack(made, _tools(order.root)[2], site=order.address, with_pdf=order.pdf)
    with place.said(order.out or folder):
        folder.mkdir(parents=True, exist_ok=True)
        for name, content in files.items():
            (folder / name).write_bytes(content)


def _kept(path: Path, done: Outcome, out: Path) -> Outcome:
    """The pack of one of several surveys under its own id; the second of one id is refused."""
    if done.folder is None or done.id is None:
        return done
    target = out / done.id
    if not target.exists():
        done.folder.rename(target)
        return replace(done, folder=target)
    rmtree(done.folder)
    expected, action = "ids that differ", "Give this survey an id of its own."
    finding = Finding(str(path), START, "id-twice", f"another survey named {done.id}", expected, action)
    text = "\n\n".join(filter(None, (done.findings, report.as_text([finding]))))
    return Outcome(text, done.errors + 1)


def _files(surveys: Iterable[Path]) -> list[Path]:
    found: list[Path] = []
    for path in surveys:
        if path.is_dir():
            inside = sorted(one for one in path.iterdir() if one.suffix.lower() in ENDINGS and one.is_file())
            below = _below(path)
            if below:
                click.echo(
                    f"Not looked into: {', '.join(map(str, below))}. Name a folder to plan its surveys.\n", err=True
                )
            if not inside:
                raise click.ClickException(f"{path} holds no survey: no file that ends in {', '.join(ENDINGS)}.")
            found += [one for one in inside if not one.name.startswith(".")]
        elif path.is_file():
            found.append(path)
        else:
            raise click.ClickException(f"There is no file {path}.")
    return found


def _below(folder: Path) -> list[Path]:
    """The folders in a folder that hold what may be surveys; those of packs are none."""
    inside = sorted(one for one in folder.iterdir() if one.is_dir() and not one.name.startswith("."))
    return [
        one
        for one in inside
        if not (one / "index.html").exists() and any(file.suffix.lower() in ENDINGS for file in one.iterdir())
    ]


def _day(text: str | None) -> date | None:
    if text is None:
        return None
    try:
        return date.fromisoformat(text) if _DAY.fullmatch(text) else _refuse_day(text)
    except ValueError:
        return _refuse_day(text)


def _refuse_day(text: str) -> date:
    raise click.ClickException(f'"{text}" is no day of the years 2000 to 2099: write it as 2026-03-09.')


def _pdf(wanted: bool, out: Path | None) -> bool:
    if wanted:
        from latchside.packs.pdf import NoPdfError, ready

        if out is None:
            raise click.ClickException("--pdf needs --out: the PDF is written with the pack.")
        try:
            ready()
        except NoPdfError as error:
            raise click.ClickException(str(error)) from None
    return wanted


def _address(text: str) -> str:
    from latchside.pages.labels import sound_base

    try:
        return sound_base(text) if text else ""
    except ValueError as error:
        raise click.ClickException(str(error)) from None
