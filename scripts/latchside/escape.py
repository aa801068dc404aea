"""Any text comes out as the same visible text.

Every character but letters, digits and a few harmless signs becomes a numeric character reference. No Markdown parser,
attribute list, template engine or browser reads one as syntax, so one escape serves headings, prose, attributes
and raw HTML alike.
"""

from __future__ import annotations

import re
from functools import lru_cache

from markupsafe import Markup

_SPECIAL = re.compile(r"[^0-9A-Za-z ,./()%'\-\u00a0-\ud7ff\uf900-\ufdcf\ufdf0-\ufffd\U00010000-\U0001fffd]")
_SPECIAL_OF_OWN = re.compile(r"[^0-9A-Za-z ,./()%'\-:;?!+\u00a0-\ud7ff]")
_SPACE = re.compile(r"[ \t\r\n\f\v\u0085\u2028\u2029]+")
_NONCHARACTERS = "".join(chr(plane << 16 | end) for plane in range(17) for end in (0xFFFE, 0xFFFF))
_UNSHOWABLE = re.compile(rf"[\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f\ufdd0-\ufdef{_NONCHARACTERS}]")


def safe(text: object) -> Markup:
    """`text` for any place in a page: visible as it stands, never read as markup."""
    return text if isinstance(text, Markup) else _safe(str(text))


def own_words(text: str) -> Markup:
    """Words of a message file, which none but us writes: as `safe`, but the signs of a sentence stay as they are."""
    return Markup(_SPECIAL_OF_OWN.sub(_reference, text))


@lru_cache(maxsize=50_000)
def _safe(text: str) -> Markup:
    line = _UNSHOWABLE.sub("\ufffd", _SPACE.sub(" ", text))
    return Markup(_SPECIAL.sub(_reference, line))


def _reference(sign: re.Match[str]) -> str:
    return f"&#{ord(sign[0])};"
