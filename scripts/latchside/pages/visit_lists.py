"""What the page of visits knows of the library: devices and checklists with their items, as one piece of data."""

from __future__ import annotations

import json
from typing import Any

from markupsafe import Markup

from latchside.escape import safe
from latchside.library import Library, Record
from latchside.pages.page import Page
from latchside.pages.readings import measure_of
from latchside.version import library_version


def item_words(page: Page, item: Any) -> Markup:
    """Subject and expected state of an item without links: what a record of a visit keeps of it."""
    return Markup("{} \u2014 {}").format(page.plain(item["subject"]), page.plain(item["state"]))


def visit_lists(library: Library, page: Page) -> Markup:
    """JSON for an attribute of the page."""
    stages = list(library.schemas.words("stage"))
    in_order = sorted(library.of("checklist"), key=lambda record: stages.index(record["stage"]))
    data = {
        "library": library_version(),
        "devices": [{"id": device.id, "name": device.name} for device in library.of("device")],
        "checklists": [_checklist(library, page, record) for record in in_order],
    }
    return safe(json.dumps(data, ensure_ascii=False, separators=(",", ":")))


def _checklist(library: Library, page: Page, record: Record) -> dict[str, Any]:
    return {
        "id": record.id,
        "name": record.name,
        "href": page.href(record.address),
        "version": record["version"],
        "per": record["per"],
        "devices": [device.id for device in library.referring("checklist", record.id, "device")],
        "items": [
            {
                "id": item["id"],
                "words": item_words(page, item).unescape(),
                **({"critical": True} if item.get("critical") else {}),
                **({"only": list(item["only"])} if item.get("only") else {}),
                **_measure(page, item),
            }
            for point in record["points"]
            for item in point["items"]
        ],
    }


def _measure(page: Page, item: Any) -> dict[str, str]:
    """The value of a device that the reading of an item is judged by, where it has one."""
    read = page.step(item["step"])["measure"] if item.get("measure") == "step" else item.get("measure")
    value = read and measure_of(read)
    return {"measure": value} if value else {}
