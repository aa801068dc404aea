"""What is known about a fault before the first check: the causes, the checks, the set-ups.

The model, which every number of a plan rests on:

- There is one fault at a time: exactly one of the causes is behind the symptom. A cause has a prior weight. In
  a fault record that is the weight of its word (often, sometimes, rare), which is a common-practice guess; where
  the record has a word for the device at hand under `by_device`, that word counts. Causes and checks that are not for
  the device are left out.
- A check has results. The chance of a result, given a cause, is 1 when just that result leaves the cause. Where
  several results leave it, the check can mislead: `likelihood` says how likely each is, and what it does not say
  is split evenly over the results that leave the cause and have no likelihood for it. A check repeated would
  show the same again, so it is done once.
- A check may be done only where each cause still possible is left by one of its results, since otherwise nobody
  knows what the check would show.
- A check costs its minutes, and the minutes of each set-up it needs (ladder up, cover open) that is not in force
  yet. Set-ups are paid once a visit.
- The other kind of action is to repair a cause and prove it. It costs the minutes of the remedy. If the proof fails,
  the cause is ruled out and the run goes on. Mains work is never in a plan: a cause whose remedy is for an
  electrician is not repaired but ends in the escalation.
- A cause may name others `after` which its remedy comes: it is repaired only once they are ruled out, by what was seen
  or by repairing them in vain. A keep is repaired before a magnet is moved, whatever that costs. A cause that waits for
  one which cannot be repaired here is looked for by checks, and passed on where none is left.
- A result with `go` or `escalate` ends the run. Where such a result leaves causes all the same, it is charged what
  repairing them in order would cost, so that passing a fault on never looks cheaper than repairing it.
- A plain list is the special case without checks: each cause is checked and repaired alone, at a price that is paid
  when it is reached, the last one too. The best order is then by probability over minutes (Kadane and Simon;
  Heckerman, Breese and Rommelse 1995).
- The expected minutes count checks, set-ups and remedies up to the fault being gone.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from latchside.library.compiled import for_device
from latchside.schemas.load import VOCABULARY, Schemas

NEVER_IN_A_PLAN = "electrician"


@dataclass(frozen=True)
class Cause:
    """A cause: how heavily it weighs, and what repairing and proving it takes.

    Bit i of `after` says that cause i has to be ruled out first; `here` is false where it cannot be repaired now.
    """

    id: str
    weight: float
    minutes: float
    who: str = "technician"
    after: int = 0
    here: bool = True

    @property
    def mendable(self) -> bool:
        """Whether its remedy may stand in a plan."""
        return self.here and self.who != NEVER_IN_A_PLAN


@dataclass(frozen=True)
class SetUp:
    """Something made ready once for all checks that need it."""

    id: str
    minutes: float
    touches: bool = False


@dataclass(frozen=True)
class Result:
    """A result of a check. Bit i of `leaves` is cause i; `chance` is that of this result, given each cause."""

    id: str
    leaves: int
    chance: tuple[float, ...]
    go: str | None = None
    escalate: bool = False

    @property
    def ends(self) -> bool:
        """Whether the run ends with this result."""
        return self.escalate or self.go is not None


@dataclass(frozen=True)
class Check:
    """A check. Bit i of `needs` is set-up i; `restore` says that protection has to be put back after it."""

    id: str
    minutes: float
    needs: int
    results: tuple[Result, ...]
    touches: bool = False
    restore: bool = False

    @property
    def covers(self) -> int:
        """The causes for which it is known what the check shows."""
        covered = 0
        for result in self.results:
            covered |= result.leaves
        return covered

    @property
    def misleads(self) -> bool:
        """Whether some cause can show more than one result."""
        return any(0 < chance < 1 for result in self.results for chance in result.chance)


@dataclass(frozen=True)
class Problem:
    """One fault, for one device where one is named. `plain` is a list whose causes are checked and repaired alone."""

    causes: tuple[Cause, ...]
    checks: tuple[Check, ...] = ()
    set_ups: tuple[SetUp, ...] = ()
    fault: str | None = None
    device: str | None = None
    plain: bool = False

    def without(self, checks: Iterable[str] = (), remedies: Iterable[str] = ()) -> Problem:
        """The same problem where some checks, and the remedies of some causes, cannot be done."""
        gone, unmended = set(checks), set(remedies)
        kept = tuple(check for check in self.checks if check.id not in gone)
        causes = tuple(replace(one, here=one.here and one.id not in unmended) for one in self.causes)
        return replace(self, causes=causes, checks=kept)


@dataclass(frozen=True)
class Guesses:
    """The figures behind the words of the vocabulary: common-practice guesses."""

    weight: Mapping[str, float]
    minutes: Mapping[str, float]
    touch: frozenset[str]


def guesses(schemas: Schemas) -> Guesses:
    """The guesses written in the vocabulary."""
    words = schemas.documents[VOCABULARY]["$defs"]
    touch = frozenset(word for word, touches in words["need"]["x-touch"].items() if touches)
    return Guesses(words["frequency"]["x-weight"], words["need"]["x-minutes"], touch)


def from_list(entries: Iterable[Mapping[str, Any]]) -> Problem:
    """The problem of a plain list of `cause`, `probability`, `minutes` (the caller has checked them)."""
    causes = (Cause(str(one["cause"]), float(one["probability"]), float(one["minutes"])) for one in entries)
    return Problem(tuple(causes), plain=True)


def from_fault(fault: Mapping[str, Any], known: Guesses, device: str | None = None) -> Problem:
    """The problem of a fault record, for one device where one is named."""
    causes, checks = (for_device(fault[name], device) for name in ("causes", "checks"))
    ids = [str(cause["id"]) for cause in causes]
    names = sorted({need for check in checks for need in check["needs"]}, key=list(known.minutes).index)
    set_ups = [SetUp(name, known.minutes[name], name in known.touch) for name in names if known.minutes[name] > 0]
    return Problem(
        tuple(_cause(cause, ids, known, device) for cause in causes),
        tuple(_check(check, ids, set_ups, known) for check in checks),
        tuple(set_ups),
        str(fault["id"]),
        device,
    )


def _cause(cause: Mapping[str, Any], causes: Sequence[str], known: Guesses, device: str | None) -> Cause:
    frequency = cause.get("by_device", {}).get(device, cause["frequency"])
    remedy = cause["remedy"]
    after = sum(1 << i for i, one in enumerate(causes) if one in cause.get("after", ()))
    return Cause(str(cause["id"]), known.weight[frequency], remedy["minutes"], remedy["who"], after)


def _check(check: Mapping[str, Any], causes: Sequence[str], set_ups: Sequence[SetUp], known: Guesses) -> Check:
    needs = sum(1 << i for i, one in enumerate(set_ups) if one.id in check["needs"])
    touches = "restore" in check or any(need in known.touch for need in check["needs"])
    chances = [_chances(check["results"], cause) for cause in causes]
    results = (
        Result(
            str(result["id"]),
            sum(1 << i for i, row in enumerate(chances) if row[number] > 0),
            tuple(row[number] for row in chances),
            result.get("go"),
            bool(result.get("escalate")),
        )
        for number, result in enumerate(check["results"])
    )
    return Check(str(check["id"]), check["minutes"], needs, tuple(results), touches, "restore" in check)


def _chances(results: Sequence[Mapping[str, Any]], cause: str) -> list[float]:
    """How likely each result is, given the cause."""
    leaving = [result for result in results if cause in result.get("leaves", ())]
    stated = [result["likelihood"][cause] for result in leaving if cause in result.get("likelihood", ())]
    silent = len(leaving) - len(stated)
    share = (1.0 - sum(stated)) / silent if silent else 0.0
    return [result.get("likelihood", {}).get(cause, share) if result in leaving else 0.0 for result in results]
