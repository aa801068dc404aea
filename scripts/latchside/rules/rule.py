"""What a rule is."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from latchside.findings import Finding
from latchside.library import Library


@dataclass(frozen=True)
class Rule:
    """A rule: a stable code, the sentence that states it to a maintainer, and the check itself."""

    code: str
    sentence: str
    check: Callable[[Library], Iterator[Finding]]
