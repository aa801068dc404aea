"""Every step stands where it is looked for, once, in order, its cautions before it; no fold holds what must be seen."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any

import pytest
from lxml.html import HtmlElement

from latchside.library import Library, Record
from latchside.library.compiled import own_steps

Step = tuple[Record, Mapping[str, Any]]
StepsOf = Callable[[Record, Record | None], list[Step]]
StepPages = list[tuple[str, Record | None, list[Record]]]

SIGNALS = {"danger": "Danger", "warning": "Warning", "caution": "Caution", "notice": "Notice"}


def _as_pattern(text: str) -> str:
    """A pattern for what a reader sees of a record's text: links by their words, the rest that is filled in by any."""
    pieces = re.split(r"\[\[(.*?)\]\]", " ".join(text.split()))
    return "".join(_link_pattern(piece) if index % 2 else re.escape(piece) for index, piece in enumerate(pieces))


def _link_pattern(reference: str) -> str:
    kind, _, words = reference.partition("|")
    return re.escape(words) if words and not kind.startswith("word/") else ".+?"


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


def test_every_step_of_a_device_is_on_the_page_of_its_stage(
    shipped_library: Library, step_pages: StepPages, steps_of: StepsOf, articles: dict[str, HtmlElement]
) -> None:
    """Just once; and its address on the page of the installation, where it stood before, leads to that stage."""
    for device in shipped_library.of("device"):
        path = articles[f"devices/{device.id}/install/"]
        installing = False
        for stage, listed in device["procedures"].items():
            installing = (installing or stage == "prepare") and stage != "maintain"
            for id_ in listed if isinstance(listed, tuple) else ():
                procedure = shipped_library.find("procedure", id_)
                assert procedure is not None
                page = articles[f"devices/{device.id}/{stage}/"]
                by_stage = page.xpath('.//ol[contains(@class, "ls-steps")]/li/@id')
                for owner, step in steps_of(procedure, device):
                    drawn = "" if owner is procedure else f"{owner.id}-"
                    name = f"{procedure.id}-{drawn}step-{step['id']}"
                    assert by_stage.count(name) == 1, (device.id, stage, name)
                    leads = path.xpath(f'.//li[.//*[@id="{name}"]]/a/@href')
                    assert leads == ([f"../{stage}/"] if installing else []), (device.id, name)
        for anchor in path.xpath('.//*[@class="ls-was"]/*'):
            leads = anchor.xpath("ancestor::li/a/@href")[0].strip("./")
            there = articles[f"devices/{device.id}/{leads}/"].xpath(".//@id")
            assert anchor.get("id") in there, (device.id, anchor.get("id"))


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
                    assert [term.text for term in measure.xpath("./dt")][:2] == ["Measure", "Expect"]
                    assert re.search(_as_pattern(step["measure"]["what"]), _said(measure))
                    assert re.search(_as_pattern(step["measure"]["outside"]), text)
                    assert re.search(r"\d|label", _said(measure.xpath('./dd[@class="ls-expect"]')[0]))
                    assert re.search(r"\d|label", _said(element.xpath('.//span[@class="ls-num"]')[0]))
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
            label = element.xpath('./div/label[@class="ls-item"]')[0]
            assert label.xpath('.//input[@type="checkbox"]'), "the whole row ticks the box"
            assert re.search(_as_pattern(item["subject"]), _said(label))
            assert re.search(_as_pattern(item["state"]), _said(label))
            assert ("critical" in label.xpath('.//em[@class="ls-critical"]/text()')) == bool(item.get("critical"))
            procedure, _, step = item["step"].partition("/")
            how = element.xpath('.//details/div[@class="ls-how"]/a/@href')
            assert how == [f"../../procedures/{procedure}/#step-{step}"]
            found = shipped_library.find("procedure", procedure)
            assert found is not None
            wanted = next(one for _, one in own_steps(found) if one["id"] == step).get("cautions", ())
            _assert_shown(shipped_library, wanted, _cautions_between(element, label), f"{checklist.id} {item['id']}")
        first = _cautions_between(article, shown[0])
        _assert_shown(shipped_library, checklist.listed("cautions"), first, checklist.id)


