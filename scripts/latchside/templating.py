"""The templates, and how they are filled: what is text is escaped, and what is not there is an error."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from jinja2.runtime import Context
from markupsafe import Markup

from latchside.escape import safe
from latchside.markup import page_messages


class _Plain(Context):
    """Calls what a template calls with what it is given.

    No function of these templates asks for the context or the environment, and looking whether one does took a quarter
    of the time that pages take.
    """

    def call(self, called: Callable[..., Any], /, *given: Any, **named: Any) -> Any:
        """What the call gives back."""
        named.pop("_loop_vars", None)
        named.pop("_block_vars", None)
        return called(*given, **named)


class _Environment(Environment):
    context_class = _Plain


def environment(**called: Any) -> Environment:
    """An environment of the templates. `called` is what they may call beside the messages, by name."""
    made = _Environment(
        loader=FileSystemLoader(Path(__file__).with_name("templates")),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        finalize=lambda value: value if isinstance(value, Markup) else safe(value),
    )
    made.globals.update(messages=page_messages, **called)
    return made
