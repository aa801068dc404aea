"""The order of work on a live site and inside a control unit, against what was read outside the library.

Sources, each with what was read of it:

- EN 50131-1:2006, table 7, note 5 (national copy): a control unit that is unset does not start an external warning
  device; the device may start by itself when it is tampered with or loses its connection to the control unit.
- BS 8243 (extract of the 2021 edition) and trade texts on DD 243, which it replaced: a sequentially confirmed alarm
  needs two independent detectors on separate zones; two contacts at one door are moved by one event.
- NFPA 80, editions 2013, 2016 and 2022 as explained in trade texts: a labelled door takes a short list of job-site
  preparations; every other change is a field modification, approved beforehand by the laboratory that listed it.
- 40 CFR 745.82 and 29 CFR 1926.1101: the year of building decides, so it has to be known before the work.

The rest is common practice of the trade, and stated as such in the records.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import pytest

from latchside.library import Library, Record
from latchside.library.compiled import own_steps
from latchside.library.text import plain
from latchside.project import Checked

UNSAFE = {
    "procedure": ("prepare-at-yard", "arrive-and-go-on-test", "land-on-terminals", "remove-device"),
    "caution": ("monitored-site", "mains-wiring"),
}
"""Records whose earlier version could have hurt somebody or left an opening unwatched."""


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def get(library: Library, kind: str, id_: str) -> Record:
    found = library.find(kind, id_)
    assert found is not None, f"{kind}/{id_}"
    return found


def order(library: Library, procedure: str) -> list[str]:
    return [step["id"] for _, step in own_steps(get(library, "procedure", procedure))]


def in_order(library: Library, procedure: str, *ids: str) -> bool:
    places = [order(library, procedure).index(id_) for id_ in ids]
    return places == sorted(places)


def step(library: Library, procedure: str, id_: str) -> Mapping[str, Any]:
    return next(one for _, one in own_steps(get(library, "procedure", procedure)) if one["id"] == id_)


def facts(library: Library, caution: str) -> Iterator[Mapping[str, Any]]:
    yield from get(library, "caution", caution).listed("facts")


def test_a_sounder_with_its_own_battery_is_held_off_before_its_supply_goes(library: Library) -> None:
    fact = next(one for one in facts(library, "occupied-premises") if one.get("source") == "en-50131-1")
    assert fact["status"] == "standard"
    assert "by itself" in fact["text"]
    assert "loses its connection" in fact["text"]
    assert in_order(library, "land-on-terminals", "sounder", "mains-off", "battery-off")
    assert "see-sounders" in order(library, "go-off-test")


def test_the_control_unit_is_dark_before_a_core_is_landed(library: Library) -> None:
    assert in_order(
        library, "land-on-terminals", "secure", "programming-mode", "supply-kind", "mains-off", "cover", "shroud",
        "battery-off", "dead", "meter-first", "insert", "count-loops", "battery-on", "supply-on", "clear-faults",
    )  # fmt: skip
    assert "mains-wiring" in step(library, "land-on-terminals", "supply-kind")["cautions"]
    stop = next(one for one in get(library, "procedure", "land-on-terminals")["if_it_fails"] if "shroud" in one["when"])
    assert all(word in stop["do"] for word in ("Stop", "licensed", "qualified"))


def test_a_radio_contact_has_no_mains_headline_where_it_is_landed(library: Library) -> None:
    landing = get(library, "procedure", "land-on-terminals")
    assert "mains-wiring" not in landing.listed("safety")
    for group in landing["steps"]:
        warned = any("mains-wiring" in one.get("cautions", ()) for one in group["do"])
        assert not warned or group["at"] == "control-unit"


def test_the_last_signal_is_seen_before_the_test_ends(library: Library) -> None:
    assert in_order(library, "go-off-test", "see-zones", "see-left-out", "see-restored", "last-signal", "end-test")
    assert in_order(library, "go-off-test", "last-signal", "ask-signals", "end-test")
    avoid = [plain(text) for text in get(library, "caution", "monitored-site")["avoid"]]
    still, ended = (next(n for n, text in enumerate(avoid) if said in text) for said in ("still on test", "off test"))
    assert still < ended
    assert not any("live signal" in text for text in avoid)


def test_supply_and_path_are_on_test_too(library: Library) -> None:
    result = plain(step(library, "arrive-and-go-on-test", "scope")["result"])
    assert "supply" in result
    assert "path" in result


def test_two_contacts_on_one_zone_confirm_nothing(library: Library) -> None:
    fact = next(one for one in facts(library, "monitored-site") if one.get("source") == "bs-8243")
    assert "independent" in fact["text"]
    assert "Two contacts at one door, or on one zone, do not." in fact["text"]
    assert "independent detectors on zones of their own" in get(library, "term", "confirmed-alarm")["meaning"]


def test_a_contact_leaves_a_shared_loop_without_its_neighbours(library: Library) -> None:
    """A series string with one contact cut out is open for good: found, joined, its resistor moved, metered, proved."""
    assert in_order(
        library, "remove-device", "shared", "remove-zone", "draw-loop", "meter-before", "through", "move-resistor",
        "meter-after", "other-zones",
    )  # fmt: skip
    assert "if nothing else is on the loop" in plain(step(library, "remove-device", "off-terminals")["do"]).lower()


def test_a_fire_door_is_not_drilled_on_one_s_own_judgement(library: Library) -> None:
    rows = {row["id"]: row for row in get(library, "table", "may-i-drill-here")["rows"]}
    fire = rows["fire-door"]
    assert (fire["status"], fire["source"]) == ("standard", "nfpa-80")
    assert "field modification" in fire["cells"]["may"]
    assert "laboratory" in fire["cells"]["who"]
    assert get(library, "source", "nfpa-80")["seen"] == "secondary"
    for id_ in ("fire-label", "thermal-break", "weep-way", "welded-corner"):
        assert rows[id_]["cells"]["may"].startswith("No."), id_


def test_the_year_is_asked_at_the_survey_and_read_at_the_drill(library: Library) -> None:
    assert "year of building" in plain(step(library, "survey-openings", "age")["do"])
    for caution in ("lead-paint", "asbestos"):
        first = plain(get(library, "caution", caution)["avoid"][0])
        assert first.startswith("Read"), caution
        assert "survey" in first


def test_a_centre_that_receives_numbers_is_given_the_names(library: Library) -> None:
    assert "number with its name" in plain(step(library, "hand-over", "centre-list")["result"])
    assert in_order(library, "take-over-system", "owner-communicator", "contract", "programming-code", "loops", "kept")


@pytest.mark.parametrize(("kind", "id_"), [(kind, id_) for kind, ids in UNSAFE.items() for id_ in ids])
def test_whoever_saved_an_unsafe_version_is_told(library: Library, kind: str, id_: str) -> None:
    record = get(library, kind, id_)
    assert 2 <= record["safety_correction"]["version"] <= record["version"]
