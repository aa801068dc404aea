"""QR codes (ISO/IEC 18004) that open pages of the site on a phone, and the address of a site that they need."""

from __future__ import annotations

from functools import cache

import segno
from markupsafe import Markup

from latchside.messages import messages

message = messages(__name__)


def sound_base(address: str) -> str:
    """The address of a site as a code needs it, ending in a slash.

    Raises ValueError where it is none that a phone could open.
    """
    start, _, rest = address.partition("://")
    if start not in ("http", "https") or not rest or any(sign in rest for sign in " ?#\"'<>\\"):
        raise ValueError(message("no-address", address=address))
    return address if address.endswith("/") else address + "/"


@cache
def code(address: str, error: str = "m") -> Markup:
    """The code as a drawing without a style of its own.

    It survives a scratch over a seventh of it, or with `error` "l" over a fifteenth, and then has larger modules.
    """
    drawn = segno.make(address, error=error, boost_error=False, micro=False).svg_inline(border=4, omitsize=True)
    return Markup(drawn.replace("<svg ", '<svg role="img" aria-hidden="true" ', 1))
