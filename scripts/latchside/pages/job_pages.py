"""The pages of the demo jobs: what a pack is, each job's summary, its parts, and the whole on one page."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from jinja2 import Environment
from markupsafe import Markup

from latchside.figures.catalogue import figures_of
from latchside.library import Library, Record
from latchside.messages import messages
from latchside.packs.files import about, pack_files
from latchside.packs.paper import sketch
from latchside.packs.view import PARTS, JobView, parts
from latchside.pages.links import file_of
from latchside.pages.page import Page
from latchside.planning.house import TABLE
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan
from latchside.surveys.read import survey_of

message = messages(__name__)

INDEX = "jobs/"


def plan_of(record: Record, library: Library) -> Plan:
    """The plan of a job of the library, for the day of its survey: nothing asks a clock.

    Raises ValueError for a job that is not marked as invented, or has no date.
    """
    survey = survey_of(record.data)
    if not survey.invented:
        raise ValueError(message("not-invented", file=record.raw.file))
    if survey.surveyed is None:
        raise ValueError(message("no-day", file=record.raw.file))
    return make_plan(survey, library, figures_of(library), survey.surveyed)


def job_pages(library: Library, environment: Environment) -> dict[str, str]:
    """Every page and file of the jobs in the library, text by path."""
    with_rules = library.find("table", TABLE) is not None  # nothing is planned without the firm's own rules
    plans = [plan_of(record, library) for record in library.of("job")] if with_rules else []
    index = environment.get_template("jobs.jinja")
    pages = {file_of(INDEX): index.render(page=Page(library, INDEX), plans=plans, edit_base="", library=library)}
    for plan in plans:
        pages.update(pages_of(plan, library, environment))
    return pages


class JobPage(Page):
    """A page of a job in the site."""

    def named(self, name: str) -> str:
        """A name as it stands: a page of the site has readers of every region."""
        return name

    def sketch(self, id_: str, name: str) -> Markup:
        """A drawing without its words, in the page itself."""
        return sketch(self.library, id_, name)

    def code(self, address: str) -> Markup:
        """None: what it would open is a tap away."""
        return Markup("")


def pages_of(plan: Plan, library: Library, environment: Environment) -> Iterator[tuple[str, str]]:
    """The pages and files of one job."""
    home = f"{INDEX}{plan.survey.id}/"
    files = pack_files(plan)

    def fill(part: str, **values: Any) -> tuple[str, str]:
        page = JobPage(library, f"{home}{part}/" if part else home)
        view = JobView(plan, page, whole=part == "print")
        template = environment.get_template("job.jinja")
        given = {"view": view, "plan": view.plan, "part": part, "parts": parts(), "library": library, "edit_base": ""}
        return file_of(page.address), template.render(page=page, **given, **values)

    yield fill("", files=[(name, about(name)) for name in files])
    for part in (*PARTS, "print"):
        yield fill(part, files=[])
    yield from ((f"{home}{name}", text) for name, text in files.items())
