"""The best order of remedies where some have to wait for others.

A cause may name causes `after` which its remedy comes: a keep is repaired before a magnet is moved. Remedies that
wait for none are best by probability over minutes. Those that hang together by `after` are ordered by trying all
their orders (by dynamic programming over what is left of them); each such order falls into blocks, of falling
probability over minutes, that nothing is gained by parting; and the blocks of all are then done by probability over
minutes (Sidney 1975, Lawler 1978).

A remedy that waits for a cause which cannot be repaired here is left out: it cannot be done either.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

SAME = 1e-9
"""Orders that differ by less, for each unit of weight, are a tie, which the record's own order decides."""


def bits(mask: int) -> Iterator[int]:
    """The numbers of the bits set, lowest first."""
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low


def rate(weight: float, minutes: float) -> float:
    """Probability over minutes, to twelve digits, so that equal rates are equal and the record's order decides."""
    return float(f"{weight / minutes:.12g}") if minutes else float("inf")


def unblocked(mendable: int, left: int, after: Sequence[int]) -> int:
    """Of the causes that can be repaired here, those that do not wait for one left that cannot."""
    while True:
        kept = sum(1 << i for i in bits(mendable) if not after[i] & left & ~mendable)
        if kept == mendable:
            return kept
        mendable = kept


def groups(causes: int, after: Sequence[int]) -> Iterator[int]:
    """Causes that hang together by waiting for each other, each group as a mask."""
    while causes:
        group, grown = 0, causes & -causes
        while grown != group:
            group = grown
            for i in bits(causes):
                if group >> i & 1:
                    grown |= after[i] & causes
                elif after[i] & group:
                    grown |= 1 << i
        yield group
        causes &= ~group


def in_turn(causes: int, weights: Sequence[float], minutes: Sequence[float], after: Sequence[int]) -> list[int]:
    """The causes in the order in which repairing them costs least."""
    if not any(after[i] & causes for i in bits(causes)):
        return sorted(bits(causes), key=lambda i: -rate(weights[i], minutes[i]))
    blocks: list[tuple[float, list[int]]] = []
    for group in groups(causes, after):
        blocks += _blocks(_Group(weights, minutes, after).order(group), weights, minutes)
    return [i for _, block in sorted(blocks, key=lambda one: -one[0]) for i in block]


class _Group:
    """The best order of causes that hang together."""

    def __init__(self, weights: Sequence[float], minutes: Sequence[float], after: Sequence[int]) -> None:
        self.weights, self.minutes, self.after = weights, minutes, after
        self._best: dict[int, tuple[float, int]] = {0: (0.0, -1)}

    def order(self, rest: int) -> list[int]:
        """The order, first to last."""
        order = []
        while rest and (first := self._find(rest)[1]) >= 0:
            order.append(first)
            rest &= ~(1 << first)
        return order

    def _find(self, rest: int) -> tuple[float, int]:
        known = self._best.get(rest)
        if known is None:
            total = sum(self.weights[i] for i in bits(rest))
            least, first = float("inf"), -1
            for i in bits(rest):
                if not self.after[i] & rest:
                    cost = self.minutes[i] * total + self._find(rest & ~(1 << i))[0]
                    if cost < least - SAME * total:
                        least, first = cost, i
            known = self._best[rest] = (least, first)
        return known


def _blocks(order: list[int], weights: Sequence[float], minutes: Sequence[float]) -> Iterator[tuple[float, list[int]]]:
    """An order in blocks: each the longest beginning of what is left that has the highest rate."""
    while order:
        weight = spent = best = 0.0
        length = 1
        for count, i in enumerate(order, 1):
            weight, spent = weight + weights[i], spent + minutes[i]
            here = rate(weight, spent)
            if count == 1 or here >= best:
                best, length = here, count
        yield best, order[:length]
        order = order[length:]
