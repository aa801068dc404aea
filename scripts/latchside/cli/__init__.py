"""The command `latchside`."""

from __future__ import annotations

import sys
import time
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING

import click

from latchside.cli.options import root_option, writable
from latchside.messages import messages

if TYPE_CHECKING:
    from latchside.project import Checked

message = messages(__name__)

# What a command needs is imported where it is used: a figure is worked out without the rules, the pages or the site.


class Progress:
    """Says on a terminal what is being done once the work has lasted a second; silent in a pipe."""

    def __init__(self) -> None:
        self._start = time.monotonic()
        self._shown = sys.stderr.isatty()

    def __call__(self, words: str) -> None:
        """Say what is being done."""
        if self._shown and time.monotonic() - self._start > 1:
            click.echo(f"… {words}", err=True)


ELSEWHERE = {
    "labels": ("latchside.cli.site", "labels"),
    "pocket": ("latchside.cli.site", "pocket"),
    "figure": ("latchside.cli.figures", "figure"),
    "figures": ("latchside.cli.figures", "figures"),
    "fault-order": ("latchside.cli.fault_order", "fault_order"),
    "new": ("latchside.cli.new", "new"),
    "plan": ("latchside.cli.plan", "plan"),
    "serve": ("latchside.cli.serve", "serve"),
    "record": ("latchside.cli.visits", "record"),
    "tally": ("latchside.cli.visits", "tally"),
    "times": ("latchside.cli.visits", "times"),
}
"""Commands that live in other modules, imported when they are called or listed."""


class Commands(click.Group):
    """The commands of this module, and those elsewhere."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Every command by name."""
        return sorted({*super().list_commands(ctx), *ELSEWHERE})

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of a name, imported where it lives elsewhere."""
        if cmd_name not in ELSEWHERE:
            return super().get_command(ctx, cmd_name)
        module, name = ELSEWHERE[cmd_name]
        command: click.Command = getattr(import_module(module), name)
        return command


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
def main() -> None:
    """Check the records of this library, build its site, and work out its figures."""


@main.command()
@root_option
@click.option("--json", "as_", flag_value="json", help="Print the findings as JSON.")
@click.option("--github", "as_", flag_value="annotations", help="Print the findings as workflow annotations.")
def check(root: Path, as_: str | None) -> None:
    """Check every record; exit 1 where an error stands."""
    checked = _checked(root)
    _print(checked, as_)
    sys.exit(1 if checked.errors else 0)


def _print(checked: Checked, as_: str | None) -> None:
    from latchside import report

    if as_ == "json":
        click.echo(report.as_json(checked.findings))
    elif as_ == "annotations":
        if checked.findings:
            click.echo(report.as_annotations(checked.findings))
    else:
        if checked.findings:
            click.echo(report.as_text(checked.findings) + "\n")
        click.echo(report.summary(checked.findings, sum(1 for _ in checked.library)))


@main.command()
@root_option
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), required=True, help="An empty or new folder.")
def render(root: Path, out: Path) -> None:
    """Write the generated pages as files, without building the site."""
    from latchside import out as place
    from latchside.pages.render import render_pages

    place.ready(out)
    pages = render_pages(_sound(root).library, progress=Progress())
    with place.said(out):
        for path, text in pages.items():
            target = out / path
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(text, "utf-8", newline="")
    click.echo(message("pages", count=len(pages), folder=str(out)))


@main.command()
@root_option
@click.option(
    "--out",
    type=click.Path(file_okay=False, path_type=Path),
    default=None,
    help="Where to; by default site/.",
)
@click.option("--fresh", is_flag=True, help="Take nothing from an earlier build.")
def site(root: Path, out: Path | None, fresh: bool) -> None:
    """Check the records and build the site; exit 1 where an error stands."""
    from latchside import out as place

    progress = Progress()
    place.writable(out or writable(root) / "site")
    checked = _sound(root)
    progress(message("building"))
    from latchside.site.adapter import finished
    from latchside.site.build import build_site  # MkDocs is slow to import, and only needed here

    target, warnings = build_site(root, out, checked.library, fresh=fresh)
    if warnings:
        raise click.ClickException(message("warnings", count=warnings))
    shown = message("built", folder=str(target), command="latchside serve")
    click.echo(f"{shown}\n{finished[str(target)]}")


def _checked(root: Path) -> Checked:
    from latchside.project import check_project
    from latchside.read.message_files import broken_messages

    if broken := broken_messages(root):
        raise click.ClickException("\n".join((message("not-fluent"), *broken)))
    return check_project(root, progress=Progress())


def _sound(root: Path) -> Checked:
    checked = _checked(root)
    if checked.errors:
        _print(checked, None)
        sys.exit(1)
    return checked
