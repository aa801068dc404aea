"""Links go both ways, words are explained where they are used, and numbers say where they come from."""

from __future__ import annotations

import re
from posixpath import normpath

import pytest
from lxml.html import HtmlElement

from latchside.kinds import KINDS
from latchside.library import Library

WITH_A_PAGE = {kind.id for kind in KINDS.values() if kind.own_page}


def _targets(address: str, element: HtmlElement) -> set[str]:
    """Addresses, with fragment, that links inside an element lead to."""
    found = set()
    for link in element.xpath(".//a/@href"):
        path, mark, fragment = link.partition("#")
        page = normpath(f"/{address}{path}").lstrip("/") if path else address.rstrip("/")
        found.add((f"{page}/" if page else "") + mark + fragment)
    return found


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("device/surface-contact", "procedure/fix-surface-contact"),
        ("device/recessed-contact", "checklist/proving-each-opening"),
        ("device/wired-input-transmitter", "fault/learnt-on-wrong-input"),
        ("device/surface-contact", "caution/lithium-cells"),
        ("procedure/meter-loop", "caution/mains-wiring"),
        ("procedure/meter-loop", "tool/multimeter"),
        ("procedure/meter-loop", "source/nbs-handbook-100"),
        ("procedure/prove-opening", "checklist/proving-each-opening"),
        ("procedure/meter-loop", "table/meter-readings"),
        ("fault/reads-high", "procedure/join-and-terminate"),
    ],
)
def test_a_link_is_seen_from_both_ends(
    shipped_library: Library, articles: dict[str, HtmlElement], one: str, other: str
) -> None:
    first, second = (shipped_library.find(*name.split("/")) for name in (one, other))
    assert first is not None
    assert second is not None
    there = _ways(articles, first.address)
    assert second.address in ({way.partition("#")[0] for way in there} if second.kind.own_page else there)
    assert first.address in {way.partition("#")[0] for way in _ways(articles, second.address)}


def _ways(articles: dict[str, HtmlElement], address: str) -> set[str]:
    """Where the place of a record leads; the pages of a device's stages belong to the device."""
    page, _, anchor = address.partition("#")
    if re.fullmatch(r"devices/[a-z-]+/", page):
        own = {stage: article for stage, article in articles.items() if stage.startswith(page)}
        return set().union(*(_targets(stage, article) for stage, article in own.items()))
    within = articles[page]
    if anchor:
        spot = within.xpath(f'.//*[@id="{anchor}"]')[0]
        if spot.tag not in ("tr", "details"):
            spot = spot.xpath("following-sibling::div[1]")[0]
        within = spot
    return _targets(page, within)


def test_every_link_is_seen_from_its_other_end(shipped_library: Library, articles: dict[str, HtmlElement]) -> None:
    """What refers to a record is listed where the record stands."""
    ways = {record.address: _ways(articles, record.address) for record in shipped_library}
    unseen = set()
    seen = 0
    for link in shipped_library.links:
        target = shipped_library.find(link.kind, link.id)
        if target is None or link.source.kind.id not in WITH_A_PAGE or target.address == link.source.address:
            continue
        if link.kind == "word":
            continue  # each region's own word for a thing, in the text and no link
        seen += 1
        if link.source.address not in {way.partition("#")[0] for way in ways[target.address]}:
            unseen.add(f"{target.address} does not show {link.source.address}")
    assert seen > 1000
    assert not sorted(unseen)


def test_every_reference_of_a_record_is_a_link_on_its_page(
    shipped_library: Library, articles: dict[str, HtmlElement]
) -> None:
    missing = set()
    for link in shipped_library.links:
        target = shipped_library.find(link.kind, link.id)
        if target is None or link.source.kind.id not in WITH_A_PAGE or target is link.source or link.kind == "word":
            continue
        if {"only", "needed"} & set(link.path) or (link.kind == "term" and link.path[-1] == "name"):
            continue  # said in words: a list of devices, or a title
        if articles[link.source.address].xpath(f'.//tr[starts-with(@id, "value-{link.id}-")]'):
            continue  # a number of another record, listed with its source at the foot
        ways = _ways(articles, link.source.address)
        wanted = f"{target.address}#step-{link.step}" if link.step else target.address
        anywhere = target.kind.own_page and not link.step
        if wanted not in ({way.partition("#")[0] for way in ways} if anywhere else ways):
            missing.add(f"{link.source.address} {link.path} → {wanted}")
    assert not sorted(missing)


