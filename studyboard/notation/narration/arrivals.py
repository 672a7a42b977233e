"""The readings of a talk that have come to one of its words."""

from __future__ import annotations

import math
from collections.abc import Callable
from heapq import heappush, heappushpop
from typing import TypeAlias

from studyboard.notation.narration.costs import COSTS, Width
from studyboard.notation.narration.readings import Reading

#: Of some readings that do the same only a few are kept, so that somewhat more must have come before none is missing.
_SPARE = 1.5

#: Whether a reading may be kept at all.
Allowed: TypeAlias = "Callable[[Reading], bool]"


class Arrivals:
    """Readings that have come to one word, of those with the same places only the cheapest.

    width: how many will be kept of them
    near, places: where there are so many, any other costs at most so much more than the cheapest
    limit: what none costs that is still taken
    allowed: what may be kept, None for everything

    State: the readings by the key of their innermost line, the cost of the cheapest, and the costs of the cheapest few:
    once these are enough, there is no place for any that is not near the cheapest.
    """

    __slots__ = ("_allowed", "_cheap", "_enough", "least", "limit", "near", "places", "readings")

    def __init__(self, width: Width, allowed: Allowed | None = None) -> None:
        self._allowed = allowed
        self.near = width.near
        self.places = width.far
        self._enough = round(_SPARE * width.far)
        self._cheap: list[float] = []
        self.least = math.inf
        self.limit = math.inf
        self.readings: dict[int, Reading] = {}

    def expect(self, most: float) -> None:
        """From now on take nothing that costs more than this, or that much more than the cheapest."""
        self.limit = min(most, self._most())

    def take(self, key: int, cost: float) -> bool:
        """Is a reading with this key worth adding?"""
        if cost > self.limit:
            return False
        known = self.readings.get(key)
        return known is None or known.cost > cost

    def add(self, reading: Reading) -> None:
        """Add a reading that is worth it, in place of the one with the same key."""
        if self._allowed is not None and not self._allowed(reading):
            return
        key, cost = reading.lines[-1].key, reading.cost
        if key not in self.readings:
            if len(self._cheap) < self._enough:
                heappush(self._cheap, -cost)
            else:
                heappushpop(self._cheap, -cost)
        self.readings[key] = reading
        self.least = min(self.least, cost)
        self.limit = min(self.limit, self._most())

    def join(self, others: Arrivals) -> None:
        """Add those of another word, where they are worth it."""
        if not self.readings:
            self.readings, self.least, self._cheap = others.readings, others.least, others._cheap
            return
        self.limit = math.inf
        for key, reading in others.readings.items():
            if self.take(key, reading.cost):
                self.add(reading)

    def copy(self, width: Width) -> Arrivals:
        """The same readings, of which as many will be kept as *width* says."""
        copy = Arrivals(width, self._allowed)
        for reading in self.readings.values():
            copy.add(reading)
        return copy

    def _most(self) -> float:
        if len(self._cheap) < self._enough:
            return self.least + COSTS.worst
        return min(self.least + COSTS.worst, max(self.least + self.near, -self._cheap[0]))
