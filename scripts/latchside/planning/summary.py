"""A short summary of a plan, for a terminal or a pipe. Texts of a survey are shown as they are, never as markup."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from latchside.messages import Message, listed, messages
from latchside.planning.asked import Asked, asked
from latchside.planning.plan import OpeningPlan, Plan, Verdict

message = messages(__name__)
COLUMNS = (message("opening"), message("device"), message("verdicts"), message("open"))
_VERDICTS: tuple[Verdict, ...] = ("good", "test on site", "poor")
_LABEL = 10
"""Signs before a problem or a question, which the word for it fills up."""


def rows(plan: Plan) -> list[tuple[str, str, str, str]]:
    """One row for each opening: its name, its device, its verdicts, its open problems and questions."""
    return [(shown(one.spoken), _device(one), _verdicts(one), _open(plan, one)) for one in plan.openings]


def heading(plan: Plan) -> str:
    """One line about the whole plan."""
    counts = (
        message("openings", count=len(plan.openings)),
        message("with-device", count=sum(one.choice.device is not None for one in plan.openings)),
        message("problems", count=len(plan.problems)),
        message("questions", count=len(asked(plan.questions))),
    )
    name, id_ = shown(plan.survey.name), shown(plan.survey.id)
    return message("heading", name=name, id=id_, day=str(plan.on), counts=listed(list(counts), "unit"))


def open_ends(plan: Plan) -> list[str]:
    """Each problem and each question on a line of its own; a question with everything it is asked about."""
    names = {one.opening.id: one.spoken for one in plan.openings}
    problems = [
        message("problem-line", about=_about(names, one.about), found=one.found, action=one.action)
        for one in plan.problems
    ]
    questions = [_question(names, one) for one in asked(plan.questions)]
    return [*_labelled(message("problem"), problems), *_labelled(message("question"), questions)]


def _labelled(label: str, lines: Sequence[str]) -> list[str]:
    return [f"{label.ljust(_LABEL)}{shown(line)}" for line in lines]


def as_text(plan: Plan) -> str:
    """The summary in columns, for a pipe."""
    table = [COLUMNS, *rows(plan)]
    wide = [max(len(row[column]) for row in table) for column in range(len(COLUMNS))]
    lines = [_padded(row, wide) for row in table]
    ends = open_ends(plan)
    return "\n".join([heading(plan), "", *lines, *([""] if ends else []), *ends])


def shown(text: str) -> str:
    """A text as one line without control characters, which a terminal would obey."""
    return "".join(sign if sign.isprintable() else "\ufffd" for sign in " ".join(text.split()))


def _padded(row: Sequence[str], wide: Sequence[int]) -> str:
    return "  ".join(cell.ljust(width) for cell, width in zip(row, wide, strict=True)).rstrip()


def _device(one: OpeningPlan) -> str:
    device = one.choice.device or message("no-device")
    return message("chosen-by-lead", device=device) if one.choice.overridden else device


def _verdicts(one: OpeningPlan) -> str:
    verdicts = [line.verdict for line in one.figures]
    counts = [(verdict.replace(" ", "-"), verdicts.count(verdict)) for verdict in _VERDICTS]
    return listed([message(f"count-{id_}", count=count) for id_, count in counts if count], "unit") or "-"


def _open(plan: Plan, one: OpeningPlan) -> str:
    problems = sum(problem.concerns(one.opening.id) for problem in plan.problems)
    questions = sum(question.about == one.opening.id for question in plan.questions)
    counts = (("problems", problems), ("questions", questions))
    return listed([message(id_, count=count) for id_, count in counts if count], "unit") or "-"


def _question(names: Mapping[str, str], one: Asked) -> Message:
    """A question with what it is asked about and what it decides there; once where it decides the same everywhere."""
    where = [(listed([_about(names, id_) for id_ in ids], "unit"), why) for why, ids in one.decides]
    if len(where) == 1:
        return message("question-line", about=where[0][0], question=one.text, why=where[0][1])
    decides = " ".join(message("decides", about=about, why=why) for about, why in where)
    return message("question-lines", question=one.text, decides=decides)


def _about(names: Mapping[str, str], id_: str) -> str:
    if id_ in names:
        return names[id_]
    return message("site") if id_ == "site" else message("control-unit")
