"""How each fact of a survey is asked for: one question for each field of the job schema that a plan can hang on."""

from __future__ import annotations

from collections.abc import Mapping

from latchside.messages import Message, messages
from latchside.surveys.survey import Opening

message = messages(__name__)
ASKED_BY = {"cable_awg": "cable_area"}
"""Fields that the question for another one answers too."""

KINDS: Mapping[str, tuple[str, ...]] = {
    "hardware": ("hinged-door", "double-door", "gate"),
    "powered": (
        "hinged-door", "double-door", "sliding", "lift-and-slide", "roof-window", "roller-door", "up-and-over", "gate",
    ),
}  # fmt: skip
"""Facts that only some kinds of opening can have, common practice: nobody asks for a panic bar on a sash."""
_OF_CABLE = ("cable_area", "cable_awg")
"""Two ways to tell one size."""


def can_matter(field: str, opening: Opening) -> bool:
    """Whether an opening can have what a field tells.

    The size of a cable that is brought is chosen, not asked, and one that was told is not asked in the other way.
    """
    told = opening.cable_area_mm2 is not None or opening.cable_awg is not None
    if field in _OF_CABLE and (opening.cable is False or told):
        return False
    return opening.kind in KINDS.get(field, (opening.kind,))


def text(field: str) -> Message:
    """The question for a field."""
    own = f"ask-{field.replace('_', '-')}"
    return message(own) if own in message else message("ask-any", field=field.replace("_", " "))
