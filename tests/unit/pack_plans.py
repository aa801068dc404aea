"""A plan made by hand, for tests of what is made from a plan."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from latchside.planning.plan import (
    Caution,
    Choice,
    Day,
    Expected,
    Fixing,
    Item,
    Line,
    OpeningPlan,
    PassedOver,
    Plan,
    Problem,
    Question,
    Service,
    Stage,
    Zone,
)
from latchside.surveys.survey import ControlUnit, JobRules, Opening, Override, Site, Survey, Wall

ON = date(2026, 3, 9)

FRONT = Opening(
    "front-door", "Shop", "hinged-door", side="street", fire_rated=False, play_mm=1.5, leaf_material="wood",
    gap_mm=4, use="entry-route", height_m=2.1, distance_m=6, walls=(Wall("brick", 100), Wall("glass")), cable=True,
    cable_length_m=11.5, notes="Glazed above the lock rail.",
)  # fmt: skip
NO_DRILL = Override("surface-contact", "The sashes are new and may not be drilled.")
SASH = Opening(
    "bedroom-sash", "Bedroom", "double-hung", side="rear", upper_sash=True, leaf_material="wood", override=NO_DRILL
)
HATCH = Opening("cellar-hatch", "Cellar", "hatch", fire_rated=None)
SURVEY = Survey(
    "elm-corner", "Elm Corner", (FRONT, SASH, HATCH), invented=True, summary="A shop and a flat.", surveyed=ON,
    site=Site("united-kingdom", 1931, occupied=True, monitored=True, notes="Parking in the yard."),
    control_unit=ControlUnit(
        frequency_mhz=868.3, wired_positions=2, radio_positions=1, zones_in_use=("Hall",), supply_v=12.0,
        pull_up_ohm=2200, layout="series", end_of_line_ohm=2200, standby_ma=120, alarm_ma=600, chime=True,
    ),
    rules=JobRules(technicians=2),
)  # fmt: skip

GAP = Line("gap", "4\u00a0mm (0.16\u00a0in)", "good", "Half the reach and less: it closes with room.", "reed-gap",
           {"gap": 4, "steel": "none"})  # fmt: skip
RADIO = Line("margin", "7 to 19\u00a0dB", "test on site", "Margin is there at best.", "radio-margin",
             {"distance": 9.5}, ("One brick wall of 100\u00a0mm, because nobody counted them.",))  # fmt: skip
STANDBY = Line("standby", "4.2\u00a0Ah", "none", "For a day without mains.", "standby-battery", {"load": 120})

OPENINGS = (
    OpeningPlan(
        FRONT, "Shop street door",
        Choice("recessed-contact", ("Nothing stands in sight.", "A cable is there."), ("It is opened often.",), (
            PassedOver("surface-contact", ("A cable is there already.",), False),
            PassedOver("wired-input-transmitter", ("No radio is wanted where a cable is.",), True))),
        1, 1, None,
        Fixing("Top of the frame, latch side", "Top edge of the leaf", "None", "2.1\u00a0m above the floor", "Glue"),
        (GAP,),
        (Expected("loop-shut", "Loop, leaf shut", "kohm", 2.09, 2.31, "2.2\u00a0kΩ ±5\u00a0%"),
         Expected("loop-open", "Loop, leaf open", "Mohm", 1, None, "1\u00a0MΩ or more"),
         Expected("fit-gap", "Gap, leaf shut", "mm", 2, 6, "2 to 6\u00a0mm")),
        ("ladders", "mains-wiring"),
        (Stage("fix", "front-door", "Fit the recessed contact", 40, ("fix-recessed-contact",)),)),
    OpeningPlan(
        SASH, "Bedroom rear sash window",
        Choice("surface-contact", ("Chosen by the lead.",), (), (
            PassedOver("recessed-contact", ("No cable ends there.",), False),), NO_DRILL.reason),
        2, 2, "reed", None, (RADIO,),
        (Expected("radio-margin", "Radio margin", "dB", 10, None, "10\u00a0dB or more"),),
        ("lithium-cells", "glass"), (Stage("fix", "bedroom-sash", "Fit two surface contacts", 35, ()),)),
    OpeningPlan(HATCH, "Cellar hatch", Choice(None, (), (), ()), 0, 0, None, None, (), (), (), ()),
)  # fmt: skip

PLAN = Plan(
    SURVEY, ON, "0.1.0", OPENINGS,
    (Question("cellar-hatch", "fire_rated", "Is the hatch fire-rated?", "A fire-rated leaf is never drilled."),
     Question("site", "keyholder_arranged", "Who opens on the day?", "Somebody with a key is needed.")),
    (Problem("control-unit", "too-few-positions", "2 radio contacts, 1 radio position", "Add a receiver."),),
    (Zone("W1", "wired", "Shop street door", "front-door", "recessed-contact", "loop", "delayed", True, True,
          "loop watched by its resistor", ("People come in here.",)),
     Zone("R1", "radio", "Bedroom rear sash window", "bedroom-sash", "surface-contact", "reed", "instant", True, False,
          "heard within twelve hours", ("Nobody comes in here.",)),
     Zone("R1", "radio", "Bedroom rear sash window tamper", "bedroom-sash", "surface-contact", "tamper", "always-on",
          True, False, "heard within twelve hours", ("A cover is opened to do harm.",))),
    (STANDBY,),
    (Item("part", "Recessed contact", 1, 1, "", "Shop street door", "device/recessed-contact"),
     Item("consumable", "Cable, four conductors", 12.5, 2, "m", "Shop street door"),
     Item("tool", "Drill", 1, 0, "", "Fixing", "tool/drill")),
    (Stage("prepare", "site", "Go on test", 15, ("arrive-and-go-on-test",)),
     Stage("fix", "front-door", "Fit the recessed contact", 40, ("fix-recessed-contact",)),
     Stage("fix", "bedroom-sash", "Fit two surface contacts", 35, ()),
     Stage("hand-over", "site", "Explain and hand over", 30, ("hand-over",))),
    (Service(date(2027, 3, 9), "site", "Yearly service"),
     Service(date(2030, 9, 1), "bedroom-sash", "Change the cells, before they report low")),
    (Caution("lead-paint", ("site",), "Built in 1931."), Caution("ladders", ("front-door",), "Work at 2.1\u00a0m.")),
    (Day(1, ("front-door", "bedroom-sash"), 120, "Shop street door and Bedroom rear sash window"),),
)  # fmt: skip
"""A job with something of everything: an override, an opening without a device, questions and a problem."""


def hostile(text: str) -> Plan:
    """The plan with a text in every place that a survey can put one."""
    first = replace(FRONT, place=text, side=text, spoken=text, notes=text)
    opening = replace(
        OPENINGS[0], opening=first, spoken=text,
        choice=replace(OPENINGS[0].choice, overridden=text, reasons=(text,), against=(text,)),
    )  # fmt: skip
    unit = replace(SURVEY.control_unit, zones_in_use=(text,))
    survey = replace(
        SURVEY, name=text, summary=text, openings=(first, SASH, HATCH), control_unit=unit,
        site=replace(SURVEY.site, notes=text),
    )  # fmt: skip
    return replace(
        PLAN, survey=survey, openings=(opening, *OPENINGS[1:]),
        zones=tuple(replace(zone, spoken=text, reasons=(text,)) for zone in PLAN.zones),
        items=(replace(PLAN.items[0], used_for=text), *PLAN.items[1:]),
        work=(replace(PLAN.work[0], words=text), *PLAN.work[1:]),
        days=(replace(PLAN.days[0], words=text),),
        service=(Service(ON, "front-door", text), Service(ON, "site", text)),
        questions=(Question("front-door", "gap", text, text),), problems=(Problem("site", "double-name", text, text),),
        cautions=(Caution("ladders", ("front-door",), text),),
    )  # fmt: skip
