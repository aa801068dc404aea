"""Every message is used, every use has its message with its values, and words for people stand in message files."""

from __future__ import annotations

import ast
import json
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from fluent.syntax.ast import Message as Entry
from fluent.syntax.ast import MessageReference, VariableReference
from fluent.syntax.visitor import Visitor
from jinja2 import Environment, nodes
from markupsafe import Markup

import latchside
from latchside.markup import markup
from latchside.messages import Message, files, messages, resource
from latchside.messages.javascript import camel
from latchside.site.lean import tokens

from ..each import each

PACKAGE = Path(latchside.__file__).parent
FILES = sorted(files())

IN_FILES: tuple[str, ...] = (
    "charts",
    "cli",
    "drawings",
    "figures",
    "findings.py",
    "library",
    "order",
    "packs",
    "pages",
    "planning",
    "read",
    "report.py",
    "rules",
    "schemas",
    "site",
    "surveys",
    "visits",
)
"""The folders and modules whose words stand in message files; a sentence typed in their code fails."""

SCRIPTS = PACKAGE.parents[1] / "content/assets/js"
# Words that a reader types, which are compared and never shown.
COMPARED = {"words.js", "text.js", "states.js", "rank.js"}
BROWSER = [path for path in sorted(SCRIPTS.rglob("*.js")) if path.parent.name != "vendor" and path.name not in COMPARED]
"""The browser code, but for libraries and the patterns of what looks like a code."""
UNSAID = {
    *("Enter", "Escape", "Term"),
    *("latchside plan FILE", "corrections read", "changed meanwhile", "input, select, textarea, button"),
}
"""Names of keys and of a kind of the index; a command, a key of the storage, a reason between modules, a selector."""
SELECTOR = re.compile(r"[\"`][.#\[]")

SENTENCE = re.compile(r"[A-Za-z]{2,},? (?:[A-Za-z]{1,}[ ,.:;?!]|[a-z]{2,}$)")
"""Two words of a language in a row."""

STYLES = re.compile(r"ls-[a-z -]+")
"""Classes of the style sheet in the expressions of a template."""

FOR_MACHINES = ("RUNTIME", "MODULE", "MESSAGES", "REFUSAL", "LOOP", "_COLUMNS", "_STYLE")
"""Constants of the package that hold code for browsers, or names of columns."""
COMMAND = re.compile(r"\b(?:SELECT|INSERT|DELETE|CREATE|FROM)\b|\s*latchside ")
"""What a database is asked, and what a person types."""

TEMPLATES = {
    path.relative_to(PACKAGE).with_suffix("").as_posix(): path
    for path in sorted([*(PACKAGE / "templates").glob("*.jinja"), *(PACKAGE / "site/theme").rglob("*.html")])
}
"""Every template, by the file of its messages."""
JINJA = Environment(autoescape=True)


class _Named(Visitor):
    """The names of the values that a message takes, and of the messages that it is made of."""

    def __init__(self) -> None:
        self.names: set[str] = set()
        self.messages: set[str] = set()

    def visit_VariableReference(self, node: VariableReference) -> None:  # noqa: N802
        self.names.add(node.id.name)

    def visit_MessageReference(self, node: MessageReference) -> None:  # noqa: N802
        self.messages.add(node.id.name)


@cache
def _named(file: str) -> dict[str, _Named]:
    found: dict[str, _Named] = {}
    for entry in resource(file).body:
        if isinstance(entry, Entry):
            parts = [(entry.id.name, entry.value)] if entry.value else []
            parts += [(f"{entry.id.name}.{one.id.name}", one.value) for one in entry.attributes]
            for id, value in parts:
                assert id not in found, f"{file}.ftl says {id} twice"
                found[id] = _Named()
                found[id].visit(value)
    return found


@cache
def defined(file: str) -> dict[str, set[str]]:
    """The messages of a file, attributes as `id.attribute`, and the values that each takes with those it is made of."""
    named = _named(file)

    def taken(id: str) -> set[str]:
        return named[id].names.union(*map(taken, named[id].messages))

    return {id: taken(id) for id in named}


def source(file: str) -> str:
    """The code that a message file belongs to."""
    if file in TEMPLATES:
        return TEMPLATES[file].read_text("utf-8")
    if file.startswith("browser/"):
        return (SCRIPTS / f"{file.removeprefix('browser/')}.js").read_text("utf-8")
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
        if whole == "problem" and len(node.args) > 2:
            for id in _constants(node.args[2]):
                yield from ((f"{id}.{part}", given) for part in ("found", "action"))
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


def is_used(id: str, code: str, *, browser: bool) -> bool:
    """Whether the code names the message, or makes its name from a beginning: `f"change-{figure}"`."""
    own, _, attribute = id.partition(".")
    if browser:
        return re.search(rf"\bmessage\.{camel(own)}\b", code) is not None
    name = id if attribute and attribute not in {"found", "expected", "action"} else own
    beginnings = [own[: end + 1] for end, sign in enumerate(own) if sign == "-"]
    return re.search(rf"[\"']{re.escape(name)}[\"'.]", code) is not None or any(
        re.search(rf"[\"']{re.escape(start)}(?:\{{|[\"'] ~)", code) for start in beginnings
    )


