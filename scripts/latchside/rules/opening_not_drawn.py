"""Every kind of opening is drawn."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.kinds import DRAWINGS
from latchside.library import Library
from latchside.library.traits import Traits, traits
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "opening-not-drawn"


def check(library: Library) -> Iterator[Finding]:
    """Each kind of opening that a device is for has its drawing, `opening-` and the kind: job sheets show it.

    Where that has forms, one of them shows a contact as the device is fixed.
    """
    for device in library.of("device"):
        for index, kind in enumerate(device["openings"]):
            id_ = f"opening-{kind}"
            if id_ not in library.drawings and ("drawing", id_) not in library.unsound:
                problem = message.finding("not-drawn", kind=kind, file=f"{DRAWINGS}/{id_}.svg")
                yield device.finding(CODE, ("openings", index), *problem)
            elif (form := _form_lacking(library, id_, traits(device))) is not None:
                problem = message.finding("form-not-drawn", kind=kind, form=form, file=f"{DRAWINGS}/{id_}.svg")
                yield device.finding(CODE, ("openings", index), *problem)


def _form_lacking(library: Library, id_: str, of: Traits) -> str | None:
    """The form in which a drawing that has forms would show a device with a magnet; None where it has that one too."""
    form = of.mounts if of.bracketed else "drilled" if of.drilled else "surface"
    forms = [one for one in library.pictures if one.startswith(f"{id_}-")]
    return form if of.magnetic and forms and not any(one.startswith(f"{id_}-{form}") for one in forms) else None


RULE = Rule(CODE, check)
