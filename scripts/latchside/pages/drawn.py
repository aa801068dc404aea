"""The drawings of the site: which file each is, and what stands in it for the values that it shows."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from latchside.drawings import COMPUTED
from latchside.drawings.canvas import Drawing
from latchside.drawings.file import bound, finished
from latchside.drawings.inline import inlined, themed
from latchside.escape import safe
from latchside.figures.words import in_words
from latchside.library import Library, Record
from latchside.library.quantity import Quantity, quantity
from latchside.markup import markup
from latchside.messages import messages

message = messages(__name__)

FIGURE = Markup('<figure class="ls-figure" id="{}">{}<figcaption>{}</figcaption></figure>')
FILE = Markup('<img class="ls-drawing" src="{}" width="{}" height="{}" alt="{}">')
TOLD = Markup("<strong>{}.</strong> {}")
FOLDED = Markup('<details class="ls-more"><summary>{}</summary>{}</details>')
SEEN = Markup('<p class="ls-see"><a href="#drawing-{}">{}</a></p>')


@dataclass(frozen=True)
class PageDrawing:
    """A drawing as a page shows it, its file in the site, and the values in it, with whose they are."""

    drawing: Drawing
    path: str
    values: tuple[tuple[Record, str, Quantity], ...] = ()


def drawn(library: Library, id_: str, device: Record | None = None) -> PageDrawing | None:
    """The drawing of this id, for a device that names it under `drawings` with its values; None where there is none."""
    if id_ in COMPUTED:
        return PageDrawing(COMPUTED[id_](), f"assets/drawings/{id_}.svg")
    picture = library.pictures.get(id_)
    if picture is None:
        return None
    names = bound(picture)
    unknown = str(message("unknown"))
    if not names or device is None or id_ not in device.listed("drawings"):
        return PageDrawing(finished(picture, tuple((name, unknown) for name in names)), f"assets/drawings/{id_}.svg")
    stated = {name: quantity(device["values"][name]) for name in names if name in device.get("values", {})}
    shown = tuple((name, in_words(stated[name]) if name in stated else unknown) for name in names)
    values = tuple((device, name, value) for name, value in stated.items())
    return PageDrawing(finished(picture, shown), f"assets/drawings/{device.id}/{id_}.svg", values)


def seen(id_: str, made: Drawing) -> Markup:
    """A pointer to a drawing that stands on the page already."""
    return SEEN.format(id_, markup(message, "seen", drawing=made.title))


def figure(made: Drawing, anchor: str, file: str = "", *, folded: bool = False) -> Markup:
    """A drawing, with its title and its message in words; in the page itself where no `file` is given."""
    title = safe(made.title)
    told = (FOLDED if folded else TOLD).format(title, safe(made.message))
    shown = FILE.format(file, made.width, made.height, title) if file else inlined(made)
    return FIGURE.format(anchor, shown, told)


def files(library: Library) -> dict[str, str]:
    """Every drawing as a file of the site: its path and its text; with values, one for each device that names it.

    Of the forms of a drawing only those that a record names: sheets of jobs hold theirs.
    """
    named = {link.id for link in library.links if link.kind == "drawing"} & library.pictures.keys()
    wanted = [(id_, None) for id_ in dict.fromkeys((*COMPUTED, *library.drawings, *sorted(named)))] + [
        (id_, device) for device in library.of("device") for id_ in device.listed("drawings")
    ]
    shown = (drawn(library, id_, device) for id_, device in wanted)
    return {one.path: themed(one.drawing) + "\n" for one in shown if one}
