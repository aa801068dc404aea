"""The distances of a contact as it is mounted: at the worst end of its tolerance, with its magnet warm or cold."""

from __future__ import annotations

from latchside.figures.for_device.worked import Ratings

DRIFT_PERCENT = 5.0
"""Change of make and break distance with temperature where a device states none: more than ferrite has indoors."""


def drift(ratings: Ratings) -> float:
    """The change of make and break distance with temperature, as a share."""
    return (ratings.most("temperature-drift", "%") if "temperature-drift" in ratings else DRIFT_PERCENT) / 100


def sure(ratings: Ratings, name: str, unit: str = "mm") -> float:
    """The least that a distance is sure to be: the low end of its tolerance, the magnet warm."""
    return exact(ratings.floor(name, unit) * (1 - drift(ratings)))


def most(ratings: Ratings, name: str, unit: str = "mm") -> float:
    """The most that a distance may be: the high end of its tolerance, the magnet cold."""
    return exact(ratings.limit(name, unit) * (1 + drift(ratings)))


def exact(value: float) -> float:
    """Without the last bits that a product leaves behind."""
    return float(f"{value:.12g}")
