"""The document as a PDF, with WeasyPrint where it is installed: an extra, because it needs libraries of the system."""

from __future__ import annotations

import logging
from importlib import import_module
from typing import Any

from latchside.messages import messages

message = messages(__name__)


class NoPdfError(RuntimeError):
    """WeasyPrint is not there, or not what it needs; the words say what to do."""


def ready() -> None:
    """Raises NoPdfError where no PDF can be made."""
    try:
        import_module("weasyprint")
    except (ImportError, OSError) as error:
        missing = message("missing")
        if isinstance(error, ModuleNotFoundError):
            raise NoPdfError(missing) from None
        raise NoPdfError(f"{missing} {message('reason', error=str(error))}") from None


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
