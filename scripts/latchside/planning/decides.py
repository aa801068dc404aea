"""What an answer decides, in plain words: the first and greatest difference that it makes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, fields
from typing import Any

from latchside.library.model import Library
from latchside.messages import Message, listed, messages, within
from latchside.planning.outcomes import Chosen, Figures
from latchside.planning.plan import Fixing, Verdict

message = messages(__name__)
RANKS = ("device", "contact", "problem", "verdict", "fixing", "parts", "zone", "caution")
"""From what decides most to what decides least."""
_VERDICTS: tuple[Verdict, ...] = ("good", "test on site", "poor", "none")
_ZONE = ("link", "response", "reports", "chime", "supervision")
"""What of a zone is compared, in the order of an outcome."""


@dataclass(frozen=True)
class Effect:
    """One difference: how great (an index of `RANKS`), what differs, and the outcomes that are met.

    `alone` where the answer makes it whatever else is told.
    """

    rank: int
    about: str
    met: tuple[str | None, ...] = ()
    alone: bool = True

    @property
    def order(self) -> int:
        """The lower, the more it decides: alone, then by rank, then a problem among its outcomes before none."""
        return 2 * (self.rank + len(RANKS) * (not self.alone)) + ("poor" not in self.met)


def effect(aspect: str, about: str, *met: str | None) -> Effect:
    """An effect by its name."""
    return Effect(RANKS.index(aspect), about, met)


def of_choice(before: Chosen, after: Chosen) -> Iterator[Effect]:
    """What differs between two choices."""
    if before.device != after.device:
        yield effect("device", "", before.device, after.device)
    elif before.contact != after.contact:
        yield effect("contact", "", before.contact, after.contact)
    codes = [dict(one.problems) for one in (before, after)]
    for code in dict.fromkeys((*codes[0], *codes[1])):
        if (code in codes[0]) != (code in codes[1]):
            yield effect("problem", codes[0].get(code) or codes[1][code])


def of_piece(before: Any, after: Any) -> Iterator[Effect]:
    """What differs between two workings of one piece."""
    if isinstance(before, Figures):
        yield from of_lines(before.verdicts, after.verdicts)
        yield from _of_fixing(before.fixing, after.fixing)
    elif isinstance(before, frozenset):
        yield from (effect("caution", one) for one in sorted(before ^ after))
    elif (before and after and isinstance(before[0][1], str)) or (after and isinstance(after[0][1], str)):
        yield from _of_zones(before, after)
    else:
        gone = dict.fromkeys(name for name, _ in (*before, *after) if dict(before).get(name) != dict(after).get(name))
        yield effect("parts", next(iter(gone), ""))


def of_lines(before: Iterable[tuple[str, str]], after: Iterable[tuple[str, str]]) -> Iterator[Effect]:
    """Figures whose verdict differs, or that come and go."""
    was, now = dict(before), dict(after)
    for name in dict.fromkeys((*was, *now)):
        if was.get(name) != now.get(name):
            yield effect("verdict", name, was.get(name), now.get(name))


def _of_fixing(before: Fixing | None, after: Fixing | None) -> Iterator[Effect]:
    if before is None or after is None:
        if before != after:
            yield effect("fixing", "sensor")
        return
    for one in fields(Fixing):
        if one.name != "drawn" and getattr(before, one.name) != getattr(after, one.name):
            yield effect("fixing", one.name)


def _of_zones(before: tuple[tuple[Any, ...], ...], after: tuple[tuple[Any, ...], ...]) -> Iterator[Effect]:
    if len(before) != len(after):
        yield effect("zone", "count")
    for was, now in zip(before, after, strict=False):
        yield from (effect("zone", name) for name, one, other in zip(_ZONE, was, now, strict=True) if one != other)


def together(found: Iterable[Effect]) -> Effect | None:
    """The greatest of several effects, with all outcomes that were met of its kind."""
    listed = sorted(found, key=lambda one: one.order)
    if not listed:
        return None
    first = listed[0]
    met = dict.fromkeys(
        one for each in listed if (each.rank, each.about) == (first.rank, first.about) for one in each.met
    )
    return Effect(first.rank, first.about, tuple(met))


def sentence(found: Effect, library: Library) -> Message:
    """What is decided, as one sentence."""
    alone = "yes" if found.alone else "no"
    match RANKS[found.rank]:
        case "device":
            return _of_classes(found.met, library, alone)
        case "contact":
            names = [_name(one, library) for one in found.met if one]
            return message("contact", alone=alone, contacts=listed(names, "or"), count=len(names))
        case "problem":
            return message("problem", alone=alone, problem=found.about)
        case "verdict":
            return _of_verdicts(found, alone)
        case "parts":
            return message("parts", alone=alone, part=within(found.about).partition(",")[0])
        case "caution":
            record = library.find("caution", found.about)
            return message("caution", alone=alone, caution=within(record.name) if record else found.about)
        case "fixing":
            return message(f"fixing-{found.about}", alone=alone)
        case _:
            return message(f"zone-{found.about}", alone=alone)


def _of_verdicts(found: Effect, alone: str) -> Message:
    figure = within(found.about)
    verdicts: list[str] = [message(f"comes-to-{one.replace(' ', '-')}") for one in _VERDICTS if one in found.met]
    if None in found.met and len(verdicts) == 1:
        return message("verdict-worked", alone=alone, figure=figure)
    return message("verdict", alone=alone, figure=figure, verdicts=listed(verdicts, "or"))


def _of_classes(met: tuple[str | None, ...], library: Library, alone: str) -> Message:
    names: list[str] = [message("the-device", name=_name(one, library)) for one in met if one]
    if len(names) > 1:
        return message("device-between", alone=alone, devices=listed(names[:3]))
    return message("device-can", alone=alone, device=names[0]) if names else message("device-any", alone=alone)


def _name(device: str, library: Library) -> str:
    record = library.find("device", device)
    return within(record.name) if record else device