def test_a_fault_folds_no_caution_and_no_end(shipped_library: Library, articles: dict[str, HtmlElement]) -> None:
    """In view: each caution, before the chapter of its check or remedy, and when to stop. Chapters fold by heading."""
    for fault in shipped_library.of("fault"):
        article = articles[f"faults/{fault.id}/"]
        folds = article.xpath('.//details[not(contains(@class, "ls-tell"))]')
        assert all(fold.xpath("./summary/h2") and fold.get("open") is None for fold in folds), fault.id
        for chapter, parts in (("checks", fault["checks"]), ("remedies", [one["remedy"] for one in fault["causes"]])):
            head = article.xpath(f'.//h2[@id="{chapter}"]')[0]
            in_view = article.xpath('.//p[contains(@class, "ls-caution")][not(ancestor::details)]')
            before = [one for one in in_view if head in one.xpath("following::h2")]
            shown = {link.rstrip("/").rpartition("/")[2] for one in before for link in one.xpath(".//a/@href")}
            assert {id_ for part in parts for id_ in part.get("cautions", ())} <= shown, (fault.id, chapter)
        [stop] = article.xpath('.//p[@class="ls-stop"][not(ancestor::details)]')
        assert re.search(_as_pattern(fault["escalate"]["when"]), _said(stop))


WITH_FOLDS = ("devices/", "procedures/", "tools/")
WITH_WORK = ("figures/", "visits/", "offline/", "labels/")  # fields and results, and nothing read on site
IN_A_FOLD = (
    './/details//*[contains(@class, "ls-caution") or @class="ls-do" or @class="ls-item" or @class="ls-expect"'
    " and not(ancestor::dl)]"
)


def test_nothing_that_one_works_by_is_folded_away(articles: dict[str, HtmlElement]) -> None:
    """Reference may stand behind a tap; a caution, a step, an item and what it should read may not.

    A page of steps folds its parts, which the tests above look into.
    """
    on_paper_alone = ("ls-sheet-head", "ls-box")
    for address, article in articles.items():
        if address.startswith((*WITH_WORK, "faults/")):  # what may never be folded there has a test of its own
            continue
        if address == "maintain/components/":  # shows each part in all its states, for who designs
            continue
        folded = article.xpath(
            './/dialog | .//template | .//*[@hidden and not(@data-print-all)] | .//*[@inert] | .//input[@type="radio"]'
            ' | .//*[contains(@style, "display")] | .//*[contains(@style, "visibility")]'
            ' | .//*[contains(@class, "tabbed")]'
        )
        if not address.startswith(WITH_FOLDS):
            folded += article.xpath(IN_A_FOLD)
        assert not folded, f"{address}: {[element.tag for element in folded]}"
        for element in article.xpath('.//*[@aria-hidden="true"]'):
            named = element.get("class") in on_paper_alone
            assert named or not element.text_content().strip(), f"{address}: {element.text_content()}"


def _in_view(element: HtmlElement) -> bool:
    """In no fold, or in its summary. A procedure that folds as a whole opens with its cautions and steps together."""
    for fold in element.iterancestors("details"):
        summary = fold.find("summary")
        if "ls-work" not in fold.classes and element not in summary.iter():
            return False
    return True


def test_no_fold_holds_what_must_be_seen(
    step_pages: StepPages, steps_of: StepsOf, articles: dict[str, HtmlElement]
) -> None:
    """Commands, readings, results, the line of each caution, and where the work stops."""
    stops = 0
    for address, device, procedures in step_pages:
        article = articles[address]
        for element in article.xpath('.//p[@class="ls-do"] | .//*[@class="ls-num"] | .//*[@class="ls-result"]'):
            assert _in_view(element), f"{address}: {_said(element)}"
        for caution in article.find_class("ls-caution"):
            line = caution.find("summary") if caution.tag == "details" else caution
            assert _in_view(line), f"{address}: {_said(line)}"
            assert len(_said(line).split()) > 1, f"{address}: {_said(line)}"
        for procedure in procedures:
            wanted = [way["do"] for way in procedure.listed("if_it_fails") if way.get("stop")]
            for _, step in steps_of(procedure, device):
                if step.get("measure", {}).get("stop"):
                    wanted.append(step["measure"]["outside"])
            shown = [_said(element) for element in article.find_class("ls-stop") if _in_view(element)]
            stops += len(wanted)
            for text in wanted:
                assert any(re.search(_as_pattern(text), one) for one in shown), f"{address}: {text}"
    assert stops > 20


def test_where_a_text_says_stop_its_record_says_so(shipped_library: Library) -> None:
    for procedure in shipped_library.of("procedure"):
        groups = [*(group.get("do", ()) for group in procedure["steps"])]
        steps = [step for group in groups for step in group] + [
            *procedure.listed("prove"),
            *procedure.listed("close_up"),
        ]
        told = [(step["measure"]["outside"], step["measure"]) for step in steps if step.get("measure")]
        told += [(way.get("do", ""), way) for way in procedure.listed("if_it_fails")]
        assert not [text for text, where in told if text.startswith("Stop") and not where.get("stop")], procedure.id
