"""What differs by the reader's region: all of it stands in the page, and the style sheet shows what is the reader's."""

from __future__ import annotations

from collections.abc import Sequence

from markupsafe import Markup

from latchside.escape import safe
from latchside.figures.words import Both

_OR = Markup('<span class="ls-or">/</span>')


def words(each: Sequence[tuple[object, Sequence[str]]]) -> Markup:
    """Words with the regions that say them; between them a stroke that goes when a region is chosen."""
    if len(each) < 2:
        return safe(each[0][0]) if each else Markup("")
    spans = (_span("ls-in", " ".join(regions), text) for text, regions in each)
    return Markup('<span class="ls-word">{}</span>').format(_OR.join(spans))


def figure(shown: Both) -> Markup:
    """A quantity in both systems of units, the reader's alone in view; the other comes on tap."""
    return safe(shown.text) if shown.other is None else both(shown.text, shown.other, imperial=shown.imperial)


def both(own: object, other: object, *, imperial: bool) -> Markup:
    """A figure in its own system of units, which may be the imperial one, and in the other."""
    systems = ("imperial", "metric") if imperial else ("metric", "imperial")
    return Markup('<span class="ls-both">{}<span class="ls-or"> (</span>{}<span class="ls-or">)</span></span>').format(
        *(_span("ls-sys", system, text) for system, text in zip(systems, (own, other), strict=True))
    )


def _span(name: str, of: str, text: object) -> Markup:
    return Markup('<span class="{}" data-of="{}">{}</span>').format(name, of, safe(text))
