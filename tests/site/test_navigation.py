"""The list of sections: the same on every page, open where the page belongs, without a page that holds nothing."""

from __future__ import annotations

import pytest
from lxml.html import HtmlElement
from mkdocs.config import load_config
from mkdocs.exceptions import PluginError

from latchside.root import ROOT
from latchside.site import adapter
from latchside.site.build import settings

SECTIONS = ["Home", "On site", "Faults", "Devices", "Plan", "Learn", "Maintain"]
BELONGS = {
    "visits/": "On site",
    "checklists/position/": "On site",
    "faults/reads-high/": "Faults",
    "devices/surface-contact/": "Devices",
    "devices/surface-contact/position/": "Devices",
    "procedures/meter-loop/": "Devices",
    "cautions/ladders/": "Devices",
    "jobs/": "Plan",
    "figures/cable-resistance/": "Plan",
    "terms/": "Learn",
    "maintain/rules/": "Maintain",
}


def test_every_page_has_the_same_sections(every_page: dict[str, HtmlElement]) -> None:
    for address, page in every_page.items():
        (nav,) = page.find_class("ls-nav")
        assert [link.text for link in nav.xpath("./ul/li/a")] == SECTIONS, address
        assert nav.get("aria-label")
        sidebars = page.find_class("md-sidebar--primary")
        assert [bar.get("hidden") for bar in sidebars] == [None], address


@pytest.mark.parametrize(("address", "section"), BELONGS.items(), ids=BELONGS)
def test_a_page_opens_its_section(every_page: dict[str, HtmlElement], address: str, section: str) -> None:
    (inside,) = every_page[address].find_class("ls-nav-in")
    assert inside.xpath("./a")[0].text == section
    assert inside.xpath("./ul/li/a")


def test_the_page_itself_is_marked(every_page: dict[str, HtmlElement]) -> None:
    for address in ("", "terms/", "visits/", "faults/"):
        assert len(every_page[address].find_class("ls-nav")[0].xpath(".//a[@aria-current='page']")) == 1, address


def test_labels_are_listed_only_where_there_are_any(every_page: dict[str, HtmlElement]) -> None:
    assert not every_page["maintain/"].find_class("ls-nav")[0].xpath(".//a[contains(@href, 'labels')]")
    config = load_config(**settings(ROOT), site_url="https://field.example/library/")
    assert "labels.md" in str(adapter.on_config(config).nav)


@pytest.mark.parametrize("address", ["library", "a@b", "a@b.example?bcc=c@d.example", "<a@b.example>"])
def test_what_is_no_address_for_e_mail_is_refused(address: str) -> None:
    config = load_config(**settings(ROOT))
    config.extra["report_to"] = address
    with pytest.raises(PluginError, match="report_to"):
        adapter.on_config(config)
    config.extra["report_to"] = "library@firm.example"
    adapter.on_config(config)