@each("file", FILES)
def test_every_message_is_used(file: str) -> None:
    code = source(file)
    known = {"rule"} if file.startswith("rules/") else set()
    known = known.union(*(one.messages for one in _named(file).values()))
    unused = [
        id
        for id in defined(file)
        if id.split(".")[0] not in known and not is_used(id, code, browser=file.startswith("browser/"))
    ]
    assert not unused


@each("file", [file for file in FILES if file not in TEMPLATES and not file.startswith("browser/")])
def test_every_use_has_its_message_and_gives_its_values(file: str) -> None:
    known = defined(file)
    for id, given in asked(source(file)):
        assert id in known, f"{file}.ftl has no {id}"
        assert "**" in given or known[id] <= given, f"{id} is not given {known[id] - given}"


@each("file", [file for file in FILES if file.startswith("browser/")])
def test_every_use_in_the_browser_has_its_message(file: str) -> None:
    """That it gives the values of the message is the type checker's to say: see `make lint`."""
    known = {camel(id) for id in defined(file)}
    asked = re.findall(r"(?<![/.])\bmessage\.([A-Za-z]+)", source(file))
    assert set(asked) == known


@each("path", BROWSER, ids=lambda path: path.relative_to(SCRIPTS).as_posix())
def test_words_of_the_browser_stand_in_message_files(path: Path) -> None:
    """Names of classes, keys and errors are no words for readers, nor is what is raised for a programmer."""
    code = re.sub(r"new Error\(.*?\)|new RegExp\(.*?\);", "", path.read_text("utf-8"))
    texts = [text for kind, text in tokens(code) if kind in ("text", "template", "html") and not SELECTOR.match(text)]
    bare = [re.sub(r"<[^<>]*>|<[^<>]*$|^[^<>]*>", " ", text) for text in texts]
    found = [text for text, words in zip(texts, bare, strict=True) if _is_said(words.strip("\"'`${} \n"))]
    assert not found, "\n".join(found)


def _is_said(text: str) -> bool:
    """Whether a text is said to readers: a sentence, or one word with a capital, as on a button."""
    return text not in UNSAID and bool(SENTENCE.search(text) or re.fullmatch(r"[A-Z][a-z]+[:.?!…]?", text))


@each("path", sorted(PACKAGE.rglob("*.py")), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_words_stand_in_message_files(path: Path) -> None:
    """Docstrings, patterns and what is raised for a programmer are no words for readers."""
    module = path.relative_to(PACKAGE).with_suffix("").as_posix()
    if not any(f"{module}/".startswith(f"{part}/") for part in IN_FILES):
        return
    tree = ast.parse(path.read_text("utf-8"))
    spared = {id(part) for node in ast.walk(tree) for part in _for_programmers(node)}
    data = words_of_data()
    found = [
        f"{path.name}:{node.lineno}: {node.value!r}"
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in spared
        if SENTENCE.search(node.value) and node.value not in data and not COMMAND.search(node.value)
    ]
    assert not found, "\n".join(found)


def _for_programmers(node: ast.AST) -> Iterator[ast.AST]:
    """The strings below a node that stay in code: docstrings, scripts, what `re.compile` takes, what is raised.

    So do the helps of commands, which stand beside the options that they explain.
    """
    if (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)) or (
        isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) in FOR_MACHINES
    ):
        yield node.value
    elif isinstance(node, ast.Raise) or (
        isinstance(node, ast.Call) and ast.unparse(node.func) in {"re.compile", "TypeError", "LookupError"}
    ):
        yield from ast.walk(node)
    elif isinstance(node, ast.keyword) and node.arg == "help":
        yield node.value


@cache
def words_of_data() -> frozenset[str]:
    """Words of closed lists, in schemas and in types: records and code name things by them, and no page shows them."""
    schemas = (json.loads(path.read_text("utf-8")) for path in (PACKAGE.parents[1] / "schema").glob("*.json"))
    listed = {word for schema in schemas for word in _enums(schema)}
    types = re.compile(r"Literal\[(.*?)\]", re.DOTALL)
    code = (path.read_text("utf-8") for path in PACKAGE.rglob("*.py"))
    named = (re.findall(r'"([^"]*)"', words) for text in code for words in types.findall(text))
    return frozenset(listed.union(*named))


def _enums(schema: object) -> Iterator[str]:
    if isinstance(schema, dict):
        yield from (word for word in schema.get("enum", ()) if isinstance(word, str))
        yield from (word for below in schema.values() for word in _enums(below))
    elif isinstance(schema, list):
        yield from (word for below in schema for word in _enums(below))


def called(template: str) -> Iterator[tuple[str, str, set[str]]]:
    """Each message that a template asks for by its name: its file, its id, and the names of the values that it gives.

    `message('id')` is of the file named by `{% set message = messages('…') %}`, `messages('…')('id')` of its own.
    """
    tree = JINJA.parse(template)
    files = {
        node.target.name: _file(node.node)
        for node in tree.find_all(nodes.Assign)
        if isinstance(node.target, nodes.Name) and isinstance(node.node, nodes.Call)
    }
    for call in tree.find_all(nodes.Call):
        file = files.get(call.node.name) if isinstance(call.node, nodes.Name) else _file(call.node)
        if file and isinstance(call.args[0], nodes.Const):
            yield file, call.args[0].value, {value.key for value in call.kwargs}


