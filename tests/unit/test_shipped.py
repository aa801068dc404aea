"""The shipped library: clean, of the size it promises, and true to the facts of the trade.

Facts without a source beside them are common practice. Only those are tested that a change of a record could break.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

import pytest

from latchside.figures.units import readable
from latchside.figures.words import in_words, limits
from latchside.kinds import CARDS, KINDS
from latchside.library import Library, Record
from latchside.library.compiled import for_device, groups, own_steps
from latchside.library.quantity import quantity
from latchside.library.text import plain
from latchside.library.traits import traits
from latchside.project import Checked
from latchside.root import ROOT

Step = Mapping[str, Any]
DEVICES = ("surface-contact", "recessed-contact", "wired-input-transmitter")


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def get(library: Library, kind: str, id_: str) -> Record:
    found = library.find(kind, id_)
    assert found, f"{kind}/{id_} is not there"
    return found


def texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, Mapping):
        for below in value.values():
            yield from texts(below)
    elif isinstance(value, tuple):
        for below in value:
            yield from texts(below)


def words(value: Any) -> str:
    """Every text of a value, without references, in small letters."""
    return " ".join(plain(text) for text in texts(value)).lower()


def steps_of(library: Library, procedure: str) -> list[Step]:
    return [step for _, step in own_steps(get(library, "procedure", procedure))]


def step(library: Library, procedure: str, *said: str) -> Step:
    """The step whose command holds all these words."""
    for one in steps_of(library, procedure):
        if all(word in plain(one["do"]).lower() for word in said):
            return one
    raise AssertionError(f"{procedure} has no step that says {said}")


def place(library: Library, procedure: str, *said: str) -> int:
    """How far down the procedure that step stands."""
    return steps_of(library, procedure).index(step(library, procedure, *said))


def radio(library: Library) -> list[Record]:
    return [device for device in library.of("device") if traits(device).link == "radio"]


def on_a_loop(library: Library) -> list[Record]:
    return [device for device in library.of("device") if traits(device).has_terminals]


def value(device: Record, name: str) -> tuple[float | None, float | None, str]:
    """Lowest and highest of a device value, and its unit."""
    stated = quantity(device["values"][name])
    if stated.one_of:
        return min(stated.one_of), max(stated.one_of), stated.unit
    return (*limits(stated), stated.unit)


def low(device: Record, name: str) -> float:
    found = value(device, name)[0]
    assert found is not None
    return found


def high(device: Record, name: str) -> float:
    found = value(device, name)[1]
    assert found is not None
    return found


# -- the whole -----------------------------------------------------------------------------------------------


def test_nothing_is_found(shipped: Checked) -> None:
    assert [f"{one.file}:{one.place.line} {one.code}: {one.found}" for one in shipped.findings] == []


@pytest.mark.parametrize(
    ("kind", "least"),
    [
        ("device", 3), ("checklist", 14), ("fault", 24), ("term", 70), ("procedure", 25), ("caution", 15), ("tool", 15),
        ("source", 25), ("table", 6),
    ],
)  # fmt: skip
def test_enough_of_each_kind(kind: str, least: int, library: Library) -> None:
    assert len(library.of(kind)) >= least


def test_nothing_claims_a_review_or_trial_that_was_not(library: Library) -> None:
    """Until a real person has read or tried a record it says so; a date then goes with a name."""
    for record in library:
        review = record.get("review", {"by": "not yet", "on": "not yet", "trial": "not yet"})
        assert (review["by"] == "not yet") == (review["on"] == "not yet"), record.key
        if review["on"] != "not yet":
            assert re.fullmatch(r"\d{4}-\d{2}-\d{2}", review["on"]), record.key


def test_every_card_is_written() -> None:
    for card in CARDS:
        assert (ROOT / "content" / "cards" / f"{card}.md").is_file(), card


def test_every_kind_of_opening_is_placed_and_drawn(library: Library) -> None:
    kinds = library.schemas.words("opening")
    assert len(kinds) == 12
    card = (ROOT / "content" / "cards" / "placement.md").read_text("utf-8")
    for kind in kinds:
        assert f"opening-{kind}" in library.drawings
        assert f"{{: #opening-{kind} }}" in card, kind
        assert any(kind in device["openings"] for device in library.of("device")) or kind in card


def test_every_stated_figure_is_shown_as_stated(library: Library) -> None:
    """A band at 433.92 MHz is not one at 433.9 MHz: no figure is rounded by more than a tenth of its own tolerance."""
    rounded = []
    for record in library:
        for name, data in (record.get("values") or {}).items():
            stated = quantity(data)
            numbers = tuple(one for one in (stated.value, stated.low, stated.high, *stated.one_of) if one is not None)
            said = in_words(stated).partition("(")[0].replace(",", "").replace("\u2212", "-")
            shown = {float(one) for one in re.findall(r"-?\d+(?:\.\d+)?", said)}
            part = (stated.percent or 0) / 1000 or 1e-9
            for one in readable(numbers, stated.unit)[0] if "×" not in said else ():
                if not any(one == pytest.approx(other, rel=part) for other in shown):
                    rounded.append(f"{record.key} {name}: {one:g} as {said}")
    assert rounded == []


# -- devices -------------------------------------------------------------------------------------------------


def test_the_three_devices(library: Library) -> None:
    assert {device.id for device in library.of("device")} >= set(DEVICES)
    assert traits(get(library, "device", "recessed-contact")).wired
    assert {device.id for device in radio(library)} >= {"surface-contact", "wired-input-transmitter"}


def test_each_device_has_every_stage_of_the_job(library: Library) -> None:
    """In order, each with work or with a reason why there is none."""
    for device in library.of("device"):
        stages = device["procedures"]
        assert list(stages) == list(library.schemas.words("stage"))
        assert len(stages) == 15
        for stage, listed in stages.items():
            assert isinstance(listed, tuple) or len(listed["none"].split()) >= 5, f"{device.id} {stage}"
        without = [stage for stage, listed in stages.items() if not isinstance(listed, tuple)]
        # a wired contact is tried with tape before its leads are joined, and fixed before its loop is landed
        assert set(without) <= {"wire", "power", *(["try", "fix"] if traits(device).wired else [])}, device.id


def test_the_loop_reads_its_resistor(library: Library) -> None:
    """With the leaf shut a series loop reads the resistor, its tolerance and the leads, and no more."""
    for device in on_a_loop(library):
        resistor, loop = quantity(device["values"]["end-of-line"]), quantity(device["values"]["loop-shut"])
        assert resistor.unit == loop.unit == "ohm"
        if resistor.one_of:
            assert loop.one_of == resistor.one_of
        else:
            assert resistor.value
            assert loop.value == pytest.approx(resistor.value, rel=0.01)
        assert (loop.percent or 0) >= (resistor.percent or 0)


# Preferred values of the E12 series; source: IEC 60063. The multiples that end-of-line resistors have are among them.
E12 = (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82)


def test_end_of_line_resistors_can_be_bought(library: Library) -> None:
    for device in on_a_loop(library):
        stated = quantity(device["values"]["end-of-line"])
        for resistance in stated.one_of or (stated.value or 0,):
            digits = int(f"{resistance:.1e}".partition("e")[0].replace(".", ""))
            assert digits in E12, resistance


def test_the_cell(library: Library) -> None:
    for device in radio(library):
        assert low(device, "cell-low") < low(device, "cell-voltage")
        assert any(part["role"] == "cell" and "label" in part["note"].lower() for part in device["parts"])
        power = words(device["power"])
        assert "polarity" in power
        assert "resting voltage" in power or "at rest" in power  # proves little with a lithium cell
        assert {"lithium-cells", "swallowed-cells"} <= set(device["cautions"])
        # the average current it lives on empties the cell no sooner than its stated life, which is a ceiling
        hours = low(device, "cell-capacity") * 1000 / low(device, "standby-current")
        assert hours / 8766 > high(device, "cell-life")


def test_supervision_bridges_several_check_ins(library: Library) -> None:
    """One lost message is no trouble; twelve hours is a common window in homes."""
    for device in radio(library):
        check_in, window = device["values"]["check-in"], device["values"]["missed-window"]
        minutes = {"min": 1, "h": 60}
        assert window["value"] * minutes[window["unit"]] >= 3 * check_in["value"] * minutes[check_in["unit"]]
    home = get(library, "table", "check-in-windows")["values"]["home-window"]
    assert (home["value"], home["unit"]) == (12, "h")


def test_a_site_with_a_grade_is_held_to_its_times(library: Library) -> None:
    """What passes at grade 2 is what the table has, and the table tells what a device needs to keep it."""
    times = get(library, "formula", "missed-check-in")["values"]
    table = get(library, "table", "check-in-windows")["values"]
    steps = {one["id"]: one for stage in get(library, "procedure", "prove-check-in")["steps"] for one in stage["do"]}
    graded = {"read-graded": "window-at-grade", "read-setting": "age-at-setting"}
    assert {id_: steps[id_]["measure"]["expect"]["device_value"] for id_ in graded} == graded
    for device in radio(library):
        for name, time_ in (("window-at-grade", "grade-2-between"), ("age-at-setting", "grade-2-setting")):
            passed = device["values"][name]
            assert (passed["max"], passed["unit"]) == (times[time_]["value"], times[time_]["unit"])
    assert table["polled"]["value"] == times["grade-2-between"]["value"] / 3
    assert table["one-way"]["value"] == min(table["polled"]["value"], times["grade-2-setting"]["value"])
    for measure in (one["measure"] for one in steps.values() if "measure" in one):
        if measure["expect"].get("device_value") == "missed-window":
            assert "without a grade" in measure["what"]  # the twelve hours of a label pass nothing that has a grade


def test_a_report_is_metered_with_a_meter_that_is_fast_enough(library: Library) -> None:
    """A fifth of a second is over before an ordinary display or minimum-hold has taken a reading."""
    found = []
    for record in library:
        for path, text, _ in library.texts(record):
            measured: Any = record.data
            for key in path[:-1]:
                measured = measured[key]
            if path[-1] == "what" and measured.get("expect", {}).get("device_value") == "cell-voltage":
                found.append((record.id, f"{text} {words(record.data)}"))
    assert len(found) >= 6
    for id_, text in found:
        assert "fast minimum-hold" in text, id_


def test_reed_and_terminals_are_separate_inputs(library: Library) -> None:
    for device in radio(library):
        inputs = {one["kind"]: words(one["if_wrong"]) for one in device["inputs"]}
        if {"own-sensor", "wired-contact"} <= set(inputs):
            # the wrong one makes the zone ignore the opening: it shows one state and stays there
            assert "stays open" in inputs["own-sensor"]
            assert "stays open" in inputs["wired-contact"]
    read = step(library, "enrol-by-operating", "which input")
    assert "reed or terminals" in words(read)


def test_the_fitted_cover_closes_the_tamper(library: Library) -> None:
    for device in radio(library):
        tamper = words(device["tamper"])
        assert re.search(r"closed only (when|by)[^.]*cover", tamper), device.id
    assert "tamper" in words(step(library, "fit-cell", "press the cover"))


def test_the_surface_set(library: Library) -> None:
    device = get(library, "device", "surface-contact")
    assert {"sensor", "magnet", "spacer", "screw", "pad", "cell"} <= {part["role"] for part in device["parts"]}
    notes = {part["role"]: part.get("note", "").lower() for part in device["parts"]}
    assert "fixed part" in notes["sensor"]
    assert "moving part" in notes["magnet"]
    assert "mark" in words(device["how_it_works"])  # the reed lies along one side, and that side is marked


# -- procedures ----------------------------------------------------------------------------------------------


def measured(library: Library, device: Record) -> Iterator[tuple[str, Step]]:
    """Every step that is for a device, with the procedure it is followed in."""
    for listed in device["procedures"].values():
        for id_ in listed if isinstance(listed, tuple) else ():
            procedure = get(library, "procedure", id_)
            for group in groups(library, procedure, device.id):
                yield from ((id_, one) for one in group.steps)
            for section in ("prove", "close_up"):
                yield from ((id_, one) for one in for_device(procedure.listed(section), device.id))


def test_the_response_suits_the_opening(library: Library) -> None:
    """An entry door gets the delayed response, a window the instant one of the perimeter."""
    door = step(library, "set-up-zone", "entry door")
    assert "delayed" in words(door)
    assert "instant" not in words(door)
    window = step(library, "set-up-zone", "window", "response")
    assert "instant perimeter" in words(window)
    assert "delayed" not in words(window)


def test_the_zone_name_says_place_side_and_opening(library: Library) -> None:
    assert "place, side and opening" in words(step(library, "set-up-zone", "name the zone"))


def test_reporting_chime_and_supervision(library: Library) -> None:
    assert "monitored" in words(step(library, "set-up-zone", "reporting"))
    assert "only while the system is disarmed" in words(step(library, "set-up-zone", "chime"))
    supervision = step(library, "set-up-zone", "supervision")
    assert set(supervision["only"]) == {device.id for device in radio(library)}
    term = words(get(library, "term", "chime")["meaning"])
    assert "only while unset" in term


def test_a_radio_device_needs_a_position_that_takes_one(library: Library) -> None:
    procedure = get(library, "procedure", "enrol-by-operating")
    assert "position that takes a radio device" in words(procedure["before"])
    assert "serial" in words(step(library, "enrol-by-operating", "serial number"))
    assert place(library, "enrol-by-operating", "which input") > place(library, "enrol-by-operating", "start enrolling")
    assert step(library, "enrol-by-operating", "open the door or window")  # it is proved that the right input reports


def test_polarity_is_read_before_the_battery_goes_in(library: Library) -> None:
    assert place(library, "fit-cell", "battery type", "label") < place(library, "fit-cell", "plus and minus")
    assert place(library, "fit-cell", "plus and minus") < place(library, "fit-cell", "press the battery in")
    assert "does not prove" in words(step(library, "fit-cell", "meter the battery"))


@pytest.mark.parametrize("procedure", ["try-gap", "try-radio-margin"])
def test_tried_with_tape_before_drill_or_adhesive(procedure: str, library: Library) -> None:
    record = get(library, "procedure", procedure)
    assert record["stage"] == "try"
    assert "low-tack-tape" in record["tools"]
    assert not {"drill", "pilot-bit", "hole-bit"} & set(record["tools"])
    stages = list(library.schemas.words("stage"))
    assert stages.index("try") < stages.index("fix") < stages.index("prove")
    for device in library.of("device"):
        work = [one for listed in device["procedures"].values() if isinstance(listed, tuple) for one in listed]
        fixed = [work.index(one) for one in work if one.startswith(("drill-", "fix-"))]
        assert procedure not in work or work.index(procedure) < min(fixed), device.id


def test_a_recessed_contact_is_drilled_before_its_cable_is_joined(library: Library) -> None:
    """Gap taped, frame and leaf drilled, cable fished, joined, metered with a magnet there, home, metered: practice."""
    device = get(library, "device", "recessed-contact")
    done = [f"{procedure}/{one['id']}" for procedure, one in measured(library, device)]
    order = [
        "try-gap/tape-barrels", "drill-recessed-contact/widen", "drill-recessed-contact/drill-leaf", "run-cable/fish",
        "join-and-terminate/press", "join-and-terminate/shut-reading", "fix-recessed-contact/meter-before",
        "fix-recessed-contact/thumb-reed", "fix-recessed-contact/meter-shut", "fix-recessed-contact/meter-open",
    ]  # fmt: skip
    assert [one for one in done if one in order] == order


def test_radio_is_read_with_opening_and_metal_doors_closed(library: Library) -> None:
    doors = place(library, "try-radio-margin", "metal door", "closed")
    opening = place(library, "try-radio-margin", "close and latch the door or window")
    assert max(doors, opening) < place(library, "try-radio-margin", "read the margin", "closed door or window")
    assert "night" in words(step(library, "try-radio-margin", "metal door"))


def test_the_proof_has_two_ends(library: Library) -> None:
    """Quiet through all the play; shown open inside its limit; both distances measured and written."""
    play = step(library, "prove-opening", "push and pull", "all its play")
    assert "stays closed" in words(play["result"])
    slowly = place(library, "prove-opening", "open the door or window slowly")
    assert place(library, "prove-opening", "push and pull", "all its play") < slowly
    assert place(library, "prove-opening", "measure the play") < slowly
    trip = step(library, "prove-opening", "measure the opening")["measure"]
    limits = get(library, "table", "trip-limits")["values"]
    assert trip["expect"]["max"] == limits["trip-door"]["value"]
    assert "table/trip-limits" in trip["outside"]
    hand = step(library, "prove-opening", "flat hand")
    assert "target" in words(hand["note"])
    assert "measure" not in hand
    for said in ("measure the play", "measure the opening"):
        assert step(library, "prove-opening", said)["measure"]
    assert "both distances" in words(step(library, "prove-opening", "write both distances"))
    assert "closed with no further action" in words(get(library, "procedure", "prove-opening")["steps"])


def test_hinge_or_keep_is_repaired_before_a_magnet_is_moved(library: Library) -> None:
    outside = words(step(library, "prove-opening", "measure the play")["measure"]["outside"])
    assert "hinge, latch, keep or seal adjusted" in outside
    assert "leave the contact where it is" in outside
    assert "no trip: a loose latch" in outside  # harmless to the contact, and told all the same
    repair = step(library, "yearly-service", "hinge or keep has moved")
    assert "before any part is moved" in words(repair)
    assert place(library, "yearly-service", "hinge or keep has moved") < place(
        library, "yearly-service", "measure the play"
    )


def test_the_service_compares_with_the_distances_written_at_fitting(library: Library) -> None:
    for said in ("measure the play", "zone shows open"):
        what = words(step(library, "yearly-service", "measure", said)["measure"]["what"])
        assert "written at fitting" in what


def test_the_resistor_sits_at_the_far_contact(library: Library) -> None:
    term = words(get(library, "term", "end-of-line-resistor")["meaning"])
    assert "at the contact" in term
    assert "cabinet" in term
    cabinet = step(library, "land-on-terminals", "resistor", "in the cabinet")
    assert "remove it" in words(cabinet["do"])
    assert "resistor at the last" in words(step(library, "join-and-terminate", "several contacts"))


def test_work_starts_on_test_and_ends_off_test(library: Library) -> None:
    for device in library.of("device"):
        assert "arrive-and-go-on-test" in device["procedures"]["prepare"]
        assert device["procedures"]["hand-over"][-1] == "go-off-test"


def test_no_step_takes_a_multimeter_to_live_terminals(library: Library) -> None:
    """A loop is metered off its terminals, after its voltage was looked at."""
    volts = place(library, "meter-loop", "volt")
    for number, one in enumerate(steps_of(library, "meter-loop")):
        expect = one.get("measure", {}).get("expect", {})
        if expect.get("device_value", "").startswith("loop"):
            assert number > volts


# -- tables and terms ----------------------------------------------------------------------------------------


def test_a_single_series_resistor_cannot_tell_open_from_cut(library: Library) -> None:
    rows = {row["id"]: row["cells"] for row in get(library, "table", "meter-readings")["rows"]}
    assert rows["open"]["series"] == rows["cut"]["series"]
    assert rows["shut"]["series"] != rows["short"]["series"]  # but a short no longer passes for a shut leaf
    assert rows["shut"]["none"] == rows["short"]["none"]
    assert len({rows[state]["double"] for state in ("shut", "open", "short", "cut")}) == 4
    assert "cannot tell" in words(get(library, "term", "series-resistor")["meaning"])


def test_closed_and_open_are_said_twice(library: Library) -> None:
    """As the trade says it, by the leaf; and as a bare reed is named, by the magnet."""
    for id_ in ("normally-closed", "normally-open"):
        meaning = words(get(library, "term", id_)["meaning"])
        assert "door or window closed" in meaning
        assert "no magnet near" in meaning
        said = id_.removeprefix("normally-")
        assert f"{said} with the door or window closed" in meaning
        assert f"{said} with no magnet near" in meaning


def test_both_continents_words(library: Library) -> None:
    for id_, america, europe in (
        ("set", "armed", "set"),
        ("control-unit", "panel", "control and indicating equipment"),
    ):
        term = get(library, "term", id_)
        assert america in words(term["north_america"])
        assert europe in words(term["europe"])
    refused = {word.lower() for term in library.of("term") for word in term.listed("instead_of")}
    assert {"control unit", "hub", "installer", "engineer", "armed", "central station", "low cell"} <= refused
    assert not {"panel", "customer", "battery"} & refused


# -- checklists and faults -----------------------------------------------------------------------------------


def test_the_proving_checklist_holds_both_ends(library: Library) -> None:
    record = get(library, "checklist", "proving-each-opening")
    assert record["per"] == "opening"
    items = [item for point in record["points"] for item in point["items"]]
    order = [item["step"] for item in items]
    critical = {item["step"] for item in items if item.get("critical")}
    for one in ("push-pull", "measure-play", "open-slowly", "measure-trip"):
        assert f"prove-opening/{one}" in critical, one
    assert order.index("prove-opening/measure-play") < order.index("prove-opening/measure-trip")


def test_a_contact_that_shows_shut_when_open(library: Library) -> None:
    """Welded reed, a jumper left across, the wrong input in use, or another magnet near."""
    causes = {cause["id"]: words(cause) for cause in get(library, "fault", "shows-shut-when-open")["causes"]}
    assert {"reed-welded", "jumper-left", "wrong-input", "another-magnet"} <= set(causes)
    assert "catch" in causes["another-magnet"]
    assert get(library, "fault", "shows-shut-when-open")["cautions"][0] == "opening-unprotected"


def test_a_rest_after_a_report_is_known(library: Library) -> None:
    """It saves the cell and fools a walk test."""
    fault = get(library, "fault", "quiet-after-first-trip")
    assert "rest" in words(fault["first"])
    for procedure in library.of("procedure"):
        waits = [
            one["do"]
            for one in steps_of(library, procedure.id)
            if "rest time after a report" in plain(one["do"]).lower()
        ]
        assert all(do.startswith("If the instructions name a rest time") for do in waits), procedure.id
    for one in radio(library):
        assert "instructions" in one["values"]["rest-time"]["condition"]


def test_the_response_is_proved_once_with_the_building_empty(library: Library) -> None:
    """Common practice: people inside trip movement detectors first, and a part set proves no response."""
    assert not [one for one in steps_of(library, "prove-opening") if "set the" in plain(one["do"]).lower()]
    read = step(library, "prove-opening", "read response")
    assert "part set" in words(read["why"])
    empty = place(library, "prove-response", "every protected room")
    full = place(library, "prove-response", "set every zone")
    assert (
        empty < full < place(library, "prove-response", "final exit") < place(library, "prove-response", "entry route")
    )
    assert place(library, "prove-response", "entry route") < place(library, "prove-response", "instant zone")
    assert "every path" in words(step(library, "prove-response", "which signals"))
    for device in library.of("device"):
        assert device["procedures"]["prove"][-1] == "prove-response"
    assert get(library, "checklist", "proving-the-response")["per"] == "site"


def test_the_likely_cause_comes_first(library: Library) -> None:
    order = list(library.schemas.words("frequency"))
    for fault in library.of("fault"):
        frequencies = [order.index(cause["frequency"]) for cause in fault["causes"]]
        assert frequencies == sorted(frequencies), fault.id


def test_out_of_scope_is_passed_on(library: Library) -> None:
    """Mains work is for a licensed electrician; fire and life-safety equipment is somebody else's."""
    assert "licensed electrician" in words(get(library, "caution", "mains-wiring")["defer"])
    assert "out of scope" in words(get(library, "caution", "life-safety")["defer"])
    assert "come first" in words(get(library, "caution", "local-code")["defer"])
    assert get(library, "caution", "mains-wiring")["level"] in ("danger", "warning")
    assert KINDS["caution"].own_page
