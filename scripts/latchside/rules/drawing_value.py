"""A value that a drawing shows is one that its devices state."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.drawings.file import bound, bound_at
from latchside.findings import Finding, did_you_mean
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "drawing-value"


def check(library: Library) -> Iterator[Finding]:
    """Every `{{name}}` of a drawing is a name of a value, and each device that names the drawing states it."""
    names = library.schemas.words("value-name")
    for picture in library.drawings.values():
        for element, name in bound_at(picture):
            if name not in names:
                problem = message.finding("no-such-value", value=name, hint=did_you_mean(name, names))
                yield picture.finding(CODE, element, *problem)
    for device in library.of("device"):
        for index, id_ in enumerate(device.listed("drawings")):
            picture_of = library.drawings.get(id_)
            for name in bound(picture_of) if picture_of else ():
                if name in names and name not in device.get("values", {}):
                    problem = message.finding("value-not-stated", drawing=id_, value=name)
                    yield device.finding(CODE, ("drawings", index), *problem)


RULE = Rule(CODE, check)
