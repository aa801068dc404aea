"""Cells, check-ins and standby supply against the outside."""

from __future__ import annotations

from itertools import product

from tests.published.check import Check, Pairs, ask
from tests.published.outside import library

HOURS = 8766
"""Hours in a mean year of the calendar: 365.25 days."""

SENSOR_UA = 141.83
"""Printed as 0.142 mA; to five figures it is 120 uA for 15 min, 28 mA for 0.65 s and 31 mA for 0.05 s."""


def _printed_lives() -> Pairs:
    """Two printed lives: 2000 mAh at the sensor's current for 14,101 h; 230 mAh at 2.25 uA for 102,222 h."""
    for capacity, current, hours in ((2000, SENSOR_UA, 14101), (230, 2.25, 102222)):
        found = ask("cell-life", capacity_mah=capacity, average_ua=current, loss_percent_per_year=0)
        yield found["years"], hours / HOURS
        found = ask("cell-life", capacity_mah=capacity, average_ua=current)
        yield found["years_without_loss"], hours / HOURS


def _integrated_life() -> Pairs:
    """Charge that falls by the current drawn and by a share of what is left, followed until none is."""
    integrate = library("scipy.integrate")
    for capacity, current, loss in ((1500, 20, 1), (225, 10, 1), (1500, 8, 2), (3000, 40, 0.5)):
        a_year = current / 1000 * HOURS

        def fall(_: float, left: list[float], drawn: float = a_year, share: float = loss / 100) -> list[float]:
            return [-drawn - share * left[0]]

        def empty(_: float, left: list[float]) -> float:
            return left[0]

        empty.terminal = True  # type: ignore[attr-defined]
        found = integrate.solve_ivp(fall, (0, 100), [capacity], events=empty, rtol=1e-11, atol=1e-9)
        answer = ask("cell-life", capacity_mah=capacity, average_ua=current, loss_percent_per_year=loss)
        yield answer["years"], float(found.t_events[0][0])


def _printed_currents() -> Pairs:
    """A beacon printed at 24 uA (3 uA, and 7 mA for 3 ms of each second) and the sensor printed at 0.142 mA."""
    beacon = {"standby_ua": 3, "report_ma": 7, "report_ms": 1, "check_in_ms": 180, "check_in_min": 1}
    yield ask("cell-current", **beacon, events_per_day=0)["average_ua"], 24
    mean_ma = (28 * 650 + 31 * 50) / 700
    sensor = {"standby_ua": 120, "report_ma": mean_ma, "report_ms": 1, "check_in_ms": 700, "check_in_min": 15}
    yield ask("cell-current", **sensor, events_per_day=0)["average_ua"], 142


def _summed_current() -> Pairs:
    """The charge of a day, with Pint's units."""
    units = library("pint").UnitRegistry()
    for check_in, events, reports in product((5, 60, 240), (0, 12, 200), (1, 2)):
        given = {"standby_ua": 6, "report_ma": 18, "report_ms": 120, "check_in_ms": 40, "check_in_min": check_in}
        day, current = units.Quantity(1, "day"), units.Quantity(18, "mA")
        sent = day / units.Quantity(check_in, "min") * units.Quantity(40, "ms")
        sent += events * reports * units.Quantity(120, "ms")
        whole = units.Quantity(6, "uA") * day + current * sent
        found = ask("cell-current", **given, events_per_day=events, reports_per_event=reports)
        yield found["average_ua"], float((whole / day).to("uA").magnitude)


WINDOWS = tuple(product((20, 65, 120), (4, 12, 24), (0.02, 0.1, 0.3)))
"""Minutes between check-ins, hours of the window, chance that one is lost."""


def _binomial() -> Pairs:
    stats = library("scipy.stats")
    for check_in, window, lost in WINDOWS:
        tries = window * 60 // check_in
        found = ask("missed-check-in", check_in_min=check_in, window_h=window, loss_probability=lost)
        yield found["tries_per_window"], tries
        yield found["chance_per_window"], float(stats.binom.pmf(tries, tries, lost))


def _runs() -> Pairs:
    """How often a run of losses first fills the window: the steady state of a chain that counts the losses in a row."""
    import numpy as np

    for check_in, window, lost in WINDOWS:
        tries = window * 60 // check_in
        chain = np.zeros((tries + 2, tries + 2))
        chain[:, 0] = 1 - lost
        for row in range(tries + 2):
            chain[row, min(row + 1, tries + 1)] += lost
        system = np.vstack([chain.T - np.eye(tries + 2), np.ones(tries + 2)])
        steady, *_ = np.linalg.lstsq(system, np.append(np.zeros(tries + 2), 1), rcond=None)
        troubles = steady[tries] * HOURS * 60 / check_in
        if troubles < 1e-6:
            continue  # beyond the rounding of the linear system
        found = ask("missed-check-in", check_in_min=check_in, window_h=window, loss_probability=lost, devices=3)
        yield found["false_troubles_per_year"], 3 * float(troubles)


def _quiz() -> Pairs:
    """A trade quiz: 0.5264 A for 24 h and 3.6082 A for 15 min, a fifth more: 13.54 and 16.24 Ah, next size 17."""
    found = ask("standby-battery", standby_a=0.5264, alarm_a=3.6082, standby_h=24, alarm_min=15, margin=1.2)
    yield found["ah"], 13.54
    yield found["with_margin_ah"], 16.24
    yield found["next_size_ah"], 17


def _four_fifths() -> Pairs:
    """A margin of 1.25 is the same as filling the battery to four fifths."""
    for standby, hours in product((0.05, 0.12, 0.6), (4, 12, 24, 60)):
        found = ask("standby-battery", standby_a=standby, alarm_a=0.5, standby_h=hours, alarm_min=15)
        yield found["with_margin_ah"] * 0.8, found["ah"]


def _charge() -> Pairs:
    units = library("pint").UnitRegistry()
    for standby, hours in product((0.05, 0.12, 0.6), (4, 12, 24, 60)):
        found = ask("standby-battery", standby_a=standby, alarm_a=0.5, standby_h=hours, alarm_min=15)
        charge = units.Quantity(standby, "A") * units.Quantity(hours, "hour")
        charge += units.Quantity(0.5, "A") * units.Quantity(15, "minute")
        yield found["ah"], float(charge.to("A*hour").magnitude)


CHECKS = (
    Check(
        "cell-life", "years", "two worked lives, on public pages on sensor cells", "published", _printed_lives, 0.001
    ),
    Check("cell-life", "years", "SciPy, the charge integrated over time", "library", _integrated_life, 1e-8),
    Check(
        "cell-current",
        "average_ua",
        "two worked averages, on public pages on sensor cells",
        "published",
        _printed_currents,
        0.002,
    ),
    Check("cell-current", "average_ua", "Pint, the charge of a day", "library", _summed_current, 1e-12),
    Check("missed-check-in", "chance_per_window", "SciPy, the binomial distribution", "library", _binomial, 1e-9),
    Check(
        "missed-check-in",
        "false_troubles_per_year",
        "steady state of a Markov chain of losses in a row, solved by NumPy",
        "law",
        _runs,
        1e-6,
    ),
    Check("standby-battery", "with_margin_ah", "a battery sizing quiz in the trade press", "published", _quiz, 0.001),
    Check("standby-battery", "with_margin_ah", "NFPA 72 of 2022: a margin of 1.25", "published", _four_fifths, 1e-12),
    Check("standby-battery", "ah", "Pint, the charge", "library", _charge, 1e-12),
)
