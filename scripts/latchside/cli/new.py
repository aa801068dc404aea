"""`latchside new`: a record or a drawing to fill in, the survey of a site, or a whole project."""

from __future__ import annotations

from pathlib import Path

import click

from latchside.blanks import BLANK
from latchside.cli.options import Word, root_option, writable
from latchside.kinds import KINDS
from latchside.messages import messages
from latchside.new import Wish, write_new, write_project
from latchside.root import schema_folder
from latchside.schemas import load_schemas
from latchside.surveys.template import write_template

message = messages(__name__)


@click.command()
@click.argument("kind", type=click.Choice([*KINDS, "drawing", "survey", "project"]))
@click.argument("name")
@click.option("--like", default="", metavar="DEVICE", help="Of a device: a copy of this one, to be judged anew.")
@click.option(
    "--for", "device", default="", metavar="DEVICE", help="Of a drawing, procedure or checklist: who names it."
)
@click.option("--stage", default="", help="Of a procedure, with --for: the stage at which the device needs it.")
@click.option("--senses", type=Word(), help="Of a device without --like: how it senses.")
@click.option("--reports", type=Word(), help="Of a device without --like: how it reports to the panel.")
@click.option("--mounts", type=Word(), help="Of a device without --like: how it is fixed.")
@root_option
def new(kind: str, name: str, like: str, device: str, stage: str, root: Path, **traits: str | None) -> None:
    """Write a commented record to fill in, such as: latchside new device gate-contact --like recessed-contact.

    Or, where you are, the survey of a site: latchside new survey corner-shop.xlsx (or .csv, or .yaml), or a whole
    project with records of its own: latchside new project FOLDER.
    """
    try:
        if kind == "survey":
            write_template(Path(name), load_schemas(schema_folder(root)))
            click.echo(f"{message('survey', file=name)}\n  latchside plan {name}")
        elif kind == "project":
            write_project(Path(name))
            click.echo(f"{message('project', folder=name)}\n  latchside check --root {name}")
        else:
            schemas = load_schemas(schema_folder(root))
            wish = Wish(like, device, stage, {trait: word for trait, word in traits.items() if word})
            path = write_new(writable(root), kind, name, schemas, wish)
            written = message("record", file=str(path.relative_to(root)), blank=BLANK)
            click.echo(f"{written}\n  latchside check")
    except FileExistsError as error:
        there = message("not-empty" if kind == "project" else "there-already", path=str(error.filename))
        raise click.ClickException(there) from None
    except OSError as error:
        raise click.ClickException(message("cannot-write", path=name, fault=str(error.strerror))) from None
    except ValueError as error:
        raise click.ClickException(str(error)) from None
