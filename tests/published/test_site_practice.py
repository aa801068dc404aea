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

IN_THE_PANEL = {
    "comes-and-goes-in-wind": ("shake-the-loop",),
    "opens-when-machines-run": ("loop-value",),
    "reads-high": ("tug-wires", "meter-loop-shut", "bridge-contact"),
    "reads-high-when-wet-or-warm": ("flex-cable", "warm-each"),
    "reads-low": ("meter-wires-off", "swap-leads", "lift-contact-end"),
    "reads-short": ("look-at-ends", "meter-leaf-open", "lift-contact-end"),
    "several-contacts-one-zone": ("loop-at-its-end",),
    "shows-shut-when-open": ("look-in-the-cabinet",),
    "tamper-on-a-loop": ("meter-shut",),
    "tamper-will-not-clear": ("meter-pair",),
    "two-openings-swapped": ("label-on-the-cable",),
}
"""Checks whose hands, eyes or probes are in the cabinet of a panel, by fault, as read by a person."""

WAY_IN = "[[procedure/land-on-terminals#shared-life-safety|the power off]]"

UNSAFE = {
    "procedure": (
        "prepare-at-yard",
        "arrive-and-go-on-test",
        "land-on-terminals",
        "remove-device",
        "enrol-wired-zone",
    ),
    "caution": ("monitored-site", "mains-wiring"),
    "fault": (*IN_THE_PANEL, "dead-after-pushed-home"),
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


@pytest.mark.parametrize(
    ("fault", "id_"),
    [
        (fault, id_)
        for fault, ids in {**IN_THE_PANEL, "shows-open-when-shut": ("loop-at-its-end",)}.items()
        for id_ in ids
    ],
)
def test_a_check_in_the_cabinet_is_made_with_the_power_off(library: Library, fault: str, id_: str) -> None:
    """Common practice: mains warned of first, the power-down linked, its time counted, and the power restored."""
    record = get(library, "fault", fault)
    one = next(one for one in record["checks"] if one["id"] == id_)
    assert "mains-wiring" in {*record.listed("cautions"), *one.get("cautions", ())}
    assert one["do"].startswith(f"With {WAY_IN}, ")
    assert "power-off" in one["needs"]
    assert "restore the power" in one["restore"].lower()


def test_a_repair_in_the_cabinet_is_made_with_the_power_off(library: Library) -> None:
    """Common practice. Terminals may be those of a panel: a wire landed again, a link or a resistor left there."""
    in_the_panel = {
        "comes-and-goes-in-wind": ("joint-loose",),
        "opens-when-machines-run": ("loose-joint-shaken",),
        "reads-high": ("loose-terminal", "doubled-resistor"),
        "reads-high-when-wet-or-warm": ("damp-terminal",),
        "reads-low": ("second-resistor",),
        "reads-short": ("strands-bridging",),
        "several-contacts-one-zone": ("terminal-loose",),
        "shows-shut-when-open": ("jumper-left", "cable-shorted"),
        "tamper-on-a-loop": ("core-cut",),
        "tamper-will-not-clear": ("wire-out",),
        "two-openings-swapped": ("conductors-crossed",),
    }
    for fault, ids in in_the_panel.items():
        record = get(library, "fault", fault)
        for cause in record["causes"]:
            if cause["id"] in ids:
                warned = {*record.listed("cautions"), *cause["remedy"].get("cautions", ())}
                assert "mains-wiring" in warned, (fault, cause["id"])
                assert WAY_IN in cause["remedy"]["do"][0], (fault, cause["id"])


def test_nothing_is_tapped_in_a_live_panel(library: Library) -> None:
    """Common practice: a zone is watched only with the power on, so what is tapped meanwhile lies outside."""
    tapped = next(
        one for one in get(library, "fault", "opens-when-machines-run")["checks"] if one["id"] == "tap-the-run"
    )
    assert "outside the panel" in tapped["do"]


@pytest.mark.parametrize("fault", ["comes-and-goes-in-wind", "shows-shut-when-open", "two-openings-swapped"])
def test_a_radio_contact_is_looked_at_with_the_panel_closed(library: Library, fault: str) -> None:
    """Nothing of a sensor that reports by radio ends in the panel."""
    for one in get(library, "fault", fault)["checks"]:
        if "surface-contact" in one.get("only", ("surface-contact",)):
            assert "power-off" not in one["needs"], one["id"]


def test_a_zone_is_tried_only_below_a_whole_shroud(library: Library) -> None:
    """Common practice: cut and short show only with the panel live, so low-voltage terminals alone, with one hand."""
    enrol = get(library, "procedure", "enrol-wired-zone")
    before = next(plain(text) for text in enrol["before"] if "shroud" in text)
    assert "standby battery" not in before
    assert "stop" in before.lower()
    stop = next(one for one in enrol["if_it_fails"] if "shroud" in one["when"])
    assert stop["stop"]
    assert all(word in stop["do"] for word in ("Stop", "licensed", "qualified"))
    for id_ in ("lift-wire", "land-wire", "bridge-terminals", "take-link-off"):
        assert "one hand" in step(library, "enrol-wired-zone", id_)["do"]
    assert "low-voltage" in step(library, "enrol-wired-zone", "one-hand")["result"]
    assert "mains-wiring" in step(library, "enrol-wired-zone", "one-hand")["cautions"]
    assert in_order(library, "enrol-wired-zone", "one-hand", "lift-wire", "bridge-terminals", "take-link-off")


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
