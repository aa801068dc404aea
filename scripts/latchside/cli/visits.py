"""`latchside record`: the record of a visit, checked and printed. `latchside tally`: the causes that visits found.

`latchside times`: what openings took on finished visits, against the minutes that jobs are planned with.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click

from latchside.cli.options import root_option
from latchside.library.codes import looks_like_code
from latchside.messages import messages
from latchside.project import check_project
from latchside.root import schema_folder
from latchside.visits.file import VisitFile, read_visit
from latchside.visits.state import View, canonical, merge, view

message = messages(__name__)


@click.command()
@root_option
@click.argument("files", metavar="FILE...", nargs=-1, required=True, type=click.Path(path_type=Path))
def record(files: tuple[Path, ...], root: Path) -> None:
    """Check the saved record of a visit and print it; several records of one visit are put together."""
    read, bad = _read(files, root)
    if not bad and len({one.visit for one in read}) > 1:
        click.echo(message("different-visits"), err=True)
        bad = True
    if not bad and (quarrel := _altered(read)):
        click.echo(message("altered", entry=quarrel), err=True)
        bad = True
    if bad:
        sys.exit(1)
    _show(read)


@click.command()
@root_option
@click.argument("files", metavar="FILE...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print the counts as JSON.")
def tally(files: tuple[Path, ...], as_json: bool, root: Path) -> None:
    """Count the causes that the saved records of visits found, without anything about a site."""
    from latchside.visits import tally as counting

    visits = _visits(files, root)
    library = check_project(root).library
    causes = {fault.id: [cause["id"] for cause in fault["causes"]] for fault in library.of("fault")}
    names = counting.Names(causes, [device.id for device in library.of("device")])
    made = counting.tally(visits, names)
    click.echo(json.dumps(counting.as_rows(made), indent=2) if as_json else counting.as_text(made))


@click.command()
@root_option
@click.argument("files", metavar="FILE...", nargs=-1, required=True, type=click.Path(path_type=Path))
def times(files: tuple[Path, ...], root: Path) -> None:
    """Say how long openings took on finished visits, and the pace to plan the next jobs with."""
    from latchside.planning.times import TABLE, WorkTimes
    from latchside.visits import minutes as timing

    visits = _visits(files, root)
    library = check_project(root).library
    made = timing.minutes(visits, [device.id for device in library.of("device")])
    found, planned = timing.paces(made), WorkTimes(library)
    widths = {"openings": 8, "low": 5, "usual": 5, "high": 5, "planned": 7, "device": 0}
    click.echo("  ".join(f"{message(column):>{width}}" for column, width in widths.items()))
    for device, took in sorted(made.of.items()):
        usual = planned.of_device(device).usual
        if (pace := found.get(device)) is None:
            click.echo(f"{len(took):8}  {message('too-few', needed=timing.ENOUGH)}  {device}")
            continue
        click.echo(f"{pace.openings:8}  {pace.low:5.0f}  {pace.usual:5.0f}  {pace.high:5.0f}  {usual:7.0f}  {device}")
    for why, count in sorted(made.left_out.items()):
        click.echo(f"{count:8}  {message('left-out', why=timing.reason(why))}")
    if found:
        table = f"shared/tables/{TABLE}.yaml"
        click.echo(f"\n{message('values', file=table)}")
    for device, pace in found.items():
        share = round(100 * pace.usual / planned.of_device(device).usual)
        click.echo(f'  pace-{device}: {{value: {share}, unit: "%", status: common practice}}')


def _visits(files: tuple[Path, ...], root: Path) -> list[View]:
    """How things stand in each visit of these files. Ends the command where one cannot be read or was altered."""
    read, bad = _read(files, root)
    visits: dict[str, list[VisitFile]] = {}
    for found in read:
        visits.setdefault(found.visit, []).append(found)
    for one in visits.values():
        if quarrel := _altered(one):
            click.echo(message("altered", entry=quarrel), err=True)
            bad = True
    if bad:
        sys.exit(1)
    return [view(merge(*(file.entries for file in one))) for one in visits.values()]


def _read(files: tuple[Path, ...], root: Path) -> tuple[list[VisitFile], bool]:
    """The records that can be read, and whether some cannot; what is wrong with those is said."""
    read, bad = list[VisitFile](), False
    schema = schema_folder(root) / "visit.schema.json"
    for path in files:
        found, faults = read_visit(path, schema)
        for fault in faults:
            lines = message("found", found=fault.found), message("next", action=fault.action)
            click.echo("\n  ".join((f"{path}: {fault.where}", *lines)) + "\n", err=True)
        bad = bad or bool(faults)
        if found:
            read.append(found)
    return read, bad


def _altered(read: list[VisitFile]) -> str | None:
    """The id of an entry that two files tell differently."""
    known: dict[str, str] = {}
    for one in read:
        for entry in one.entries:
            text = canonical(entry)
            if known.setdefault(entry["id"], text) != text:
                return str(entry["id"])
    return None


def _show(read: list[VisitFile]) -> None:
    from rich.console import Console

    from latchside.visits.table import as_table  # rich is slow to import, and only needed for a sound file

    entries = merge(*(one.entries for one in read))
    Console(width=None if sys.stdout.isatty() else 120, highlight=False).print(as_table(view(entries)))
    suspect = [entry["id"] for entry in entries if looks_like_code(str(entry.get("note", "")))]
    if suspect:
        which = ", ".join(suspect[:5])
        click.echo(f"\n{message('codes', count=len(suspect), entries=which)}", err=True)
