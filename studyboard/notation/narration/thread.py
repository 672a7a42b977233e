"""Where a search has lost the thread of a talk, and from where it is taken up again, more widely."""

from __future__ import annotations

from collections.abc import Sequence

from studyboard.notation.narration.arrivals import Arrivals
from studyboard.notation.narration.costs import COSTS, GREAT_WIDTH, USUAL_WIDTH, Width

#: So many words are between places to which the search can go back, and no phrase is longer than this.
_BETWEEN, _LONGEST = 20, 30
#: So many words before it is noticed the thread may have been lost, and so many behind it the search stays wide.
_BACK, _ON = 400, 20


class Thread:
    """How well the words of a talk have fitted so far.

    The right reading is lost where a wrong one was cheaper for so long that too many like it were kept; behind that
    nothing fits any more, and the cost of the best reading rises steeply. Only there many more readings are looked at.

    words: how many the talk has
    can_be_lost: whether to look for such places at all

    State: the cost of the best reading at each word, the readings at every few words, and up to where the search is
    wide.
    """

    def __init__(self, words: int, *, can_be_lost: bool) -> None:
        self._can_be_lost = can_be_lost
        self._best = [0.0] * (words + 1)
        self._marked: dict[int, list[Arrivals]] = {}
        self._wide_until = 0

    def width(self, at: int) -> Width:
        """How many readings to keep at a word."""
        return GREAT_WIDTH if at < self._wide_until else USUAL_WIDTH

    def mark(self, at: int, arrived: Sequence[Arrivals]) -> None:
        """Remember what has come to this word and those behind it, if this is one to which the search can go back."""
        if self._can_be_lost and at % _BETWEEN == 0:
            self._marked[at] = [arrivals.copy(GREAT_WIDTH) for arrivals in arrived[at : at + _LONGEST]]

    def lost_from(self, at: int, best: float) -> int | None:
        """The word from which to search again, if the thread must have been lost before this one; it is then wide.

        best: the cost of the best reading here
        """
        self._best[at] = best
        since = max(0, at - COSTS.lost_within)
        if not self._can_be_lost or at < self._wide_until or best - self._best[since] <= COSTS.lost:
            return None
        back = max(self._wide_until, at - _BACK)
        self._wide_until = at + _ON
        return back // _BETWEEN * _BETWEEN

    def restore(self, at: int, arrived: list[Arrivals]) -> None:
        """Put back what had come to a marked word and those behind it, and forget what has come further."""
        marked = self._marked[at]
        arrived[at:] = [Arrivals(self.width(word)) for word in range(at, len(arrived))]
        arrived[at : at + len(marked)] = [arrivals.copy(GREAT_WIDTH) for arrivals in marked]
