"""What came of surveys, shown: a table on a terminal, plain columns in a pipe, or JSON; findings beside it."""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType
from typing import Any

import click

from latchside import many
from latchside.messages import messages
from latchside.planning import summary
from latchside.planning.plan import Plan

message = messages(__name__)


@dataclass(frozen=True)
class Outcome:
    """What came of one survey: small, because it travels between processes. `id` is None where there is no plan.

    `text` is the plan as JSON or in one line, and `plan` is there where one survey alone is shown.
    """

    findings: str
    errors: int
    problems: int = 0
    questions: int = 0
    id: str | None = None
    text: str = ""
    plan: Plan | None = None
    folder: Path | None = None


class Screen:
    """Shows outcomes one after the other; with many of them, a bar on the terminal says how far it is."""

    def __init__(self, whole: int, *, several: bool, as_json: bool) -> None:
        self._whole = whole
        self._several = several
        self._json = as_json
        self._begun = False
        self._bar: Any = None
        self._task: Any = None

    def __enter__(self) -> Screen:
        if self._whole > many.FEW and sys.stderr.isatty():
            from rich.console import Console
            from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeRemainingColumn

            columns = (TextColumn(message("planning")), BarColumn(), MofNCompleteColumn(), TimeRemainingColumn())
            self._bar = Progress(*columns, console=Console(stderr=True))
            self._task = self._bar.add_task("", total=self._whole)
            self._bar.start()
        if self._json and self._several:
            click.echo("[", nl=False)
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        if self._bar is not None:
            self._bar.stop()
        if self._json and self._several and error is None:
            click.echo("\n]")

    def show(self, done: Outcome) -> None:
        """One outcome."""
        if done.findings:
            click.echo(f"{done.findings}\n", err=True)
        if self._json:
            self._as_json(done)
        elif done.plan is not None:
            _table(done.plan)
            if done.folder:
                page = str(done.folder / "index.html")
                click.echo(f"\n{message('pack', folder=str(done.folder), page=page)}")
        elif done.text:
            click.echo(done.text)
        if self._bar is not None:
            self._bar.advance(self._task)

    def _as_json(self, done: Outcome) -> None:
        if done.text:
            click.echo(
                f"{',' if self._begun else ''}\n{done.text}" if self._several else done.text, nl=not self._several
            )
            self._begun = True


def _table(made: Plan) -> None:
    if not sys.stdout.isatty():
        click.echo(summary.as_text(made))
        return
    from rich.console import Console
    from rich.table import Table
    from rich.text import Text

    table = Table(title=Text(summary.heading(made), style="bold"), title_justify="left", show_lines=True)
    for column in summary.COLUMNS:
        table.add_column(column, overflow="fold")
    for row in summary.rows(made):
        table.add_row(*(Text(cell) for cell in row))
    console = Console(highlight=False)
    console.print(table)
    for line in summary.open_ends(made):
        console.print(Text(line))
