"""What a rule is."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages


@dataclass(frozen=True)
class Rule:
    """A rule: a stable code, and the check itself."""

    code: str
    check: Callable[[Library], Iterator[Finding]]

    @property
    def sentence(self) -> str:
        """What the rule asks, to a maintainer: the message `rule` of the module of its check."""
        return messages(self.check.__module__)("rule")
