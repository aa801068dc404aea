"""The module mkdocs-macros loads; the package holds what it does."""

from latchside.site.macros import define_env

__all__ = ["define_env"]
