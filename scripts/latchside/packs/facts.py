"""What the survey says about a site and an opening, as pairs of a name and a value in words."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from latchside.figures.one_system import amount_in
from latchside.messages import messages
from latchside.packs import words
from latchside.planning.figures_for.context import NORTH_AMERICA
from latchside.planning.plan import OpeningPlan, Plan
from latchside.planning.zones import contact_names

message = messages(__name__)

Vocabulary = Callable[[str, str], str]
"""What a reader sees for a word of a vocabulary: its name, and the word."""


def site_facts(plan: Plan, vocabulary: Vocabulary) -> Iterator[tuple[str, str]]:
    """What the survey says about the site, with what it leaves out said too."""
    site, unit = plan.survey.site, plan.survey.control_unit
    yield message("surveyed"), words.day(plan.survey.surveyed) if plan.survey.surveyed else message("no-date")
    yield message("planned-for"), words.day(plan.on)
    yield message("fitted"), message("fitted-line")
    yield message("region"), _word(vocabulary, "region", site.region)
    yield message("built"), words.known(site.year_built)
    yield message("building"), _word(vocabulary, "building", site.building)
    yield message("listed"), words.yes_no(site.listed)
    yield message("consent"), _word(vocabulary, "consent", site.consent)
    yield message("occupied"), words.yes_no(site.occupied)
    yield message("monitored"), words.yes_no(site.monitored)
    yield message("key-arranged"), words.yes_no(site.keyholder_arranged)
    if site.grade or site.region not in NORTH_AMERICA:  # no grade is asked for there
        yield message("grade"), _word(vocabulary, "grade", site.grade)
    if site.insurer:
        yield message("insurer"), site.insurer
    yield message("panel-owner"), _word(vocabulary, "panel-owner", unit.owner)
    yield message("installer-code"), words.yes_no(unit.installer_access)
    yield message("wired-positions"), words.known(unit.wired_positions)
    yield message("radio-positions"), words.known(unit.radio_positions)
    yield message("zones-in-use"), ", ".join(unit.zones_in_use) or message("no-zones-named")
    yield message("library"), message("version", version=plan.library)


def opening_facts(one: OpeningPlan, vocabulary: Vocabulary, *, imperial: bool) -> Iterator[tuple[str, str]]:
    """What the survey says about an opening; lengths in the units of its region."""
    opening = one.opening
    yield message("where"), ", ".join(filter(None, (opening.place, opening.side)))
    yield message("kind"), vocabulary("opening", opening.kind)
    yield message("use"), _word(vocabulary, "use", opening.use)
    yield message("fire-rated"), words.yes_no(opening.fire_rated)
    yield message("escape"), words.yes_no(opening.escape)
    materials = (opening.leaf_material, opening.frame_material)
    yield message("leaf-and-frame"), ", ".join(_word(vocabulary, "leaf-material", word) for word in materials)
    measured = {"gap": opening.gap_mm, "play": opening.play_mm, "step": opening.step_mm}
    lengths = (
        message(name, length=amount_in(mm, "mm", imperial=imperial)) for name, mm in measured.items() if mm is not None
    )
    yield message("measured"), ", ".join(lengths) or words.known(None)
    if one.contacts > 1:
        yield message("contacts"), f"{one.contacts}: {', '.join(contact_names(one))}"
    if one.choice.shared and one.choice.moved:
        yield message("one-zone"), one.choice.moved
    if opening.powered:
        yield message("powered"), words.yes_no(opening.powered)
    if opening.hardware:
        fitted = (vocabulary("door-hardware", one) for one in opening.hardware)
        yield message("hardware"), ", ".join(fitted)
    if opening.notes:
        yield message("survey-note"), opening.notes


def _word(vocabulary: Vocabulary, name: str, word: str | None) -> str:
    return words.known(vocabulary(name, word) if word else None)
