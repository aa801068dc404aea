"""Every generated file of the site, as {path: text}: pages as Markdown, drawings as SVG."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, partial
from typing import Any

from jinja2 import Environment

from latchside import charts
from latchside.all_cores import all_cores
from latchside.drawings.inline import themed
from latchside.kinds import KINDS, Kind
from latchside.library import Library, Record
from latchside.library.compiled import for_device, groups, only_for
from latchside.library.quantity import quantity
from latchside.messages import javascript, messages
from latchside.pages import (
    calculators,
    components,
    drawn,
    fault_lists,
    fault_plan,
    fault_tree,
    figure_script,
    regional,
    stage_pages,
)
from latchside.pages.device_figures import carried, device_figures
from latchside.pages.expected import briefly, expected_in_short, on_label
from latchside.pages.fault_data import run_data
from latchside.pages.fault_first import First
from latchside.pages.icons import icon
from latchside.pages.job_pages import job_pages
from latchside.pages.leading import leading, own_cautions
from latchside.pages.links import file_of, slug
from latchside.pages.list_cautions import item_cautions
from latchside.pages.page import Page
from latchside.pages.readings import expectations, measure_of
from latchside.pages.shorten import lead
from latchside.pages.visit_lists import item_words
from latchside.rules import all_rules
from latchside.templating import environment
from latchside.version import library_version

message = messages(__name__)

Progress = Callable[[str], None]
Parts = Iterable[list[tuple[str, str]]]
Task = Callable[[], list[tuple[str, str]]]
"""Makes files of the site: the path and the text of each."""


def done_now(tasks: Mapping[str, Task]) -> Parts:
    """What each task makes, each done on one of all cores."""
    return all_cores(list(tasks.values()))


def render_pages(
    library: Library,
    edit_base: str = "",
    progress: Progress = lambda _: None,
    done: Callable[[Mapping[str, Task]], Parts] = done_now,
) -> dict[str, str]:
    """All generated pages. The same library always gives the same text.

    `edit_base` is the address under which the firm's own repository opens a file for editing; without one the
    edit links lead to the page that explains how. `done` does the tasks, or knows what they made before.
    """
    progress(message("progress"))
    parts = done(dict(Writer(library, edit_base).tasks()))
    return dict(sorted((path, text) for part in parts for path, text in part))


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

    def tasks(self) -> Iterator[tuple[str, Task]]:
        """The files in parts that do not depend on each other, each with a name of its own; the longest first."""
        yield "jobs", self.jobs
        yield "fault-lists", self.fault_lists
        yield "drawings", lambda: list(drawn.files(self.library).items())
        yield "charts", lambda: list(charts.files(self.library).items())
        for kind in KINDS.values():
            if kind.id == "job":
                continue  # a job is planned first, and has a page for each part of its pack
            yield kind.index, partial(self.listing, kind)
            for record in self.library.of(kind.id) if kind.own_page else ():
                yield record.address, partial(self.pages_of, record)
        yield "rules", self.rules
        yield "components", self.components
        yield "calculators", lambda: [(figure_script.PATH, figure_script.script(self.library))]
        yield "messages", lambda: list(javascript.scripts().items())

    def rules(self) -> list[tuple[str, str]]:
        """The page of the rules of the check."""
        address = "maintain/rules/"
        return [(file_of(address), self.fill("rules.jinja", Page(self.library, address), rules=all_rules()))]

    def components(self) -> list[tuple[str, str]]:
        """The page that shows each part of pages with its states."""
        page = Page(self.library, components.ADDRESS)
        shown = components.components(page)
        return [(file_of(page.address), self.fill("components.jinja", page, shown=shown))]

    def fault_lists(self) -> list[tuple[str, str]]:
        """The pages about all faults together."""
        return [
            (file_of(address), self.fill(template, Page(self.library, address), shown=made))
            for address, template, made in fault_lists.pages(self.library)
        ]

    def jobs(self) -> list[tuple[str, str]]:
        """The pages and files of the demo jobs. The planner remembers much, so it is given a library of its own."""
        return list(job_pages(self.library.anew(), _environment()).items())

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
            pages.append((fault_tree.path_of(record), themed(fault_tree.drawing(self.library, record)) + "\n"))
        return pages

    def record(self, record: Record) -> str:
        """The page of one record."""
        page = Page(self.library, record.address, record, record if record.kind.id == "device" else None)
        values: dict[str, Any] = {"record": record, "used_by": list(_used_by(self.library, record))}
        if record.kind.id == "procedure":
            values["groups"] = groups(self.library, record)
            values["at_steps"] = stage_pages.at_steps([(record["stage"], record, values["groups"])])
        if record.kind.id == "formula":
            values |= _figure(page, record)
        if record.kind.id == "fault":
            values |= {"plan": fault_plan.shown(page, record), "tree": fault_tree.figure(page, record)}
            values |= {"run_data": run_data(self.library, record), "first": First(self.library, record)}
        return self.fill(record.kind.template, page, **values)

    def index(self, kind: Kind) -> str:
        """The page that lists the records of a kind, or holds them all."""
        template = "index.jinja" if kind.own_page else f"{kind.plural}.jinja"
        return self.fill(template, Page(self.library, kind.index), kind=kind, records=self.library.of(kind.id))

    def stages(self, device: Record) -> Iterator[tuple[str, str]]:
        """A page for each stage that has work for the device, and one for the whole installation."""
        words = self.library.schemas.words("stage")
        done = [stage for stage in words if isinstance(device["procedures"][stage], tuple)]
        for stage in done:
            yield self._stage(device, stage, words[stage], done)
            for moved in self._elsewhere(device, stage):
                page = Page(self.library, f"{device.address}{moved}/")
                goal = page.anchor(
                    f"{device.address}{stage}/", message("goal", device=device.name, stage=words[stage].lower())
                )
                text = self.fill("moved.jinja", page, kind=device.kind, record=device, title=words[moved], goal=goal)
                yield file_of(page.address), text
        page = Page(self.library, f"{device.address}install/", device, device)
        legs = stage_pages.path(page, device, done)
        yield file_of(page.address), self.fill("install.jinja", page, device=device, path=legs)

    def _elsewhere(self, device: Record, stage: str) -> list[str]:
        """The stages without a page of their own whose work a device has at this one."""
        procedures = (self.library.find("procedure", id_) for id_ in device["procedures"][stage])
        own = dict.fromkeys(one["stage"] for one in procedures if one)
        return [one for one in own if one != stage and not isinstance(device["procedures"][one], tuple)]

    def _stage(self, device: Record, stage: str, title: str, done: list[str]) -> tuple[str, str]:
        page = Page(self.library, f"{device.address}{stage}/", device, device)
        listed = stage_pages.chapters(page, device, stage)
        values = {
            "title": title,
            "chapters": listed,
            "turn": stage_pages.turn(done, stage),
            "safety": stage_pages.safety(listed),
            "at_steps": stage_pages.at_steps(listed, device.id),
        }
        return file_of(page.address), self.fill("stage.jinja", page, device=device, **values)


def _figure(page: Page, record: Record) -> dict[str, Any]:
    for name, data in record.get("values", {}).items():
        page.note_value(record, name, quantity(data))
    return {
        "figure": calculators.figure_of(record),
        "calculator": calculators.is_calculator(record),
        "examples": list(calculators.worked(record)),
        "charts": charts.for_figure(page.library, record.id),
        "default_words": calculators.default_words,
        "typed": calculators.typed,
    }


def _used_by(library: Library, record: Record) -> Iterator[tuple[str, tuple[Record, ...]]]:
    for kind in KINDS.values():
        users = library.referring(record.kind.id, record.id, kind.id)
        if users:
            yield kind.title, users


@cache
def _environment() -> Environment:
    made = environment(
        for_device=for_device,
        only_for=only_for,
        kinds=KINDS,
        expectations=expectations,
        measure_of=measure_of,
        item_words=item_words,
        expected_in_short=expected_in_short,
        item_cautions=item_cautions,
        icon=icon,
        lead=lead,
        briefly=briefly,
        on_label=on_label,
        leading=leading,
        own_cautions=own_cautions,
        both=regional.both,
        library_version=library_version,
        device_figures=device_figures,
        carried=carried,
    )
    made.filters["slug"] = slug
    return made
