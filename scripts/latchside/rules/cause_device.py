"""A cause is for devices that have the fault."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding, did_you_mean
from latchside.library import Library, Record
from latchside.rules.rule import Rule

CODE = "cause-device"


def check(library: Library) -> Iterator[Finding]:
    """Each device named in `only` or `by_device` of a cause lists the fault, and `by_device` keeps within `only`.

    Traits name no device: what does not list the fault is not concerned.
    """
    for fault in library.of("fault"):
        for index, cause in enumerate(fault["causes"]):
            named = isinstance(fault.raw.value["causes"][index].get("only"), list)
            for number, id_ in enumerate(cause["only"] if named else ()):
                device = library.find("device", id_)
                if device:  # a device that does not exist is a finding of its own
                    yield from _lists(fault, device, ("causes", index, "only", number))
            for id_ in cause.get("by_device", ()):
                path = ("causes", index, "by_device", id_)
                device = library.find("device", id_)
                if device is None:
                    yield from _missing(library, fault, id_, path)
                elif id_ not in cause.get("only", (id_,)):
                    yield fault.finding(
                        CODE, path, f"{id_}, which the cause's only leaves out", "a device the cause is for",
                        "Add it to only, or drop it here.",
                    )  # fmt: skip
                else:
                    yield from _lists(fault, device, path)


def _missing(library: Library, fault: Record, id_: str, path: tuple[str | int, ...]) -> Iterator[Finding]:
    if ("device", id_) not in library.unsound:
        known = library.records.get("device", {})
        yield fault.finding(
            CODE, path, f"device/{id_}, which does not exist", f"an existing device.{did_you_mean(id_, known)}",
            "Correct the id, or write what it names.",
        )  # fmt: skip


def _lists(fault: Record, device: Record, path: tuple[str | int, ...]) -> Iterator[Finding]:
    if fault.id not in device.listed("faults"):
        yield fault.finding(
            CODE, path, f"{device.id}, which does not list the fault {fault.id}",
            f"a device with {fault.id} under faults",
            f"Add {fault.id} to the faults of {device.id}, or drop the device here.",
        )  # fmt: skip


RULE = Rule(CODE, check)
