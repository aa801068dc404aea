"""All files of a pack as bytes: the document, what stands beside it, and the archive of both."""

from __future__ import annotations

from latchside.archive import archive
from latchside.packs.files import pack_files
from latchside.packs.pdf import pdf
from latchside.pages.render import Writer
from latchside.planning.plan import Plan


def pack(plan: Plan, writer: Writer, *, site: str = "", with_pdf: bool = False) -> dict[str, bytes]:
    """Content by name. `site` is the address of the site, where links may lead there."""
    document = writer.pack(plan, site)
    texts = {"index.html": document, **pack_files(plan)}
    files = {name: text.encode("utf-8", "replace") for name, text in texts.items()}
    if with_pdf:
        files["pack.pdf"] = pdf(document)
    return {**files, "pack.zip": archive(files, plan.survey.id)}
