"""Which causes visits found, counted from their records without anything about a site.

A guided run writes what it finds as the outcomes of a list named after the fault (`content/assets/js/fault/record.js`):
a cause that was repaired and proved is done, one repaired in vain does not apply, and `passed-on` is a problem.

Only names of this library are told: whatever else stands in a record where a name of a fault, a cause or a device
belongs might be somebody's words about a site. Such runs are counted as unknown.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, field

from latchside.messages import messages
from latchside.visits.state import View

message = messages(__name__)

COUNTED = ("done", "not-applicable")
LIST, CAUSE, PASSED_ON = "fault-run-", "cause-", "passed-on"


@dataclass
class Count:
    """What came of one cause of one fault on one device: found and repaired, or repaired in vain."""

    found: int = 0
    in_vain: int = 0


@dataclass
class Tally:
    """Counts by fault, cause and device (empty where no opening was named), and runs that were passed on, by fault."""

    causes: dict[tuple[str, str, str], Count] = field(default_factory=dict)
    passed_on: dict[str, int] = field(default_factory=dict)
    unknown: int = 0


@dataclass(frozen=True)
class Names:
    """The names of a library: its faults with their causes, and its devices."""

    causes: Mapping[str, Collection[str]]
    devices: Collection[str]


def tally(visits: Iterable[View], names: Names) -> Tally:
    """The counts over some visits."""
    made = Tally()
    for seen in visits:
        for run in seen.runs.values():
            for item, heads in run.items.items():
                entry = heads[-1]
                if entry["checklist"].startswith(LIST):
                    opening = seen.openings.get(entry.get("opening") or "")
                    _count(made, names, entry["checklist"].removeprefix(LIST), item, run.outcome(item), opening)
    made.causes = dict(sorted(made.causes.items()))
    made.passed_on = dict(sorted(made.passed_on.items()))
    return made


def _count(made: Tally, names: Names, fault: str, item: str, outcome: str, opening: object) -> None:
    cause = item.removeprefix(CAUSE)
    if fault not in names.causes or (item.startswith(CAUSE) and cause not in names.causes[fault]):
        made.unknown += item == PASSED_ON or (item.startswith(CAUSE) and outcome in COUNTED)
    elif item == PASSED_ON:
        made.passed_on[fault] = made.passed_on.get(fault, 0) + 1
    elif item.startswith(CAUSE) and outcome in COUNTED:
        device = str(opening["device"] or "") if isinstance(opening, dict) else ""
        count = made.causes.setdefault((fault, cause, device if device in names.devices else ""), Count())
        if outcome == "done":
            count.found += 1
        else:
            count.in_vain += 1


def as_rows(made: Tally) -> list[dict[str, object]]:
    """The counts as plain rows."""
    rows: list[dict[str, object]] = [
        {"fault": fault, "cause": cause, "device": device or None, "found": one.found, "mended_in_vain": one.in_vain}
        for (fault, cause, device), one in made.causes.items()
    ]
    rows += [{"fault": fault, "passed_on": times} for fault, times in made.passed_on.items()]
    return rows + ([{"unknown": made.unknown}] if made.unknown else [])


def as_text(made: Tally) -> str:
    """The counts for people to read."""
    titles = message("found"), message("in-vain"), message("cause")
    rows = [
        (str(one.found), str(one.in_vain), f"{fault} / {cause}{f' ({device})' if device else ''}")
        for (fault, cause, device), one in made.causes.items()
    ]
    rows += [(str(times), "", message("passed-on", fault=fault)) for fault, times in made.passed_on.items()]
    if made.unknown:
        rows.append((str(made.unknown), "", message("unknown")))
    if not rows:
        return message("nothing")
    first, second = len(titles[0]), len(titles[1])
    return "\n".join(f"{found:>{first}}  {in_vain:>{second}}  {what}" for found, in_vain, what in (titles, *rows))
