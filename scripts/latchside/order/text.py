"""A plan as text: numbered points, each saying what to do, what it takes, and where each answer leads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.words import in_words
from latchside.library import Library, Record
from latchside.library.quantity import quantity
from latchside.library.regions import told
from latchside.library.text import RecordLink, ValueLink, Words, text_parts
from latchside.messages import Message, messages
from latchside.order.plan import Node, Plan, Step

message = messages(__name__)


def as_text(plan: Plan, library: Library | None = None, fault: Record | None = None) -> str:
    """The whole plan; `library` and `fault` hold the words for the ids of a plan made from a record."""
    lines = [str(message("expected", minutes=_minutes(plan.expected)))]
    if not plan.exact:
        lines.append(message("not-exact", gap=_minutes(plan.gap), bound=_minutes(plan.bound)))
    if plan.steps:
        lines += ["", *_listed(plan.steps)]
    elif plan.tree is not None and library is not None and fault is not None:
        device = library.find("device", plan.problem.device) if plan.problem.device else None
        title = message("title", fault=fault.name, device=device.name) if device else fault.name
        lines = [title, "", *lines, message("assumed"), "", *_Writer(library, fault, device).write(plan.tree)]
    return "\n".join([*lines, "", *_compared(plan)])


def _compared(plan: Plan) -> Iterator[str]:
    other, worst = plan.compared, plan.compared.worst_order
    rows = [
        (message("by-frequency"), _minutes(other.by_frequency)),
        (message("by-time"), _minutes(other.by_time)),
        (message("worst-order"), message("not-searched") if worst is None else _minutes(worst)),
    ]
    width = max(len(name) for name, _ in rows)
    yield message("other-orders")
    yield from (f"  {name:{width}}  {minutes}" for name, minutes in rows)


def _listed(steps: tuple[Step, ...]) -> Iterator[str]:
    titles = message("cause"), message("probability"), message("minutes"), message("left"), message("to-go")
    rows: list[tuple[str, ...]] = [titles]
    rows += [
        (step.cause, f"{step.probability:.3f}", _minutes(step.minutes), f"{step.left:.3f}", _minutes(step.expected))
        for step in steps
    ]
    width = max(len(row[0]) for row in rows)
    for number, row in enumerate(rows):
        figures = "  ".join(f"{figure:>{len(title)}}" for figure, title in zip(row[1:], titles[1:], strict=True))
        yield f"{number or '':2}  {row[0]:{width}}  {figures}"


class _Writer:
    """Numbers the points of a tree and writes each with the words of its record."""

    def __init__(self, library: Library, fault: Record, device: Record | None) -> None:
        self.library, self.fault, self.device = library, fault, device
        self._checks: dict[str, Mapping[str, Any]] = {one["id"]: one for one in fault["checks"]}
        self._causes: dict[str, Mapping[str, Any]] = {one["id"]: one for one in fault["causes"]}
        self._set_ups = library.schemas.words("need")
        self._who = library.schemas.words("who")
        self._numbers: dict[int, int] = {}

    def write(self, tree: Node) -> Iterator[str]:
        """The points in the order in which a run can come to them, then the escalation."""
        points = [tree] if tree.do != "end" else []
        for node in points:
            points += [below for below in node.below if below.do != "end"]
        self._numbers = {id(node): number for number, node in enumerate(points, 1)}
        if not points:
            yield self._nothing_to_do(tree)
        for node in points:
            yield from self._point(node)
        escalate = self.fault["escalate"]
        yield message("escalate", who=self._who[escalate["to"]], when=self._words(escalate["when"]))
        yield f"    {message('tell', words=self._words(escalate['say']))}"
        yield f"    {message('leave', words=self._words(escalate['leave']))}"

    def _point(self, node: Node) -> Iterator[str]:
        number = f"{self._numbers[id(node)]:3}"
        for line in self._restores(node):
            yield f"{number} {message('put-back', line=line)}"
            number = "   "
        if node.do == "check":
            yield f"{number} {self._words(self._checks[node.id or '']['do'])}"
        else:
            yield f"{number} {message('fix', cause=self._words(self._causes[node.id or '']['name']))}"
        yield f"    {self._figures(node)}"
        causes = ", ".join(f"{self._cause(cause)} {share:.0%}" for cause, share in node.left)
        yield f"    {message('still-possible', causes=causes)}"
        if node.do == "check":
            yield from self._answers(node)
        else:
            yield from self._remedy(node)
        yield ""

    def _figures(self, node: Node) -> str:
        figures = {
            "minutes": _minutes(node.minutes), "share": f"{node.reached:.0%}", "expected": _minutes(node.expected),
        }  # fmt: skip
        if not node.set_up:
            return message("takes", **figures)
        needs = ", ".join(self._set_ups[one] for one in node.set_up)
        return message("takes-with-set-up", **figures, more=_minutes(node.set_up_minutes), needs=needs)

    def _answers(self, node: Node) -> Iterator[str]:
        check = self._checks[node.id or ""]
        yield f"    {message('good', words=self._words(check['expect']))}"
        shows = {result["id"]: result["shows"] for result in check["results"]}
        for branch in node.branches:
            yield f"    - {self._words(shows[branch.result])} ({branch.probability:.0%}) → {self._to(branch.next)}"

    def _remedy(self, node: Node) -> Iterator[str]:
        remedy = self._causes[node.id or ""]["remedy"]
        for line in remedy["do"]:
            yield f"    · {self._words(line)}"
        yield f"    {message('remedy', who=self._who[remedy['who']], proof=self._words(remedy['proof']))}"
        if node.fails:
            yield f"    {message('if-it-fails', to=self._to(node.fails))}"

    def _to(self, node: Node) -> str:
        """Where an answer leads: the number of a point, or what is done at an end."""
        if node.do != "end":
            return str(self._numbers[id(node)])
        to: str = self._end(node)
        for line in reversed(self._restores(node)):
            to = message("put-back-then", line=line, to=to)
        return to

    def _end(self, node: Node) -> Message:
        if node.why == "go":
            other = self.library.find("fault", node.id or "")
            return message("go", fault=other.name if other else node.id or "")
        if node.why == "not-ours":
            return message("pass-on-to", who=self._who["electrician"])
        return message(f"pass-on-{node.why}")

    def _nothing_to_do(self, node: Node) -> Message:
        """What stands in place of a plan that has no point."""
        if node.why == "not-ours":
            return message("only-pass-on-to", who=self._who["electrician"])
        return message("only-pass-on")

    def _restores(self, node: Node) -> list[str]:
        return list(dict.fromkeys(self._words(self._checks[one]["restore"]) for one in node.restore))

    def _cause(self, id_: str) -> str:
        return self._words(self._causes[id_]["name"]).rstrip(".")

    def _words(self, text: str) -> str:
        return "".join(self._part(part) for part in text_parts(text))

    def _part(self, part: Words | RecordLink | ValueLink) -> str:
        if isinstance(part, Words):
            return part.text
        if isinstance(part, RecordLink):
            record = self.library.find(part.kind, part.id)
            return told(part, record) or (record.name.lower() if record else part.id.replace("-", " "))
        owner = self.fault if part.owner is None else self.device
        if part.owner is not None and part.owner[1]:
            owner = self.library.find(part.owner[0], part.owner[1])
        data = owner.get("values", {}).get(part.name) if owner else None
        if data:
            return in_words(quantity(data)).replace("\u00a0", " ")
        return self.library.schemas.words("value-name").get(part.name, part.name.replace("-", " ")).lower()


def _minutes(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
