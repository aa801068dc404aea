"""A plan in short, for a terminal or a pipe. Texts of a survey are shown as they stand, never as markup."""

from __future__ import annotations

from collections.abc import Sequence

from latchside.planning.asked import Asked, asked
from latchside.planning.plan import OpeningPlan, Plan

COLUMNS = ("Opening", "Device", "Verdicts", "Open")
_ORDER = ("good", "test on site", "poor")


def rows(plan: Plan) -> list[tuple[str, str, str, str]]:
    """One row an opening: its name, its device, how its figures bear, what stands open."""
    return [(shown(one.spoken), _device(one), _verdicts(one), _open(plan, one)) for one in plan.openings]


def heading(plan: Plan) -> str:
    """One line about the whole."""
    chosen = sum(one.choice.device is not None for one in plan.openings)
    counts = (
        counted(len(plan.openings), "opening"),
        f"{chosen} with a device",
        counted(len(plan.problems), "problem"),
        counted(len(asked(plan.questions)), "question"),
    )
    return f"{shown(plan.survey.name)} ({shown(plan.survey.id)}), planned for {plan.on}: {', '.join(counts)}"


def open_ends(plan: Plan) -> list[str]:
    """Each problem and each question on a line of its own; a question with all that it is asked of."""
    problems = [f"{_about(plan, one.about)}: {one.found} \u2013 {one.action}" for one in plan.problems]
    questions = [_question(plan, one) for one in asked(plan.questions)]
    return [*(f"problem   {shown(line)}" for line in problems), *(f"question  {shown(line)}" for line in questions)]


def as_text(plan: Plan) -> str:
    """The summary in columns, for a pipe."""
    table = [COLUMNS, *rows(plan)]
    wide = [max(len(row[column]) for row in table) for column in range(len(COLUMNS))]
    lines = [_padded(row, wide) for row in table]
    return "\n".join([heading(plan), "", *lines, *([""] if open_ends(plan) else []), *open_ends(plan)])


def counted(number: int, word: str) -> str:
    """So many of something: 1 opening, 2 openings."""
    return f"{number} {word}{'' if number == 1 else 's'}"


def shown(text: str) -> str:
    """A text as one harmless line: a terminal would obey its control characters."""
    return "".join(sign if sign.isprintable() else "\ufffd" for sign in " ".join(text.split()))


def _padded(row: Sequence[str], wide: Sequence[int]) -> str:
    return "  ".join(cell.ljust(width) for cell, width in zip(row, wide, strict=True)).rstrip()


def _device(one: OpeningPlan) -> str:
    return f"{one.choice.device or 'none yet'}{' (chosen by the lead)' if one.choice.overridden else ''}"


def _verdicts(one: OpeningPlan) -> str:
    found = [line.verdict for line in one.figures]
    return ", ".join(f"{found.count(word)} {word}" for word in _ORDER if word in found) or "-"


def _open(plan: Plan, one: OpeningPlan) -> str:
    problems = sum(problem.concerns(one.opening.id) for problem in plan.problems)
    questions = sum(question.about == one.opening.id for question in plan.questions)
    parts = [counted(count, word) for count, word in ((problems, "problem"), (questions, "question")) if count]
    return ", ".join(parts) or "-"


def _question(plan: Plan, one: Asked) -> str:
    """Of what it is asked and what it decides there: said first where it decides the same everywhere."""
    where = [(", ".join(_about(plan, id_) for id_ in ids), why) for why, ids in one.decides]
    if len(where) == 1:
        return f"{where[0][0]}: {one.text} {where[0][1]}"
    return " ".join([one.text, *(f"{names}: {why}" for names, why in where)])


def _about(plan: Plan, id_: str) -> str:
    names = {one.opening.id: one.spoken for one in plan.openings}
    return names.get(id_, id_.replace("-", " "))
