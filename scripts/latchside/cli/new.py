"""`latchside new`: a record or a drawing to fill in, the survey of a site, or a whole project."""

from __future__ import annotations

from pathlib import Path

import click

from latchside.cli.options import root_option, writable
from latchside.kinds import KINDS
from latchside.new import Wish, write_new, write_project
from latchside.root import schema_folder
from latchside.schemas import load_schemas
from latchside.surveys.template import write_template


@click.command()
@click.argument("kind", type=click.Choice([*KINDS, "drawing", "survey", "project"]))
@click.argument("name")
@click.option("--like", default="", metavar="DEVICE", help="Of a device: a copy of this one, to be judged anew.")
@click.option(
    "--for", "device", default="", metavar="DEVICE", help="Of a drawing, procedure or checklist: who names it."
)
@click.option("--stage", default="", help="Of a procedure, with --for: the stage at which the device needs it.")
@root_option
def new(kind: str, name: str, like: str, device: str, stage: str, root: Path) -> None:
    """Write a commented record to fill in, such as: latchside new device gate-contact --like recessed-contact.

    Or, where you are, the survey of a site: latchside new survey corner-shop.xlsx (or .csv, or .yaml), or a whole
    project with records of its own: latchside new project FOLDER.
    """
    try:
        if kind == "survey":
            write_template(Path(name), load_schemas(schema_folder(root)))
            click.echo(f"Wrote {name}. Fill it in, then run:\n  latchside plan {name}")
        elif kind == "project":
            write_project(Path(name))
            click.echo(f"Wrote {name}. It is yours to change. Then run:\n  latchside check --root {name}")
        else:
            schemas = load_schemas(schema_folder(root))
            path = write_new(writable(root), kind, name, schemas, Wish(like, device, stage))
            click.echo(f"Wrote {path.relative_to(root)}. Fill in every FILL IN, then run:\n  latchside check")
    except FileExistsError as error:
        what = "is not empty" if kind == "project" else "is there already"
        raise click.ClickException(f"{error.filename} {what}; nothing was written.") from None
    except OSError as error:
        raise click.ClickException(f"{name} cannot be written: {error.strerror}.") from None
    except ValueError as error:
        raise click.ClickException(str(error)) from None
