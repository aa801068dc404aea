"""All files of a pack as bytes: the document, what stands beside it, and the archive of both."""

from __future__ import annotations

from latchside.archive import archive
from latchside.library import Library
from latchside.packs.document import render_document, styles
from latchside.packs.files import pack_files
from latchside.packs.pdf import pdf
from latchside.planning.plan import Plan
from latchside.root import ROOT


def pack(plan: Plan, library: Library, *, site: str = "", with_pdf: bool = False) -> dict[str, bytes]:
    """Content by name. `site` is the address of the site, where links may lead there."""
    document = render_document(plan, library, styles(library.root or ROOT), site)
    texts = {"index.html": document, **pack_files(plan)}
    files = {name: text.encode("utf-8", "replace") for name, text in texts.items()}
    if with_pdf:
        files["pack.pdf"] = pdf(document)
    return {**files, "pack.zip": archive(files, plan.survey.id)}
