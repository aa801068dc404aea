"""Any text of a record comes out as the same visible text, and never as markup, wherever in a page it stands.

The whole way is tested: the templates' environment, Python-Markdown with the extensions of `mkdocs.yml`, and an
HTML parser that reads as browsers do.
"""

from __future__ import annotations

import copy
import html
import json
import re
import unicodedata
from collections.abc import Iterator
from functools import cache
from typing import Any
from xml.etree.ElementTree import Element

import html5lib
import jinja2
import pytest
import yaml
from hypothesis import assume, example, given
from hypothesis import strategies as st
from markdown import Markdown

from latchside.escape import own_words, safe
from latchside.library import Library, build_library
from latchside.pages import render_pages
from latchside.pages.page import Page
from latchside.pages.render import _environment
from latchside.read.tree import RawRecord, read_project
from latchside.read.yaml_text import Document
from latchside.root import ROOT

from ..each import each
from .support import BASE, schemas

# -- the way a text goes ---------------------------------------------------------------------------------------


@cache
def markdown() -> Markdown:
    """Python-Markdown as the site has it: what MkDocs always loads, and what `mkdocs.yml` adds."""
    listed = yaml.safe_load((ROOT / "mkdocs.yml").read_text("utf-8"))["markdown_extensions"]
    configured: dict[str, Any] = {"toc": {}, "tables": {}, "fenced_code": {}}
    for one in listed:
        configured.update(one if isinstance(one, dict) else {one: {}})
    return Markdown(extensions=list(configured), extension_configs=configured)


def written(text: str) -> Element:
    """A generated page as a browser would read it: its headings are turned into HTML, and all else is left."""
    marked = re.sub(r"^(#{1,6}) (.+?) \{: #([\w-]+) \}$", r'<p id="\3">\2</p>', text, flags=re.MULTILINE)
    root: Element = html5lib.parseFragment(marked.replace(' markdown="block"', ""), namespaceHTMLElements=False)
    return root


def parsed(text: str) -> Element:
    """Markdown as a browser would read it."""
    root: Element = html5lib.parseFragment(markdown().reset().convert(text), namespaceHTMLElements=False)
    return root


SPACES = "".join(sign for sign in map(chr, range(0x3001)) if unicodedata.category(sign) == "Zs")
"""Spaces of every width: at the ends of a block nobody sees whether they are there."""


def folded(text: str) -> str:
    return re.sub(r"[ \t\r\n\f\v\x85\u2028\u2029]+", " ", text).strip(SPACES)


def unshowable(sign: str) -> bool:
    """Control characters and noncharacters; source: the Unicode Standard, 23.1 and 23.7."""
    code = ord(sign)
    return unicodedata.category(sign) == "Cc" or 0xFDD0 <= code <= 0xFDEF or code & 0xFFFE == 0xFFFE


def visible(text: str) -> str:
    """What a reader is to see: white space folded, and U+FFFD for a character that cannot be shown."""
    return "".join("\ufffd" if unshowable(sign) else sign for sign in folded(text))


def said(element: Element) -> str:
    return folded("".join(element.itertext()))


PAGE = """\
---
title: "{{ text }}"
---

## {{ text }} {: #mark }

<div class="box" title="{{ text }}">
<p>{{ text }}</p>
</div>

Before {{ text }} after.

<ul>
<li data-text="{{ text }}"><span>{{ text }}</span></li>
</ul>
"""


@cache
def page_of_texts() -> jinja2.Template:
    return _environment().from_string(PAGE)


@cache
def plain_engine() -> jinja2.Environment:
    return jinja2.Environment(keep_trailing_newline=True)


def goes_through(text: str) -> None:
    shown = visible(text)
    written = page_of_texts().render(text=text)
    # a second pass through a template engine finds nothing to do
    assert plain_engine().from_string(written).render() == written
    _, front, body = written.split("---\n", 2)
    assert folded(html.unescape(yaml.safe_load(front)["title"])) == shown
    root = parsed(body)
    elements = [one for one in root.iter() if one is not root]
    assert [one.tag for one in elements] == ["h2", "div", "p", "p", "ul", "li", "span"]
    assert [sorted(one.attrib) for one in elements] == [["id"], ["class", "title"], [], [], [], ["data-text"], []]
    heading, box, raw, prose, _, item, span = elements
    assert heading.attrib["id"] == "mark"
    assert [said(heading), said(raw), said(span)] == [shown, shown, shown]
    assert said(prose) == visible(f"Before {text} after.")
    assert [folded(box.attrib["title"]), folded(item.attrib["data-text"])] == [shown, shown]


