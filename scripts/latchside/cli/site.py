"""The commands that make something to carry: the pocket copy, and sheets of labels."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import click

from latchside.cli.options import root_option
from latchside.messages import messages
from latchside.out import said, writable
from latchside.pages.labels import labels as labels_of
from latchside.pages.page import Page
from latchside.pages.render import Writer
from latchside.project import check_project
from latchside.qr import sound_base
from latchside.site.build import build_site
from latchside.site.pocket import pocket_files, write_zip

message = messages(__name__)

_OUT = click.Path(dir_okay=False, path_type=Path)


@click.command()
@root_option
@click.option("--out", type=_OUT, default=Path("latchside-pocket.zip"), show_default=True, help="The zip to write.")
def pocket(root: Path, out: Path) -> None:
    """Make one zip of the library that opens from a folder, for reading and printing."""
    writable(out)
    with TemporaryDirectory() as folder:
        built, warnings = build_site(root, Path(folder) / "site", pocket=True)
        if warnings:
            raise click.ClickException(message("warnings", count=warnings))
        files = pocket_files(built)
    with said(out):
        write_zip(files, out)
    size = f"{out.stat().st_size / 1e6:.1f}"
    click.echo(message("pocket", file=str(out), size=size, files=len(files)))


@click.command()
@root_option
@click.option("--address", required=True, help="Where the site is served, such as https://field.example/library/")
@click.option("--out", type=_OUT, required=True, help="The page to write, ready to print.")
def labels(root: Path, address: str, out: Path) -> None:
    """Make a sheet of labels whose codes open pages of the site at an address."""
    try:
        base = sound_base(address)
    except ValueError as error:
        raise click.ClickException(str(error)) from None
    writable(out)
    library = check_project(root).library
    groups = labels_of(library, base)
    sheet = Writer(library).fill("label_sheet.jinja", Page(library, ""), groups=groups, base=base)
    with said(out):
        out.write_text(sheet, "utf-8")
    click.echo(message("labels", file=str(out), count=sum(len(group) for _, group in groups)))
