"""Words that link to a term by themselves, on every built page: never a verb, and still where they help."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from lxml.html import HtmlElement

from latchside.library import Library

BLOCKS = ("p", "li", "dd", "td", "figcaption", "summary")
BEFORE_A_VERB = {"to", "not", "can", "may", "must", "will", "they", "you", "it", "that", "which", "then", "and then"}


def _links(articles: dict[str, HtmlElement], skip: set[str]) -> Iterator[tuple[str, str, str, str]]:
    """Address, term, words of the link, and what stands before it in its block; the lists of terms left out."""
    for address, article in articles.items():
        if address == "terms/":
            continue
        for link in article.xpath(".//a[contains(@href, 'terms/#')]"):
            term = link.get("href").rpartition("#")[2]
            block = next((one for one in link.iterancestors() if one.tag in (*BLOCKS, "dt")), None)
            if block is None or block.tag == "dt" or term in skip:
                continue
            before = "".join(block.xpath(".//text()")).partition(link.text_content())[0]
            yield address, term, link.text_content(), before


def test_no_verb_links_to_a_term(articles: dict[str, HtmlElement], shipped_library: Library) -> None:
    verbs = set(shipped_library.schemas.documents["vocabulary.schema.json"]["$defs"]["step-verb"]["enum"])
    marked = {term.id for term in shipped_library.of("term") if term.get("links_as") == ()}
    wrong = []
    for address, term, words, before in _links(articles, marked):
        last = before.split()[-1:] or ["."]
        starts = last[0].endswith((".", ":", ";")) or last[0].lower() in BEFORE_A_VERB
        if starts and words.lower() in verbs:
            wrong.append((address, term, before[-40:], words))
    assert not wrong


def test_the_links_that_help_are_there(articles: dict[str, HtmlElement]) -> None:
    found = Counter(term for _, term, _, _ in _links(articles, set()))
    for term in ("contact", "reach", "gap", "keep", "seal", "loop", "play", "magnet", "leaf", "opening"):
        assert found[term] >= 3, term
