"""The library: records that fit their schema, immutable and linked with each other."""

from latchside.library.model import Library, Link, Record, build_library

__all__ = ["Library", "Link", "Record", "build_library"]