def test_a_word_is_explained_once_by_its_link_or_at_the_foot(
    shipped_library: Library, articles: dict[str, HtmlElement]
) -> None:
    """What a page links is not listed again at its foot, nor is what anybody on site knows."""
    seen = 0
    for address, article in articles.items():
        lists = article.xpath('.//dl[@class="ls-words"]')
        if not article.xpath('.//*[@class="ls-origin"]') or address.startswith("terms/"):
            continue
        explained = {way.partition("#")[2] for listed in lists for way in _targets(address, listed)}
        linked = {
            link.partition("#")[2]
            for link in article.xpath(
                './/a[contains(@href, "terms/#")]'
                '[not(ancestor::dl[@class="ls-words"]) and not(ancestor::*[@class="ls-origin"])]/@href'
            )
        }
        seen += len(explained)
        assert not linked & explained, f"{address}: {linked & explained}"
        for id_ in explained:
            term = shipped_library.find("term", id_)
            assert term is not None
            assert not term.get("everyday")
    assert seen > 500


def test_the_first_use_of_a_word_in_prose_is_its_link(
    shipped_library: Library, articles: dict[str, HtmlElement]
) -> None:
    """On device pages, in the paragraphs on how it works: where a term first stands it links to its meaning.

    A term whose name has two senses links by its own phrases, which have a test of their own.
    """
    terms = {term.name.lower(): term.id for term in shipped_library.of("term") if "links_as" not in term.data}
    names = sorted(terms, key=len, reverse=True)
    pattern = re.compile(rf"(?<![\w-])({'|'.join(map(re.escape, names))})s?(?![\w-])", re.IGNORECASE)
    seen = 0
    for device in shipped_library.of("device"):
        article = articles[device.address]
        head = article.xpath('.//h2[@id="how-it-works"]')[0]
        told: set[str] = set()
        for paragraph in head.xpath("ancestor::details/p"):
            for text in paragraph.xpath(".//text()"):
                link = text.getparent() if text.is_text and text.getparent().tag == "a" else None
                if link is not None:
                    told.add(link.get("href").partition("#")[2])
                for match in pattern.finditer(str(text)) if link is None else ():
                    id_ = terms[match[1].lower()]
                    assert id_ in told, f"{device.id}: {match[0]!r} in {paragraph.text_content()[:80]!r}"
                    seen += 1
    assert seen > 20


def test_a_word_in_a_command_is_explained_on_the_page(
    shipped_library: Library, articles: dict[str, HtmlElement]
) -> None:
    """Commands hold no links: their words link elsewhere on the page, or stand in the list at its foot."""
    chosen = ("latch side", "end-of-line resistor", "reed", "zone", "spacer", "tamper", "check-in")
    seen = 0
    for address, article in articles.items():
        commands = " ".join(element.text_content() for element in article.xpath('.//p[@class="ls-do"]')).lower()
        explained = article.xpath('.//a[contains(@href, "terms/#")]/@href')
        for name in chosen:
            term = next((term for term in shipped_library.of("term") if term.name.lower() == name), None)
            if term and re.search(rf"(?<![\w-]){name}(?![\w-])", commands):
                rest = commands
                for other in shipped_library.of("term"):
                    if other is not term and name in other.name.lower():
                        rest = rest.replace(other.name.lower(), " ")
                if re.search(rf"(?<![\w-]){name}(?![\w-])", rest):
                    seen += 1
                    assert any(link.endswith(f"#{term.id}") for link in explained), f"{address}: {name}"
    assert seen > 50


def test_numbers_are_listed_with_their_status(articles: dict[str, HtmlElement]) -> None:
    seen = 0
    for address, article in articles.items():
        for link in article.xpath('.//a[@class="ls-value"]'):
            row = article.xpath(f'.//tr[@id="{link.get("href").lstrip("#")}"]')
            assert len(row) == 1, f"{address}: {link.get('href')}"
            said = row[0].xpath("./td")[-1].text_content()
            assert re.search(r"common practice|typical|standard|handbook|computed|from memory|label", said), address
            seen += 1
    assert seen > 100


def test_every_record_page_says_who_reviewed_it(shipped_library: Library, articles: dict[str, HtmlElement]) -> None:
    for kind in WITH_A_PAGE - {"job"}:  # a survey of an invented site, which nobody reviews
        for record in shipped_library.of(kind):
            origin = articles[record.address].xpath('.//*[@class="ls-origin"]')[0].text_content()
            assert f"Reviewed by: {record['review']['by']}" in origin
            assert f"version {record['version']}" in origin


def test_a_figure_from_memory_says_so_to_its_reader(shipped_library: Library, articles: dict[str, HtmlElement]) -> None:
    seen = 0
    words = shipped_library.schemas.words("status")["from memory"]
    assert "edition" in words
    for device in shipped_library.of("device"):
        for name, value in device["values"].items():
            row = articles[device.address].xpath(f'.//tr[@id="value-{device.id}-{name}"]')[0]
            said = row.text_content()
            assert shipped_library.schemas.words("status")[value["status"]] in said
            seen += 1
    assert seen
