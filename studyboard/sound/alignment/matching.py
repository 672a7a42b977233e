"""Which of the words that were heard are which words of the script."""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Sequence
from difflib import SequenceMatcher

#: Three words in a row that stand at more places than this tell little about where one is.
_COMMON = 4
#: Beyond this many pairs (script times heard) a stretch is compared by its longest common runs instead of all pairs.
_ALL_PAIRS = 1_000_000
#: A word that was heard rightly is worth more than a wrong one costs; both gaps cost the same.
_RIGHT, _WRONG, _GAP = 3, -2, -1


def matches(script: Sequence[str], heard: Sequence[str]) -> list[tuple[int, int]]:
    """Pairs of places in script and heard, both rising, at which the same word stands in the same surroundings.

    Runs of three that both have are chained first, then what lies between is compared word by word; words that agree
    by chance among others that do not are left out. O(n log n), and n times m between the chained runs.
    """
    pairs: list[tuple[int, int]] = []
    before = (-1, -1)
    for anchor in [*_chained(script, heard), (len(script), len(heard))]:
        if anchor[0] > before[0] and anchor[1] > before[1]:
            first, since = before[0] + 1, before[1] + 1
            between = _between(script[first : anchor[0]], heard[since : anchor[1]])
            pairs += [(first + a, since + b) for a, b in between]
            if anchor[0] < len(script):
                pairs.append(anchor)
            before = anchor
    return _supported(pairs)


def _chained(script: Sequence[str], heard: Sequence[str]) -> list[tuple[int, int]]:
    """The longest rising chain of places at which three words in a row agree."""
    places: dict[tuple[str, ...], list[int]] = defaultdict(list)
    for place in range(len(script) - 2):
        places[tuple(script[place : place + 3])].append(place)
    points = [
        (a, b)
        for b in range(len(heard) - 2)
        for a in places.get(tuple(heard[b : b + 3]), ())
        if len(places[tuple(heard[b : b + 3])]) <= _COMMON
    ]
    # The longest strictly rising chain, by patience: of one heard place, the later script places come first.
    points.sort(key=lambda point: (point[1], -point[0]))
    tails: list[int] = []
    ends: list[int] = []
    before: list[int] = []
    for number, (a, _) in enumerate(points):
        size = bisect_left(tails, a)
        before.append(ends[size - 1] if size else -1)
        if size == len(tails):
            tails.append(a)
            ends.append(number)
        else:
            tails[size], ends[size] = a, number
    chain: list[tuple[int, int]] = []
    at = ends[-1] if ends else -1
    while at >= 0:
        chain.append(points[at])
        at = before[at]
    chain.reverse()
    # Each of the three words is in its place.
    spread = sorted({(a + step, b + step) for a, b in chain for step in range(3)})
    return _rising(spread)


def _rising(pairs: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    found: list[tuple[int, int]] = []
    for pair in pairs:
        if not found or (pair[0] > found[-1][0] and pair[1] > found[-1][1]):
            found.append(pair)
    return found


def _between(script: Sequence[str], heard: Sequence[str]) -> list[tuple[int, int]]:
    """The best pairs of two short stretches."""
    if not script or not heard:
        return []
    if len(script) * len(heard) > _ALL_PAIRS:
        blocks = SequenceMatcher(None, script, heard, autojunk=False).get_matching_blocks()
        return [(block.a + step, block.b + step) for block in blocks for step in range(block.size)]
    rows = [[0] * (len(heard) + 1) for _ in range(len(script) + 1)]
    for a in range(1, len(script) + 1):
        rows[a][0] = a * _GAP
    rows[0] = [b * _GAP for b in range(len(heard) + 1)]
    for a, word in enumerate(script, 1):
        row, above = rows[a], rows[a - 1]
        for b, other in enumerate(heard, 1):
            row[b] = max(above[b - 1] + (_RIGHT if word == other else _WRONG), above[b] + _GAP, row[b - 1] + _GAP)
    found: list[tuple[int, int]] = []
    a, b = len(script), len(heard)
    while a and b:
        same = script[a - 1] == heard[b - 1]
        if rows[a][b] == rows[a - 1][b - 1] + (_RIGHT if same else _WRONG):
            a, b = a - 1, b - 1
            if same:
                found.append((a, b))
        elif rows[a][b] == rows[a - 1][b] + _GAP:
            a -= 1
        else:
            b -= 1
    found.reverse()
    return found


def _supported(pairs: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Without the pairs that have no other near: within four words on both sides, at a similar distance."""
    kept: list[tuple[int, int]] = []
    for number, (a, b) in enumerate(pairs):
        near = 0
        for other in (number - 2, number - 1, number + 1, number + 2):
            if 0 <= other < len(pairs):
                apart, heard_apart = abs(pairs[other][0] - a), abs(pairs[other][1] - b)
                near += max(apart, heard_apart) <= 4 and abs(apart - heard_apart) <= 1
        if near:
            kept.append((a, b))
    return kept
