"""The pages of the demo jobs: what a pack is, each job's summary, its parts, and the whole on one page."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from jinja2 import Environment
from markupsafe import Markup

from latchside.figures.catalogue import figures_of
from latchside.library import Library, Record
from latchside.library.regions import REGION_OF
from latchside.library.text import ValueLink
from latchside.messages import messages
from latchside.packs.files import about, pack_files
from latchside.pages.escape import safe
from latchside.pages.job_view import PARTS, JobView, parts
from latchside.pages.links import file_of
from latchside.pages.page import Page
from latchside.planning.house import TABLE
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan
from latchside.root import ROOT
from latchside.root import part as part_of_project
from latchside.surveys.read import survey_of

message = messages(__name__)

INDEX = "jobs/"
STYLES = ("tokens.css", "latchside.css", "job.css")


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


def pages_of(plan: Plan, library: Library, environment: Environment) -> Iterator[tuple[str, str]]:
    """The pages and files of one job."""
    home = f"{INDEX}{plan.survey.id}/"
    files = pack_files(plan)

    def fill(part: str, **values: Any) -> tuple[str, str]:
        page = Page(library, f"{home}{part}/" if part else home)
        view = JobView(plan, page, whole=part == "print")
        template = environment.get_template("job.jinja")
        given = {"view": view, "plan": plan, "part": part, "parts": parts(), "library": library, "edit_base": ""}
        return file_of(page.address), template.render(page=page, **given, **values)

    yield fill("", files=[(name, about(name)) for name in files])
    for part in (*PARTS, "print"):
        yield fill(part, files=[])
    yield from ((f"{home}{name}", text) for name, text in files.items())


class Document(Page):
    """A page that stands by itself: links lead into the site where its address is known, and are words elsewhere."""

    def __init__(self, library: Library, site: str = "") -> None:
        super().__init__(library, "")
        self._site = site

    def href(self, address: str) -> str:
        """The full address of a page of the site."""
        return self._site + address

    def anchor(self, address: str, words: object) -> Markup:
        """A link, or the words alone."""
        return super().anchor(address, words) if self._site else safe(words)

    def _value_link(self, part: ValueLink, owner: Record | None) -> Markup:
        return self.plain(f"[[={'/'.join(filter(None, (*(part.owner or ()), part.name)))}]]", owner)


def document(plan: Plan, library: Library, environment: Environment, site: str = "") -> str:
    """The whole pack as one HTML document that opens from a folder, ready to print."""
    page = Document(library, site)
    view = JobView(plan, page, whole=True, html=True)
    root = library.root or ROOT
    style = "\n".join(part_of_project(root, f"content/assets/{name}").read_text("utf-8") for name in STYLES)
    paper = "letter" if plan.survey.site.region in ("united-states", "canada") else "A4"
    region = REGION_OF.get(plan.survey.site.region or "")
    template = environment.get_template("job_document.jinja")
    return template.render(
        page=page, view=view, plan=plan, style=Markup(style), paper=paper, parts=parts(), region=region
    )
