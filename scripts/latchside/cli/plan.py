"""`latchside plan`: from a survey, or a folder of them, to what the job needs, shown or written as a pack."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date
from functools import partial
from pathlib import Path
from shutil import rmtree

import click

from latchside import many, report
from latchside import out as place
from latchside.cli.options import root_option
from latchside.cli.planned import Order, lost, made_ready, own_rules, planned
from latchside.cli.screen import Outcome, Screen
from latchside.findings import START, Finding
from latchside.messages import messages
from latchside.project import fingerprint

message = messages(__name__)

ENDINGS = (".yaml", ".yml", ".json", ".csv", ".tsv", ".xlsx")
"""Files of these names are surveys, where a folder is given."""


_DAY = re.compile(r"20[0-9]{2}-[0-9]{2}-[0-9]{2}")
"""A day in the years that a survey may bear too, so that all that falls due after it has a date."""


@click.command()
@click.argument("surveys", metavar="SURVEY...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "--out", type=click.Path(file_okay=False, path_type=Path), help="Write the pack here: a new or empty folder."
)
@click.option("--date", "on", metavar="YYYY-MM-DD", help="The day it is planned for; by default that of the survey.")
@click.option("--json", "as_json", is_flag=True, help="Print the whole plan as JSON; of several, a list.")
@click.option("--pdf", is_flag=True, help="With --out: write the document as a PDF too. Needs WeasyPrint.")
@click.option("--address", default="", help="With --out: where the site is served, so that the document links into it.")
@click.option(
    "--house",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Plan with your firm's own figures: a file with the `values` of shared/tables/house-rules.yaml that differ.",
)
@click.option("--cluster", default="", metavar="ADDRESS", help="Of many: plan them on the Dask cluster there.")
@root_option
def plan(
    surveys: tuple[Path, ...], out: Path | None, on: str | None, as_json: bool, pdf: bool, address: str,
    house: Path | None, cluster: str, root: Path,
) -> None:  # fmt: skip
    """Plan the job of a survey; a folder stands for all surveys in it.

    Shows which device goes on which opening, what stands open, and with --out writes the pack. Exit 1 where an error
    or a problem stands.
    """
    files = _files(surveys)
    several = len(files) > 1 or any(path.is_dir() for path in surveys)
    workers = _workers(cluster)
    if workers is not None:  # which look from folders of their own
        files, root, out = [path.absolute() for path in files], root.absolute(), out.absolute() if out else None
    stamp = fingerprint(root) if workers else ""
    own = own_rules(house, root)
    order = Order(root, _day(on), out, as_json, _pdf(pdf, out), _address(address), several, stamp, own)
    place.ready(out)
    bad = False
    try:
        with Screen(len(files), several=several, as_json=as_json) as screen:
            for path, done in zip(files, _outcomes(files, order, workers), strict=True):
                if several and out:
                    with place.said(out):
                        done = _kept(path, done, out)
                screen.show(done)
                bad = bad or bool(done.errors or done.problems)
    finally:
        for part in out.glob(".part-*") if several and out else ():
            rmtree(part, ignore_errors=True)
    sys.exit(1 if bad else 0)


def _outcomes(files: list[Path], order: Order, workers: many.Workers | None) -> Iterator[Outcome]:
    made_ready(order)  # records with errors are said once, and here
    pieces = list(enumerate(files))
    return many.each(pieces, partial(planned, order), workers or many.Cores(partial(made_ready, order)), lost)


def _workers(cluster: str) -> many.Workers | None:
    """The workers of a cluster; None where none is named."""
    if not cluster:
        return None
    from latchside.cluster import NoClusterError, joined

    try:
        return joined(cluster)
    except NoClusterError as error:
        raise click.ClickException(str(error)) from None


def _kept(path: Path, done: Outcome, out: Path) -> Outcome:
    """The pack of one of several surveys under its own id; the second of one id is refused."""
    if done.folder is None or done.id is None:
        return done
    target = out / done.id
    if not target.exists():
        done.folder.rename(target)
        return replace(done, folder=target)
    rmtree(done.folder)
    finding = Finding(str(path), START, "id-twice", *message.finding("id-twice", id=done.id))
    text = "\n\n".join(filter(None, (done.findings, report.as_text([finding]))))
    return Outcome(text, done.errors + 1)


def _files(surveys: Iterable[Path]) -> list[Path]:
    found: list[Path] = []
    for path in surveys:
        if path.is_dir():
            inside = sorted(one for one in path.iterdir() if one.suffix.lower() in ENDINGS and one.is_file())
            below = _below(path)
            if below:
                click.echo(f"{message('not-looked-into', folders=', '.join(map(str, below)))}\n", err=True)
            if not inside:
                raise click.ClickException(message("no-survey", folder=str(path), endings=", ".join(ENDINGS)))
            found += [one for one in inside if not one.name.startswith(".")]
        elif path.is_file():
            found.append(path)
        else:
            raise click.ClickException(message("no-file", file=str(path)))
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
    raise click.ClickException(message("no-day", typed=text))


def _pdf(wanted: bool, out: Path | None) -> bool:
    if wanted:
        from latchside.packs.pdf import NoPdfError, ready

        if out is None:
            raise click.ClickException(message("pdf-alone"))
        try:
            ready()
        except NoPdfError as error:
            raise click.ClickException(str(error)) from None
    return wanted


def _address(text: str) -> str:
    from latchside.qr import sound_base

    try:
        return sound_base(text) if text else ""
    except ValueError as error:
        raise click.ClickException(str(error)) from None
