"""The plan of a fault as a picture: an outline that grows downwards, so that it is read on a phone and on paper."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from markupsafe import Markup

from latchside.drawings.canvas import SMALL, WIDTH, Drawing, Sheet
from latchside.escape import safe
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.order.plan import Node
from latchside.pages.fault_plan import Points, plan_of, share_word, whole
from latchside.pages.page import Page

message = messages(__name__)

LINE, PAD, STEP, GAP = 17, 6, 16, 8
"""Height of a line of text, room inside a box, how far a branch is set in, and room between boxes."""
CHARACTER = 6.9
"""Width that a character of small text takes, on the safe side."""


def path_of(fault: Record) -> str:
    """Where the picture stands in the site."""
    return f"assets/trees/{fault.id}.svg"


def drawing(library: Library, fault: Record) -> Drawing:
    """The picture of the plan for the whole class."""
    plan = plan_of(library, fault)
    page = Page(library, fault.address, fault)
    if plan.tree is None:
        raise ValueError(f"{fault.id}: a list has no tree")
    return _Outline(Points(page, fault, plan.tree), whole(plan.expected)).draw()


def figure(page: Page, fault: Record) -> Markup:
    """The picture in the page, with its message in words."""
    made = drawing(page.library, fault)
    return Markup(
        '<figure class="ls-figure ls-tree" id="tree"><img class="ls-drawing" loading="lazy" src="{}" width="{}" '
        'height="{}" alt="{}">'
        "<figcaption>{}</figcaption></figure>"
    ).format(page.file(path_of(fault)), made.width, made.height, safe(made.message), safe(made.message))


class _Outline:
    """Lays the points out from the top down; a first pass measures, a second draws."""

    def __init__(self, points: Points, expected: str) -> None:
        self.points = points
        name = points.fault.name
        self.title = message("title", fault=name)
        self.message = message("about", fault=name, points=len(points.numbers), minutes=expected)
        self.sheet: Sheet | None = None

    def draw(self) -> Drawing:
        height = self._node(self.points.tree, 0, GAP) + GAP
        self.sheet = Sheet(f"tree-{self.points.fault.id}", self.title, self.message, round(height))
        self._node(self.points.tree, 0, GAP)
        return self.sheet.finish()

    def _node(self, node: Node, depth: int, top: float) -> float:
        """Draw a point and all below it; where it ends."""
        if node.do == "end":
            return top
        top = self._box(node, depth, top)
        left = GAP + depth * STEP + STEP / 2
        down = top
        for words, below in self._below(node):
            end = below.do == "end"
            if end:
                words = message("leads", answer=words, end=self._end(below))
            elif below.reached:
                words = message("reached", answer=words, share=share_word(below.reached))
            lines = self._lines(words, depth + 1)
            middle = top + GAP + LINE * 0.6
            self._elbow(left, down, middle)
            down = middle
            top = self._node(below, depth + 1, self._words(lines, depth + 1, top + GAP) + (0 if end else 3))
        return top

    def _below(self, node: Node) -> Iterator[tuple[str, Node]]:
        shows = (
            {one["id"]: one["shows"] for one in self.points.checks[node.id or ""]["results"]} if node.branches else {}
        )
        for branch in sorted(node.branches, key=lambda one: one.next.do == "check"):
            words = self.points.page.plain(shows[branch.result], self.points.fault).unescape().rstrip(".")
            yield words, branch.next
        if node.fails and node.fails.do != "end":
            yield message("still-there"), node.fails

    def _end(self, node: Node) -> str:
        if node.why == "go":
            other = self.points.page.library.find("fault", node.id or "")
            return message("go", fault=other.name if other else node.id or "")
        return message(f"end-{node.why or 'result'}")

    def _box(self, node: Node, depth: int, top: float) -> float:
        checking = node.do == "check"
        about = (self.points.checks if checking else self.points.causes)[node.id or ""]
        action = self.points.page.plain(about["do" if checking else "name"], self.points.fault).unescape().rstrip(".")
        text = message(
            "check" if checking else "remedy",
            number=self.points.numbers[id(node)], action=action, minutes=f"{node.minutes + node.set_up_minutes:g}",
        )  # fmt: skip
        lines = self._lines(text, depth, 2 * PAD)
        height = LINE * len(lines) + PAD
        if self.sheet:
            x = GAP + depth * STEP
            self.sheet.rect(x, top, WIDTH - GAP - x, height, line=1.5 if checking else 3, round_=0 if checking else 8)
            for at, line in enumerate(lines):
                self.sheet.text(x + PAD + 2, top + LINE * (at + 0.8) + 1, line, size=SMALL, bold=at == 0)
        return top + height

    def _elbow(self, x: float, top: float, middle: float) -> None:
        if self.sheet:
            self.sheet.line(x, top, x, middle)
            self.sheet.line(x, middle, x + STEP / 2 + 4, middle)

    def _words(self, lines: list[str], depth: int, top: float) -> float:
        for at, line in enumerate(lines if self.sheet else ()):
            x = GAP + depth * STEP + 8
            if self.sheet:
                self.sheet.text(x, top + LINE * (at + 0.8), line, size=SMALL)
        return top + LINE * len(lines)

    @staticmethod
    def _lines(words: str, depth: int, room: float = 8) -> list[str]:
        return wrap(words, int((WIDTH - 2 * GAP - depth * STEP - room) / CHARACTER))
