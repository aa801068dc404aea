"""A message into which markup goes: the words escaped, the markup as it is."""

from __future__ import annotations

import re

from markupsafe import Markup

from latchside.messages import Messages
from latchside.pages.escape import safe

_MARK = "\ue000{}\ue001"
_MARKED = re.compile("\ue000([a-z-]+)\ue001")
"""Where a value goes, while the words are escaped: two signs that no text of ours holds."""


def markup(message: Messages, id: str, /, **values: object) -> Markup:
    """The message `id`, escaped, with each value escaped unless it is markup. Counts choose as they do in `message`."""
    counts = {name: value for name, value in values.items() if isinstance(value, int)}
    marks = {name: _MARK.format(name) for name in values.keys() - counts.keys()}
    pieces = _MARKED.split(message(id, **counts, **marks))
    return Markup("").join(safe(values[piece] if index % 2 else piece) for index, piece in enumerate(pieces))
