"""Pages: the library as text files, path by path. Templates only; nothing here reads a file of records."""

from latchside.pages.render import render_pages

__all__ = ["render_pages"]
