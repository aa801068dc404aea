"""Messages on a page: the words escaped, values escaped too unless they are markup."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from markupsafe import Markup

from latchside.escape import own_words, safe
from latchside.messages import Messages, messages

_MARK = "\ue000{}\ue001"
_MARKED = re.compile("\ue000([a-z_]+)\ue001")
"""Where a value goes, while the words are escaped: two signs that no text of ours holds."""

Counts = tuple[tuple[str, int], ...]


def markup(message: Messages, id: str, /, **values: object) -> Markup:
    """The message `id`, escaped, with each value escaped unless it is markup. Counts choose as they do in `message`."""
    counts = tuple((name, value) for name, value in values.items() if isinstance(value, int))
    names = tuple(name for name, value in values.items() if not isinstance(value, int))
    pieces = _pieces(message, id, counts, names)
    if not names:
        return pieces[0]
    return Markup("").join(safe(values[piece]) if index % 2 else piece for index, piece in enumerate(pieces))


@lru_cache(maxsize=20_000)
def _pieces(message: Messages, id: str, counts: Counts, names: tuple[str, ...]) -> tuple[Markup, ...]:
    """The words of a message, escaped, and between them the names of its values."""
    words = message(id, **dict(counts), **{name: _MARK.format(name) for name in names})
    pieces = enumerate(_MARKED.split(words))
    return tuple(Markup(piece) if index % 2 else own_words(piece) for index, piece in pieces)


@dataclass(frozen=True)
class PageMessages:
    """The messages of a template: `message('id', name=value)` is ready for the page, as `markup` makes it."""

    messages: Messages

    def __call__(self, id: str, /, **values: object) -> Markup:
        """The message `id` as markup."""
        return markup(self.messages, id, **values)


def page_messages(module: str) -> PageMessages:
    """The messages of a template by its name in the package, such as `templates.job`."""
    return PageMessages(messages(module))
