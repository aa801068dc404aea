"""Every step stands where it is looked for, once, in order, with its cautions before it and nothing folded away."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any

import pytest
from lxml.html import HtmlElement

from latchside.library import Library, Record

Step = tuple[Record, Mapping[str, Any]]
StepsOf = Callable[[Record, Record | None], list[Step]]
StepPages = list[tuple[str, Record | None, list[Record]]]

SIGNALS = {"danger": "Danger", "warning": "Warning", "caution": "Caution", "notice": "Notice"}


def _as_pattern(text: str) -> str:
    """A pattern for what a reader sees of a record's text: links by their words, numbers by anything."""
    pieces = re.split(r"\[\[(.*?)\]\]", " ".join(text.split()))
    shown = (
        re.escape(piece) if not index % 2 else re.escape(piece.partition("|")[2]) if "|" in piece else ".+?"
        for index, piece in enumerate(pieces)
    )  # fmt: skip
    return "".join(shown)


def _said(element: HtmlElement) -> str:
    return " ".join(element.text_content().split())


def _cautions_between(within: HtmlElement, before: HtmlElement, after: HtmlElement | None = None) -> dict[str, str]:
    """Id → signal word of each caution shown in `within`, ahead of one element and, if given, behind another."""
    found: dict[str, str] = {}
    begun = after is None
    for element in within.iter():
        if element is before:
            return found
        begun = begun or element is after
        if begun and "ls-caution" in (element.get("class") or "").split():
            for link in element.xpath(".//a/@href"):
                match = re.search(r"cautions/([a-z-]+)/$", link)
                if match:
                    found[match[1]] = element.xpath(".//strong")[0].text_content().rstrip(":")
    raise AssertionError("the element that cautions must precede is not there")


def _assert_shown(library: Library, wanted: Iterable[str], shown: Mapping[str, str], place: str) -> None:
    for id_ in wanted:
        caution = library.find("caution", id_)
        assert caution is not None, id_
        assert id_ in shown, f"{place}: the caution {id_} is not before it"
        assert shown[id_] == SIGNALS[caution["level"]], f"{place}: {id_}"


def test_every_step_is_there_once_and_in_order(
    step_pages: StepPages, steps_of: StepsOf, articles: dict[str, HtmlElement]
) -> None:
    seen = 0
    for address, device, procedures in step_pages:
        wanted = []
        for procedure in procedures:
            prefix = f"{procedure.id}-" if device else ""
            for owner, step in steps_of(procedure, device):
                drawn = "" if owner is procedure else f"{owner.id}-"
                wanted.append((f"{prefix}{drawn}step-{step['id']}", step))
        shown = articles[address].xpath('.//ol[contains(@class, "ls-steps")]/li')
        assert [element.get("id") for element in shown] == [id_ for id_, _ in wanted], address
        for element, (id_, step) in zip(shown, wanted, strict=True):
            commands = element.xpath('.//p[@class="ls-do"]')
            assert len(commands) == 1, f"{address}#{id_}"
            text = "".join(commands[0].xpath('.//text()[not(ancestor::*[@class="ls-only"])]'))
            assert re.fullmatch(_as_pattern(step["do"]), " ".join(text.split())), f"{address}#{id_}: {text}"
        seen += len(shown)
    assert seen > 1000


def test_every_step_of_a_device_is_on_a_page_of_that_device(
    shipped_library: Library, step_pages: StepPages, steps_of: StepsOf, articles: dict[str, HtmlElement]
) -> None:
    """On the page of its stage, and on the install page where it belongs to the installation: in each just once."""
    for device in shipped_library.of("device"):
        whole = articles[f"devices/{device.id}/install/"].xpath('.//ol[contains(@class, "ls-steps")]/li/@id')
        installing = False
        for stage, listed in device["procedures"].items():
            installing = (installing or stage == "prepare") and stage != "maintain"
            for id_ in listed if isinstance(listed, tuple) else ():
                procedure = shipped_library.find("procedure", id_)
                assert procedure is not None
                by_stage = articles[f"devices/{device.id}/{stage}/"].xpath('.//ol[contains(@class, "ls-steps")]/li/@id')
                for owner, step in steps_of(procedure, device):
                    drawn = "" if owner is procedure else f"{owner.id}-"
                    name = f"{procedure.id}-{drawn}step-{step['id']}"
                    assert by_stage.count(name) == 1, (device.id, stage, name)
                    assert whole.count(name) == int(installing), (device.id, "install", name)


def test_a_step_says_all_that_its_record_says(
    step_pages: StepPages, steps_of: StepsOf, articles: dict[str, HtmlElement]
) -> None:
    for address, device, procedures in step_pages:
        shown = iter(articles[address].xpath('.//ol[contains(@class, "ls-steps")]/li'))
        for procedure in procedures:
            for _, step in steps_of(procedure, device):
                element = next(shown)
                text = _said(element)
                for field in ("result", "why", "note"):
                    if step.get(field):
                        assert re.search(_as_pattern(step[field]), text), f"{address}#{element.get('id')}: {field}"
                if step.get("measure"):
                    measure = element.xpath('.//dl[@class="ls-measure"]')[0]
                    assert [term.text for term in measure.xpath("./dt")] == ["Measure", "Expect", "Outside"]
                    assert re.search(_as_pattern(step["measure"]["what"]), _said(measure))
                    assert re.search(_as_pattern(step["measure"]["outside"]), _said(measure))
                    assert re.search(r"\d|label", _said(measure.xpath('./dd[@class="ls-expect"]')[0]))
                if step.get("drawing"):
                    drawing = f"drawing-{step['drawing']}"
                    assert element.xpath(f'.//*[@id="{drawing}"] | .//a[@href="#{drawing}"]'), element.get("id")


