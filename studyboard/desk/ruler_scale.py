"""Seconds of the talk along the ruler: how far apart they are, and which of them are labelled."""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

#: Steps between labelled ticks (s): 1, 2, 5, then what minutes and hours are divided into.
_STEPS = (1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600)
#: The closest and the widest that a second may be drawn (px).
_CLOSEST, _WIDEST = 0.002, 240.0


@dataclass(frozen=True, slots=True)
class RulerScale:
    """Which seconds of the talk are in view.

    start: the second at the left end
    per_second: px to a second
    width: how wide the view is (px)
    left: where it begins in the widget (px)
    """

    start: float
    per_second: float
    width: float
    left: float = 0.0

    @property
    def end(self) -> float:
        """The second at the right end."""
        return self.start + self.width / self.per_second

    def x(self, seconds: float) -> float:
        """Where a second lies (px)."""
        return self.left + (seconds - self.start) * self.per_second

    def seconds(self, x: float) -> float:
        """Which second lies here."""
        return self.start + (x - self.left) / self.per_second

    def zoomed(self, factor: float, x: float) -> RulerScale:
        """The scale made *factor* times wider, with the second at *x* staying where it is."""
        per_second = min(max(self.per_second * factor, _CLOSEST), _WIDEST)
        kept = self.seconds(x)
        return replace(self, start=kept - (x - self.left) / per_second, per_second=per_second)

    def within(self, seconds: float) -> RulerScale:
        """The scale moved, and widened where need be, so that it shows nothing before 0 and little after *seconds*."""
        per_second = max(self.per_second, fitting(seconds, self.width, self.left).per_second)
        last = max(0.0, seconds - self.width / per_second)
        return replace(self, start=min(max(0.0, self.start), last), per_second=per_second)


def fitting(seconds: float, width: float, left: float = 0.0) -> RulerScale:
    """The scale on which that many seconds fill the width (px)."""
    per_second = min(max(width / max(seconds, 1.0), _CLOSEST), _WIDEST)
    return RulerScale(0.0, per_second, width, left)


def tick_step(per_second: float, least: float) -> int:
    """The smallest sensible step between labels that lie at least *least* px apart (s)."""
    return next((step for step in _STEPS if step * per_second >= least), 3600 * math.ceil(least / per_second / 3600))


def ticks(scale: RulerScale, step: float) -> Iterator[float]:
    """The multiples of *step* in view (s)."""
    number = math.ceil(scale.start / step)
    while number * step <= scale.end:
        yield number * step
        number += 1


def in_view(starts: Sequence[float], scale: RulerScale, from_x: float, to_x: float) -> range:
    """Indices of the blocks of a gapless row that touch the px from *from_x* to *to_x*; *starts* in seconds."""
    first = max(0, bisect_right(starts, scale.seconds(from_x)) - 1)
    return range(first, bisect_left(starts, scale.seconds(to_x), first))


@dataclass(frozen=True, slots=True)
class Run:
    """Neighbouring blocks that are drawn as one: indices from *first* to *last*, and their edges (px)."""

    first: int
    last: int
    left: float
    right: float


def runs(blocks: Sequence[tuple[int, float, float]], least: float) -> Iterator[Run]:
    """Blocks of one row, (index, left, right) in px from left to right, with those narrower than *least* joined.

    A block that is wide enough stays alone; narrow ones are joined with the narrow ones that touch them.
    """
    pending: Run | None = None
    for index, left, right in blocks:
        narrow = right - left < least
        if pending is not None and (not narrow or left - pending.right > least):
            yield pending
            pending = None
        if not narrow:
            yield Run(index, index, left, right)
        elif pending is None:
            pending = Run(index, index, left, right)
        else:
            pending = Run(pending.first, index, pending.left, right)
    if pending is not None:
        yield pending
