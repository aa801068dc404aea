"""The document as a PDF, with WeasyPrint where it is installed: an extra, because it needs libraries of the system."""

from __future__ import annotations

import logging
from importlib import import_module
from typing import Any

MISSING = (
    "A PDF needs WeasyPrint, which is not installed. Install it with: pip install 'latchside[pdf]'. "
    "Or open index.html and print it to a file."
)


class NoPdfError(RuntimeError):
    """WeasyPrint is not there, or not what it needs; the words say what to do."""


def ready() -> None:
    """Raises NoPdfError where no PDF can be made."""
    try:
        import_module("weasyprint")
    except (ImportError, OSError) as error:
        reason = "" if isinstance(error, ModuleNotFoundError) else f" It says: {error}."
        raise NoPdfError(MISSING + reason) from None


def pdf(document: str) -> bytes:
    """The document printed. Its dates are those in its head; nothing is fetched.

    Raises NoPdfError where no PDF can be made.
    """
    ready()
    weasyprint: Any = import_module("weasyprint")  # no part of what every installation needs
    logging.getLogger("weasyprint").setLevel(logging.CRITICAL)  # rules meant for screens are no news
    logging.getLogger("fontTools").setLevel(logging.CRITICAL)
    fetcher = weasyprint.urls.URLFetcher(allowed_protocols=("data",), allow_redirects=False)
    made: bytes = weasyprint.HTML(string=document, url_fetcher=fetcher).write_pdf(pdf_tags=True)
    return made
