"""Side by side instead of one over the other: room for marks whose lines share a way."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Final, TypeAlias

from studyboard.picture.primitives import Point

LANE: Final = 0.18
"""Distance between lines that run side by side (squares)."""

Path: TypeAlias = tuple[Point, ...]


def lane_shifts(paths: Sequence[Path]) -> tuple[Point, ...]:
    """How far to move each path, right and down in squares, so that none runs along another.

    A path that shares its way with no other stays where it is.
    """
    conflicts: list[set[int]] = [set() for _ in paths]
    for one in range(len(paths)):
        for other in range(one):
            if _share_a_way(paths[one], paths[other]):
                conflicts[one].add(other)
                conflicts[other].add(one)
    lanes: list[int] = []
    for number in range(len(paths)):
        taken = {lanes[other] for other in conflicts[number] if other < number}
        lanes.append(next(lane for lane in range(len(paths)) if lane not in taken))
    widest = [0] * len(paths)
    for group in _groups(conflicts):
        for number in group:
            widest[number] = max(lanes[member] for member in group)
    return tuple(_moved(path, (lane - last / 2) * LANE) for path, lane, last in zip(paths, lanes, widest, strict=True))


def _groups(conflicts: Sequence[set[int]]) -> list[set[int]]:
    left = set(range(len(conflicts)))
    groups = []
    while left:
        group: set[int] = set()
        waiting = [left.pop()]
        while waiting:
            number = waiting.pop()
            group.add(number)
            waiting.extend(conflicts[number] - group)
        left -= group
        groups.append(group)
    return groups


def _legs(path: Path) -> list[tuple[Point, Point]]:
    return [(here, there) for here, there in pairwise(path) if here != there]


def _share_a_way(one: Path, other: Path) -> bool:
    return any(_overlap(a, b, c, d) for a, b in _legs(one) for c, d in _legs(other))


def _overlap(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two legs lie on one line and have more than a point of it in common."""
    across, down = b[0] - a[0], b[1] - a[1]
    if any(abs(across * (p[1] - a[1]) - down * (p[0] - a[0])) > 1e-9 for p in (c, d)):
        return False
    length = math.hypot(across, down)
    ends = sorted((across * (p[0] - a[0]) + down * (p[1] - a[1])) / length for p in (c, d))
    return min(length, ends[1]) - max(0.0, ends[0]) > 1e-9


def _moved(path: Path, distance: float) -> Point:
    """Move across every leg at once; opposite ways move to the same side."""
    if not distance:
        return 0.0, 0.0
    sides = set()
    for here, there in _legs(path):
        length = math.dist(here, there)
        side = (round(-(there[1] - here[1]) / length, 9), round((there[0] - here[0]) / length, 9))
        sides.add(max(side, (-side[0], -side[1])))
    return distance * sum(side[0] for side in sides), distance * sum(side[1] for side in sides)
