"""The macros that hand-written pages may use: the same parts that generated pages are made of."""

from __future__ import annotations

import json
from typing import Any

from markupsafe import Markup

from latchside.escape import safe
from latchside.figures.units import figure, symbol
from latchside.messages import messages
from latchside.pages.labels import labels as labels_of
from latchside.pages.page import Page
from latchside.pages.render import Writer
from latchside.pages.survey_form import fields, sheet_rows, survey_form
from latchside.pages.visit_lists import visit_lists
from latchside.qr import sound_base
from latchside.root import ROOT, part
from latchside.site.adapter import library

message = messages(__name__)

_pages: dict[str, Page] = {}
"""The page that is being written, by its address."""


def on_pre_page_macros(env: Any) -> None:
    """Begin a page: nothing is linked or drawn on it yet. mkdocs-macros calls this before each."""
    _pages.clear()
    _pages[env.page.url] = Page(library(), env.page.url)


def define_env(env: Any) -> None:
    """Register the macros; mkdocs-macros calls this once a build."""

    def page() -> Page:
        return _pages[env.page.url]

    def find(reference: str) -> Any:
        kind, _, id_ = reference.partition("/")
        record = library().find(kind, id_)
        if record is None:
            raise ValueError(f"{reference} is not in the library")
        return record

    def head() -> Markup:
        """The way back home and the page's type: the line under the title, as generated pages have it."""
        return fill("head.jinja", page_type=env.page.meta["page_type"])

    def say(text: str) -> Markup:
        """Text with the references that records use: [[kind/id]], [[=kind/id/name]]."""
        return page().text(text)

    def drawing(id_: str) -> Markup:
        """A drawing as a figure."""
        shown = page().drawing(id_)
        if not shown:
            raise ValueError(f"there is no drawing {id_}")
        return shown

    def rows(kind: str, *ids: str) -> Markup:
        """Records as rows to tap: those named, or all of a kind; all faults stand under what is seen."""
        return fill("rows.jinja", records=chosen(kind, ids), grouped=kind == "fault" and not ids)

    def lines(kind: str, *ids: str) -> Markup:
        """Records as rows of a name alone: those named, or all of a kind."""
        return fill("lines.jinja", records=chosen(kind, ids))

    def chosen(kind: str, ids: tuple[str, ...]) -> list[Any]:
        return [find(f"{kind}/{id_}") for id_ in ids] or list(library().of(kind))

    def table(id_: str) -> Markup:
        """A table record as a table."""
        return fill("grid.jinja", record=find(f"table/{id_}"))

    def caution(id_: str) -> Markup:
        """A caution in full."""
        return fill("warn.jinja", record=find(f"caution/{id_}"))

    def warn_lines(*ids: str) -> Markup:
        """Cautions in one line each."""
        for id_ in ids:
            find(f"caution/{id_}")
        return fill("warn_lines.jinja", ids=ids)

    def numbers() -> Markup:
        """The numbers used above, with status and source: the last line of a page that shows any."""
        return fill("foot.jinja")

    def count(kind: str) -> Markup:
        """How many records of a kind there are."""
        return safe(len(library().of(kind)))

    def visit_data() -> Markup:
        """Devices and checklists, for the page of visits."""
        return visit_lists(library(), page())

    def survey() -> Markup:
        """The form of a survey as data, and the sheet to fill in by hand."""
        unplanned = library().anew()  # what the planner remembers of the other it would not note again
        described = fields(unplanned)
        opening = next(one for one in described if one["name"] == "openings")["item"]["fields"]
        sheets = (
            (message("site"), list(sheet_rows(described)), 1),
            (message("openings"), list(sheet_rows(opening)), 4),
        )
        return fill("survey_sheet.jinja", data=survey_form(unplanned), sheets=sheets)

    def differences() -> Markup:
        """Every figure beside its outside references, with the largest difference the tests found."""
        found = json.loads(part(library().root or ROOT, "shared/differences.json").read_text("utf-8"))
        rows = [(find(f"formula/{id_}"), one) for id_, checks in found.items() for one in checks]
        return fill("differences.jinja", rows=rows, shown=figure, sign=symbol)

    def labels() -> Markup:
        """Labels for the address the site is served from; nothing where it does not know that address."""
        base = env.conf["site_url"] or ""
        return fill("labels.jinja", groups=labels_of(library(), sound_base(base))) if base else Markup("")

    def fill(template: str, **values: Any) -> Markup:
        return Markup(Writer(library()).fill(template, page(), **values))

    for macro in (
        head,
        say,
        drawing,
        rows,
        lines,
        table,
        caution,
        warn_lines,
        numbers,
        count,
        visit_data,
        survey,
        differences,
        labels,
    ):
        env.macro(macro)
