"""Zone schedule and parts list as CSV (RFC 4180), with a mark that tells spreadsheets it is UTF-8."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

from latchside.messages import messages
from latchside.planning.plan import Item, Plan, Zone

message = messages(__name__)
ZONE_COLUMNS = (
    "position", "link", "name", "opening", "device", "input", "response", "reports", "chime", "supervision", "reasons",
)  # fmt: skip
_PART_COLUMNS = ("sort", "name", "quantity", "spare", "in-all", "unit", "used-for")
_RUN = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet takes for the beginning of a formula."""


def zones_csv(plan: Plan) -> str:
    """The zone schedule, one line a zone."""
    return _csv(ZONE_COLUMNS, (_zone(zone) for zone in plan.zones))


def parts_csv(plan: Plan) -> str:
    """Parts, consumables and tools, one line each."""
    return _csv(tuple(message(f"part-{one}") for one in _PART_COLUMNS), (_item(item) for item in plan.items))


def harmless(cell: str) -> str:
    """The text as a spreadsheet shows it and never runs it."""
    text = cell.replace("\x00", "\ufffd")
    return f"'{text}" if text.startswith(_RUN) or text.lstrip().startswith(_RUN) else text


def number(value: float) -> str:
    """A quantity in digits: 3, 12.5."""
    return f"{value:.10g}"


def _zone(zone: Zone) -> tuple[str, ...]:
    return (
        zone.position, zone.link, zone.spoken, zone.opening, zone.device, zone.input, zone.response,
        _yes(zone.reports), _yes(zone.chime), zone.supervision, " ".join(zone.reasons),
    )  # fmt: skip


def _item(item: Item) -> tuple[str, ...]:
    whole = number(item.quantity + item.spare)
    return item.sort, item.name, number(item.quantity), number(item.spare), whole, item.unit, item.used_for


def _yes(value: bool) -> str:
    return message("yes" if value else "no")


def _csv(columns: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    written = io.StringIO(newline="")
    writer = csv.writer(written, lineterminator="\r\n")
    writer.writerow(columns)
    writer.writerows([harmless(cell) for cell in row] for row in rows)
    return "\ufeff" + written.getvalue()
