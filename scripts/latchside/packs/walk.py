"""The walk of a job as sketches, one for each side that the survey names."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import unescape

from markupsafe import Markup

from latchside.drawings.canvas import Drawing
from latchside.drawings.inline import inlined
from latchside.drawings.walk import Mark, facade
from latchside.escape import safe
from latchside.library import Library
from latchside.library.alike import alike
from latchside.messages import messages
from latchside.packs.ids import id_of
from latchside.planning.plan import OpeningPlan, Plan
from latchside.planning.short_names import fold

message = messages(__name__)
_SAID = re.compile(r'(?<=>)[^<]+|(?<=aria-label=")[^"]*')
"""What a drawing says: its texts and its name."""


def walk(plan: Plan, library: Library) -> Iterator[Drawing]:
    """A sketch of each side, in the order of the walk; none where the survey names no sides."""
    numbered = [(number, one) for number, one in enumerate(plan.openings, 1) if one.opening.side.strip()]
    for side, found in alike(numbered, lambda one: fold(one[1].opening.side)).items():
        title = " ".join(found[0][1].opening.side.split())
        marks = [_mark(number, one, plan, library) for number, one in found]
        yield facade(f"walk-{id_of('side', side)[:8]}", title[:1].upper() + title[1:], marks)


def in_page(made: Drawing) -> Markup:
    """A sketch as a part of a page. Its names are the survey's: every sign in them is escaped as everywhere."""
    return Markup(_SAID.sub(lambda found: safe(unescape(found[0])), inlined(made)))


def _mark(number: int, one: OpeningPlan, plan: Plan, library: Library) -> Mark:
    device = library.find("device", one.choice.device) if one.choice.device else None
    zones = dict.fromkeys(zone.position for zone in plan.zones if zone.opening == one.opening.id)
    return Mark(number, one.opening.kind, one.spoken, device.name if device else message("no-device"), ", ".join(zones))
