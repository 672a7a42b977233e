"""Diagonal hatching, which makes a square dark in print."""

from __future__ import annotations

from typing import Literal

from studyboard.picture.primitives import Point


def hatch_lines(
    x: float, y: float, *, count: int, slope: Literal["rising", "falling"] = "rising", inset: float = 0.0
) -> tuple[tuple[Point, Point], ...]:
    """Evenly spaced diagonals that fill the square with its top left corner at x, y (board units).

    count: lines that cross each side; neighbouring diagonal squares continue each other's lines
    slope: up to the right, or down to the right
    inset: width that is left free along the sides
    """
    size = 1.0 - 2 * inset
    lines: list[tuple[Point, Point]] = []
    for number in range(1, 2 * count):
        reach = size * number / count
        low, high = max(0.0, reach - size), min(size, reach)
        start, end = (low, reach - low), (high, reach - high)
        if slope == "falling":
            start, end = (size - start[0], start[1]), (size - end[0], end[1])
        lines.append(((x + inset + start[0], y + inset + start[1]), (x + inset + end[0], y + inset + end[1])))
    return tuple(lines)
