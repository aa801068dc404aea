"""The areas in which a field on a grid is at or above a level, as closed outlines (marching squares)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

Spot = tuple[float, float]
Edge = tuple[int, int, int]
"""Row, column and direction (0 along the row, 1 up the column) of a side of a grid cell."""
_OUTSIDE = -1e9
"""Stands round the grid, so that an area at its edge is closed there."""


def areas(xs: Sequence[float], ys: Sequence[float], field: Sequence[Sequence[float]], level: float) -> list[list[Spot]]:
    """Outlines of the areas with `field[row][column] >= level`, in the order in which the grid is read.

    A row stands for one of `ys`, with a value for each of `xs`. An area that reaches the edge of the grid is closed
    along that edge. Between grid points the field is taken to run straight.
    """
    edge = [_OUTSIDE] * (len(xs) + 2)
    grid = [edge, *([_OUTSIDE, *(value - level for value in row), _OUTSIDE] for row in field), edge]
    across, up = [xs[0], *xs, xs[-1]], [ys[0], *ys, ys[-1]]
    following = {
        start: end
        for row in range(len(up) - 1)
        for column in range(len(across) - 1)
        for start, end in _segments(grid, row, column)
    }
    return [[_crossing(grid, across, up, edge) for edge in outline] for outline in _outlines(following)]


def _outlines(following: dict[Edge, Edge]) -> Iterator[list[Edge]]:
    while following:
        edge: Edge | None = next(iter(following))
        outline: list[Edge] = []
        while edge is not None and edge in following:
            outline.append(edge)
            edge = following.pop(edge, None)
        yield outline


def _segments(grid: list[list[float]], row: int, column: int) -> Iterator[tuple[Edge, Edge]]:
    """The pieces of outline in one cell, each from the side where it enters to the side where it leaves.

    Round the cell against the clock, a piece begins on a side that goes out of the area and ends on one that comes in.
    """
    corners = (grid[row][column], grid[row][column + 1], grid[row + 1][column + 1], grid[row + 1][column])
    inside = [value >= 0 for value in corners]
    if all(inside) or not any(inside):
        return
    edges: tuple[Edge, ...] = ((row, column, 0), (row, column + 1, 1), (row + 1, column, 0), (row, column, 1))
    way = 1 if sum(corners) >= 0 else -1
    for side in range(4):
        if inside[side] and not inside[(side + 1) % 4]:
            other = side
            while True:
                other = (other + way) % 4
                if not inside[other] and inside[(other + 1) % 4]:
                    break
            yield edges[side], edges[other]


def _crossing(grid: list[list[float]], across: list[float], up: list[float], edge: Edge) -> Spot:
    row, column, upward = edge
    near = grid[row][column]
    far = grid[row + 1][column] if upward else grid[row][column + 1]
    share = near / (near - far)
    if upward:
        return across[column], up[row] + share * (up[row + 1] - up[row])
    return across[column] + share * (across[column + 1] - across[column]), up[row]
