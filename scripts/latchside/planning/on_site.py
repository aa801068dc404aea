"""Work of the site beside its openings: what begins the job, and what begins and ends each day.

The radio walk test comes before any pad or screw, with one device carried to every place: a place that is not heard is
found while nothing is fixed. Each day ends with everything proved that is live that night, the zones that were in use
before among it, and off test. Who leaves says which zones are live. A zone that follows an entry door is omitted until
that door is proved: without its delay, whoever comes in at night sets off the alarm.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from latchside.messages import Message, listed, messages
from latchside.planning.at_opening import AtOpening
from latchside.planning.clock import Clock, stage_of
from latchside.planning.days import Laid
from latchside.planning.plan import Day, Stage
from latchside.planning.times import CHECK_IN, RESPONSE, fixed

message = messages(__name__)
ARRIVE, LEAVE, HAND_OVER = "arrive-and-go-on-test", "go-off-test", "hand-over"
TAKE_OVER = "take-over-system"
"""Done once, before anything is changed, where the system was another firm's or nobody has its code."""
LAND, TRY_RADIO, PROVE = "land-on-terminals", "try-radio-margin", "prove-opening"
AFTER_LANDING = ("enrol", "set-up", "prove")
"""Stages of a loop to the panel that come after it is landed; fixing, metering and the rest come before."""
ENTRY, FOLLOWS = "entry-route", "on-route"


@dataclass(frozen=True)
class Site:
    """What the site asks of the work: a take-over, the zones in use by their names, and whether a centre listens.

    `notes` are what the survey says of the site in its own words.
    """

    taken_over: bool = False
    in_use: tuple[str, ...] = ()
    monitored: bool | None = False
    notes: str = ""


class SiteClock(Clock):
    """Makes the pieces of work of the site."""

    def first(self, site: Site, order: Sequence[AtOpening], unheard: Collection[str]) -> Iterator[Stage]:
        """What is done once on the first day, before any opening: take-over and radio walk test."""
        if site.taken_over:
            words = message("take-over", procedure=self.name(TAKE_OVER))
            yield stage_of("prepare", "control-unit", words, self.of(TAKE_OVER), (TAKE_OVER,))
        radio = [part for part in order if not part.wired]
        if radio:
            names = [part.spoken for part in radio if part.opening.id in unheard]
            id_ = "walk-test-unheard" if names else "walk-test"
            words = message(id_, places=len(radio), names=listed(names, "unit"))
            yield stage_of("try", "site", words, fixed(len(radio) * self._house["walk-test-minutes"]), (TRY_RADIO,))

    def closing(self, site: Site, *, radio: bool) -> tuple[tuple[Stage, ...], tuple[Stage, ...]]:
        """What is done once, after the last opening: before the response is proved, and after it.

        The wait for check-ins runs beside the work that follows.
        """
        before = [stage_of("prove", "site", self.procedures([CHECK_IN]), self.of(CHECK_IN), (CHECK_IN,))]
        span, words = self.of(HAND_OVER), self.procedures([HAND_OVER])
        beside = sum(stage.minutes for stage in self.proving(site)) + span.usual
        left = self._times.waiting(CHECK_IN) - beside if radio else 0.0
        if left > 0:
            span, words = span + fixed(left), message("hand-over-waits", procedure=self.name(HAND_OVER))
        return tuple(before if radio else ()), (stage_of("hand-over", "site", words, span, (HAND_OVER,)),)

    def proving(self, site: Site) -> Iterator[Stage]:
        """What is proved at the end of each day: the zones that were in use before, and the response."""
        if site.in_use:
            id_ = "prove-in-use" if site.monitored is False else "prove-in-use-at-centre"
            words = message(id_, names=listed(list(site.in_use), "unit"))
            span = fixed(len(site.in_use) * self._house["old-zone-minutes"])
            yield stage_of("prove", "control-unit", words, span, (PROVE,))
        yield stage_of("prove", "site", self.procedures([RESPONSE]), self.of(RESPONSE), (RESPONSE,))

    def day(
        self,
        day: Day,
        laid: Laid,
        of_opening: Mapping[str, tuple[Stage, ...]],
        order: Sequence[AtOpening],
        site: Site,
        first: Sequence[Stage],
    ) -> Iterator[Stage]:
        """The stages of one day; `first` is done on the first day."""
        loops = {part.opening.id: part.zones for part in order if part.wired}
        several = len(laid.days) > 1

        def on_day(words: Message) -> Message:
            return message("on-day", day=day.number, work=words) if several else words

        yield stage_of("prepare", "site", on_day(self._arriving(site)), self.of(ARRIVE), (ARRIVE,))
        if day is laid.days[0]:
            yield from first
        later: list[Stage] = []
        for id_ in day.openings:
            waits = [one for one in of_opening[id_] if id_ in loops and one.stage in AFTER_LANDING]
            yield from (one for one in of_opening[id_] if one not in waits)
            later += waits
        if later:
            count = sum(loops.get(id_, 0) for id_ in day.openings)
            words = message("land", procedure=self.name(LAND), loops=count)
            span = self.of(LAND).scaled(count) + fixed(self._house["panel-minutes"])
            yield stage_of("wire", "control-unit", on_day(words), span, (LAND,))
            yield from later
        last = day is laid.days[-1]
        before, after = self.closing(site, radio=any(not part.wired for part in order)) if last else ((), ())
        yield from before
        yield from self.proving(site)
        yield from after
        left = message("leave", procedure=self._left(site))
        words = self._leaving(day, laid, order, site) if several else left
        yield stage_of("hand-over", "site", on_day(words), self.of(LEAVE), (LEAVE,))

    def _arriving(self, site: Site) -> Message:
        """Arriving, with what the survey notes of the site, and the zones in use that go on test by name."""
        name = message("arrive-unmonitored") if site.monitored is False else self.name(ARRIVE)
        if not site.in_use or site.monitored is False:
            id_ = "arrive-notes" if site.notes else "arrive"
            return message(id_, procedure=name, notes=site.notes)
        names = listed(list(site.in_use), "unit")
        if site.notes:
            return message("arrive-zones-notes", procedure=name, names=names, notes=site.notes)
        return message("arrive-zones", procedure=name, names=names)

    def _left(self, site: Site) -> str:
        return message("leave-unmonitored") if site.monitored is False else self.name(LEAVE)

    def _leaving(self, day: Day, laid: Laid, order: Sequence[AtOpening], site: Site) -> Message:
        """Leaving a day, with the zones of the job that are live that night and those that are omitted."""
        proved = {id_ for one in laid.days[: day.number] for id_ in one.openings}
        entries = {part.opening.id for part in order if part.opening.use == ENTRY}
        done = [part for part in order if part.opening.id in proved]
        omitted = [part for part in done if part.opening.use == FOLLOWS and not entries <= proved]
        live = listed([part.spoken for part in done if part not in omitted], "unit")
        name = self._left(site)
        if omitted:
            names = listed([part.spoken for part in omitted], "unit")
            return message("leave-omitted", procedure=name, omitted=names, live=live or message("none"))
        if len(done) == len(order):
            return message("leave-all", procedure=name)
        return message("leave-live", procedure=name, live=live or message("none"))
