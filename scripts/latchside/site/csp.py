"""The Content-Security-Policy of a page: scripts from the site only, and those of the theme's own that it names."""

from __future__ import annotations

import re
from base64 import b64encode
from hashlib import sha256

_SCRIPT = re.compile(r"<script\b([^>]*)>(.*?)</script>", re.DOTALL | re.IGNORECASE)
_CHARSET = '<meta charset="utf-8">'
_RULES = (
    "default-src 'none'", "base-uri 'none'", "form-action 'none'", "style-src 'self'", "img-src 'self' data:",
    "font-src 'self'", "connect-src 'self'", "manifest-src 'self'",
)  # fmt: skip
PLANS = "data-ls-plans"
"""What a page says that surveys are planned on.

Its planner is Python, which the browser compiles, in a worker that begins as text of the page and so keeps its policy.
"""


def with_policy(page: str) -> str:
    """The page with its policy before anything that could run.

    Raises ValueError where the page has no place for it, because then it would run without one.
    """
    before, found, after = page.partition(_CHARSET)
    if not found or "<script" in before or _CHARSET in after:
        raise ValueError("the page does not begin with its character set, so its policy has no place")
    return f'{before}{found}<meta http-equiv="Content-Security-Policy" content="{policy(page)}">{after}'


def policy(page: str) -> str:
    """The policy for a page: what it runs inline is named by hash, so that nothing else inline runs."""
    hashes = dict.fromkeys(
        f"'sha256-{b64encode(sha256(text.encode('utf-8')).digest()).decode('ascii')}'"
        for attributes, text in _SCRIPT.findall(page)
        if text.strip() and "src=" not in attributes and "application/json" not in attributes
    )
    plans = PLANS in page
    workers = "worker-src 'self' blob:" if plans else "worker-src 'self'"
    compiled = ("'wasm-unsafe-eval'",) if plans else ()
    return "; ".join((*_RULES, workers, " ".join(("script-src 'self'", *compiled, *hashes))))
