"""What the program says to people: message files in Project Fluent, one folder a language, one file a module.

`messages(__name__)` gives a module the messages of its own file: `latchside.planning.failing` has
`en/planning/failing.ftl`. A module says which message and with what values; the words stand in the file alone. A new
language is a new folder.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from sys import maxsize
from typing import TYPE_CHECKING

if TYPE_CHECKING:  # slow to import, and only needed where something is said
    from fluent.runtime import FluentBundle
    from fluent.syntax.ast import Resource, TextElement

LANGUAGE = "en"
LOCALE = "en-GB"
FOLDER = Path(__file__).parent / LANGUAGE

Value = str | int


class Message(str):
    """The words of a message, which remember the message and the values that they were made from.

    It is text wherever text is asked for; a test asks `id` and `values`, and stays right when the words change.
    """

    id: str
    values: Mapping[str, Value]

    __slots__ = ("id", "values")

    def __new__(cls, text: str, id: str, values: Mapping[str, Value]) -> Message:
        """The words `text` of the message `id`, a path of its file and its own id: `planning/failing#order`."""
        message = super().__new__(cls, text)
        message.id = id
        message.values = values
        return message

    def __getnewargs__(self) -> tuple[str, str, Mapping[str, Value]]:  # type: ignore[override]
        """What makes the same message in another process."""
        return str(self), self.id, self.values


@dataclass(frozen=True)
class Messages:
    """The messages of one file, `file` being its path below the language without its ending."""

    file: str

    def __call__(self, id: str, /, **values: Value) -> Message:
        """The message `id`, or its attribute `id.attribute`.

        A whole number is a count: it chooses between one and many and is written as the language writes numbers. Any
        other number has to be text already, with its unit. Raises LookupError for a message that the file does not
        have, and ValueError for a value that the message needs and is not given.
        """
        return _message(self.file, id, tuple(values.items()))

    def finding(self, id: str, /, **values: Value) -> tuple[Message, Message, Message]:
        """The three attributes of a message that tells of a problem: what was found, what is expected, what to do."""
        return (
            self(f"{id}.found", **values),
            self(f"{id}.expected", **values),
            self(f"{id}.action", **values),
        )

    def __contains__(self, id: str) -> bool:
        """Whether the file has a message of this id that says something by itself."""
        bundle = _bundle(self.file)
        return bundle.has_message(id) and bundle.get_message(id).value is not None


def messages(module: str) -> Messages:
    """The messages of a module of this package, by its full name."""
    return Messages(module.removeprefix("latchside.").replace(".", "/"))


def listed(items: Sequence[str], style: str = "standard") -> str:
    """`a, b and c`; with the style `or`, `a, b or c`."""
    from babel.lists import format_list

    return format_list(items, style, LOCALE.replace("-", "_"))  # type: ignore[arg-type]


def within(name: str) -> str:
    """A name as it stands within a sentence: in English without its capital, unless it is an abbreviation."""
    return name[:1].lower() + name[1:] if name[1:2].islower() else name


def resource(file: str) -> Resource:
    """What a message file holds. Raises ValueError with the line of what does not read as Fluent."""
    from fluent.syntax import FluentParser

    path = FOLDER / f"{file}.ftl"
    source = path.read_text("utf-8")
    found = FluentParser().parse(source)
    for at, reason in unread(found):
        line = source.count("\n", 0, at) + 1
        raise ValueError(f"{path}:{line}: {reason}")
    for text in _texts(found):
        text.value = text.value.replace("\n", " ")  # a long message goes on in the next line of its file
    return found


def unread(found: Resource) -> Iterator[tuple[int, str]]:
    """What does not read as Fluent: where in the file, counted in characters from 0, and the parser's reason."""
    from fluent.syntax.ast import Junk

    for entry in found.body:
        if isinstance(entry, Junk):
            one = entry.annotations[0]
            yield one.span.start if one.span else 0, str(one.message)


def _texts(node: object) -> Iterator[TextElement]:
    """Every text of a message file, without what is filled in."""
    from fluent.syntax.ast import BaseNode, TextElement

    if isinstance(node, TextElement):
        yield node
    elif isinstance(node, BaseNode | list):
        for below in node if isinstance(node, list) else vars(node).values():
            yield from _texts(below)


def files(folder: Path = FOLDER) -> Iterator[str]:
    """Every message file, as `Messages` names it."""
    return (path.relative_to(folder).with_suffix("").as_posix() for path in sorted(folder.rglob("*.ftl")))


@cache
def _bundle(file: str) -> FluentBundle:
    from fluent.runtime import FluentBundle, resolver

    resolver.MAX_PART_LENGTH = maxsize  # it guards against messages of strangers; ours are our own, and texts are long
    bundle = FluentBundle([LOCALE], use_isolating=False)
    bundle.add_resource(resource(file))
    return bundle


@lru_cache(maxsize=100_000)
def _message(file: str, id: str, values: tuple[tuple[str, Value], ...]) -> Message:
    for name, value in values:
        if not isinstance(value, str | int) or isinstance(value, bool):
            raise TypeError(f"{file}#{id}: {name} is {value!r}, neither text nor a count")
    bundle = _bundle(file)
    own, _, attribute = id.partition(".")
    if not bundle.has_message(own):
        raise LookupError(f"{file}.ftl has no message {own}")
    found = bundle.get_message(own)
    pattern = found.attributes.get(attribute) if attribute else found.value
    if pattern is None:
        raise LookupError(f"{file}.ftl has no message {id}")
    text, errors = bundle.format_pattern(pattern, dict(values))
    if errors:
        raise ValueError(f"{file}#{id}: {errors[0]}")
    return Message(str(text), f"{file}#{id}", dict(values))
