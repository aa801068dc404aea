"""The commands `latchside figure` and `latchside figures`."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import NoReturn

import click

from latchside.cli.options import root_option
from latchside.figures import answer_text
from latchside.figures.catalogue import InputError, catalogue
from latchside.findings import did_you_mean
from latchside.messages import messages

message = messages(__name__)

_json = click.option("--json", "as_json", is_flag=True, help="Print a JSON object for other programs.")


@click.command(context_settings={"ignore_unknown_options": True})
@click.argument("id_", metavar="ID")
@click.argument("values", metavar="NAME=VALUE…", nargs=-1)
@_json
@root_option
def figure(id_: str, values: tuple[str, ...], as_json: bool, root: Path) -> None:
    """Work out one figure, such as: latchside figure cable-resistance length=50ft awg=22

    A value takes a unit (50ft, 5.6k), or is in the unit of its name (length_m=15.24). Exit 2 where an input is wrong.
    """
    figures = catalogue(root)
    if id_ not in figures:
        near = did_you_mean(id_, figures)
        _refuse([message("no-figure", id=id_, near=near, command="latchside figures")], as_json)
    given, wrong = _given(values)
    if wrong:
        _refuse(wrong, as_json)
    chosen = figures[id_]
    try:
        answer = chosen.answer(given)
    except InputError as error:
        _refuse(error.lines, as_json)
    except ValueError as error:  # a record that the check refuses
        _refuse([message("not-sound", fault=str(error), command="latchside check")], as_json)
    click.echo(
        answer_text.as_json(chosen, answer, root) if as_json else answer_text.as_text(chosen, answer, given, root)
    )


@click.command()
@_json
@root_option
def figures(as_json: bool, root: Path) -> None:
    """List every figure with what it takes and gives."""
    known = catalogue(root)
    click.echo(answer_text.listing_json(known) if as_json else answer_text.listing(known))


def _given(values: tuple[str, ...]) -> tuple[dict[str, object], list[str]]:
    given: dict[str, object] = {}
    wrong: list[str] = []
    for text in values:
        name, mark, value = text.partition("=")
        if not mark or not name.strip():
            wrong.append(message("no-value", typed=text))
        elif name in given:
            wrong.append(message("twice", name=name))
        else:
            given[name] = value
    return given, wrong


def _refuse(lines: list[str] | tuple[str, ...], as_json: bool) -> NoReturn:
    if as_json:
        click.echo(json.dumps({"errors": list(lines)}, ensure_ascii=False, indent=2))
    for line in lines if not as_json else ():
        click.echo(line, err=True)
    sys.exit(2)
