"""The job pack as one document that opens from a folder, ready to print.

Nothing here needs more than templates and records, so that a page of the site makes the same document.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from markupsafe import Markup

from latchside.library import Library
from latchside.packs.paper import Document
from latchside.packs.system import region_of
from latchside.packs.view import JobView, parts
from latchside.planning.plan import Plan
from latchside.root import part
from latchside.templating import environment

STYLES = ("tokens.css", "latchside.css", "job.css")
"""The style sheets of the document, in `content/assets`."""


def render_document(plan: Plan, library: Library, style: str, site: str = "") -> str:
    """The whole pack as HTML.

    `style` is the text of `STYLES`; `site` the address of the site, where links may lead there.
    """
    region = region_of(plan)
    view = JobView(plan, Document(library, region, site), whole=True, html=True)
    paper = "letter" if region == "north_america" else "A4"
    given = {"page": view.page, "view": view, "plan": view.plan, "parts": parts(), "region": region}
    return _environment().get_template("job_document.jinja").render(style=Markup(style), paper=paper, **given)


def styles(root: Path) -> str:
    """The style sheets of the document, from a project."""
    return "\n".join(part(root, f"content/assets/{name}").read_text("utf-8") for name in STYLES)


_environment = cache(environment)
