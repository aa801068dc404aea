"""Options that several commands share."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import click

from latchside.messages import messages
from latchside.root import INSTALLED, ROOT, here, schema_folder
from latchside.schemas import load_schemas

message = messages(__name__)

root_option = click.option(
    "--root", is_eager=True, type=click.Path(exists=True, file_okay=False, path_type=Path), default=here,
    help="The project to work on; by default that of the checkout, or from a wheel the one you stand in.",
)  # fmt: skip


class Word(click.ParamType[str]):
    """A word of the vocabulary that the option is named after, as the project at hand has it."""

    name = "word"

    def convert(self, value: str, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """The word as it was typed; ends the command, naming all words, where there is no such word."""
        return self._choice(param, ctx).convert(value, param, ctx)

    def get_metavar(self, param: click.Parameter, ctx: click.Context) -> str:
        """All words, for the help of the command."""
        return f"[{'|'.join(self._choice(param, ctx).choices)}]"

    @staticmethod
    def _choice(param: click.Parameter | None, ctx: click.Context | None) -> click.Choice[str]:
        root = (ctx and ctx.params.get("root")) or here()
        return click.Choice(_words(schema_folder(root), (param and param.name) or ""))


@cache
def _words(schemas: Path, vocabulary: str) -> tuple[str, ...]:
    return tuple(load_schemas(schemas).words(vocabulary))


def writable(root: Path) -> Path:
    """The project `root`, which is going to be written to. Ends the command for the one inside an installed package."""
    if INSTALLED and root == ROOT:
        raise click.ClickException(message("only-read", command="latchside new project FOLDER"))
    return root
