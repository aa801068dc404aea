"""Options that several commands share."""

from __future__ import annotations

from pathlib import Path

import click

from latchside.root import ROOT

root_option = click.option(
    "--root", type=click.Path(exists=True, file_okay=False, path_type=Path), default=ROOT,
    help="The project to work on; by default the one this command is installed from.",
)  # fmt: skip
