"""Nobody is told of a magnet or a reed at a device that has none."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.model import Path
from latchside.library.text import plain
from latchside.library.traits import traits
from latchside.library.uses import uses
from latchside.messages import listed, messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "other-sense"
_BEFORE = ("survey", "choose")
"""Stages at which no device is chosen yet: what is looked for there, is looked for of each."""


def check(library: Library) -> Iterator[Finding]:
    """The words of one way of sensing stand only in what is for devices that sense so."""
    entry = library.schemas.documents[VOCABULARY]["$defs"]["senses"]
    for senses, words in entry["x-speaks"].items():
        kept = {senses, *entry["x-also"].get(senses, ())}
        others = {device.id for device in library.of("device") if traits(device).senses not in kept}
        for use in uses(library) if others else ():
            if use.record.get("stage") in _BEFORE:
                continue
            told = [device.name for device in use.devices if device.id in others]
            word = _first(library, use.record.key, use.path, tuple(words)) if told else ""
            if word:
                problem = message.finding(
                    "word", word=word, devices=listed(told), count=len(told), senses=", ".join(sorted(kept))
                )
                yield use.record.finding(CODE, use.path, *problem)


def _first(library: Library, key: tuple[str, str], path: Path, words: tuple[str, ...]) -> str:
    """The first of these words in the texts at or below a path of a record; empty where there is none.

    A tool that has such a word in its name, as a test magnet has, is no part of a device.
    """
    record = library.find(*key)
    tools = tuple(tool.name for tool in library.of("tool"))
    texts = (plain(text) for at, text, _ in library.texts(record) if at[: len(path)] == path) if record else ()
    return next((found[0] for text in texts if (found := _pattern(words).search(_without(text, tools)))), "")


def _without(text: str, tools: tuple[str, ...]) -> str:
    return _pattern(tools).sub("", text) if tools else text


@cache
def _pattern(words: tuple[str, ...]) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(words)})s?\b", re.IGNORECASE)


RULE = Rule(CODE, check)