def test_a_caution_stands_before_its_step(
    shipped_library: Library, step_pages: StepPages, steps_of: StepsOf, articles: dict[str, HtmlElement]
) -> None:
    seen = 0
    for address, device, procedures in step_pages:
        shown = iter(articles[address].xpath('.//ol[contains(@class, "ls-steps")]/li'))
        for procedure in procedures:
            for _, step in steps_of(procedure, device):
                element = next(shown)
                wanted = step.get("cautions", ())
                seen += len(wanted)
                command = element.xpath('./p[@class="ls-do"]')[0]
                place = f"{address}#{element.get('id')}"
                _assert_shown(shipped_library, wanted, _cautions_between(element, command), place)
    assert seen > 100


def test_cautions_for_the_whole_stand_before_step_one(
    shipped_library: Library, step_pages: StepPages, steps_of: StepsOf, articles: dict[str, HtmlElement]
) -> None:
    """Also those of a procedure that another draws in."""
    seen = 0
    for address, device, procedures in step_pages:
        article = articles[address]
        for procedure in procedures:
            steps = steps_of(procedure, device)
            prefix = f"{procedure.id}-" if device else ""
            first = article.xpath(f'.//ol[contains(@class, "ls-steps")]/li[starts-with(@id, "{prefix}")]')[0]
            head = article.xpath(f'.//*[@id="{prefix}safety"]')[0]
            shown = _cautions_between(article, first, head)
            wanted: set[str] = set()
            for owner in {owner.id: owner for owner, _ in steps}.values():
                wanted |= set(owner.listed("safety"))
            seen += len(wanted)
            _assert_shown(shipped_library, wanted, shown, f"{address} {procedure.id}")
    assert seen > 100


@pytest.mark.parametrize("part", ["check", "remedy"])
def test_cautions_of_a_fault_stand_before_what_they_are_for(
    shipped_library: Library, articles: dict[str, HtmlElement], part: str
) -> None:
    seen = 0
    for fault in shipped_library.of("fault"):
        article = articles[f"faults/{fault.id}/"]
        first = article.xpath('.//ol[contains(@class, "ls-steps")]/li')[0]
        _assert_shown(shipped_library, fault.listed("cautions"), _cautions_between(article, first), fault.id)
        if part == "check":
            for check in fault["checks"]:
                element = article.xpath(f'.//li[@id="check-{check["id"]}"]')[0]
                command = element.xpath('./p[@class="ls-do"]')[0]
                assert re.fullmatch(_as_pattern(check["do"]), _said(command))
                wanted = check.get("cautions", ())
                seen += len(wanted)
                _assert_shown(shipped_library, wanted, _cautions_between(element, command), f"{fault.id} {check['id']}")
        else:
            for cause in fault["causes"]:
                head = article.xpath(f'.//h3[@id="cause-{cause["id"]}"]')[0]
                box = head.xpath('following-sibling::div[@class="ls-remedy"][1]')[0]
                steps = box.xpath("./ol")[0]
                assert [bool(re.fullmatch(_as_pattern(line), _said(item))) for line, item in zip(
                    cause["remedy"]["do"], steps.xpath("./li"), strict=True)
                ] == [True] * len(cause["remedy"]["do"])  # fmt: skip
                wanted = cause["remedy"].get("cautions", ())
                seen += len(wanted)
                _assert_shown(shipped_library, wanted, _cautions_between(box, steps), f"{fault.id} {cause['id']}")
    assert seen


def test_a_checklist_holds_every_item_after_its_cautions(
    shipped_library: Library, articles: dict[str, HtmlElement]
) -> None:
    for checklist in shipped_library.of("checklist"):
        article = articles[f"checklists/{checklist.id}/"]
        shown = article.xpath('.//ul[@class="ls-items"]/li')
        items = [item for point in checklist["points"] for item in point["items"]]
        assert len(shown) == len(items) == len(article.xpath('.//input[@type="checkbox"]'))
        for element, item in zip(shown, items, strict=True):
            label = element.xpath('./label[@class="ls-item"]')[0]
            assert label.xpath('.//input[@type="checkbox"]'), "the whole row ticks the box"
            assert re.search(_as_pattern(item["subject"]), _said(label))
            assert re.search(_as_pattern(item["state"]), _said(label))
            assert ("critical" in label.xpath('.//em[@class="ls-critical"]/text()')) == bool(item.get("critical"))
            procedure, _, step = item["step"].partition("/")
            assert element.xpath("./div/a/@href") == [f"../../procedures/{procedure}/#step-{step}"]
        first = _cautions_between(article, shown[0])
        _assert_shown(shipped_library, checklist.listed("cautions"), first, checklist.id)


def test_nothing_is_folded_away(articles: dict[str, HtmlElement]) -> None:
    on_paper_alone = ("ls-sheet-head", "ls-box")
    to_work_with = ("figures/", "visits/", "offline/", "labels/")  # fields and results, and nothing read on site
    for address, article in articles.items():
        if address.startswith(to_work_with):
            continue
        folded = article.xpath(
            './/details | .//dialog | .//template | .//*[@hidden] | .//*[@inert] | .//*[contains(@style, "display")]'
            ' | .//*[contains(@style, "visibility")] | .//*[contains(@class, "tabbed")] | .//input[@type="radio"]'
        )
        assert not folded, f"{address}: {[element.tag for element in folded]}"
        for element in article.xpath('.//*[@aria-hidden="true"]'):
            named = element.get("class") in on_paper_alone
            assert named or not element.text_content().strip(), f"{address}: {element.text_content()}"