HOSTILE = [
    "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "<svg/onload=alert(1)>", "</p></div></li>",
    "<!-- ", " -->", "<![CDATA[", "]]>", "<?php", "<a href='javascript:alert(1)'>", '<b markdown="1">', "<", ">",
    "</", "&", '"', "'", '" onmouseover="alert(1)', "' onfocus='alert(1)", "&lt;b&gt;", "&#60;b&#62;", "&#x3c;",
    "&amp;amp;", "&nbsp;", "&copy", "&#0;", "[a](javascript:alert(1))", "[a](http://x.invalid)", "![a](b.png)",
    "<javascript:alert(1)>", "<http://x.invalid>", "<a@b.invalid>", "[a][b]", "[b]: javascript:alert(1)", "[^1]",
    "[^1]: note", "*[abbr]: word", "[[term/leaf|words]]", "[[=reach]]", "[TOC]", "**b**", "__b__", "*i*", "_i_",
    "`code`", "```", "~~~", "``` html", "# h", "## h ##", "- item", "* item", "1. item", "1) item", "> quote",
    "| a | b |", "|---|---|", "---", "===", "***", "    code", "\tcode", "!!! note", "??? note", "+++", ":smile:",
    "$x$", "==x==", "{: .x onclick=alert(1) }", "{: #top }", "{#id}", "{.class}", "{ : x }", "{{ 7 * 7 }}",
    "{{ config }}", "{% raw %}", "{% endraw %}", "{% include 'layout.jinja' %}", "{# gone #}", "{{", "}}", "{%",
    "%}", "#}", "${x}", "<%= x %>", "%3Cscript%3E", "\\", "\\\\", "\\*", "\\<", "\\n", "\\u003c", "\\{",
    "\x02wzxhzdk:0\x03", "\x02klzzwxh:0\x03", "\x02amp\x03", "\x02", "\x03", "wzxhzdk:0", "klzzwxh:0000", "\0",
    "\x07", "\x1b[31m", "\x7f", "\x80", "\x9f", "\x85", "\u2028", "\u2029", "\u200b", "\u200e", "\u202e", "\u2066",
    "\u2069", "\ufeff", "\ufffe", "\uffff", "\ufdd0", "\ufffd", "\ud7ff", "\ue000", "\U0001f6aa", "é", "é",
    "العربية", "\r\n", "\n\n", "\n---\n", "\n# h\n", "  \n", "\xa0", " ", "at 100 %", "a/b", "--", "...", "(c)",
]  # fmt: skip


@each("text", [text for text in HOSTILE if visible(text)])
@each("around", ["{}", "a {} b", "{} {}", "a\n{}\nb", "- {}"])
def test_hostile_text_is_only_text(text: str, around: str) -> None:
    goes_through(around.replace("{}", text))


@pytest.mark.parametrize("plane", [0, 1, 16])
def test_noncharacters_of_every_plane(plane: int) -> None:
    """The last two code points of each plane are no characters, whatever the plane."""
    goes_through(f"a{chr(plane * 0x10000 + 0xFFFE)}b{chr(plane * 0x10000 + 0xFFFF)}c")


def test_all_hostile_texts_at_once() -> None:
    goes_through("x".join(HOSTILE))
    goes_through("".join(reversed(HOSTILE)))


@given(st.text() | st.lists(st.sampled_from(HOSTILE) | st.text(max_size=3), max_size=8).map("".join))
@example("# ")
@example("a {: .b }")
@example("\\")
def test_any_text_is_only_text(text: str) -> None:
    assume(visible(text))
    assume(not any(ord(sign) > 0xFFFF and unshowable(sign) for sign in text))  # each of those is tried above
    goes_through(text)


@given(st.text(st.characters()))
def test_every_character_survives(text: str) -> None:
    """Half a pair of surrogates is no character either, and is not let through to a file it cannot be written to."""
    written = str(safe(text))
    written.encode("utf-8")
    assert not re.search(r"[<>\"&{}\[\]\\`*_#|!~\x00-\x1f\x7f-\x9f](?<!&#)", re.sub(r"&#\d+;", "", written))


def test_safe_takes_what_is_not_text() -> None:
    assert safe(5) == "5"
    assert safe(None) == "None"
    assert safe(safe("<b>")) == safe("<b>")


# -- whole pages -----------------------------------------------------------------------------------------------

NASTY = folded(" ".join(text for text in HOSTILE if "[[" not in text)).lower()  # without references, which are read
NASTY_WORDS = re.sub(r"[\[\]|]", "", NASTY)  # the shown words of a link hold no brackets and no bars


def replaced(raw: RawRecord, number: Iterator[int], nasty: bool) -> RawRecord:
    """The record with every text of it replaced; each is told by its number, which also keeps the order of names."""
    value = copy.deepcopy(raw.value)
    for path, _, sort in schemas().shapes[raw.kind.id].texts(raw.value):
        if path == ("reads",):
            continue  # a long one is parted round its table, so that its length shows
        holder: Any = value
        for step in path[:-1]:
            holder = holder[step]
        n = next(number)
        words = f"{n:04d} {NASTY}" if nasty else f"{n:04d} plain"
        shown = f"{n:04d} {NASTY_WORDS}" if nasty else f"{n:04d} linked"
        holder[path[-1]] = f"{words} [[term/leaf|{shown}]]" if sort == "prose" else words
    return RawRecord(raw.kind, raw.file, raw.stem, Document(value=value))


def library(nasty: bool) -> Library:
    number = iter(range(10_000))
    return build_library([replaced(raw, number, nasty) for raw in read_project(BASE).records], schemas(), ())


