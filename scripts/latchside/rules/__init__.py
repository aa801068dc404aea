"""Rules beyond the schema: each module holds one `RULE`, found here by its presence in this folder."""

from __future__ import annotations

from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from latchside.rules.rule import Rule

__all__ = ["Rule", "all_rules"]


@cache
def all_rules() -> tuple[Rule, ...]:
    """Every rule, in the order of their codes."""
    names = [module.name for module in iter_modules(__path__) if module.name != "rule"]
    rules: list[Rule] = [import_module(f"{__name__}.{name}").RULE for name in names]
    return tuple(sorted(rules, key=lambda rule: rule.code))
