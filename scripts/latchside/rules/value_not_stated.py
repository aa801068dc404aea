"""What a device's readers are given asks only for values that its profile states."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import ValueLink, text_parts
from latchside.library.traits import traits
from latchside.library.uses import uses
from latchside.messages import listed, messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "value-not-stated"


def check(library: Library) -> Iterator[Finding]:
    """Each `device_value` and each [[=device/name]] is stated by every device whose readers are given it.

    A cause at a transmitter may lie in the contact on its loop, whose own label has the value.
    """
    for use in uses(library):
        for name in _asked(use.data):
            asked = (
                use.devices if use.record.kind.id != "fault" else [d for d in use.devices if not traits(d).takes_loop]
            )
            without = [device.name for device in asked if name not in device["values"]]
            if without:
                problem = message.finding("not-stated", value=name, devices=listed(without), count=len(without))
                yield use.record.finding(CODE, use.path, *problem)


def _asked(value: Any) -> frozenset[str]:
    if isinstance(value, str):
        if "[[=device/" not in value:
            return frozenset()
        return frozenset(
            part.name for part in text_parts(value) if isinstance(part, ValueLink) and part.owner == ("device", None)
        )
    if isinstance(value, Mapping):
        below = frozenset().union(*(_asked(one) for one in value.values()))
        return below | {value["device_value"]} if "device_value" in value else below
    return frozenset().union(*(_asked(one) for one in value)) if isinstance(value, tuple) else frozenset()


RULE = Rule(CODE, check)
