"""A generated page taken as it stands is the page that Markdown would make of it."""

from __future__ import annotations

from typing import Any

import markdown
import pytest
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.toc import AnchorLink

from latchside.all_cores import FEW, all_cores, each
from latchside.site.written import WrittenPage

TEXT = """# A contact {: #top }

<p class="ls-type">Reference</p>

## Where it <em>goes</em> &#38; why {: #where }

<section markdown="block">

### The latch side {: #latch-side }

<p id="here">Text &#35;1, a &lt;tag&gt; and a <a href="../b/#c">link</a>.</p>

#### Too deep for the list {: #deep }

</section>

## Last {: #last }
"""


@pytest.fixture
def page() -> WrittenPage:
    config = MkDocsConfig()
    config.load_dict({"site_name": "Example", "docs_dir": "/nowhere", "site_dir": "/nowhere/site"})
    return WrittenPage(None, File("a/index.md", "/nowhere", "/nowhere/site", use_directory_urls=True), config)


def rendered(page: WrittenPage, text: str) -> WrittenPage:
    page.markdown = text
    page.render(MkDocsConfig(), Files([]))
    return page


def entries(links: Any) -> list[tuple[str, str, int, list[Any]]]:
    return [(one.title, one.id, one.level, entries(one.children)) for one in links]


def tokens(found: Any) -> list[tuple[str, str, int, list[Any]]]:
    return [(one["name"], one["id"], one["level"], tokens(one["children"])) for one in found]


def test_the_page_is_what_markdown_makes_of_it(page: WrittenPage) -> None:
    reference = markdown.Markdown(
        extensions=["attr_list", "md_in_html", "toc"], extension_configs={"toc": {"toc_depth": 3}}
    )
    html = reference.convert(TEXT)
    made = rendered(page, TEXT)
    assert made.content is not None
    assert [line for line in made.content.splitlines() if line] == [line for line in html.splitlines() if line]
    found = entries(made.toc)
    assert [(id_, level, [below[1] for below in children]) for _, id_, level, children in found] == [
        (id_, level, [below[1] for below in children]) for _, id_, level, children in tokens(reference.toc_tokens)
    ]
    assert all(isinstance(one, AnchorLink) for one in made.toc)


def test_links_to_every_id_are_known(page: WrittenPage) -> None:
    assert rendered(page, TEXT).present_anchor_ids == {"top", "where", "latch-side", "here", "deep", "last"}


def test_a_heading_without_an_id_is_refused(page: WrittenPage) -> None:
    with pytest.raises(ValueError, match="## Nowhere"):
        rendered(page, "# A {: #top }\n\n## Nowhere\n")


@pytest.mark.parametrize("cores", [1, 2])
def test_work_on_all_cores_keeps_its_order_and_its_errors(cores: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("latchside.all_cores.CORES", cores)
    assert list(all_cores([lambda n=n: n * n for n in range(50)])) == [n * n for n in range(50)]  # type: ignore[misc]

    def broken() -> int:
        raise ValueError("a broken task")

    with pytest.raises(ValueError, match="a broken task"):
        list(all_cores([lambda: 1, broken]))


@pytest.mark.parametrize("count", [0, 1, FEW, FEW + 1, 3 * FEW])
def test_each_of_a_list_is_done_once_and_in_order(count: int, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("latchside.all_cores.CORES", 2)
    assert each(list(range(count)), lambda number: number * number) == [number * number for number in range(count)]


def test_a_page_may_list_fewer_levels_of_its_headings(page: WrittenPage) -> None:
    page.meta = {"toc_depth": 2}
    (top,) = rendered(page, TEXT).toc
    assert [(one.id, one.children) for one in top.children] == [("where", []), ("last", [])]
