"""How each fact of a survey is asked for: one question for each field of the job schema that a plan can hang on."""

from __future__ import annotations

from latchside.messages import Message, messages

message = messages(__name__)
ASKED_BY = {"cable_awg": "cable_area"}
"""Fields that the question for another one answers too."""


def text(field: str) -> Message:
    """The question for a field."""
    own = f"ask-{field.replace('_', '-')}"
    return message(own) if own in message else message("ask-any", field=field.replace("_", " "))
