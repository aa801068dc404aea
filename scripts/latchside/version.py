"""Which version of the library this is; entries of visits carry it."""

from __future__ import annotations

from functools import cache
from importlib.metadata import PackageNotFoundError, version


@cache
def library_version() -> str:
    """The version in pyproject.toml, as installed; `unknown` where the package is not installed."""
    try:
        return version("latchside")
    except PackageNotFoundError:
        return "unknown"
