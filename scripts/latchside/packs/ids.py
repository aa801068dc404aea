"""Ids that look random and are not: the same names always give the same id."""

from __future__ import annotations

from hashlib import sha1

_SPACE = bytes.fromhex("b7f4a3d05c1e5d0f9a6e2c84f10b73d9")
"""The name space of all ids of packs."""


def id_of(*names: str) -> str:
    """A name-based id (RFC 9562, version 5) of names in a row."""
    joined = "\x1f".join(names).encode("utf-8", "surrogatepass")
    made = bytearray(sha1(_SPACE + joined, usedforsecurity=False).digest()[:16])
    made[6] = made[6] & 0x0F | 0x50
    made[8] = made[8] & 0x3F | 0x80
    text = made.hex()
    return "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))
