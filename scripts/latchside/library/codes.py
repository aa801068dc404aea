"""Codes never stand in a text: what looks as if it held one."""

from __future__ import annotations

import re

_CODE = re.compile(
    r"\b(pins?|pincode|passcodes?|passwords?|codes?|keysafe|key safe|combination)\b"
    r"|(?<![\w.,-])[0-9]{4,8}(?![\w-]|[.,][0-9]|\s?(?-i:ohms?|[kM]?\u03a9|mm|m|V|mV|h|s|min)(?!\w))",
    re.IGNORECASE,
)


def looks_like_code(text: str) -> bool:
    """Whether a text looks as if it held somebody's code."""
    return bool(_CODE.search(text))
