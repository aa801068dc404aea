"""A cause or a check is for devices that have the fault."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding, did_you_mean
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "cause-device"


def check(library: Library) -> Iterator[Finding]:
    """Each device named in `only` or `by_device` of a cause or a check lists the fault; `by_device` is within `only`.

    Traits name no device: what does not list the fault is not concerned.
    """
    for fault in library.of("fault"):
        for name in ("causes", "checks"):
            yield from _only(library, fault, name)
        for index, cause in enumerate(fault["causes"]):
            for id_ in cause.get("by_device", ()):
                path = ("causes", index, "by_device", id_)
                device = library.find("device", id_)
                if device is None:
                    yield from _missing(library, fault, id_, path)
                elif id_ not in cause.get("only", (id_,)):
                    yield fault.finding(CODE, path, *message.finding("left-out", device=id_))
                else:
                    yield from _lists(fault, device, path)


def _only(library: Library, fault: Record, name: str) -> Iterator[Finding]:
    for index, entry in enumerate(fault[name]):
        by_id = isinstance(fault.raw.value[name][index].get("only"), list)
        for number, id_ in enumerate(entry["only"] if by_id else ()):
            device = library.find("device", id_)
            if device:  # a device that does not exist is a finding of its own
                yield from _lists(fault, device, (name, index, "only", number))


def _missing(library: Library, fault: Record, id_: str, path: tuple[str | int, ...]) -> Iterator[Finding]:
    if ("device", id_) not in library.unsound:
        known = library.records.get("device", {})
        yield fault.finding(CODE, path, *message.finding("no-such-device", device=id_, hint=did_you_mean(id_, known)))


def _lists(fault: Record, device: Record, path: tuple[str | int, ...]) -> Iterator[Finding]:
    if fault.id not in device.listed("faults"):
        yield fault.finding(CODE, path, *message.finding("fault-not-listed", device=device.id, fault=fault.id))


RULE = Rule(CODE, check)