def _file(node: nodes.Node) -> str | None:
    """The file that `messages('…')` names; None for anything else."""
    if isinstance(node, nodes.Call) and isinstance(node.node, nodes.Name) and node.node.name == "messages":
        return str(node.args[0].as_const()).replace(".", "/")
    return None


@each("own", list(TEMPLATES))
def test_every_use_in_a_template_has_its_message_and_gives_its_values(own: str) -> None:
    for file, id, given in called(TEMPLATES[own].read_text("utf-8")):
        assert file == own, "a template has messages of its own"
        known = defined(file)
        assert id in known, f"{file}.ftl has no {id}"
        assert known[id] == given, f"{id} takes {known[id]} and is given {given}"


def literal(template: str) -> Iterator[str]:
    """The words that stand in a template itself: as text, in attributes that are read out, and in its expressions.

    Not among them are what a person types (`code`, `pre`), styles, scripts, tags, the keys of a page's head, anchors
    and entities.
    """
    text = re.sub(r"\{#.*?#\}|\{%.*?%\}|\{\{.*?\}\}", "", template, flags=re.DOTALL)
    text = re.sub(r"\{:.*?\}|<(code|pre|script|style)\b.*?</\1>", "", text, flags=re.DOTALL)
    yield from re.findall(r'\b(?:aria-label|title|data-label|alt|placeholder)="([^"]*[A-Za-z][^"]*)"', text)
    head = re.compile(r"^(?:title|description|hide|record|page_type|toc_depth):.*$", re.MULTILINE)
    visible = re.sub(r"&#?\w+;", "", head.sub("", re.sub(r"<[^>]*>", "", text)))
    yield from re.findall(r"[A-Za-z][^\n]*", visible)
    for constant in JINJA.parse(template).find_all(nodes.Const):
        if (
            isinstance(constant.value, str)
            and constant.value[:1] != "<"
            and re.search(r"^[A-Z][a-z]|[a-z]{2} [a-z]", constant.value)
        ):
            yield constant.value


@each("own", list(TEMPLATES))
def test_no_words_stand_in_a_template(own: str) -> None:
    found = [words for words in literal(TEMPLATES[own].read_text("utf-8")) if not STYLES.fullmatch(words)]
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    "template",
    [
        "<p>Two words</p>",
        '<nav aria-label="Way back"></nav>',
        '<td data-label="{{ a }} of b"></td>',
        "{% if a %}no{% endif %}",
        "{{ 'Not known' if a else b }}",
        "## Heading {: #anchor }",
    ],
)
def test_words_in_a_template_are_found(template: str) -> None:
    assert list(literal(template))


def test_what_is_no_word_is_not_found() -> None:
    template = """{# A comment. #}{% set a = 'ls-note' %}<p class="ls-note">&#160;{{ a|join(', ') }}</p>
page_type: index
<code>latchside plan</code> · {: #anchor }"""
    assert not list(literal(template))


def test_a_message_is_text_that_knows_where_it_came_from() -> None:
    message = messages("latchside.planning.failing")
    fails = message("fails", figure="Gap", shown="9 mm", meaning="It may not close.")
    assert fails == "Gap: 9 mm. It may not close."
    assert isinstance(fails, Message)
    assert fails.id == "planning/failing#fails"
    assert fails.values["shown"] == "9 mm"


def test_a_value_may_be_long() -> None:
    long = "words and more " * 1000
    assert messages("latchside.planning.failing")("fails", figure="Gap", shown="9 mm", meaning=long).endswith(long)


def test_a_value_keeps_its_lines() -> None:
    fails = messages("latchside.planning.failing")("fails", figure="Gap", shown="9 mm", meaning="One.\nTwo.")
    assert fails.endswith("One.\nTwo.")


def test_what_a_message_lacks_is_an_error() -> None:
    message = messages("latchside.planning.failing")
    with pytest.raises(LookupError, match="no message nothing-such"):
        message("nothing-such")
    with pytest.raises(ValueError, match="shown"):
        message("fails", figure="Gap", meaning="It may not close.")
    with pytest.raises(TypeError, match="neither text nor a count"):
        message("fails", figure="Gap", shown=9.5, meaning="It may not close.")  # type: ignore[arg-type]


def test_a_long_list_is_said_whole() -> None:
    """Hundreds of openings are named one by one."""
    openings = ", ".join(f"Room {number} window" for number in range(600))
    assert openings in messages("latchside.planning.failing")("at-several", found="It fails.", openings=openings)


def test_markup_in_a_message_stays_and_words_are_escaped() -> None:
    found = markup(messages("templates.label_sheet"), "print", base=Markup("<b>here</b>"))
    assert found.endswith("Each opens its page at <b>here</b>")
    assert "<script" not in markup(messages("templates.label_sheet"), "print", base="<script>")
