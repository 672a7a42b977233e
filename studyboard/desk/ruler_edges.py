"""Dragging the end of a beat on the time ruler: its intended length follows the hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from studyboard.desk.ruler_scale import RulerScale
from studyboard.timing.timeline import Stretch
from studyboard.translation import tr

#: How near to the end of a block the pointer takes hold of it (px).
REACH = 4.0
#: A beat is made no shorter than this by hand (s).
SHORTEST = 0.5
#: Lengths that are dragged or stepped are multiples of this (s).
STEP = 0.1


def edge_at(stretches: Sequence[Stretch], scale: RulerScale, index: int | None, x: float) -> int | None:
    """The beat whose end the pointer would take hold of at *x* (px): the one under it, or the one before."""
    for candidate in () if index is None else (index, index - 1):
        if 0 <= candidate < len(stretches):
            end, start = scale.x(stretches[candidate].end), scale.x(stretches[candidate].start)
            # Blocks that are hardly wider than the reach keep their middle for being chosen.
            if abs(x - end) <= min(REACH, (end - start) / 3):
                return candidate
    return None


@dataclass(frozen=True, slots=True)
class HeldEdge:
    """The end of a beat in the hand.

    index: of the beat in the timeline
    before: its length when it was taken hold of (s)
    seconds: its length where the hand is now (s)
    """

    index: int
    before: float
    seconds: float

    def at(self, stretches: Sequence[Stretch], scale: RulerScale, x: float) -> HeldEdge:
        """The same edge with the hand at *x* (px)."""
        wanted = scale.seconds(x) - stretches[self.index].start
        return HeldEdge(self.index, self.before, max(SHORTEST, round(wanted / STEP) * STEP))

    @property
    def words(self) -> str:
        """The length it has now and the difference."""
        difference = self.seconds - self.before
        sign = "+" if difference >= 0 else "−"
        return tr(
            "{seconds:.1f} s ({sign}{difference:.1f})", seconds=self.seconds, sign=sign, difference=abs(difference)
        )
