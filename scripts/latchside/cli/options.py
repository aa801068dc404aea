"""Options that several commands share."""

from __future__ import annotations

from pathlib import Path

import click

from latchside.root import INSTALLED, ROOT, here

root_option = click.option(
    "--root", type=click.Path(exists=True, file_okay=False, path_type=Path), default=here,
    help="The project to work on; by default that of the checkout, or from a wheel the one you stand in.",
)  # fmt: skip


def writable(root: Path) -> Path:
    """The project `root`, which is going to be written to. Ends the command for the one inside an installed package."""
    if INSTALLED and root == ROOT:
        raise click.ClickException(
            "The project that came with this command is only read. Write one of your own: latchside new project FOLDER"
        )
    return root
