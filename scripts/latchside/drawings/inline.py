"""A drawing as readers see it: by day, by night and on paper.

In its file a drawing has plain colours, which every vector editor shows. Each of them stands for one role
(`plain.COLOURS`); here the role takes the place of the colour. Inside a page, `tokens.css` says how each mode shows
it. A file that a page only points at, as the many drawings of steps are, says so itself.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from markupsafe import Markup, escape

from latchside.drawings.canvas import INK, Drawing
from latchside.drawings.plain import COLOURS, NIGHT

TOKENS: Mapping[str, str] = {
    colour: "currentColor" if colour == INK else f"var(--ls-drawn-{name})" for colour, name in COLOURS.items()
}
"""How a page names each colour of a drawing. Any other, as that of a resistor's band, is the same in every mode."""
_HEAD = re.compile(r"<svg\b[^>]*>\s*<title\b.*?</title>\s*<desc\b.*?</desc>", re.DOTALL)
_STYLE = "svg{{{day}}}@media screen and (prefers-color-scheme:dark){{svg{{{night}}}}}"
_TAG = re.compile(r"<[^>]+>")
_COLOUR = re.compile(r'(?<= )(fill|stroke)="(#[0-9a-f]{6})"')
_OPEN = Markup(
    '<svg class="ls-drawing" viewBox="{0} {1} {2} {3}" width="{2}" height="{3}" role="img" aria-label="{4}">'
)


@lru_cache(maxsize=512)  # the same drawing stands on many pages
def inlined(made: Drawing) -> Markup:
    """The drawing as a part of a page, named by its title; the page gives its message beside it."""
    head = _HEAD.match(made.svg)
    if head is None:
        raise ValueError(f"{made.id} does not begin with its title and description")
    inside = _TAG.sub(lambda tag: _COLOUR.sub(_as_token, tag[0]), made.svg[head.end() :])
    return _opening(head[0], made.title) + Markup(inside)


@lru_cache(maxsize=512)
def themed(made: Drawing) -> str:
    """The drawing as a file that follows the reader's mode by itself; where that is not known, it is ink on paper."""
    head = _HEAD.match(made.svg)
    if head is None:
        raise ValueError(f"{made.id} does not begin with its title and description")
    inside = _TAG.sub(lambda tag: _COLOUR.sub(_as_token, tag[0]), made.svg[head.end() :])
    day, night = (_stated(colours) for colours in ({name: colour for colour, name in COLOURS.items()}, NIGHT))
    return f"{head[0]}<style>{_STYLE.format(day=day, night=night)}</style>{inside}"


def _stated(colours: Mapping[str, str]) -> str:
    """Colours by their role, as declarations."""
    tokens = [f"--ls-drawn-{name}:{colour}" for name, colour in colours.items() if name != "ink"]
    return ";".join([*tokens, f"color:{colours['ink']}", "background:var(--ls-drawn-paper)"])


def _opening(head: str, title: str) -> Markup:
    """The first tag: its sizes as the drawing states them, and its name."""
    box = re.search(r'viewBox="([^"]*)"', head)
    numbers = box[1].replace(",", " ").split() if box else ["0", "0", "0", "0"]
    return _OPEN.format(*numbers, escape(title))


def _as_token(found: re.Match[str]) -> str:
    return f'{found[1]}="{TOKENS.get(found[2], found[2])}"'
