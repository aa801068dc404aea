"""The plan of a fault as a page shows it: numbered points, what each takes, how often it is reached, what follows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

from markupsafe import Markup

from latchside.library import Library, Record
from latchside.library.alike import alike
from latchside.markup import markup
from latchside.messages import Message, listed, messages
from latchside.order import Plan, from_fault, make_plan
from latchside.order.plan import Node, as_data
from latchside.order.problem import guesses
from latchside.pages.page import Page
from latchside.reads import EVERY, note

message = messages(__name__)

SHARES = ((0.995, "always"), (0.35, "often"), (0.12, "sometimes"), (0.0, "rare"))
"""From which share of runs a point is said to be reached so often: the shares rest on guesses, so a word is said."""


def plan_of(library: Library, fault: Record, device: str | None = None) -> Plan:
    """The plan of a fault, for one device or for the whole class; made once."""
    note((*fault.key, EVERY))
    return _plan_of(library, fault, device)


@lru_cache(maxsize=1000)
def _plan_of(library: Library, fault: Record, device: str | None) -> Plan:
    return make_plan(from_fault(fault.data, guesses(library.schemas), device))


def share_word(share: float) -> Message:
    """How often a run comes to a point, in words."""
    return next(message(f"share-{word}") for least, word in SHARES if share >= least)


def whole(minutes: float) -> str:
    """Expected minutes as a reader sees them: whole ones, since they rest on guesses."""
    return str(max(1, round(minutes)))


def numbered(tree: Node) -> list[Node]:
    """The points of a plan in the order in which a run can come to them."""
    points = [tree] if tree.do != "end" else []
    for node in points:
        points += [below for below in node.below if below.do != "end"]
    return points


@dataclass(frozen=True)
class Answer:
    """What a check may show or a proof may fail to show, and where it leads: to a point, or to an end in words."""

    shows: Markup
    to: int | None
    end: Markup


@dataclass(frozen=True)
class Point:
    """One point of the plan on the page. `about` is the check or the cause in the record."""

    number: int
    do: str
    about: Mapping[str, Any]
    share: str
    minutes: str
    set_up: str
    set_up_minutes: str
    put_back: tuple[Markup, ...]
    answers: tuple[Answer, ...]


class Points:
    """Writes the points of one plan with the words of its record, for one page."""

    def __init__(self, page: Page, fault: Record, tree: Node) -> None:
        self.page, self.fault, self.tree = page, fault, tree
        self.checks: dict[str, Mapping[str, Any]] = {one["id"]: one for one in fault["checks"]}
        self.causes: dict[str, Mapping[str, Any]] = {one["id"]: one for one in fault["causes"]}
        self._nodes = numbered(tree)
        self.numbers = {id(node): number for number, node in enumerate(self._nodes, 1)}

    def __iter__(self) -> Iterator[Point]:
        for node in self._nodes:
            checking = node.do == "check"
            needs = self.page.library.schemas.words("need")
            yield Point(
                self.numbers[id(node)], node.do, (self.checks if checking else self.causes)[node.id or ""],
                share_word(node.reached), f"{node.minutes:g}", listed([needs[one] for one in node.set_up]),
                f"{node.set_up_minutes:g}", self.put_back(node), tuple(self._answers(node)),
            )  # fmt: skip

    def put_back(self, node: Node) -> tuple[Markup, ...]:
        """How protection is put back before a point, each line once."""
        lines = dict.fromkeys(self.checks[one]["restore"] for one in node.restore)
        return tuple(self.page.words(line, self.fault) for line in lines)

    def _answers(self, node: Node) -> Iterator[Answer]:
        shows = {one["id"]: one["shows"] for one in self.checks[node.id or ""]["results"]} if node.branches else {}
        for branch in node.branches:
            yield self._answer(self.page.words(shows[branch.result], self.fault), branch.next)
        if node.fails:
            yield self._answer(markup(message, "still-there"), node.fails)

    def _answer(self, shows: Markup, to: Node) -> Answer:
        if to.do != "end":
            return Answer(shows, self.numbers[id(to)], Markup(""))
        lines, end = Markup(" ").join(self.put_back(to)), self._end(to)
        return Answer(shows, None, markup(message, "put-back-first", lines=lines, end=end) if lines else end)

    def _end(self, node: Node) -> Markup:
        if node.why == "go":
            other = self.page.library.find("fault", node.id or "")
            return markup(message, "go", fault=self.page.link(other)) if other else markup(message, "end-result")
        if node.why == "not-ours":
            return markup(message, "pass-to", who=self.page.vocabulary("who", "electrician"))
        return markup(message, f"end-{node.why or 'result'}")


@dataclass(frozen=True)
class Differs:
    """How the plan for some devices, alike in this fault, differs from that for the whole class."""

    devices: tuple[Record, ...]
    expected: str
    first: Markup
    left_out: tuple[Markup, ...]


@dataclass(frozen=True)
class PlanShown:
    """The plan on the page of its fault."""

    points: tuple[Point, ...]
    expected: str
    exact: bool
    gap: str
    differs: tuple[Differs, ...]


def shown(page: Page, fault: Record) -> PlanShown:
    """The plan for the whole class, and the devices whose plan differs."""
    plan = plan_of(page.library, fault)
    points = tuple(Points(page, fault, plan.tree)) if plan.tree else ()
    return PlanShown(
        points, whole(plan.expected), plan.exact, whole(plan.gap), tuple(differing(page, fault, as_data(plan)["tree"]))
    )


def differing(page: Page, fault: Record, tree: Any) -> Iterator[Differs]:
    """The devices on which another plan costs less, or the same plan costs other minutes."""
    known = guesses(page.library.schemas)
    listed = page.library.referring("fault", fault.id, "device")
    problems = alike(listed, lambda device: replace(from_fault(fault.data, known, device.id), device=None))
    for devices in problems.values():  # one plan serves all to whose causes and checks it comes alike
        device = devices[0]
        own = plan_of(page.library, fault, device.id)
        if own.tree is None or as_data(own)["tree"] == tree:
            continue
        words = Points(page, fault, own.tree)
        about = (words.checks if own.tree.do == "check" else words.causes).get(own.tree.id or "", {})
        gone = [one for one in fault["causes"] if device.id not in one.get("only", (device.id,))]
        yield Differs(
            devices, whole(own.expected), page.plain(about.get("do") or about.get("name", ""), fault),
            tuple(page.plain(one["name"], fault) for one in gone),
        )  # fmt: skip