def nasty_for(plain: str) -> str:
    """A text of the harmless page as it is to stand on the hostile one."""
    text = re.sub(r"(\d{4}) plain", lambda match: f"{match[1]} {visible(NASTY)}", plain)
    return folded(re.sub(r"(\d{4}) linked", lambda match: f"{match[1]} {visible(NASTY_WORDS)}", text))


def same_value(plain: str, nasty: str, way: str) -> None:
    """An attribute with its texts replaced, also where they stand in JSON that a script reads."""
    if plain[:1] in ("[", "{"):
        assert said_in(json.loads(nasty)) == [nasty_for(text) for text in said_in(json.loads(plain))], way
    else:
        assert folded(nasty) == nasty_for(plain), way


def said_in(data: Any) -> list[str]:
    """Every key, text and number of read JSON, in order."""
    if isinstance(data, dict):
        return [text for key in sorted(data) for text in (key, *said_in(data[key]))]
    if isinstance(data, list):
        return [text for below in data for text in said_in(below)]
    return [visible(str(data))]


def same(plain: Element, nasty: Element, way: str, shortened: bool = False) -> None:
    assert nasty.tag == plain.tag, way
    assert sorted(nasty.attrib) == sorted(plain.attrib), way
    for name, value in plain.attrib.items():
        if plain.tag == "img" and name == "height":  # a tree of checks grows with its words
            assert nasty.attrib[name].isdigit(), way
            continue
        same_value(value, nasty.attrib[name], f"{way} {name}")
    if plain.tag == "script":  # a block of data: JSON, whose strings are compared and not its signs
        same_value(plain.text or "", nasty.text or "", way)
    elif plain.tag == "dd" and shortened:  # of what a term means, the first sentence is shown
        assert nasty_for(plain.text or "").startswith(folded(nasty.text or "") or "nothing"), way
    else:
        assert folded(nasty.text or "") == nasty_for(plain.text or ""), way
    assert folded(nasty.tail or "") == nasty_for(plain.tail or ""), way
    assert len(nasty) == len(plain), way
    for one, other in zip(plain, nasty, strict=True):
        same(one, other, f"{way}/{one.tag}", plain.get("class") == "ls-words")


@cache
def pages(nasty: bool) -> dict[str, str]:
    return {path: text for path, text in render_pages(library(nasty)).items() if path.endswith(".md")}


def test_a_hostile_library_has_the_same_pages() -> None:
    assert list(pages(nasty=True)) == list(pages(nasty=False))
    assert len(pages(nasty=True)) > 20


@each("path", lambda: pages(nasty=False))
def test_a_hostile_library_has_the_elements_of_a_harmless_one(path: str) -> None:
    """Element by element and attribute by attribute; only the visible words differ."""
    plain, nasty = (pages(nasty)[path] for nasty in (False, True))
    (_, plain_front, plain_body), (_, nasty_front, nasty_body) = plain.split("---\n", 2), nasty.split("---\n", 2)
    plain_meta, nasty_meta = yaml.safe_load(plain_front), yaml.safe_load(nasty_front)
    assert list(nasty_meta) == list(plain_meta)
    for key, value in plain_meta.items():
        if isinstance(value, str):
            assert folded(html.unescape(nasty_meta[key])) == nasty_for(html.unescape(value)), key
        else:
            assert nasty_meta[key] == value
    same(written(plain_body), written(nasty_body), "")


def test_the_texts_really_stand_on_the_pages() -> None:
    """Else the test above would compare nothing."""
    text = "".join(pages(nasty=False).values())
    numbers = set(re.findall(r"(\d{4}) (?:plain|linked)", text))
    count = sum(len(list(schemas().shapes[raw.kind.id].texts(raw.value))) for raw in read_project(BASE).records)
    assert len(numbers) > count * 0.7


def test_a_link_in_a_summary_never_stands_inside_the_link_of_a_list() -> None:
    """Links do not nest: a browser closes the outer one at the inner, and the row falls apart."""
    library = build_library(read_project(BASE).records, schemas(), ())
    procedure = library.find("procedure", "fit-contact")
    assert procedure is not None
    assert "[[" in procedure["summary"]
    macro = _environment().from_string("{% from 'parts.jinja' import links %}{{ links(page, list) }}")
    row = macro.render(page=Page(library, "somewhere/"), list=[procedure])
    assert row.count("<a ") == 1


def test_words_of_ours_are_read_as_they_stand_too() -> None:
    words = "A colon: “is it”? Yes! [[a]](b) *c* _d_ `e` {{ f }} {: #g } <b> &amp; #h | a; 6 min + 3 min"
    page = parsed(f'<p title="{own_words(words)}">{own_words(words)}</p>\n\n## {own_words(words)} {{: #i }}')
    paragraph, heading = page
    assert (paragraph.tag, heading.tag, heading.get("id")) == ("p", "h2", "i")
    assert said(paragraph) == said(heading) == paragraph.get("title") == words
    assert not [*paragraph, *heading]
