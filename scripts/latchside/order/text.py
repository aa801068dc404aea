"""A plan as text: numbered points, each saying what to do, what it takes, and where each answer leads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.words import in_words
from latchside.library import Library, Record
from latchside.library.quantity import quantity
from latchside.library.text import RecordLink, ValueLink, Words, parts
from latchside.order.plan import Node, Plan, Step

ASSUMED = (
    "One fault at a time is assumed. How often each cause is behind it, and the minutes, are common-practice guesses."
)


def as_text(plan: Plan, library: Library | None = None, fault: Record | None = None) -> str:
    """The whole plan; `library` and `fault` hold the words for the ids of a plan made from a record."""
    lines = [f"Expected minutes: {_minutes(plan.expected)}"]
    if not plan.exact:
        lines.append(
            f"Too large to be solved exactly: at most {_minutes(plan.gap)} min above the best possible, "
            f"which is at least {_minutes(plan.bound)} min."
        )
    if plan.steps:
        lines += ["", *_listed(plan.steps)]
    elif plan.tree is not None and library is not None and fault is not None:
        device = library.find("device", plan.problem.device) if plan.problem.device else None
        title = f"{fault.name}, on: {device.name}" if device else fault.name
        lines = [title, "", *lines, ASSUMED, "", *_Writer(library, fault, device).write(plan.tree)]
    return "\n".join([*lines, "", *_compared(plan)])


def _compared(plan: Plan) -> Iterator[str]:
    yield "The same in other orders, expected minutes:"
    worst = plan.compared.worst_order
    yield f"  by frequency alone  {_minutes(plan.compared.by_frequency)}"
    yield f"  by time alone       {_minutes(plan.compared.by_time)}"
    yield f"  in the worst order  {_minutes(worst) if worst is not None else 'not searched, the problem is too large'}"


def _listed(steps: tuple[Step, ...]) -> Iterator[str]:
    width = max(5, *(len(step.cause) for step in steps))
    yield f"    {'cause':{width}}  probability  minutes  probability left  minutes to go"
    for number, step in enumerate(steps, 1):
        figures = f"{step.probability:11.3f}  {_minutes(step.minutes):>7}  {step.left:16.3f}"
        yield f"{number:2}  {step.cause:{width}}  {figures}  {_minutes(step.expected):>13}"


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
            yield f"{self._to(tree).capitalize()}."
        for node in points:
            yield from self._point(node)
        escalate = self.fault["escalate"]
        yield f"Pass it on to: {self._who[escalate['to']]}. {self._words(escalate['when'])}"
        yield f"    Tell them: {self._words(escalate['say'])}"
        yield f"    Leave it: {self._words(escalate['leave'])}"

    def _point(self, node: Node) -> Iterator[str]:
        number = f"{self._numbers[id(node)]:3}"
        for line in self._restores(node):
            yield f"{number} Put back: {line}"
            number = "   "
        if node.do == "check":
            yield f"{number} {self._words(self._checks[node.id or '']['do'])}"
        else:
            yield f"{number} Fix: {self._words(self._causes[node.id or '']['name'])}"
        yield f"    {self._figures(node)}"
        yield f"    Still possible: {', '.join(f'{self._cause(cause)} {share:.0%}' for cause, share in node.left)}"
        if node.do == "check":
            yield from self._answers(node)
        else:
            yield from self._remedy(node)
        yield ""

    def _figures(self, node: Node) -> str:
        takes = f"{_minutes(node.minutes)} min"
        if node.set_up:
            words = ", ".join(self._set_ups[one] for one in node.set_up)
            takes += f" and {_minutes(node.set_up_minutes)} min for: {words}"
        return f"Takes {takes}. {node.reached:.0%} of runs come here. {_minutes(node.expected)} min expected from here."

    def _answers(self, node: Node) -> Iterator[str]:
        check = self._checks[node.id or ""]
        yield f"    Good: {self._words(check['expect'])}"
        shows = {result["id"]: result["shows"] for result in check["results"]}
        for branch in node.branches:
            yield f"    - {self._words(shows[branch.result])} ({branch.probability:.0%}) → {self._to(branch.next)}"

    def _remedy(self, node: Node) -> Iterator[str]:
        remedy = self._causes[node.id or ""]["remedy"]
        for line in remedy["do"]:
            yield f"    · {self._words(line)}"
        yield f"    Who: {self._who[remedy['who']]}. Gone when: {self._words(remedy['proof'])}"
        if node.fails:
            yield f"    If the proof fails → {self._to(node.fails)}"

    def _to(self, node: Node) -> str:
        if node.do != "end":
            return str(self._numbers[id(node)])
        first = "".join(f"put back: {line} Then " for line in self._restores(node))
        if node.why == "go":
            other = self.library.find("fault", node.id or "")
            return f"{first}go to the fault “{other.name if other else node.id}”"
        reasons = {"does-not-fit": " (no cause left fits)", "none-left": " (no cause is left)", "not-ours": ""}
        who = self._who["electrician"] if node.why == "not-ours" else None
        return f"{first}pass it on{f' to: {who}' if who else reasons.get(node.why or '', '')}"

    def _restores(self, node: Node) -> list[str]:
        return list(dict.fromkeys(self._words(self._checks[one]["restore"]) for one in node.restore))

    def _cause(self, id_: str) -> str:
        return self._words(self._causes[id_]["name"]).rstrip(".")

    def _words(self, text: str) -> str:
        return "".join(self._part(part) for part in parts(text))

    def _part(self, part: Words | RecordLink | ValueLink) -> str:
        if isinstance(part, Words):
            return part.text
        if isinstance(part, RecordLink):
            record = self.library.find(part.kind, part.id)
            return part.words or (record.name.lower() if record else part.id.replace("-", " "))
        owner = self.fault if part.owner is None else self.device
        if part.owner is not None and part.owner[1]:
            owner = self.library.find(part.owner[0], part.owner[1])
        data = owner.get("values", {}).get(part.name) if owner else None
        if data:
            return in_words(quantity(data)).replace("\u00a0", " ")
        return self.library.schemas.words("value-name").get(part.name, part.name.replace("-", " ")).lower()


def _minutes(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")
