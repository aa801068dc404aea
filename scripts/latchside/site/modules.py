"""Which scripts a page will load, so that the browser can fetch them all at once and not one after the other."""

from __future__ import annotations

import re
from collections.abc import Mapping

_IMPORT = re.compile(r'^(?:import|export)\b[^"\n]*"\./([a-z0-9-]+\.js)"', re.MULTILINE)
_CHOICE = re.compile(r'holds\("\[([a-z-]+)\]"\)\) import\("\./([a-z0-9-]+\.js)"\)')
_ALWAYS = re.compile(r'^import\("\./([a-z0-9-]+\.js)"\)', re.MULTILINE)
ENTRY = "latchside.js"


def loaded(page: str, scripts: Mapping[str, str]) -> list[str]:
    """The scripts a page loads when it opens, by what the one script of every page says it looks for."""
    entry = scripts.get(ENTRY, "")
    chosen = [script for sign, script in _CHOICE.findall(entry) if re.search(rf"<[^>]*\s{sign}[\s=>]", page)]
    found: dict[str, None] = {}
    left = [*chosen, *_ALWAYS.findall(entry)]
    while left:
        name = left.pop(0)
        if name in scripts and name not in found:
            found[name] = None
            left += _IMPORT.findall(scripts[name])
    return list(found)


def with_modules(page: str, scripts: Mapping[str, str]) -> str:
    """The page with a note of the scripts it will load, at the place where it names the first of them."""
    named = re.search(rf'src="([^"]*assets/js/){re.escape(ENTRY)}"', page)
    if not named or "</head>" not in page:
        return page
    links = "".join(f'<link rel="modulepreload" href="{named[1]}{name}">\n' for name in loaded(page, scripts))
    return page.replace("</head>", f"{links}</head>", 1)
