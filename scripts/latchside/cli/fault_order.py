"""`latchside fault-order`: the plan for a fault record, or for a plain list of causes."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import NoReturn

import click

from latchside import report
from latchside.cli.options import root_option
from latchside.findings import Finding, did_you_mean
from latchside.kinds import KINDS
from latchside.library import Library, Record, build_library
from latchside.messages import messages
from latchside.order.listing import list_findings, read_file
from latchside.order.plan import Plan, as_data, make_plan
from latchside.order.problem import from_fault, from_list, guesses
from latchside.order.text import as_text
from latchside.project import check_project
from latchside.read.tree import RawRecord
from latchside.read.yaml_text import Document
from latchside.root import schema_folder
from latchside.rules import all_rules
from latchside.schemas import load_schemas
from latchside.schemas.validate import schema_findings

message = messages(__name__)

ALONE = ("dead-end", "mended-after", "no-cause-left", "overlapping-results", "put-back", "repeated-id")
"""Rules that a fault record read by itself is held to; the others look at other records."""


@click.command("fault-order")
@click.argument("target", metavar="FILE|ID")
@click.option("--device", metavar="CLASS", help="Plan for one device: its causes, and how often they are behind it.")
@click.option("--json", "as_json", is_flag=True, help="Print the plan as JSON.")
@root_option
def fault_order(target: str, device: str | None, as_json: bool, root: Path) -> None:
    """Print the order of checks that costs the least expected time.

    ID is a fault of the library. FILE is YAML or JSON: a list of causes, each with cause, probability and minutes,
    or one fault record.
    """
    path = Path(target)
    if path.is_file():
        plan, library, fault = _from_file(path, device, root)
    elif path.suffix in (".yaml", ".yml", ".json"):
        raise click.ClickException(message("no-file", file=target))
    else:
        plan, library, fault = _from_library(target, device, root)
    click.echo(json.dumps(as_data(plan), ensure_ascii=False, indent=2) if as_json else as_text(plan, library, fault))


def _from_file(path: Path, device: str | None, root: Path) -> tuple[Plan, Library | None, Record | None]:
    document = read_file(path)
    _refuse(document.findings)
    if isinstance(document.value, dict) and "causes" in document.value and "checks" in document.value:
        return _from_record(path, document, device, root)
    _refuse(list_findings(document, str(path)))
    if device:
        raise click.ClickException(message("no-devices"))
    return make_plan(from_list(document.value)), None, None


def _from_record(path: Path, document: Document, device: str | None, root: Path) -> tuple[Plan, Library, Record]:
    schemas = load_schemas(schema_folder(root))
    raw = RawRecord(KINDS["fault"], str(path), path.stem, document)
    _refuse(schema_findings(raw, schemas))
    alone = build_library([raw], schemas, ())
    _refuse(finding for rule in all_rules() if rule.code in ALONE for finding in rule.check(alone))
    fault = alone.of("fault")[0]
    library = check_project(root, schemas=schemas).library
    if device and library.find("device", device) is None:
        _unknown("device", device, library)
    return _plan(fault, library, device)


def _from_library(id_: str, device: str | None, root: Path) -> tuple[Plan, Library, Record]:
    checked = check_project(root)
    library, id_ = checked.library, id_.removeprefix("fault/")
    fault = next((one for one in library.of("fault") if id_ in (one.id, *one.listed("aliases"))), None)
    file = fault.raw.file if fault else f"{KINDS['fault'].folder}/{id_}.yaml"
    hindering = (finding for finding in checked.findings if finding.file == file and finding.level == "error")
    _refuse(finding for finding in hindering if fault is None or finding.code in (*ALONE, "cause-device"))
    if fault is None:
        _unknown("fault", id_, library)
    if device and library.find("device", device) is None:
        _unknown("device", device, library)
    if device and fault.id not in library.records["device"][device].listed("faults"):
        raise click.ClickException(message("not-listed", device=device, fault=fault.id))
    return _plan(fault, library, device)


def _plan(fault: Record, library: Library, device: str | None) -> tuple[Plan, Library, Record]:
    return make_plan(from_fault(fault.data, guesses(library.schemas), device)), library, fault


def _refuse(findings: Iterable[Finding]) -> None:
    listed = sorted(findings)
    if listed:
        click.echo(report.as_text(listed), err=True)
        sys.exit(1)


def _unknown(kind: str, id_: str, library: Library) -> NoReturn:
    known = library.records.get(kind, {})
    raise click.ClickException(message("unknown", kind=kind, id=id_, near=did_you_mean(id_, known)))
