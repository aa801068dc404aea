"""Every message is used, every use has its message with its values, and words for people stand in message files."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from fluent.syntax.ast import Message as Entry
from fluent.syntax.ast import VariableReference
from fluent.syntax.visitor import Visitor
from markupsafe import Markup

import latchside
from latchside.messages import Message, files, messages, resource
from latchside.pages.markup import markup

PACKAGE = Path(latchside.__file__).parent
FILES = sorted(files())

IN_FILES: tuple[str, ...] = ()
"""The parts of the package whose words stand in message files; a sentence typed in their code fails."""

SENTENCE = re.compile(r"[A-Za-z]{2,},? (?:[A-Za-z]{1,}[ ,.:;?!]|[a-z]{2,}$)")
"""Two words of a language in a row."""


class _Named(Visitor):
    """The names of the values that a message takes."""

    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: VariableReference) -> None:  # noqa: N802
        self.names.add(node.id.name)


def _taken(node: object) -> set[str]:
    named = _Named()
    named.visit(node)
    return named.names


def defined(file: str) -> dict[str, set[str]]:
    """The messages of a file, with their attributes as `id.attribute`, and the values that each takes."""
    found: dict[str, set[str]] = {}
    for entry in resource(file).body:
        if isinstance(entry, Entry):
            parts = [(entry.id.name, entry.value)] if entry.value else []
            parts += [(f"{entry.id.name}.{one.id.name}", one.value) for one in entry.attributes]
            for id, value in parts:
                assert id not in found, f"{file}.ftl says {id} twice"
                found[id] = _taken(value)
    return found


def source(file: str) -> str:
    """The code that a message file belongs to."""
    if file.startswith("templates/"):
        return (PACKAGE / f"{file}.jinja").read_text("utf-8")
    if file.startswith("browser/"):
        scripts = PACKAGE.parents[1] / "content/assets/js"
        return (scripts / f"{file.removeprefix('browser/')}.js").read_text("utf-8")
    module = PACKAGE / f"{file}.py"
    return (module if module.exists() else PACKAGE / file / "__init__.py").read_text("utf-8")


def asked(code: str) -> Iterator[tuple[str, set[str]]]:
    """Each message that Python code asks for by its name, with the names of the values that it gives."""
    for node in ast.walk(ast.parse(code)):
        if not isinstance(node, ast.Call) or not node.args:
            continue
        words = node.args[1:] if getattr(node.func, "id", "") == "markup" else node.args[:1]
        given = {keyword.arg or "**" for keyword in node.keywords}
        whole = ast.unparse(node.func)
        if not re.fullmatch(r"(?:message|markup)(?:\.finding)?", whole):
            continue
        for word in words[:1]:
            for id in _constants(word):
                if whole.endswith(".finding"):
                    yield from ((f"{id}.{part}", given) for part in ("found", "expected", "action"))
                else:
                    yield id, given


def _constants(node: ast.expr) -> Iterator[str]:
    """`"a"`, and both of `"a" if one else "b"`."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value
    elif isinstance(node, ast.IfExp):
        yield from _constants(node.body)
        yield from _constants(node.orelse)


def is_used(id: str, code: str) -> bool:
    """Whether the code names the message, or makes its name from a beginning: `f"change-{figure}"`."""
    own, _, attribute = id.partition(".")
    name = id if attribute and attribute not in {"found", "expected", "action"} else own
    beginnings = [own[: end + 1] for end, sign in enumerate(own) if sign == "-"]
    return re.search(rf"[\"']{re.escape(name)}[\"'.]", code) is not None or any(
        re.search(rf"[\"']{re.escape(start)}(?:\{{|[\"'] ~)", code) for start in beginnings
    )


@pytest.mark.parametrize("file", FILES)
def test_every_message_is_used(file: str) -> None:
    code = source(file)
    known = {"rule"} if file.startswith("rules/") else set()
    unused = [id for id in defined(file) if id.split(".")[0] not in known and not is_used(id, code)]
    assert not unused


@pytest.mark.parametrize("file", [file for file in FILES if not file.startswith(("templates/", "browser/"))])
def test_every_use_has_its_message_and_gives_its_values(file: str) -> None:
    known = defined(file)
    for id, given in asked(source(file)):
        assert id in known, f"{file}.ftl has no {id}"
        assert "**" in given or known[id] <= given, f"{id} is not given {known[id] - given}"


@pytest.mark.parametrize("path", sorted(PACKAGE.rglob("*.py")), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_words_stand_in_message_files(path: Path) -> None:
    """Docstrings, patterns and what is raised for a programmer are no words for readers."""
    if path.relative_to(PACKAGE).parts[0] not in IN_FILES:
        return
    tree = ast.parse(path.read_text("utf-8"))
    spared = {id(part) for node in ast.walk(tree) for part in _for_programmers(node)}
    found = [
        f"{path.name}:{node.lineno}: {node.value!r}"
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in spared
        if SENTENCE.search(node.value)
    ]
    assert not found, "\n".join(found)


def _for_programmers(node: ast.AST) -> Iterator[ast.AST]:
    """The strings below a node that no reader sees: docstrings, what `re.compile` takes, what is raised."""
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        yield node.value
    elif isinstance(node, ast.Raise) or (
        isinstance(node, ast.Call) and ast.unparse(node.func) in {"re.compile", "TypeError", "LookupError"}
    ):
        yield from ast.walk(node)


def test_a_message_is_text_that_knows_where_it_came_from() -> None:
    message = messages("latchside.planning.failing")
    fails = message("fails", figure="Gap", shown="9 mm", meaning="It may not close.")
    assert fails == "Gap: 9 mm. It may not close."
    assert isinstance(fails, Message)
    assert fails.id == "planning/failing#fails"
    assert fails.values["shown"] == "9 mm"


def test_what_a_message_lacks_is_an_error() -> None:
    message = messages("latchside.planning.failing")
    with pytest.raises(LookupError, match="no message nothing-such"):
        message("nothing-such")
    with pytest.raises(ValueError, match="shown"):
        message("fails", figure="Gap", meaning="It may not close.")
    with pytest.raises(TypeError, match="neither text nor a count"):
        message("fails", figure="Gap", shown=9.5, meaning="It may not close.")  # type: ignore[arg-type]


def test_markup_in_a_message_stays_and_words_are_escaped() -> None:
    found = markup(messages("templates.label_sheet"), "print", base=Markup("<b>here</b>"))
    assert found.endswith("Each opens its page at <b>here</b>")
    assert "<script" not in markup(messages("templates.label_sheet"), "print", base="<script>")
