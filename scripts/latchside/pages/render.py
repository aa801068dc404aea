"""Every generated file of the site, as {path: text}: pages as Markdown, drawings as SVG."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache, partial
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from jinja2.runtime import Context
from markupsafe import Markup

from latchside import charts
from latchside.all_cores import all_cores
from latchside.figures.units import symbol
from latchside.kinds import KINDS, Kind
from latchside.library import Library, Record
from latchside.library.compiled import for_device, groups, only_for
from latchside.library.quantity import quantity
from latchside.messages import javascript, messages
from latchside.pages import calculators, drawn, fault_lists, fault_plan, fault_tree
from latchside.pages.device_figures import carried, device_figures
from latchside.pages.escape import safe
from latchside.pages.fault_data import run_data
from latchside.pages.job_pages import document, job_pages
from latchside.pages.links import file_of
from latchside.pages.markup import page_messages
from latchside.pages.page import Page
from latchside.pages.readings import expectations
from latchside.pages.visit_lists import item_words
from latchside.planning.plan import Plan
from latchside.rules import all_rules
from latchside.version import library_version

message = messages(__name__)

Progress = Callable[[str], None]
INSTALL = ("prepare", "position", "wire", "power", "enrol", "set-up", "try", "fix", "prove", "hand-over")
"""The stages of the whole install page: from the yard to the people on site."""


def render_pages(library: Library, edit_base: str = "", progress: Progress = lambda _: None) -> dict[str, str]:
    """All generated pages. The same library always gives the same text.

    `edit_base` is the address under which the firm's own repository opens a file for editing; without one the
    edit links lead to the page that explains how.
    """
    writer = Writer(library, edit_base)
    progress(message("progress"))
    pages = {path: text for part in all_cores(list(writer.tasks())) for path, text in part}
    pages[file_of("maintain/rules/")] = writer.fill("rules.jinja", Page(library, "maintain/rules/"), rules=all_rules())
    pages.update(drawn.files(library))
    pages.update(charts.files(library))
    pages[calculators.SCRIPT] = calculators.script(library)
    pages.update(javascript.scripts())
    return dict(sorted(pages.items()))


@dataclass(frozen=True)
class Writer:
    """Fills templates for one library."""

    library: Library
    edit_base: str = ""

    def fill(self, template: str, page: Page, **values: Any) -> str:
        """A template filled in for a page."""
        return (
            _environment()
            .get_template(template)
            .render(page=page, library=self.library, edit_base=self.edit_base.rstrip("/"), **values)
        )

    def tasks(self) -> Iterator[Callable[[], list[tuple[str, str]]]]:
        """The pages of records, in parts that do not depend on each other; the longest first."""
        yield self.fault_lists
        yield self.jobs
        for kind in KINDS.values():
            if kind.id == "job":
                continue  # a job is planned first, and has a page for each part of its pack
            yield partial(self.listing, kind)
            for record in self.library.of(kind.id) if kind.own_page else ():
                yield partial(self.pages_of, record)

    def fault_lists(self) -> list[tuple[str, str]]:
        """The pages about all faults together."""
        return [
            (file_of(address), self.fill(template, Page(self.library, address), shown=made))
            for address, template, made in fault_lists.pages(self.library)
        ]

    def jobs(self) -> list[tuple[str, str]]:
        """The pages and files of the demo jobs."""
        return list(job_pages(self.library, _environment()).items())

    def listing(self, kind: Kind) -> list[tuple[str, str]]:
        """The page that lists the records of a kind, with its path."""
        return [(file_of(kind.index), self.index(kind))]

    def pages_of(self, record: Record) -> list[tuple[str, str]]:
        """The page of a record, those that lead to it from the ids it had before, and all else that is its own."""
        pages = [(file_of(record.address), self.record(record))]
        for alias in record.listed("aliases"):
            page = Page(self.library, record.kind.address.format(id=alias))
            pages.append(
                (
                    file_of(page.address),
                    self.fill("moved.jinja", page, kind=record.kind, record=record, title="", goal=""),
                )
            )
        if record.kind.id == "device":
            pages.extend(self.stages(record))
        if record.kind.id == "fault":
            pages.append((fault_tree.path_of(record), fault_tree.drawing(self.library, record).svg + "\n"))
        return pages

    def record(self, record: Record) -> str:
        """The page of one record."""
        page = Page(self.library, record.address, record, record if record.kind.id == "device" else None)
        values: dict[str, Any] = {"record": record, "used_by": list(_used_by(self.library, record))}
        if record.kind.id == "procedure":
            values["groups"] = groups(self.library, record)
        if record.kind.id == "formula":
            values |= _figure(page, record)
        if record.kind.id == "fault":
            values |= {"plan": fault_plan.shown(page, record), "tree": fault_tree.figure(page, record)}
            values["run_data"] = run_data(self.library, record)
        return self.fill(record.kind.template, page, **values)

    def index(self, kind: Kind) -> str:
        """The page that lists the records of a kind, or holds them all."""
        template = "index.jinja" if kind.own_page else f"{kind.plural}.jinja"
        return self.fill(template, Page(self.library, kind.index), kind=kind, records=self.library.of(kind.id))

    def pack(self, plan: Plan, site: str = "") -> str:
        """The pack of a job as one document; `site` is the address of the site, where links may lead there."""
        return document(plan, self.library, _environment(), site)

    def stages(self, device: Record) -> Iterator[tuple[str, str]]:
        """A page for each stage that has work for the device, and one for the whole installation."""
        words = self.library.schemas.words("stage")
        done = [stage for stage in words if isinstance(device["procedures"][stage], tuple)]
        for stage in done:
            yield self._stage(device, stage, words[stage], (stage,), done)
            for moved in self._elsewhere(device, stage):
                page = Page(self.library, f"{device.address}{moved}/")
                goal = page.anchor(
                    f"{device.address}{stage}/", message("goal", device=device.name, stage=words[stage].lower())
                )
                text = self.fill("moved.jinja", page, kind=device.kind, record=device, title=words[moved], goal=goal)
                yield file_of(page.address), text
        yield self._stage(device, "install", message("install"), tuple(s for s in INSTALL if s in done), done)

    def _elsewhere(self, device: Record, stage: str) -> list[str]:
        """The stages without a page of their own whose work a device has at this one."""
        procedures = (self.library.find("procedure", id_) for id_ in device["procedures"][stage])
        own = dict.fromkeys(one["stage"] for one in procedures if one)
        return [one for one in own if one != stage and not isinstance(device["procedures"][one], tuple)]

    def _stage(
        self, device: Record, name: str, title: str, stages: tuple[str, ...], done: list[str]
    ) -> tuple[str, str]:
        page = Page(self.library, f"{device.address}{name}/", device, device)
        chapters = [
            (stage, procedure, groups(self.library, procedure, device.id))
            for stage in stages
            for procedure in page.records("procedure", device["procedures"][stage])
        ]
        after = done[done.index(name) + 1 :][:1] if name in done else []
        text = self.fill("stage.jinja", page, device=device, title=title, chapters=chapters, after=after)
        return file_of(page.address), text


def _figure(page: Page, record: Record) -> dict[str, Any]:
    for name, data in record.get("values", {}).items():
        page.note_value(record, name, quantity(data))
    return {
        "figure": calculators.figure_of(record),
        "calculator": calculators.is_calculator(record),
        "examples": list(calculators.worked(record)),
        "charts": charts.for_figure(page.library, record.id),
        "default_words": calculators.default_words,
        "replaced": {entry["instead_of"] for entry in record["inputs"] if "instead_of" in entry},
        "sign": symbol,
        "typed": calculators.typed,
    }


def _used_by(library: Library, record: Record) -> Iterator[tuple[str, tuple[Record, ...]]]:
    for kind in KINDS.values():
        users = library.referring(record.kind.id, record.id, kind.id)
        if users:
            yield kind.title, users


class _Plain(Context):
    """Calls what a template calls with what it is given.

    No function of these templates asks for the context or the environment, and looking whether one does took a quarter
    of the time that pages take.
    """

    def call(self, called: Callable[..., Any], /, *given: Any, **named: Any) -> Any:
        """What the call gives back."""
        named.pop("_loop_vars", None)
        named.pop("_block_vars", None)
        return called(*given, **named)


class _Environment(Environment):
    context_class = _Plain


@cache
def _environment() -> Environment:
    environment = _Environment(
        loader=FileSystemLoader(Path(__file__).parents[1] / "templates"),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        finalize=lambda value: value if isinstance(value, Markup) else safe(value),
    )
    environment.globals.update(
        for_device=for_device, only_for=only_for, kinds=KINDS, expectations=expectations, item_words=item_words
    )
    environment.globals.update(messages=page_messages)
    environment.globals.update(library_version=library_version, device_figures=device_figures, carried=carried)
    return environment
